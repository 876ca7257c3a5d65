import { describe, expect, test } from 'vitest';
import { cellCentres, gridOver } from '../../../src/engine/grid/grid';
import { choleskyWithJitter } from '../../../src/engine/algebra/cholesky';
import { fieldOf, type Field } from '../../../src/engine/mapping/field';
import { fitSurvey } from '../../../src/engine/mapping/fitSurvey';
import { gaussianField } from '../../support/gaussianField';
import { GUIDELINES } from '../../../src/engine/judging/guidelines';
import { reading, UNMARKED } from '../../support/readings';
import { quantile } from '../../../src/engine/judging/quantile';
import { random, type Random } from '../../../src/engine/algebra/random';
import { roomFigures } from '../../../src/engine/judging/rooms';
import type { LevelPicture } from '../../../src/engine/assess';
import type { Ring } from '../../../src/engine/geometry/point';

const TARGET = 0.1;
const ROOMS: Ring[] = [
  [
    [0, 0],
    [4, 0],
    [4, 3.5],
    [0, 3.5],
  ],
  [
    [4, 0],
    [6, 0],
    [6, 3.5],
    [4, 3.5],
  ],
  // An L of 16 m².
  [
    [0, 3.5],
    [6, 3.5],
    [6, 5.5],
    [2, 5.5],
    [2, 7.5],
    [0, 7.5],
  ],
];

/** A home read at about thirty places of a drawn field that rises towards one side. */
function surveyed(seed: number, method: 'kriging' | 'inverse-distance'): Field {
  const chance = random(seed);
  const xs: number[] = [];
  const ys: number[] = [];
  for (let x = 0.5; x < 6; x += 1.2)
    for (let y = 0.5; y < 7.5; y += 1.3) {
      xs.push(x + chance.between(-0.3, 0.3));
      ys.push(y + chance.between(-0.3, 0.3));
    }
  const ln = gaussianField(xs, ys, { model: 'exponential', nugget: 0.03, sill: 0.5, range: 3 }, chance);
  const readings = xs.map((x, i) => reading(i, [x, ys[i]], 0.12 * Math.exp(ln[i] - 0.2 * x)));
  const fit = fitSurvey({ readings, method, ...UNMARKED });
  if (!fit.ok) throw new Error(fit.problem.kind);
  return fieldOf(fit.fitted, 'l1', 1);
}

function pictureOf(field: Field): LevelPicture {
  const grid = gridOver({ x0: 0, y0: 0, x1: 6, y1: 7.5 }, 0.1, 0.1);
  const { xs, ys } = cellCentres(grid);
  const { mean, variance } = field.predict(xs, ys, { variance: true });
  const none = { doubt: new Float64Array(xs.length), reason: new Uint8Array(xs.length) };
  return { level: 'l1', grid, mean, variance, ...none, contours: [], unsupported: [] };
}

/** Independent draws of the field at every quarter of a metre of a floor: the middle of each, its 95th percentile, and its share over the target. */
function simulated(field: Field, inside: (x: number, y: number) => boolean, chance: Random, draws: number) {
  const xs: number[] = [];
  const ys: number[] = [];
  for (let x = 0.125; x < 6; x += 0.25)
    for (let y = 0.125; y < 7.5; y += 0.25)
      if (inside(x, y)) {
        xs.push(x);
        ys.push(y);
      }
  const m = xs.length;
  const [{ mean, covariance }] = field.draws({ xs, ys });
  const { lower } = choleskyWithJitter(covariance, m, 1)!;
  return Array.from({ length: draws }, () => {
    const z = xs.map(() => chance.normal());
    const floor = Float64Array.from(mean, (ln, i) => {
      let sum = ln;
      for (let j = 0; j <= i; j++) sum += lower[i * m + j] * z[j];
      return Math.exp(sum);
    }).sort();
    return {
      median: quantile(floor, 0.5),
      p95: quantile(floor, 0.95),
      over: floor.filter((value) => value > TARGET).length / m,
    };
  });
}

describe.each([
  [1, 'kriging'],
  [2, 'kriging'],
  [3, 'inverse-distance'],
] as const)('field of seed %i, %s', (seed, method) => {
  const field = surveyed(seed, method);
  const picture = pictureOf(field);
  const insides = [
    (x: number, y: number) => x < 4 && y < 3.5,
    (x: number, y: number) => x > 4 && y < 3.5,
    (x: number, y: number) => y > 3.5 && (y < 5.5 || x < 2),
  ];

  test.each([0, 1, 2])('intervals of room %i hold nine of ten draws of the field', (index) => {
    const room = { id: 'r1', level: 'l1', use: 'sleeping', outline: ROOMS[index]!, without: [] };
    const guideline = GUIDELINES[0]!;
    const figures = roomFigures(() => field, picture, room, 1, {
      target: TARGET,
      guideline,
      supplyOff: false,
    });
    const draws = simulated(field, insides[index]!, random(100 + seed), 2000);
    const held = (counts: (draw: (typeof draws)[number]) => boolean) => draws.filter(counts).length / 2000;

    const median = held(({ median }) => figures.low <= median && median <= figures.high);
    expect(median).toBeGreaterThan(0.86);
    expect(median).toBeLessThan(0.94);
    const p95 = held(({ p95 }) => figures.p95Low <= p95 && p95 <= figures.p95High);
    // So near the end of the floor eighty places spread a little more than all of it: on the safe side.
    expect(p95).toBeGreaterThan(0.86);
    expect(p95).toBeLessThan(0.98);
    // A share counts places, so what lies at an end of its interval lies within a place of it.
    const step = 1 / 80;
    const share = held(
      ({ over }) => figures.overTargetLow - step <= over && over <= figures.overTargetHigh + step,
    );
    expect(share).toBeGreaterThan(0.86);
    // The middle of the draws is the figure, where the smooth map would be surer of it.
    const shares = Float64Array.from(draws, ({ over }) => over).sort();
    expect(Math.abs(figures.overTarget - quantile(shares, 0.5))).toBeLessThan(0.04);
  });
});
