import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { main } from '../../src/cli/assess';
import { assessHome } from '../../src/engine/assessHome';
import { assessQuestion } from '../../src/home/questions/assessQuestion';
import { contains } from '../../src/engine/geometry/polygon';
import { nextQuestion } from '../../src/home/questions/nextQuestion';
import { nextReadings } from '../../src/engine/nextReadings/nextReadings';
import { parseHome } from '../../src/home/file/parse';
import { serialiseHome } from '../../src/home/file/serialise';
import type { Home } from '../../src/home/home';

const FLAT = fileURLToPath(new URL('../../samples/one-bedroom-flat.home.json', import.meta.url));

/** By kriging unless another method is asked for: sources take seconds to sample. */
const run = (...argv: string[]) => runOn(readFileSync(FLAT, 'utf8'), argv);

function runOn(text: string, argv: string[]) {
  const out: string[] = [];
  const errors: string[] = [];
  const method = argv.includes('--method') ? [] : ['--method', 'kriging'];
  const status = main([FLAT, ...method, ...argv], {
    read: () => text,
    out: (text) => out.push(text),
    error: (line) => errors.push(line),
  });
  expect([status, errors]).toEqual([0, []]);
  return out.join('');
}

const answerOf = (home: Home, ...argv: string[]) => JSON.parse(runOn(serialiseHome(home), argv));
const answer = (...argv: string[]) => JSON.parse(run(...argv));

const flat = () => {
  const parsed = parseHome(readFileSync(FLAT, 'utf8'));
  if (!parsed.ok) throw new Error('the sample does not parse');
  return parsed.home;
};

describe('the next readings', () => {
  it.each(['kriging', 'inverse-distance', 'source-kriging'])(
    'of the whole map, by %s, are those of the engine, in a room each',
    (method) => {
      const home = flat();
      const request = assessQuestion(home, { method: method as 'kriging' });
      const assessed = assessHome(request);
      if (!assessed.ok) throw new Error(assessed.problem.kind);
      const expected = nextReadings(nextQuestion(home, request, assessed.assessment, { kind: 'map' }, 4));
      const { next, enough } = answer('--method', method, '--next', '4');
      expect(expected.readings.length).toBeGreaterThan(1);
      expect(enough).toBe(expected.enough);
      expect(next.map(({ at }: { at: number[] }) => at)).toEqual(expected.readings.map(({ at }) => at));
      for (const { at, level, height, why } of next) {
        expect(Object.values(home.rooms).some(({ outline }) => contains(outline, at))).toBe(true);
        expect([level, height]).toEqual(['l1', 1]);
        expect(why).toMatch(/narrows (from \d\S*–\d\S* to \d\S*–\d\S* mG|by \d+\u2009%)/);
      }
    },
  );

  it('of a bed begin with the interval that stands beside it, and are read at its height', () => {
    const { next, pieces } = answer('--next', '2', '--for', 'p1');
    const bed = pieces.find(({ id }: { id: string }) => id === 'p1');
    const tenfold = (dose: number) => (10 * dose * bed.mean) / bed.dose;
    expect(next[0].height).toBe(0.6);
    expect(next[0].why).toContain(
      `from ${tenfold(bed.low).toPrecision(2)}–${tenfold(bed.high).toPrecision(2)} to`,
    );
  });

  it('of a room are enough where its word is certain, and say so', () => {
    const { next, enough, rooms } = answer('--next', '3', '--for', 'r1');
    const room = rooms.find(({ id }: { id: string }) => id === 'r1');
    expect(room.classLow).toBe(room.classHigh);
    expect([next, enough]).toEqual([[], true]);
    expect(run('--next', '3', '--for', 'r1', '--table')).toContain('Read next\nEnough: ');
  });

  it('of whether to move say how much likelier the better place is told, and none are needed where it is certain', () => {
    const home = flat();
    const few = Object.fromEntries(Object.entries(home.readings).filter((_, i) => i % 4 === 0));
    const { next } = answerOf({ ...home, readings: few }, '--next', '3', '--arrange');
    expect(next.length).toBeGreaterThan(0);
    for (const { why } of next) {
      const [, before, after] =
        /^the chance to tell whether .* is better there rises from (\d+)\u2009% to (\d+)\u2009%$/.exec(why)!;
      expect(Number(after)).toBeGreaterThan(Number(before));
    }
    const all = answer('--next', '3', '--arrange');
    expect(all.arrangement.odds).toBeGreaterThan(0.95);
    expect([all.next, all.enough]).toEqual([[], true]);
  });

  it('of the whole map by source sampling narrow what it leaves open', () => {
    const { next, method } = answer('--next', '2', '--method', 'source-sampling');
    expect(method).toBe('source-sampling');
    expect(next.length).toBeGreaterThan(0);
    for (const { why } of next) expect(why).toMatch(/ narrows /);
  }, 120_000);

  it('stand in the table with their rank, place and reason', () => {
    expect(run('--next', '2', '--for', 'p1', '--table')).toMatch(
      /Read next\n.*x, m.*\n-.*\n1 +\d\.\d\d +\d\.\d\d .* 0\.60 +Double bed narrows from .*\n2 /,
    );
  });
});
