import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BAND_EDGES } from '../../../src/engine/contours/thresholds';
import { GUIDELINES } from '../../../src/engine/judging/guidelines';
import { pushApart } from '../../../src/views/ruler/pushApart';
import {
  chosenValue,
  grownRange,
  nextEdge,
  rulerBands,
  rulerClasses,
  rulerNumerals,
  rulerScale,
  rulerTicks,
} from '../../../src/views/ruler/rulerScale';

const RANGE = [0.012, 4.2] as const;
const scale = rulerScale(RANGE, 72, 744);

describe('the scale', () => {
  test('is logarithmic: a decade is as long anywhere', () => {
    expect(scale.y(0.02) - scale.y(0.2)).toBeCloseTo(scale.y(0.2) - scale.y(2), 9);
    expect(scale.y(4.2)).toBe(72);
    expect(scale.y(0.012)).toBeCloseTo(744, 9);
  });

  test('goes there and back', () => {
    for (const value of [0.012, 0.05, 0.1, 1, 4.2]) expect(scale.value(scale.y(value))).toBeCloseTo(value, 9);
  });

  test('grows by whole decades where readings need it, and never shrinks', () => {
    expect(grownRange(RANGE, [0.1])).toEqual([0.012, 4.2]);
    expect(grownRange(RANGE, [0.1, 5])).toEqual([0.012, 42]);
    const [low, high] = grownRange(RANGE, [0.005, 60]);
    expect(low).toBeCloseTo(0.0012, 9);
    expect(high).toBeCloseTo(420, 9);
    expect(grownRange(RANGE, [0])).toEqual([0.012, 4.2]);
  });
});

describe('the edge of the slide rule', () => {
  test('has long ticks at 1, 2, 3 and 5 and hairs between 1 and 2', () => {
    const decade = rulerTicks({ low: 0.1, high: 0.99 });
    expect(decade.filter(({ size }) => size === 'long').map(({ value }) => value)).toEqual([
      0.1, 0.2, 0.3, 0.5,
    ]);
    expect(decade.filter(({ size }) => size === 'hair').map(({ value }) => value)).toEqual([
      0.12, 0.14, 0.16, 0.18,
    ]);
    expect(decade.filter(({ size }) => size === 'short').map(({ value }) => value)).toEqual([
      0.4, 0.6, 0.7, 0.8, 0.9,
    ]);
  });

  test('has numerals at the band edges, and beyond them where the range grew', () => {
    expect(rulerNumerals(scale)).toEqual([...BAND_EDGES]);
    expect(rulerNumerals({ low: 0.0012, high: 42 })).toEqual([0.002, 0.005, 0.01, ...BAND_EDGES, 5, 10, 20]);
  });

  test('bands follow one another without a gap, from −1 up', () => {
    const bands = rulerBands(scale);
    expect(bands.map(({ band }) => band)).toEqual([-1, 0, 1, 2, 3, 4, 5, 6, 7, 8]);
    bands.slice(1).forEach(({ from }, i) => expect(from).toBe(bands[i]!.to));
    expect([bands[0]!.from, bands.at(-1)!.to]).toEqual([0.012, 4.2]);
  });

  test('classes of a guideline span what the ruler shows', () => {
    const set = GUIDELINES.find(({ id }) => id === 'sbm-2015')!;
    expect(rulerClasses(set, scale).map(({ from, to }) => [from, to])).toEqual([
      [0.012, 0.02],
      [0.02, 0.1],
      [0.1, 0.5],
      [0.5, 4.2],
    ]);
  });
});

describe('the target', () => {
  test('steps from band edge to band edge and stops at the last', () => {
    expect(nextEdge(0.1, 1)).toBe(0.2);
    expect(nextEdge(0.1, -1)).toBe(0.05);
    expect(nextEdge(0.13, -1)).toBe(0.1);
    expect(nextEdge(2, 1)).toBe(2);
    expect(nextEdge(0.02, -1)).toBe(0.02);
  });

  test('has two significant figures', () => {
    expect(chosenValue(0.14321)).toBe(0.14);
    expect(chosenValue(0.0996)).toBe(0.1);
  });
});

describe('discs pushed apart', () => {
  const wanted = fc.array(fc.double({ min: 100, max: 700, noNaN: true }), { maxLength: 12 });

  test('stand at least so far apart, in their order, on the ruler', () => {
    fc.assert(
      fc.property(wanted, (places) => {
        const put = pushApart(places, 20, 81, 735);
        const order = places.map((_, i) => i).sort((a, b) => places[a]! - places[b]!);
        order.forEach((which, rank) => {
          expect(put[which]).toBeGreaterThanOrEqual(81 - 1e-9);
          expect(put[which]).toBeLessThanOrEqual(735 + 1e-9);
          if (rank > 0) expect(put[which]! - put[order[rank - 1]!]!).toBeGreaterThanOrEqual(20 - 1e-9);
        });
      }),
    );
  });

  test('stay where they belong when nothing is near', () => {
    expect(pushApart([300, 100, 200], 20, 0, 400)).toEqual([300, 100, 200]);
  });

  test('share the way between them', () => {
    expect(pushApart([200, 204], 20, 0, 400)).toEqual([192, 212]);
    expect(pushApart([200, 200, 200], 20, 0, 400)).toEqual([180, 200, 220]);
  });

  test('keep to the end of the ruler', () => {
    expect(pushApart([5, 6], 20, 10, 400)).toEqual([10, 30]);
    expect(pushApart([399, 400], 20, 10, 390)).toEqual([370, 390]);
  });
});
