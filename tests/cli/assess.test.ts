import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { main } from '../../src/cli/assess';
import { arrange } from '../../src/engine/arranging/arrange';
import { assessHome } from '../../src/engine/assessHome';
import { assessSampled } from '../../src/engine/assessSampled';
import { fieldOf } from '../../src/engine/mapping/field';
import { parseHome } from '../../src/home/file/parse';
import { newHome } from '../../src/home/newHome';
import { provenSentence } from '../../src/words/furniture';
import { relaxationWords } from '../../src/words/relaxation';
import type { Piece } from '../../src/home/home';
import { arrangeQuestion } from '../../src/home/questions/arrangeQuestion';
import { assessQuestion } from '../../src/home/questions/assessQuestion';
import { serialiseHome } from '../../src/home/file/serialise';

const path = (name: string) => fileURLToPath(new URL(`../../samples/${name}.home.json`, import.meta.url));
const SAMPLES = ['terraced-house', 'one-bedroom-flat', 'single-bedroom'];

/** A method that answers at once, for all that says the same by any method. */
const QUICK = ['--method', 'source-kriging'];

/** Runs the command in this process, with files that exist only here laid over those on disk. */
function run(argv: string[], files: Record<string, string> = {}) {
  const out: string[] = [];
  const errors: string[] = [];
  const status = main(argv.includes('--method') ? argv : [...argv, ...QUICK], {
    read: (name) => files[name] ?? readFileSync(name, 'utf8'),
    out: (text) => out.push(text),
    error: (line) => errors.push(line),
  });
  return { status, out: out.join(''), errors };
}

function answer(argv: string[], files: Record<string, string> = {}) {
  const { status, out, errors } = run(argv, files);
  expect(errors).toEqual([]);
  expect(status).toBe(0);
  return JSON.parse(out);
}

function sample(name: string) {
  const parsed = parseHome(readFileSync(path(name), 'utf8'));
  if (!parsed.ok) throw new Error(`sample ${name} does not parse`);
  const request = assessQuestion(parsed.home, { method: 'source-kriging' });
  const assessed = assessHome(request);
  if (!assessed.ok) throw new Error(`sample ${name} cannot be assessed`);
  return { home: parsed.home, request, assessment: assessed.assessment };
}

describe.each(SAMPLES)('%s', (name) => {
  const { home, request, assessment } = sample(name);
  const printed = answer([path(name)]);

  it('prints what the engine answers, to the last digit', () => {
    expect(printed.title).toBe(home.title);
    expect(printed.method).toBe(assessment.fitted.method);
    expect(printed.evidence).toEqual({
      readings: assessment.evidence.readings,
      looRmseLn: assessment.evidence.looRmseLn,
      coverage90: assessment.evidence.coverage90,
      compared: assessment.evidence.compared,
    });
    expect(printed.rooms).toHaveLength(request.rooms.length);
    for (const [i, room] of assessment.rooms.entries()) {
      const { maxAt: _, ...figures } = room;
      expect(printed.rooms[i]).toEqual({ ...figures, name: home.rooms[room.id]!.name });
    }
    for (const [i, piece] of assessment.pieces.entries()) {
      expect(printed.pieces[i]).toMatchObject({
        id: piece.id,
        mean: piece.mean,
        dose: piece.dose.dose,
        low: piece.dose.low,
        high: piece.dose.high,
      });
    }
  });

  it('has the keys of the format and nothing that was not asked for', () => {
    expect(Object.keys(printed)).toEqual([
      'title',
      'method',
      'why',
      'evidence',
      'points',
      'sources',
      'unmarked',
      'rooms',
      'pieces',
      'arrangement',
      'arrangements',
      'next',
      'enough',
      'profile',
      'grid',
    ]);
    for (const key of ['unmarked', 'arrangement', 'next', 'enough', 'profile', 'grid'])
      expect(printed[key]).toBeNull();
    expect(printed.points).toEqual([]);
  });

  it('has the kept arrangements, as found first, then how things stand', () => {
    const dose = (place: number) => printed.arrangements[place].dose;
    expect(printed.arrangements.map(({ name }: { name: string }) => name)).toEqual(['As found', 'Now']);
    // Nothing has moved since: both have the dose of the furniture as it stands.
    expect(dose(0)).toBe(dose(1));
    expect(printed.arrangements[1]).toMatchObject({ odds: null, moved: [], sources: [], rooms: [] });
    const pieces = printed.pieces.flatMap(({ uses }: { uses: { who: string; dose: number }[] }) => uses);
    const people = new Set(pieces.map(({ who }: { who: string }) => who)).size;
    const sum = pieces.reduce((total: number, use: { dose: number }) => total + use.dose, 0);
    // Medians of parts do not quite add to the median of a sum.
    expect(Math.abs(dose(0) / (sum / people) - 1)).toBeLessThan(0.05);
  });

  it('says what each marked source gives where the map is drawn from them, and nothing where it is not', () => {
    if (Object.keys(home.sources).length === 0) return expect(printed.sources).toBeNull();
    expect(printed.sources.map(({ id }: { id: string }) => id)).toEqual(Object.keys(home.sources));
    for (const { falloff, share } of printed.sources) {
      expect([1, 2, 3]).toContain(falloff);
      expect(share[0]).toBeLessThan(share[1]);
    }
  });

  it('estimates at a place as the field does', () => {
    const { points } = answer([path(name), '--at', '1.2,1.1']);
    const level = request.levels[0]!;
    const { mean, variance } = fieldOf(assessment.fitted, level.id, level.height).predict([1.2], [1.1], {
      variance: true,
    });
    expect(points).toHaveLength(1);
    expect(points[0]).toMatchObject({
      at: [1.2, 1.1],
      value: Math.exp(mean[0]!),
      supported: true,
      reason: null,
    });
    expect(Math.log(points[0].high / points[0].low) / 2).toBeCloseTo(1.6448536 * Math.sqrt(variance![0]!), 6);
  });

  it('arranges as the planner does', () => {
    const proposal = arrange(arrangeQuestion(home, assessment.fitted, { cautious: false, aim: 'mean' }));
    const { arrangement, pieces } = answer([path(name), '--arrange']);
    expect(arrangement).toMatchObject({
      proven: proposal.proven,
      before: proposal.before,
      after: proposal.after,
      low: proposal.low,
      high: proposal.high,
      odds: proposal.odds,
    });
    expect(arrangement.pieces.map(({ at }: { at: number[] }) => at)).toEqual(
      proposal.pieces.map(({ at }) => at),
    );
    // Somebody who uses one piece has its dose before anything moves, to the ninth digit.
    for (const { who, before } of arrangement.people) {
      const doses = pieces.flatMap(({ uses }: { uses: { who: string; dose: number }[] }) =>
        uses.filter((use) => use.who === who),
      );
      if (doses.length === 1) expect(Math.abs(before / doses[0].dose - 1)).toBeLessThan(1e-9);
    }
  });

  it('prints a table of the same figures that a person can read', () => {
    const { out, status } = run([path(name), '--table']);
    expect(status).toBe(0);
    expect(out).toContain(home.title);
    for (const { id } of assessment.rooms) expect(out).toContain(home.rooms[id]!.name);
    expect(out).toContain('Open no panel');
  });
});

it('left to itself it samples the sources first, and prints what the engine answers then', () => {
  const { home } = sample('single-bedroom');
  const printed = answer([path('single-bedroom'), '--method', 'auto']);
  const assessed = assessSampled(assessQuestion(home));
  if (!assessed.ok) throw new Error('the single bedroom cannot be assessed');
  const { evidence, rooms } = assessed.assessment;
  expect(printed.evidence.compared.map(({ method }: { method: string }) => method)).toContain(
    'source-sampling',
  );
  expect(printed.evidence.compared).toEqual(evidence.compared);
  expect(printed.rooms[0].median).toBe(rooms[0]!.median);
});

describe('options', () => {
  const file = path('terraced-house');

  it('change the question', () => {
    expect(answer([file, '--method', 'inverse-distance']).method).toBe('inverse-distance');
    expect(answer([file, '--method', 'kriging']).sources).toBeNull();
    const { method, why, sources } = answer([file, '--method', 'source-kriging']);
    expect([method, why]).toEqual(['source-kriging', 'asked for']);
    expect(sources.map(({ id }: { id: string }) => id)).toEqual(['s1', 's2']);
    expect(run([file, '--method', 'source-kriging', '--table']).out).toMatch(/Street line: falls as 1\/r/);
    const low = answer([file, '--target', '0.01']).rooms.map(
      ({ overTarget }: { overTarget: number }) => overTarget,
    );
    expect(Math.min(...low)).toBeGreaterThan(0.9);
    const set = answer([file, '--guideline', 'sbm-2015']).rooms.find(
      ({ name }: { name: string }) => name === 'Front bedroom',
    );
    expect(set.class).toMatch(/anomaly/);
  });

  it('take points from a table, beside those named, with heights of their own', () => {
    const { points } = answer([file, '--at=-3,2', '--points', 'p.csv'], {
      'p.csv': 'x,y,height\n2,3,\n2,3,2\n',
    });
    expect(points.map(({ at }: { at: number[] }) => at)).toEqual([
      [-3, 2],
      [2, 3],
      [2, 3],
    ]);
    expect(points[2].high / points[2].low).toBeGreaterThan(points[1].high / points[1].low);
  });

  it('give the whole level as rows on its floor', () => {
    const { grid } = answer([file, '--grid', '1']);
    expect(grid.length).toBeGreaterThan(50);
    for (const [x, y, value, low, high] of grid) {
      expect(low).toBeLessThan(value);
      expect(value).toBeLessThan(high);
      expect((x - 0.5) % 1).toBeCloseTo(0, 9);
      expect(Math.abs((y - 0.5) % 1)).toBeCloseTo(0, 9);
    }
  });

  it('follow a walk', () => {
    const { home, assessment } = sample('terraced-house');
    const walk = Object.keys(home.walks)[0]!;
    const { profile } = answer([file, '--along', walk]);
    const expected = assessment.profiles.find((one) => one.walk === walk)!;
    expect(profile).toEqual({
      walk,
      falloff: expected.falloff,
      falloffSd: expected.falloffSd,
      targetAt: expected.targetAt && [expected.targetAt[0], expected.targetAt[2]],
      targetBest: expected.targetAt && expected.targetAt[1],
      rows: expected.rows,
    });
    expect(run([file, '--along', walk, '--table']).out).toContain(home.walks[walk]!.name);
  });

  it('plan on the upper bound when asked to be cautious', () => {
    const { arrangement } = answer([file, '--arrange', '--cautious']);
    expect(arrangement.after).toBeGreaterThan(0);
  });

  it('a row of numbers is one line, and words in brackets stay as they were written', () => {
    const { home } = sample('single-bedroom');
    const text = serialiseHome({ ...home, title: 'Flat [ 3 ], back' });
    const { out } = run(['f.json', '--at', '1,1'], { 'f.json': text });
    expect(out).toContain('"at": [1, 1]');
    expect(JSON.parse(out).title).toBe('Flat [ 3 ], back');
  });

  it('help goes to standard output', () => {
    expect(run(['--help'])).toMatchObject({ status: 0, errors: [] });
    expect(run(['--help']).out).toContain('--arrange');
  });
});

describe('problems', () => {
  const file = path('single-bedroom');

  it.each([
    [[file, '--round', 'z'], '--round “z”'],
    [[file, '--level', 'l9'], '--level “l9”'],
    [[file, '--along', 'w9'], '--along “w9”'],
    [[file, '--guideline', 'mine'], '--guideline “mine”'],
    [[file, '--at', '1,1,l9'], 'l9'],
    [[file, '--points', 'nowhere.csv'], 'nowhere.csv'],
    [[file, '--next', '3', '--for', 'r9'], '--for “r9”'],
  ])('bad options end with 2: %j', (argv, part) => {
    const { status, out, errors } = run(argv);
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(errors).toHaveLength(1);
    expect(errors[0]).toContain(part);
  });

  it('a file that is not there, not JSON, or foreign ends with 1', () => {
    for (const [name, text] of [
      ['nothing.json', null],
      ['cut.json', '{"format": "still'],
      ['foreign.json', '{"format":"other","version":1}'],
    ] as const) {
      const { status, out, errors } = run([name], text === null ? {} : { [name]: text });
      expect(status).toBe(1);
      expect(out).toBe('');
      expect(errors).toHaveLength(1);
      expect(errors[0]).toMatch(new RegExp(`^${name}: `));
    }
  });

  it('every problem of a bad file is one line with its path, its value and the way out', () => {
    const json = JSON.parse(readFileSync(file, 'utf8'));
    json.rooms[0].use = 'castle';
    json.readings[1].value = -1;
    const { status, errors } = run(['bad.json'], { 'bad.json': JSON.stringify(json) });
    expect(status).toBe(1);
    expect(errors).toHaveLength(2);
    expect(errors.join('\n')).toMatch(/rooms\[0\]\.use.*castle/);
    expect(errors.join('\n')).toMatch(/readings\[1\]\.value.*-1|readings\[1\]\.value.*−1/);
    for (const line of errors) expect(line).not.toContain('\n');
  });

  it('too few readings are said, and nothing is printed', () => {
    const { status, out, errors } = run(['empty.json'], { 'empty.json': serialiseHome(newHome('Empty')) });
    expect(status).toBe(1);
    expect(out).toBe('');
    expect(errors[0]).toMatch(/3|three/);
  });
});

it('runs as a program of its own', () => {
  const tsx = fileURLToPath(new URL('../../node_modules/tsx/dist/cli.mjs', import.meta.url));
  const program = fileURLToPath(new URL('../../src/cli/assess.ts', import.meta.url));
  const good = spawnSync(process.execPath, [tsx, program, path('single-bedroom'), '--at=1,1'], {
    encoding: 'utf8',
  });
  expect(good.stderr).toBe('');
  expect(good.status).toBe(0);
  expect(JSON.parse(good.stdout).points).toHaveLength(1);
  const bad = spawnSync(process.execPath, [tsx, program, path('single-bedroom'), '--shiny'], {
    encoding: 'utf8',
  });
  expect(bad).toMatchObject({ status: 2, stdout: '' });
  expect(bad.stderr.trim().split('\n')).toHaveLength(1);
}, 60_000);

describe('tables', () => {
  const file = path('terraced-house');
  const line = (out: string, start: string) => out.split('\n').find((one) => one.trim().startsWith(start))!;

  it('shares, 95 % and highest of a room stand with their intervals', () => {
    const utility = line(run([file, '--table']).out, 'Utility');
    expect(utility).toMatch(/\d \(0\.\d+–0\.\d+\) .*\d \(0\.\d+–0\.\d+\) .*\d+\u2009% \(\d+–\d+\)/);
  });

  it('what is open by more than a factor of ten is not known, and such rooms are not judged', () => {
    const { rooms } = answer([file, '--height', '50']);
    expect(rooms.map((room: { class: string | null }) => room.class)).toEqual(rooms.map(() => null));
    const study = line(run([file, '--height', '50', '--table']).out, 'Study');
    expect(study).toMatch(/not known .*not judged/);
    expect(study).not.toMatch(/0\.000/);
  });

  it('places show level and height; outside every room there is no number, as on the page', () => {
    const { out } = run([file, '--table', '--at', '1.2,1.1', '--at=-30,2']);
    expect(line(out, '1.20')).toMatch(/1\.10 +Ground floor +1\.00 +0\.\d/);
    expect(line(out, '−30.00')).toMatch(/— +— +Outside every room that is drawn\.$/);
  });

  it('a walk says where the target is met with its interval, and how sure the fall-off is', () => {
    const { home, assessment } = sample('terraced-house');
    const walk = Object.keys(home.walks)[0]!;
    const { out } = run([file, '--along', walk, '--table']);
    const [low, best, high] = assessment.profiles.find((one) => one.walk === walk)!.targetAt!;
    expect(out).toContain(
      `Target met ${best.toFixed(1)} m along the walk (${low.toFixed(1)}–${high!.toFixed(1)}).`,
    );
    expect(out).toMatch(/1\/r\^0\.\d \(± 0\.\d in the power\)/);
  });

  it('a round with the supply off says so, and no room gets a word', () => {
    const { home } = sample('single-bedroom');
    const first = Object.keys(home.rounds)[0]!;
    const off = { ...home, rounds: { [first]: { ...home.rounds[first]!, kind: 'supplyOff' as const } } };
    const files = { 'f.json': serialiseHome(off) };
    expect(answer(['f.json'], files).rooms[0].class).toBeNull();
    const { out } = run(['f.json', '--table', '--arrange'], files);
    expect(out).toContain('The house’s supply was off');
    expect(out).toContain('Choose the round as found');
    expect(out).not.toContain('typical of');
  });

  it('limits are judged by the highest of a room', () => {
    const { rooms } = answer([file, '--guideline', 'icnirp-2010']);
    for (const room of rooms) expect(room.class).toBe('within the reference level');
  });
});

it('fault: control characters in the names of a file reached the terminal', () => {
  const { home } = sample('single-bedroom');
  const [id, room] = Object.entries(home.rooms)[0]!;
  const name = 'Bed\u001b[2J\u009b2J';
  const files = {
    'f.json': serialiseHome({
      ...home,
      title: '\u001b]0;owned\u0007',
      rooms: { ...home.rooms, [id]: { ...room, name } },
    }),
    'bad.json': '{"format": "\u001b[2J"}',
  };
  for (const argv of [['f.json'], ['f.json', '--table'], ['bad.json']]) {
    const { out, errors } = run(argv, files);
    expect([out, ...errors].join('\n').replace(/\n/g, '')).not.toMatch(/\p{Cc}/u);
  }
  expect(answer(['f.json'], files).rooms[0].name).toBe(name);
});

describe('fault: the terminal and the page told the same arrangement otherwise', () => {
  const { home } = sample('single-bedroom');
  const told = (change: (piece: Piece) => Piece | null) => {
    const pieces = Object.values(home.pieces).flatMap((piece) => change(piece) ?? []);
    const file = serialiseHome({
      ...home,
      arrangements: {},
      pieces: Object.fromEntries(pieces.map((piece) => [piece.id, piece])),
    });
    const { out } = run(['f.json', '--table', '--arrange'], { 'f.json': file });
    return out.slice(out.indexOf('\nArrangement\n')).split('\n').slice(2);
  };

  it('says of what was tried what the page says', () => {
    const lines = told((piece) => piece);
    expect(lines[0]).toMatch(/^Daily dose from .*\)\.$/);
    expect(lines[1]).toBe(provenSentence({ proven: true, gap: 0 }, 'mean'));
  });

  it('where nothing may move, or nothing stands, says no more than that', () => {
    expect(told((piece) => ({ ...piece, locked: true })).slice(0, 2)).toEqual(['Nothing may move.', '']);
    expect(told(() => null).slice(0, 2)).toEqual(['No piece of furniture is on the plan.', '']);
  });

  it('what finds no place stays, with what would have to be given up or that nothing helps', () => {
    const lines = told((piece) => ({ ...piece, locked: false, size: [3.9, 3.9] }));
    expect(lines.join('\n')).not.toContain('lower');
    expect(lines.filter((line) => / stays\. /.test(line)).length).toBeGreaterThan(0);
    expect(lines).toContain(relaxationWords.nothingHelps);
    expect(lines).toContain(relaxationWords.never);
  });
});
