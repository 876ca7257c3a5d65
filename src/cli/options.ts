import type { MethodChoice } from '../home/home';
import { optionWords } from '../words/commandLine';
import { parseField, parseLength } from '../words/quantities';

/** A place asked for; level and height are the map's where not given. */
export interface AskedPoint {
  x: number;
  y: number;
  level: string | null;
  height: number | null;
}

/** What the command line asks for. Null: what the home file says. */
export interface Options {
  file: string;
  help: boolean;
  table: boolean;
  method: MethodChoice | null;
  round: string | null;
  height: number | null;
  /** µT */
  target: number | null;
  guideline: string | null;
  level: string | null;
  at: AskedPoint[];
  /** Path of a CSV file of points. */
  points: string | null;
  along: string | null;
  arrange: boolean;
  cautious: boolean;
  /** Metres. */
  grid: number | null;
  /** How many places to read next. */
  next: number | null;
  /** The room or piece that they are to make surer. */
  for: string | null;
}

export type ParsedOptions = { ok: true; options: Options } | { ok: false; problems: string[] };

const SWITCHES = ['help', 'table', 'arrange', 'cautious'] as const;
const METHODS = ['auto', 'inverse-distance', 'kriging', 'source-kriging', 'source-sampling'] as const;
const LEAST_STEP = 0.05;
const MOST_NEXT = 50;

/** No home reaches further: metres above a floor, µT, metres from the middle of the page. */
const HIGHEST = 50;
const STRONGEST = 1e6;
const FARTHEST = 1000;

/** A reader takes one option's value into the options, or says what is wrong with it. */
type Reader = (options: Options, value: string) => string | null;

const READERS: Record<string, Reader> = {
  method: (options, value) => {
    const method = METHODS.find((known) => known === value);
    if (!method) return optionWords.notMethod(value);
    options.method = method;
    return null;
  },
  round: (options, value) => {
    options.round = value;
    return null;
  },
  guideline: (options, value) => {
    options.guideline = value;
    return null;
  },
  level: (options, value) => {
    options.level = value;
    return null;
  },
  along: (options, value) => {
    options.along = value;
    return null;
  },
  points: (options, value) => {
    options.points = value;
    return null;
  },
  height: (options, value) => {
    const parsed = parseLength(value, 'm', 'notNegative');
    if (!parsed.ok) return optionWords.quantity('height', value, parsed.problem);
    if (parsed.metres > HIGHEST) return optionWords.tooHigh(value, HIGHEST);
    options.height = parsed.metres;
    return null;
  },
  target: (options, value) => {
    const parsed = parseField(value, 'uT');
    if (!parsed.ok) return optionWords.quantity('target', value, parsed.problem);
    if (parsed.µT === 0 || parsed.µT > STRONGEST || parsed.limit) return optionWords.notTarget(value);
    options.target = parsed.µT;
    return null;
  },
  grid: (options, value) => {
    const parsed = parseLength(value, 'm');
    if (!parsed.ok) return optionWords.quantity('grid', value, parsed.problem);
    if (parsed.metres < LEAST_STEP) return optionWords.tooFine(value, LEAST_STEP);
    options.grid = parsed.metres;
    return null;
  },
  at: (options, value) => {
    const [x, y, level = null, ...rest] = value.split(',').map((part) => part.trim());
    if (!isNumber(x) || !isNumber(y) || level === '' || rest.length > 0) {
      return optionWords.notPlace(value);
    }
    if (Math.max(Math.abs(Number(x)), Math.abs(Number(y))) > FARTHEST)
      return optionWords.tooFar(value, FARTHEST);
    options.at.push({ x: Number(x), y: Number(y), level, height: null });
    return null;
  },
  next: (options, value) => {
    if (!/^\d+$/.test(value) || Number(value) < 1 || Number(value) > MOST_NEXT)
      return optionWords.notCount(value, MOST_NEXT);
    options.next = Number(value);
    return null;
  },
  for: (options, value) => {
    options.for = value;
    return null;
  },
};

/** Options of one word, so that the next word is theirs only where they take a value. */
const isSwitch = (name: string): name is (typeof SWITCHES)[number] =>
  (SWITCHES as readonly string[]).includes(name);

export function isNumber(text: string | undefined): text is string {
  return text !== undefined && text.trim() !== '' && Number.isFinite(Number(text));
}

/** Reads the words after `assess`. Every problem is one line that names the option, the value and the way out. */
export function parseOptions(argv: readonly string[]): ParsedOptions {
  const options: Options = {
    file: '',
    help: false,
    table: false,
    method: null,
    round: null,
    height: null,
    target: null,
    guideline: null,
    level: null,
    at: [],
    points: null,
    along: null,
    arrange: false,
    cautious: false,
    grid: null,
    next: null,
    for: null,
  };
  const problems: string[] = [];
  const files: string[] = [];
  for (let i = 0; i < argv.length; i++) {
    const word = argv[i]!;
    if (!word.startsWith('--') || word === '--') {
      files.push(word);
      continue;
    }
    const [, name = '', value] = /^--([^=]*)(?:=(.*))?$/s.exec(word)!;
    if (isSwitch(name)) {
      if (value !== undefined) problems.push(optionWords.noValue(name, value));
      options[name] = true;
      continue;
    }
    const read = READERS[name];
    if (!read) {
      problems.push(optionWords.notOption(name));
      continue;
    }
    const given = value ?? valueAfter(argv, i);
    if (value === undefined && given !== null) i++;
    if (given === null || given === '') problems.push(optionWords.needsValue(name));
    else {
      const problem = read(options, given);
      if (problem) problems.push(problem);
    }
  }
  if (options.help) return { ok: true, options };
  if (files.length === 0) problems.push(optionWords.noFile);
  for (const extra of files.slice(1)) problems.push(optionWords.secondFile(extra));
  if (options.cautious && !options.arrange) problems.push(optionWords.cautiousAlone);
  if (options.for !== null && options.next === null) problems.push(optionWords.forAlone);
  if (options.for !== null && options.next !== null && options.arrange)
    problems.push(optionWords.forOrArrange);
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, options: { ...options, file: files[0]! } };
}

/** The word after an option, where it is a value: another option is not, though a negative number is. */
function valueAfter(argv: readonly string[], i: number): string | null {
  const next = argv[i + 1];
  return next === undefined || next.startsWith('--') ? null : next;
}
