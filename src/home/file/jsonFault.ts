type Expects = 'value' | 'value or ]' | 'name or }' | 'name' | ':' | 'next';

const SPACE = /[ \t\n\r]*/y;
const TEXT = /"(?:[ !#-[\]-\uffff]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
const ATOM = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;

/** Length of what a sticky pattern matches at a place, or 0. */
function matched(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0].length ?? 0;
}

/**
 * Where a text stops being JSON (RFC 8259): the index of the first character that cannot stand there, or its length
 * where it ends too early. JavaScript engines word this each in their own way, and some say nothing of the place.
 */
export function jsonFault(text: string): number {
  const open: string[] = [];
  let expects: Expects = 'value';
  let at = 0;
  for (;;) {
    at += matched(SPACE, text, at);
    const sign = text[at];
    const inList = open.at(-1) === '[';
    if (expects === 'next' && open.length === 0) return at;
    if (expects === 'name' || expects === 'name or }') {
      const name = matched(TEXT, text, at);
      if (name > 0) {
        at += name;
        expects = ':';
        continue;
      }
      if (sign !== '}' || expects === 'name') return at;
    }
    if (expects === ':') {
      if (sign !== ':') return at;
      expects = 'value';
    } else if (expects === 'next' && sign === ',') expects = inList ? 'value' : 'name';
    else if (sign === (inList ? ']' : '}') && open.length > 0 && expects !== 'value') {
      open.pop();
      expects = 'next';
    } else if (expects === 'next') return at;
    else if (sign === '{' || sign === '[') {
      open.push(sign);
      expects = sign === '[' ? 'value or ]' : 'name or }';
    } else {
      const value = matched(TEXT, text, at) || matched(ATOM, text, at);
      if (value === 0) return at;
      at += value;
      expects = 'next';
      continue;
    }
    at += 1;
  }
}
