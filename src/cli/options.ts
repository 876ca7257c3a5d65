import { parseField, parseLength, quantitySentence } from '../words/quantities';

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
  method: 'auto' | 'inverse-distance' | 'kriging' | 'source-kriging' | null;
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
}

export type ParsedOptions = { ok: true; options: Options } | { ok: false; problems: string[] };

const SWITCHES = ['help', 'table', 'arrange', 'cautious'] as const;
const METHODS = ['auto', 'inverse-distance', 'kriging', 'source-kriging'] as const;
const METHODS_TO_COME = ['source-sampling'];
const LEAST_STEP = 0.05;

export const HELP = `assess FILE.home.json [options]

Computes with the same engine as the page and prints one JSON object. Metres, µT, hours.

  --method M         auto, inverse-distance, kriging or source-kriging
  --round ID         the round of readings to map (a, b, …)
  --height H         height of the map above the floor: 1, 0.6, 60cm
  --target T         the value to aim for: 0.1, "1 mG", "100 nT"
  --guideline ID     the published set that gives rooms their words
  --level ID         this level only (l1, l2, …)
  --at X,Y[,LEVEL]   the estimate at a place; as often as wanted; --at=-3,2 where x is negative
  --points FILE.csv  the same for a table with the columns x,y[,level][,height]
  --along WALK       the estimate along a walk, its fall-off, and where the target is met
  --arrange          where every unlocked piece stands best
  --cautious         plan on the upper bound of the field (with --arrange)
  --grid STEP        the whole estimate of a level, one row [x, y, value, low, high] a cell
  --table            readable tables in place of JSON
  --help             this text

Exit status 0: done; 1: the file is bad or cannot be assessed; 2: the options are bad.
`;

/** A reader takes one option's value into the options, or says what is wrong with it. */
type Reader = (options: Options, value: string) => string | null;

const READERS: Record<string, Reader> = {
  method: (options, value) => {
    if (METHODS_TO_COME.includes(value)) {
      return `--method ${value}: this method is not there yet. Take auto, inverse-distance, kriging or source-kriging.`;
    }
    const method = METHODS.find((known) => known === value);
    if (!method)
      return `--method “${value}”: not a method. Take auto, inverse-distance, kriging or source-kriging.`;
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
    if (!parsed.ok) return `--height “${value}”: ${quantitySentence(parsed.problem)}`;
    options.height = parsed.metres;
    return null;
  },
  target: (options, value) => {
    const parsed = parseField(value, 'uT');
    if (!parsed.ok) return `--target “${value}”: ${quantitySentence(parsed.problem)}`;
    if (parsed.µT === 0 || parsed.limit)
      return `--target “${value}”: not a target. Write a field above zero, like 0.1.`;
    options.target = parsed.µT;
    return null;
  },
  grid: (options, value) => {
    const parsed = parseLength(value, 'm');
    if (!parsed.ok) return `--grid “${value}”: ${quantitySentence(parsed.problem)}`;
    if (parsed.metres < LEAST_STEP)
      return `--grid “${value}”: finer than ${LEAST_STEP} m. Write a step like 0.1 or 0.5.`;
    options.grid = parsed.metres;
    return null;
  },
  at: (options, value) => {
    const [x, y, level = null, ...rest] = value.split(',').map((part) => part.trim());
    if (!isNumber(x) || !isNumber(y) || level === '' || rest.length > 0) {
      return `--at “${value}”: not a place. Write X,Y or X,Y,LEVEL in metres with decimal points, like 2.5,1.2 or 2.5,1.2,l1.`;
    }
    options.at.push({ x: Number(x), y: Number(y), level, height: null });
    return null;
  },
  next: () => '--next: choosing the next readings is not there yet.',
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
      if (value !== undefined)
        problems.push(`--${name} “${value}”: it takes no value. Write --${name} alone.`);
      options[name] = true;
      continue;
    }
    const read = READERS[name];
    if (!read) {
      problems.push(`--${name}: not an option. --help lists them.`);
      continue;
    }
    const given = value ?? valueAfter(argv, i);
    if (value === undefined && given !== null) i++;
    if (given === null || given === '')
      problems.push(`--${name}: it needs a value. Write --${name}=VALUE; --help shows which.`);
    else {
      const problem = read(options, given);
      if (problem) problems.push(problem);
    }
  }
  if (options.help) return { ok: true, options };
  if (files.length === 0)
    problems.push('No home file named. Write: assess FILE.home.json [options]; --help lists the options.');
  for (const extra of files.slice(1)) problems.push(`“${extra}”: a second file. Name one home file.`);
  if (options.cautious && !options.arrange)
    problems.push('--cautious: it says how to arrange. Add --arrange.');
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, options: { ...options, file: files[0]! } };
}

/** The word after an option, where it is a value: another option is not, though a negative number is. */
function valueAfter(argv: readonly string[], i: number): string | null {
  const next = argv[i + 1];
  return next === undefined || next.startsWith('--') ? null : next;
}
