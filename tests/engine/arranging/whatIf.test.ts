import { describe, expect, test } from 'vitest';
import { arrange } from '../../../src/engine/arranging/arrange';
import { bed, box, readingsOf, request, room } from './homes';
import { fieldOf } from '../../../src/engine/mapping/field';
import { fitSurvey } from '../../../src/engine/mapping/fitSurvey';
import { UNMARKED } from '../../support/readings';
import { whatIf } from '../../../src/engine/arranging/whatIf';
import type { MarkedSource } from '../../../src/engine/mapping/survey';
import type { Point } from '../../../src/engine/geometry/point';

const cupboard: MarkedSource = {
  id: 's1',
  kind: 'point',
  level: 'l1',
  path: [[0.5, 2]],
  height: 1,
  falloff: 2,
  origin: 'house',
};
const street: MarkedSource = {
  ...cupboard,
  id: 's2',
  kind: 'line',
  path: [
    [12, -20],
    [12, 20],
  ],
  falloff: 1,
  origin: 'outside',
};

const r = (x: number, y: number, [sx, sy]: Point) => Math.max(0.3, Math.hypot(x - sx, y - sy));
const own = (x: number, y: number, at: Point = [0.5, 2]) => 0.25 / r(x, y, at) ** 2;
const outside = (x: number) => 0.5 / (12 - x);
const both = (x: number, y: number) => Math.hypot(own(x, y), outside(x), 0.01);

const readings = readingsOf(both, [0, 0, 9, 4], 0.9);
const fit = fitSurvey({ ...UNMARKED, readings, sources: [cupboard, street], method: 'source-kriging' });
if (!fit.ok) throw new Error(fit.problem.kind);
const { fitted } = fit;
const at = (survey: typeof fitted, x: number, y: number) =>
  Math.exp(fieldOf(survey, 'l1', 1).predict([x], [y], { variance: false }).mean[0]);

describe('what if a marked source', () => {
  const places: Point[] = [
    [1.6, 2.3],
    [2.4, 1],
    [4.1, 3],
    [7.3, 1.2],
  ];

  test('is switched off: what the rest gives is left', () => {
    const off = whatIf(fitted, [{ id: 's1', scale: 0 }])!;
    for (const [x, y] of places)
      expect(at(off, x, y) / Math.hypot(outside(x), 0.01), `${x} ${y}`).toBeCloseTo(1, 1);
  });

  test('is halved', () => {
    const half = whatIf(fitted, [{ id: 's1', scale: 0.5 }])!;
    for (const [x, y] of places)
      expect(at(half, x, y) / Math.hypot(own(x, y) / 2, outside(x), 0.01), `${x} ${y}`).toBeCloseTo(1, 1);
  });

  test('is moved', () => {
    const to: Point = [6, 3.5];
    const moved = whatIf(fitted, [{ id: 's1', scale: 1, path: [to] }])!;
    for (const [x, y] of places)
      expect(at(moved, x, y) / Math.hypot(own(x, y, to), outside(x), 0.01), `${x} ${y}`).toBeCloseTo(1, 1);
  });

  test('stays as it is: the same map', () => {
    const same = whatIf(fitted, [{ id: 's1', scale: 1 }])!;
    for (const [x, y] of places) expect(at(same, x, y) / at(fitted, x, y)).toBeCloseTo(1, 9);
  });

  test('both off: what no source explains is left, a number still', () => {
    const off = whatIf(fitted, [
      { id: 's1', scale: 0 },
      { id: 's2', scale: 0 },
    ])!;
    for (const [x, y] of places) expect(at(off, x, y)).toBeLessThan(at(fitted, x, y) / 2);
    const { variance } = fieldOf(off, 'l1', 1).predict([2], [2], { variance: true });
    expect(variance![0]).toBeGreaterThan(0);
  });

  test('none that the survey knows: no answer', () => {
    expect(whatIf(fitted, [{ id: 's9', scale: 0 }])).toBeNull();
    expect(whatIf({ ...fitted, sources: null }, [{ id: 's1', scale: 0 }])).toBeNull();
  });

  test('an arrangement on it goes where the source was', () => {
    const home = (survey: typeof fitted) =>
      arrange(
        request({ fitted: survey, rooms: [room('r1', box(0, 0, 9, 4))], pieces: [bed({ at: [5, 3] })] }),
      );
    const now = home(fitted).pieces[0].at[0];
    const then = home(whatIf(fitted, [{ id: 's1', scale: 0 }])!);
    expect(now).toBeGreaterThan(2);
    expect(then.pieces[0].at[0]).toBeLessThan(now);
    expect(then.after).toBeLessThan(home(fitted).after);
  });
});
