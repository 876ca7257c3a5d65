import { describe, expect, test } from 'vitest';
import { area } from '../../src/engine/geometry/polygon';
import { assessHome } from '../../src/engine/assessHome';
import { bilinear, cellCentres } from '../../src/engine/grid/grid';
import { box, readingsOf } from './arranging/homes';
import { drawLevel } from '../../src/engine/drawLevel';
import { fieldsOf } from '../../src/engine/dose/fieldAt';
import { GUIDELINES } from '../../src/engine/judging/guidelines';
import { zoneOf } from '../../src/engine/dose/zones';
import type { AssessRequest, Assessment } from '../../src/engine/assess';
import { observe } from '../../src/engine/mapping/observations';
import { sampleSources } from '../../src/engine/mapping/sourceSampling/sampleSources';
import { samplingQuestion } from '../../src/engine/mapping/sourceSampling/question';
import { UNMARKED } from '../support/readings';

const street = (x: number) => 0.02 + 0.3 / (1 + x) ** 2;

const request = (more: Partial<AssessRequest> = {}): AssessRequest => ({
  survey: { ...UNMARKED, readings: readingsOf((x) => street(x), [0, 0, 8, 4], 1), method: 'auto' },
  levels: [{ id: 'l1', height: 1, outline: [box(0, 0, 8, 4)], step: 0.1 }],
  rooms: [
    { id: 'front', level: 'l1', use: 'sleeping', outline: box(0, 0, 4, 4), without: [] },
    { id: 'back', level: 'l1', use: 'living', outline: box(4, 0, 8, 4), without: [] },
  ],
  pieces: [
    {
      id: 'bed',
      level: 'l1',
      height: 1,
      uses: [{ who: 'A', hours: 8, zone: zoneOf('bed', { at: [6, 2], angle: 0 }, [0.9, 2], 'middle') }],
    },
  ],
  walks: [
    {
      id: 'w1',
      level: 'l1',
      path: [
        [0, 2],
        [8, 2],
      ],
      from: {
        path: [
          [-1, -10],
          [-1, 10],
        ],
        height: 1,
      },
    },
  ],
  target: 0.1,
  guideline: GUIDELINES.find(({ id }) => id === 'sbm-2015')!,
  supplyOff: false,
  ...more,
});

function assess(more: Partial<AssessRequest> = {}): Assessment {
  const reply = assessHome(request(more));
  if (!reply.ok) throw new Error(reply.problem.kind);
  return reply.assessment;
}

describe('a home by a street line, from 32 readings', () => {
  const assessment = assess();
  const [picture] = assessment.pictures;

  test('the picture follows the known field', () => {
    for (const x of [0.7, 2.1, 4.4, 7.2]) {
      const estimate = Math.exp(bilinear(picture.grid, picture.mean, [x, 2]));
      expect(Math.abs(Math.log(estimate / street(x)))).toBeLessThan(0.25);
    }
  });

  test('its contours hold the floor above each value', () => {
    // street(x) ≥ 0.1 where x ≤ √(0.3/0.08) − 1 = 0.936; the grid has one cell more on every side.
    const over = picture.contours.find(({ value }) => value === 0.1)!;
    const held = over.polygons.flat().reduce((sum, ring) => sum + area(ring), 0);
    expect(held).toBeGreaterThan(0.936 * 4 * 0.8);
    expect(held).toBeLessThan((0.936 + 0.1) * 4.2 * 1.2);
    const values = picture.contours.map(({ value }) => value);
    expect(values).toEqual([...values].sort((a, b) => a - b));
    expect(new Set(values).size).toBe(values.length);
  });

  test('every reading has its pull, in a room of the home', () => {
    expect(assessment.pulls).toHaveLength(assessment.evidence.rows.length);
    for (const pull of assessment.pulls) {
      expect(['front', 'back']).toContain(pull!.room);
      expect(pull!.change).toBeGreaterThan(0);
      expect(pull!.change).toBeLessThan(0.5);
    }
  });

  test('every cell is supported, and says so', () => {
    expect(Math.max(...picture.doubt)).toBeLessThanOrEqual(1);
    expect(picture.unsupported).toEqual([]);
  });

  test('rooms are ordered by the field they lie in', () => {
    const [front, back] = assessment.rooms;
    expect(front.median).toBeGreaterThan(back.median);
    // The nearest readings stand at x = 0.5, where the field is 0.153.
    expect(front.max).toBeGreaterThan(0.15);
    expect(front.maxAt[0]).toBeLessThan(0.3);
    expect(front.class).toBe('slight anomaly');
    expect(back.class).toBeNull();
    expect(front.low).toBeLessThan(front.median);
    expect(front.supported).toBe(1);
  });

  test('the bed has the mean field of its place, times the night', () => {
    const [bed] = assessment.pieces;
    expect(Math.abs(Math.log(bed.mean / street(6)))).toBeLessThan(0.2);
    expect(bed.dose.dose).toBeCloseTo(8 * bed.mean, 12);
    expect(bed.supported).toBe(true);
  });

  test('the profile meets the target where the field does', () => {
    const [profile] = assessment.profiles;
    expect(Math.abs(profile.targetAt![1] - 0.936)).toBeLessThan(0.3);
    expect(profile.falloff).toBeGreaterThan(1);
    expect(profile.falloff).toBeLessThan(2);
  });
});

test('far from any reading the floor is called unsupported, with the reason', () => {
  const { pictures } = assess({ levels: [{ id: 'l1', height: 1, outline: [box(0, 0, 20, 4)], step: 0.2 }] });
  const [{ grid, doubt, reason, unsupported }] = pictures;
  const far = doubt.findIndex((value) => value > 1);
  expect(grid.x0 + (far % grid.nx) * grid.step).toBeGreaterThan(8);
  expect(reason[far]).toBe(2);
  const held = unsupported.reduce((sum, ring) => sum + area(ring), 0);
  expect(held).toBeGreaterThan(30);
});

test('a reading reaches further on grounds than indoors', () => {
  const garden = { id: 'garden', level: 'l1', use: 'grounds', outline: box(8, 0, 16, 4), without: [] };
  const levels = [{ id: 'l1', height: 1, outline: [box(0, 0, 16, 4)], step: 0.2 }];
  const indoors = assess({ levels }).pictures[0];
  const outdoors = assess({ levels, rooms: [garden] }).pictures[0];
  const drawn = (doubt: Float64Array) => doubt.filter((value) => value <= 1).length;
  expect(drawn(outdoors.doubt)).toBeGreaterThan(drawn(indoors.doubt));
});

test('too few readings are a problem with a number, not an empty map', () => {
  const readings = readingsOf((x) => street(x), [0, 0, 8, 4], 1).slice(0, 2);
  expect(assessHome(request({ survey: { ...UNMARKED, readings, method: 'auto' } }))).toEqual({
    ok: false,
    problem: { kind: 'too-few-readings', have: 2, need: 3 },
  });
});

test('a level without floor has no picture and no rooms', () => {
  const { pictures, rooms } = assess({ levels: [{ id: 'l1', height: 1, outline: [], step: 0.1 }] });
  expect(pictures).toEqual([]);
  expect(rooms).toEqual([]);
});

test('progress moves within the fit and within a picture, which take seconds each where readings are many', () => {
  const shares: number[] = [];
  assessHome(request(), (share) => shares.push(share));
  // The fit, the pieces, one level, two rooms, one walk.
  const within = (step: number) => shares.filter((share) => share * 6 > step && share * 6 < step + 1).length;
  expect(within(0)).toBeGreaterThanOrEqual(3);
  expect(within(1)).toBeGreaterThanOrEqual(3);
});

test('a picture drawn in strips is the field to the bit', () => {
  const { fitted, pictures } = assess();
  const { xs, ys } = cellCentres(pictures[0].grid);
  const whole = fieldsOf(fitted)('l1', 1).predict(xs, ys, { variance: true });
  expect(pictures[0].mean).toEqual(whole.mean);
  expect(pictures[0].variance).toEqual(whole.variance);
});

test('progress rises to 1, whatever there is to assess', () => {
  for (const more of [{}, { walks: [], pieces: [] }, { levels: [] }]) {
    const shares: number[] = [];
    assessHome(request(more), (share) => shares.push(share));
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
  }
});

test('the same request gives the same answer, to the bit', () => {
  expect(JSON.stringify(assess())).toBe(JSON.stringify(assess()));
});

test('while a gesture is open: bands alone, from a quarter of the cells, like those of the whole picture', () => {
  const { fitted, pictures } = assess();
  const frame = drawLevel(fieldsOf(fitted), request().levels[0], { variance: false });
  expect(frame.variance).toBeNull();
  expect(frame.grid.step).toBe(0.2);
  expect(frame.unsupported).toEqual([]);
  // The two grids reach beyond the walls by one cell each: the line is compared by where it runs.
  const runsAt = ({ contours, grid }: typeof frame) =>
    grid.x0 +
    contours
      .find(({ value }) => value === 0.05)!
      .polygons.flat()
      .reduce((sum, ring) => sum + area(ring), 0) /
      (grid.ny * grid.step);
  expect(Math.abs(runsAt(frame) - runsAt(pictures[0]))).toBeLessThan(0.05);
});

describe('the pull of a reading', () => {
  const { readings } = request().survey;
  const alone = readings.filter(({ at: [x], id }) => x < 4 || id === readings.at(-1)!.id);
  const pullOf = (assessment: Assessment, id: string) =>
    assessment.pulls[assessment.evidence.rows.findIndex(({ ids }) => ids.includes(id))]!;

  test('is large where it alone speaks for a room, and counts most there', () => {
    const last = readings.at(-1)!;
    const wild = alone.map((one) => (one.id === last.id ? { ...one, value: 0.4 } : one));
    const assessment = assess({ survey: { ...request().survey, readings: wild, method: 'kriging' } });
    const pull = pullOf(assessment, last.id);
    expect(pull.room).toBe('back');
    expect(pull.roomChange).toBeLessThan(0);
    const others = assessment.pulls.flatMap((one) => (one && one !== pull ? [one.change] : []));
    expect(pull.change).toBeGreaterThan(Math.max(...others));
  });

  test('is that of the map that is there at once where sources were sampled', () => {
    const { survey } = request();
    const few = { ...survey, readings: readings.filter((_, i) => i % 3 === 0) };
    const quick = { chains: 2, burn: 40, keep: 10, samples: 10 };
    const question = samplingQuestion(few, { seed: 1, effort: quick });
    const samples = sampleSources(question)!;
    const without = observe(few.readings).map(({ ln }) => ({ predicted: ln + 0.1, variance: 0.01 }));
    const asked = { ...few, method: 'source-sampling' as const };
    const reply = assessHome(request({ survey: asked }), undefined, {
      question,
      samples,
      elevations: few.elevations,
      without,
    });
    if (!reply.ok) throw new Error(reply.problem.kind);
    const { fitted, pulls } = reply.assessment;
    expect(fitted.method).toBe('source-sampling');
    const instant = assess({ survey: { ...few, method: 'auto' } });
    expect(pulls.map((pull) => pull!.by)).toEqual(pulls.map(() => instant.fitted.method));
    expect(instant.pulls.map((pull) => pull!.by)).toEqual(instant.pulls.map(() => null));
  });

  test('is not told without a room to tell it of', () => {
    const { pulls, evidence } = assess({ rooms: [] });
    expect(pulls).toEqual(evidence.rows.map(() => null));
  });
});
