import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { arrange, type Proposal } from '../engine/arranging/arrange';
import { assessSampled } from '../engine/assessSampled';
import { parseHome } from '../home/file/parse';
import { arrangeQuestion } from '../home/questions/arrangeQuestion';
import { assessQuestion } from '../home/questions/assessQuestion';
import { nextQuestion, type NextAsk } from '../home/questions/nextQuestion';
import { nextReadings } from '../engine/nextReadings/nextReadings';
import { firstOf } from '../home/order';
import type { Home } from '../home/home';
import { HELP, optionWords, withoutControls } from '../words/commandLine';
import { problemText } from '../words/problems';
import { answerOf } from './answer';
import { checkAgainst } from './checkAgainst';
import { parseOptions, type AskedPoint, type Options } from './options';
import { parsePoints } from './points';
import { tableOf } from './table';

/** Where the command line reads and writes, so that tests can stand in for the terminal. */
export interface Terminal {
  read(path: string): string;
  out(text: string): void;
  error(line: string): void;
}

const DONE = 0;
const BAD_FILE = 1;
const BAD_OPTIONS = 2;

/** Runs the command; returns its exit status. Every problem is one line on the terminal's error side. */
export function main(argv: readonly string[], terminal: Terminal): number {
  const refuse = (status: number, problems: readonly string[]) => {
    for (const problem of problems) terminal.error(withoutControls(problem.replace(/\s*\n\s*/g, ' ')));
    return status;
  };
  const parsed = parseOptions(argv);
  if (!parsed.ok) return refuse(BAD_OPTIONS, parsed.problems);
  const { options } = parsed;
  if (options.help) {
    terminal.out(HELP);
    return DONE;
  }
  const text = readText(terminal, options.file);
  if (text === null) {
    return refuse(BAD_FILE, [optionWords.notReadable(options.file)]);
  }
  const file = parseHome(text);
  if (!file.ok)
    return refuse(
      BAD_FILE,
      file.problems.map((problem) => `${options.file}: ${problemText(problem)}`),
    );
  const points = pointsOf(terminal, options);
  if (!points.ok) return refuse(BAD_OPTIONS, points.problems);
  const unknown = checkAgainst(file.home, options, points.points);
  if (unknown.length > 0) return refuse(BAD_OPTIONS, unknown);
  return work(file.home, options, points.points, terminal, refuse);
}

function work(
  home: Home,
  options: Options,
  points: AskedPoint[],
  terminal: Terminal,
  refuse: (status: number, problems: readonly string[]) => number,
): number {
  const round = options.round ?? firstOf(home.rounds)!.id;
  const request = assessQuestion(home, {
    round,
    ...(options.level !== null && { levels: [options.level] }),
    ...(options.method !== null && { method: options.method }),
    ...(options.height !== null && { height: options.height }),
    ...(options.target !== null && { target: options.target }),
    ...(options.guideline !== null && { guideline: options.guideline }),
  });
  const assessed = assessSampled(request);
  if (!assessed.ok) return refuse(BAD_FILE, [`${options.file}: ${problemText(assessed.problem)}`]);
  const { assessment } = assessed;
  const proposal = options.arrange
    ? arrange(arrangeQuestion(home, assessment.fitted, { cautious: options.cautious, aim: 'mean' }))
    : null;
  const next =
    options.next === null
      ? null
      : nextReadings(nextQuestion(home, request, assessment, nextAsk(home, options, proposal), options.next));
  const worked = { home, options, points, request, assessment, proposal, next };
  const answer = answerOf(worked);
  terminal.out(options.table ? tableOf(worked, answer) : jsonOf(answer));
  return DONE;
}

/** What the next readings are for: what was arranged, the room or piece that was named, or the map. */
function nextAsk(home: Home, options: Options, proposal: Proposal | null): NextAsk {
  if (proposal) return { kind: 'choice', pieces: proposal.pieces };
  if (options.for === null) return { kind: 'map' };
  return { kind: options.for in home.rooms ? 'room' : 'piece', id: options.for };
}

/** One object, indented, with each row of numbers on one line. */
function jsonOf(answer: object): string {
  // A text holds no line break of its own in JSON, so the breaks tell rows from what a person wrote in brackets.
  const rows = /\[\n\s*(-?\d[^[\]{}"]*?)\n\s*\]/g;
  // JSON leaves the upper controls as they are, and a terminal obeys them.
  const upper = /[\u007f-\u009f]/g;
  return `${JSON.stringify(answer, null, 1)
    .replace(rows, (_, row: string) => `[${row.replace(/\s+/g, ' ')}]`)
    .replace(upper, (control) => `\\u00${control.charCodeAt(0).toString(16)}`)}\n`;
}

function pointsOf(terminal: Terminal, options: Options) {
  if (options.points === null) return { ok: true as const, points: options.at };
  const text = readText(terminal, options.points);
  if (text === null) {
    return {
      ok: false as const,
      problems: [optionWords.notReadable(`--points “${options.points}”`)],
    };
  }
  const table = parsePoints(text, options.points);
  return table.ok ? { ok: true as const, points: [...options.at, ...table.points] } : table;
}

function readText(terminal: Terminal, path: string): string | null {
  try {
    return terminal.read(path);
  } catch {
    return null;
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  process.exitCode = main(process.argv.slice(2), {
    read: (path) => readFileSync(path, 'utf8'),
    out: (text) => process.stdout.write(text),
    error: (line) => process.stderr.write(`${line}\n`),
  });
}
