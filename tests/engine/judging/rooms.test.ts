import { expect, test } from 'vitest';
import { choleskyWithJitter } from '../../../src/engine/algebra/cholesky';
import { cellCentres, gridOver } from '../../../src/engine/grid/grid';
import { exponential, fakeField } from '../dose/fakeField';
import { GUIDELINES } from '../../../src/engine/judging/guidelines';
import { random } from '../../../src/engine/algebra/random';
import { isJudged } from '../../../src/engine/judging/judged';
import { placesOfEach, roomFigures, type Measure } from '../../../src/engine/judging/rooms';
import type { AssessRoom, LevelPicture } from '../../../src/engine/assess';
import type { Point, Ring } from '../../../src/engine/geometry/point';

const guideline = GUIDELINES.find(({ id }) => id === 'sbm-2015')!;
const square = (x0: number, y0: number, x1: number, y1: number): Ring => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];
const bedroom = (outline: Ring, without: Ring[] = []): AssessRoom => ({
  id: 'r1',
  level: 'l1',
  use: 'sleeping',
  outline,
  without,
});

function figures(
  room: AssessRoom,
  field: (p: Point) => number,
  {
    cov = () => 0,
    doubt = () => 0,
    measure = {},
  }: {
    cov?: (a: Point, b: Point) => number;
    doubt?: (p: Point) => number;
    measure?: Partial<Measure>;
  } = {},
) {
  const grid = gridOver({ x0: 0, y0: 0, x1: 8, y1: 6 }, 0.1, 0.1);
  const { xs, ys } = cellCentres(grid);
  const ln = (p: Point) => Math.log(field(p));
  const picture: LevelPicture = {
    level: 'l1',
    grid,
    mean: Float64Array.from(xs, (x, i) => ln([x, ys[i]])),
    variance: null,
    doubt: Float64Array.from(xs, (x, i) => doubt([x, ys[i]])),
    reason: new Uint8Array(xs.length),
    contours: [],
    unsupported: [],
  };
  return roomFigures(() => fakeField(ln, cov), picture, room, 1, {
    target: 0.1,
    guideline,
    supplyOff: false,
    ...measure,
  });
}

test('a constant field has one value everywhere', () => {
  const room = figures(bedroom(square(1, 1, 5, 4)), () => 0.06);
  for (const value of [room.mean, room.median, room.low, room.high, room.p95, room.max])
    expect(value).toBeCloseTo(0.06, 10);
  expect(room).toMatchObject({ overTarget: 0, supported: 1, class: 'slight anomaly' });
});

test('a field that rises evenly: mean and median in the middle, the rest by share of the floor', () => {
  // B = x/40 over x 1…5: from 0.025 to 0.125.
  const room = figures(bedroom(square(1, 1, 5, 4)), ([x]) => x / 40);
  expect(room.mean).toBeCloseTo(0.075, 4);
  expect(room.median).toBeCloseTo(0.075, 4);
  expect(room.p95).toBeCloseTo(0.12, 2);
  // The highest of the places drawn lies on the last hundredth of the floor.
  expect(room.max).toBeGreaterThan(4.95 / 40);
  expect(room.max).toBeLessThan(5 / 40);
  expect(room.maxAt[0]).toBeCloseTo(4.95, 8);
  expect(room.overTarget).toBeCloseTo(0.25, 8);
});

test('a slanted room counts the floor it has', () => {
  // The triangle x ≥ y of a 4 m square: a quarter of it lies left of x = 3 … over half of the width.
  const triangle: Ring = [
    [0, 0],
    [4, 0],
    [4, 4],
  ];
  expect(figures(bedroom(triangle), ([x]) => (x > 2 ? 0.2 : 0.05)).overTarget).toBeCloseTo(0.75, 1.5);
});

test('grounds leave out the rooms drawn over them', () => {
  const grounds = bedroom(square(0, 0, 8, 6), [square(0, 0, 6, 6)]);
  const room = figures(grounds, ([x]) => (x < 6 ? 1 : 0.03));
  expect(room.max).toBeCloseTo(0.03, 10);
});

test('a cupboard smaller than a cell has the value at its middle', () => {
  const room = figures(bedroom(square(2.01, 2.01, 2.03, 2.03)), ([x]) => x);
  expect(room.median).toBeCloseTo(2.02, 8);
});

test('support is a share of the floor', () => {
  const room = figures(bedroom(square(0, 0, 4, 4)), () => 0.1, { doubt: ([x]) => (x < 1 ? 1.5 : 1) });
  expect(room.supported).toBeCloseTo(0.75, 10);
});

test('the interval of the median holds 90 % of drawn fields', () => {
  const cov = exponential(0.3, 2);
  const outline = square(0, 0, 4, 3);
  const room = figures(bedroom(outline), () => 0.1, { cov });
  const cells: Point[] = [];
  for (let x = 0.125; x < 4; x += 0.25) for (let y = 0.125; y < 3; y += 0.25) cells.push([x, y]);
  const m = cells.length;
  const { lower } = choleskyWithJitter(
    Float64Array.from(cells.flatMap((a) => cells.map((b) => cov(a, b)))),
    m,
    1,
  )!;
  const draw = random(11);
  const draws = 2000;
  let held = 0;
  for (let k = 0; k < draws; k++) {
    const z = Array.from({ length: m }, () => draw.normal());
    const fields = cells
      .map((_, i) => {
        let ln = Math.log(0.1);
        for (let j = 0; j <= i; j++) ln += lower[i * m + j] * z[j];
        return Math.exp(ln);
      })
      .sort((a, b) => a - b);
    const median = fields[m / 2];
    if (median >= room.low && median <= room.high) held++;
  }
  expect(held / draws).toBeGreaterThan(0.86);
  expect(held / draws).toBeLessThan(0.94);
});

test('a room with less than half of its floor drawn is not judged', () => {
  const drawnTo = (edge: number) =>
    figures(bedroom(square(0, 0, 4, 4)), () => 0.3, { doubt: ([x]) => (x < edge ? 0 : 2) });
  const hatched = drawnTo(1.9);
  expect(hatched.class).toBeNull();
  expect(isJudged(hatched)).toBe(false);
  const drawn = drawnTo(2);
  expect(drawn.supported).toBeCloseTo(0.5, 8);
  expect(drawn.class).not.toBeNull();
  expect(isJudged(drawn)).toBe(true);
});

test('where the supply was off no room is given a word', () => {
  expect(figures(bedroom(square(1, 1, 5, 4)), () => 0.06).class).toBe('slight anomaly');
  const off = figures(bedroom(square(1, 1, 5, 4)), () => 0.06, { measure: { supplyOff: true } });
  expect([off.class, off.classLow, off.classHigh]).toEqual([null, null, null]);
  expect(off.median).toBeCloseTo(0.06, 10);
});

test('a limit is judged by the highest of a room, not by its middle', () => {
  const limit = GUIDELINES.find(({ id }) => id === 'icnirp-2010')!;
  const field = ([x]: Point) => (x > 4.5 ? 250 : 1);
  const room = figures(bedroom(square(1, 1, 5, 4)), field, { measure: { guideline: limit } });
  expect(room.median).toBeCloseTo(1, 8);
  expect(room.class).toBe('above the reference level');
});

test('a word at the edge of a class is open as far as the interval is', () => {
  const room = figures(bedroom(square(1, 1, 5, 4)), () => 0.09, { cov: exponential(0.1, 3) });
  expect([room.classLow, room.class, room.classHigh]).toEqual([
    'slight anomaly',
    'slight anomaly',
    'severe anomaly',
  ]);
});

test('the same estimate has the same figures', () => {
  const drawn = () =>
    figures(bedroom(square(0, 0, 4, 3)), ([x]) => 0.05 * (1 + x), { cov: exponential(0.3, 2) });
  expect(drawn()).toEqual(drawn());
});

test('a home of many rooms is drawn at fewer places of each', () => {
  expect([1, 11, 30, 200].map(placesOfEach)).toEqual([80, 80, 40, 24]);
});
