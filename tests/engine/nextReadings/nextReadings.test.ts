import { describe, expect, it } from 'vitest';
import { contains, insideDistance } from '../../../src/engine/geometry/polygon';
import { chanceToTell } from '../../../src/engine/nextReadings/aims';
import { cellsOn } from '../../../src/engine/nextReadings/floor';
import { fieldOf } from '../../../src/engine/mapping/field';
import { fieldsOf } from '../../../src/engine/dose/fieldAt';
import { nextReadings } from '../../../src/engine/nextReadings/nextReadings';
import { random } from '../../../src/engine/algebra/random';
import { reading } from '../../support/readings';
import { siteOf } from '../../../src/engine/nextReadings/site';
import { spotsOn } from '../../../src/engine/nextReadings/spots';
import { zoneDose } from '../../../src/engine/dose/dose';
import { zoneOf } from '../../../src/engine/dose/zones';
import { asked, box, kriged, METER, readAt, room, scattered } from './surveyed';
import type { AssessPiece } from '../../../src/engine/assess';
import type { FittedSurvey } from '../../../src/engine/mapping/fitSurvey';
import type { NextReading, NextRequest } from '../../../src/engine/nextReadings/request';
import type { Point } from '../../../src/engine/geometry/point';
import type { SurveyReading } from '../../../src/engine/mapping/survey';

const HOME = [0, 0, 9, 6] as [number, number, number, number];
const ROOMS = [room('r1', box(0, 0, 4, 6)), room('r2', box(4, 0, 9, 6), { use: 'living' })];

/** Every narrowing of a room counts. */
const anyNarrowing = (id: string) => ({
  kind: 'room' as const,
  id,
  said: { middle: 0.1, low: 0.05, high: 0.2 },
  edges: null,
});

const bed = (id: string, at: Point): AssessPiece => ({
  id,
  level: 'l1',
  height: 0.6,
  uses: [{ who: 'A', hours: 8, zone: zoneOf('bed', { at, angle: 0 }, [1.4, 2], 'middle') }],
});

const readThere = (all: readonly NextReading[], value = 0.13): SurveyReading[] =>
  all.map(({ at, height }, i) => reading(500 + i, at, value, { height, meter: METER }));

/** Doubt of the floor of the map as these readings leave it: variance of ln B by area, and by what the rooms count. */
function doubtOf(fitted: FittedSurvey): number {
  const field = fieldOf(fitted, 'l1', 1);
  const cells = cellsOn(ROOMS, ROOMS, 'l1', field);
  const { variance } = field.predict(
    cells.map(({ at }) => at[0]),
    cells.map(({ at }) => at[1]),
    { variance: true },
  );
  return cells.reduce((sum, { area, counts }, i) => sum + area * counts * variance![i], 0);
}

describe('the next readings', () => {
  it('leave less doubt of the map, after a refit, than as many readings anywhere, and give the same list each time', () => {
    for (const seed of [1, 2, 3]) {
      const before = readAt(scattered(14, HOME, seed), seed);
      const request = asked(kriged(before), ROOMS, { aims: ['r1', 'r2'].map(anyNarrowing), count: 4 });
      const { readings } = nextReadings(request);
      expect(readings.length, `seed ${seed}`).toBeGreaterThan(1);
      expect(nextReadings(request).readings).toEqual(readings);
      const placed = doubtOf(kriged([...before, ...readThere(readings)]));
      const chance = random(seed);
      const spots = spotsOn(request, 'l1');
      for (let trial = 0; trial < 12; trial++) {
        const anywhere = readings.map((one) => ({ ...one, at: spots[chance.below(spots.length)] }));
        expect(placed, `seed ${seed}`).toBeLessThan(doubtOf(kriged([...before, ...readThere(anywhere)])));
      }
    }
  });

  // Of functions whose gains fall, greedy reaches 1 − 1/e of the best set (Nemhauser, Wolsey & Fisher 1978).
  it('take from the doubt of the floor nearly what the best pair of places takes', () => {
    const fitted = kriged(readAt(scattered(8, HOME, 9), 9));
    const request = asked(fitted, [room('r1', box(0, 0, 4, 6))]);
    const site = () => siteOf(request, 'l1', [], fieldsOf(fitted));
    const gainOf = (chosen: number[]) => {
      const one = site();
      return chosen.reduce((sum, spot) => {
        const gain = one.gain(spot)!;
        one.read(spot);
        return sum + gain;
      }, 0);
    };
    const every = site()
      .spots.map((_, i) => i)
      .filter((i) => i % 5 === 0);
    const largest = (values: number[]) => values.indexOf(Math.max(...values));
    const first = every[largest(every.map((i) => gainOf([i])))];
    const greedy = Math.max(...every.map((i) => gainOf([first, i])));
    const best = Math.max(...every.flatMap((i) => every.filter((j) => j > i).map((j) => gainOf([i, j]))));
    expect(greedy).toBeGreaterThan((1 - 1 / Math.E) * best);
    expect(greedy).toBeLessThanOrEqual(best * (1 + 1e-9));
  });

  it('move and turn with the plan', () => {
    const before = readAt(scattered(12, HOME, 11), 11);
    const list = (onto: (p: Point) => Point) =>
      nextReadings(
        asked(
          kriged(before.map((one) => ({ ...one, at: onto(one.at) }))),
          ROOMS.map((one) => ({ ...one, outline: one.outline.map(onto) })),
          { aims: ['r1', 'r2'].map(anyNarrowing) },
        ),
      ).readings.map(({ at }) => at);
    const here = list((p) => p);
    expect(here.length).toBeGreaterThan(2);
    for (const onto of [([x, y]: Point): Point => [x + 40, y - 12], ([x, y]: Point): Point => [-y, x]])
      list(onto).forEach((at, i) => {
        expect(at[0]).toBeCloseTo(onto(here[i])[0], 9);
        expect(at[1]).toBeCloseTo(onto(here[i])[1], 9);
      });
  });

  it('narrow a bed as a refit finds it narrowed', () => {
    const before = readAt(scattered(14, HOME, 21), 21);
    const piece = bed('p1', [2, 2]);
    const dose = (fitted: FittedSurvey) => zoneDose(fieldOf(fitted, 'l1', 0.6), piece.uses[0].zone, 1);
    const now = dose(kriged(before));
    const { readings } = nextReadings(
      asked(kriged(before), ROOMS, {
        height: 0.6,
        floor: [],
        aims: [{ kind: 'piece', id: 'p1', said: { middle: now.mean, low: now.low, high: now.high }, piece }],
      }),
    );
    expect(readings.length).toBeGreaterThan(1);
    readings.forEach(({ effect }, i) => {
      if (effect?.kind !== 'piece') throw new Error('a bed was asked');
      const width = ([low, high]: [number, number]) => Math.log(high / low);
      // Were each to show what the map expects.
      const read = readings.slice(0, i + 1).map(({ at }, k) => {
        const { mean } = fieldOf(kriged(before), 'l1', 0.6).predict([at[0]], [at[1]], { variance: false });
        return reading(500 + k, at, Math.exp(mean[0]), { height: 0.6, meter: METER });
      });
      const { low, high } = dose(kriged([...before, ...read]));
      expect(width(effect.after) / width([low, high])).toBeGreaterThan(0.95);
      expect(width(effect.after) / width([low, high])).toBeLessThan(1.05);
      expect(width(effect.after)).toBeLessThan(0.9 * width(effect.before));
    });
  });

  it('go where floor is hatched for want of a reading, though the model is sure of it', () => {
    const smooth = { ...kriged(readAt(scattered(12, [0, 0, 4, 6], 31), 31)) };
    const fitted = { ...smooth, variogram: { ...smooth.variogram, sill: 0.02, nugget: 0, range: 30 } };
    const rooms = [room('r1', box(0, 0, 4, 6)), room('r2', box(4, 0, 12, 6), { use: 'passage' })];
    const { readings, enough } = nextReadings(asked(fitted, rooms));
    expect(readings[0].at[0]).toBeGreaterThan(7);
    expect(readings[0].drawn).toBeGreaterThan(10);
    expect(enough).toBe(true);
  });

  it('are spread over a level that has none', () => {
    const rooms = [room('r1', box(0, 0, 4, 6)), room('r3', box(0, 0, 8, 6), { level: 'l2' })];
    const { readings } = nextReadings(asked(kriged(readAt(scattered(12, [0, 0, 4, 6], 41), 41)), rooms));
    const upstairs = readings.filter(({ level }) => level === 'l2').map(({ at }) => at[0]);
    expect(upstairs.length).toBeGreaterThan(1);
    expect(Math.max(...upstairs) - Math.min(...upstairs)).toBeGreaterThan(2);
  });
});

describe('enough', () => {
  const fitted = kriged(readAt(scattered(10, HOME, 51), 51));
  const said = { middle: 0.1, low: 0.05, high: 0.2 };
  const list = (rest: Partial<NextRequest>) => nextReadings(asked(fitted, ROOMS, { floor: [], ...rest }));

  it('is said of a room whose interval lies between two edges, and not where an edge lies in it', () => {
    const at = (edges: number[]) => list({ floor: ['r1'], aims: [{ ...anyNarrowing('r1'), edges }] });
    expect(at([0.04, 0.3])).toEqual({ readings: [], enough: true });
    expect(at([0.04, 0.19]).readings.length).toBeGreaterThan(0);
  });

  it('comes where what is planned has drawn the interval off the edge', () => {
    const { readings, enough } = list({ aims: [{ kind: 'room', id: 'r1', said, edges: [0.18] }], count: 20 });
    expect(enough).toBe(true);
    const last = readings.at(-1)!.effect;
    if (last?.kind !== 'room') throw new Error('a room was asked');
    expect(last.after[1]).toBeLessThan(0.18);
    expect(last.before[1]).toBeGreaterThan(0.18);
  });

  it('is said of two places once it is 95 % sure which is better', () => {
    const choice = (odds: number) =>
      list({
        height: 0.6,
        aims: [{ kind: 'choice', id: 'p1', odds, now: bed('p1', [2, 1.5]), then: bed('p1', [7, 4.5]) }],
      });
    expect(choice(0.96)).toEqual({ readings: [], enough: true });
    expect(choice(0.03)).toEqual({ readings: [], enough: true });
    const { readings } = choice(0.8);
    expect(readings.length).toBeGreaterThan(0);
    for (const { effect } of readings) {
      if (effect?.kind !== 'choice') throw new Error('a choice was asked');
      expect(effect.after).toBeGreaterThan(effect.before);
    }
  });

  it('is said of what is known as well as a reading would tell it', () => {
    const rough = { ...METER, percent: 200 };
    expect(list({ aims: [anyNarrowing('r1')], meter: rough })).toEqual({ readings: [], enough: true });
  });

  it('is not said while places left to read would still narrow it', () => {
    const { readings, enough } = list({ aims: [anyNarrowing('r1')], count: 1 });
    expect(readings).toHaveLength(1);
    expect(enough).toBe(false);
  });
});

describe('the chance to tell the better of two places', () => {
  it('is the odds of the one that seems better, before any reading', () => {
    expect(chanceToTell(0.8, 1)).toBeCloseTo(0.8, 3);
    expect(chanceToTell(0.1, 1)).toBeCloseTo(0.9, 3);
  });

  // Two normal deviates of correlation r have one sign with probability ½ + asin(r)/π (Sheppard 1899).
  it.each([0.9, 0.7, 0.3])('follows from their correlation where they seem alike: ratio %d', (ratio) => {
    expect(chanceToTell(0.5, ratio)).toBeCloseTo(0.5 + Math.asin(Math.sqrt(1 - ratio ** 2)) / Math.PI, 2);
  });

  it('rises with every reading, to certainty', () => {
    for (const odds of [0.04, 0.5, 0.7, 0.94]) {
      const chances = [1, 0.9, 0.7, 0.5, 0.2, 0].map((ratio) => chanceToTell(odds, ratio));
      chances.slice(1).forEach((chance, i) => expect(chance).toBeGreaterThan(chances[i]));
      expect(chances.at(-1)).toBeCloseTo(1, 6);
    }
  });
});

describe('places to stand', () => {
  const fitted = kriged(readAt(scattered(30, HOME, 61), 61));

  it('are 0.3 m off walls, readings and rooms drawn over the grounds, and in no fixture', () => {
    const wardrobe = { level: 'l1', outline: box(0, 0, 2, 0.6) };
    const house = box(0, 0, 4, 6);
    const rooms = [
      room('r1', house),
      room('r2', [
        [4, 0],
        [9, 0],
        [9, 3],
        [6, 3],
        [6, 6],
        [4, 6],
      ]),
      room('r9', box(-6, -6, 12, 10), { use: 'grounds', without: [house, box(4, 0, 9, 6)] }),
    ];
    const spots = spotsOn({ rooms, fixtures: [wardrobe], fitted, height: 1 }, 'l1');
    expect(spots.length).toBeGreaterThan(60);
    expect(spots.length).toBeLessThan(500);
    for (const p of spots) {
      const own = rooms.find((one) => contains(one.outline, p))!;
      expect(insideDistance(own.outline, p)).toBeGreaterThan(0.28);
      if (own.id === 'r9')
        for (const ring of own.without) expect(insideDistance(ring, p)).toBeLessThan(-0.28);
      expect(contains(wardrobe.outline, p)).toBe(false);
      for (const { x, y } of fitted.places) expect(Math.hypot(x - p[0], y - p[1])).toBeGreaterThan(0.299);
    }
  });

  it('are few enough to weigh in a house with a large garden', () => {
    const rooms = [room('r1', box(0, 0, 20, 20)), room('r9', box(20, -50, 120, 50), { use: 'grounds' })];
    expect(spotsOn({ rooms, fixtures: [], fitted, height: 1 }, 'l1').length).toBeLessThan(500);
  });

  it('are in the middle of a room too narrow to keep off its walls', () => {
    const rooms = [room('r1', box(20, 0, 20.5, 0.5))];
    expect(spotsOn({ rooms, fixtures: [], fitted, height: 1 }, 'l1')).toEqual([[20.25, 0.25]]);
  });
});
