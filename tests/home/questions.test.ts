import { describe, expect, it } from 'vitest';
import { assessHome } from '../../src/engine/assessHome';
import { area, containsEvenOdd } from '../../src/engine/geometry/polygon';
import { COMMON_METER } from '../../src/engine/survey/meter';
import { zoneOf } from '../../src/engine/dose/zones';
import { parseHome } from '../../src/home/file/parse';
import { arrangeQuestion } from '../../src/home/questions/arrangeQuestion';
import { assessQuestion } from '../../src/home/questions/assessQuestion';
import { guidelineOf } from '../../src/home/questions/guidelineOf';
import { levelOutline } from '../../src/home/questions/levelOutline';
import { nearestSource } from '../../src/home/questions/nearestSource';
import { roomAt } from '../../src/home/questions/roomAt';
import type { Home, Point } from '../../src/home/home';

const box = (x0: number, y0: number, x1: number, y1: number): Point[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

function home(lists: object): Home {
  const result = parseHome(JSON.stringify({ format: 'stillroom-home', version: 1, title: 'Test', ...lists }));
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.home;
}

const READINGS = [
  { id: 'm1', at: [1, 1], value: 0.1 },
  { id: 'm2', at: [2, 1], value: 0.2, round: 'a' },
  { id: 'm3', at: [3, 1], value: 0.3, round: 'b' },
  { id: 'm4', at: [1, 2], value: 0.4, excluded: 'phone in hand' },
  { id: 'm12', at: [2, 2], value: 0.5, taken: 'peak', min: 0.4, max: 0.6, height: 0.6 },
];
const ROUNDS = [{ id: 'a' }, { id: 'b', kind: 'supplyOff' }];

/** A house of two rooms in its garden, and a floor above. */
const house = home({
  levels: [
    { id: 'l1', elevation: 0.5 },
    { id: 'l2', elevation: 3.3 },
  ],
  rounds: ROUNDS,
  readings: READINGS,
  rooms: [
    { id: 'r1', name: 'Garden', use: 'grounds', outline: box(-10, -10, 15, 15) },
    { id: 'r2', name: 'Bedroom', use: 'sleeping', outline: box(0, 0, 4, 3) },
    { id: 'r3', name: 'Study', use: 'work', outline: box(4.1, 0, 7, 3) },
    { id: 'r4', level: 'l2', name: 'Attic', use: 'store', outline: box(0, 0, 7, 3) },
  ],
  pieces: [
    {
      id: 'p1',
      kind: 'bed',
      at: [2, 1.5],
      angle: 90,
      size: [1.6, 2],
      uses: [
        { who: 'A', side: 'left' },
        { who: 'B', side: 'right', hours: 7 },
      ],
    },
    { id: 'p2', kind: 'seat', at: [5, 1] },
  ],
  sources: [
    {
      id: 's1',
      kind: 'line',
      path: [
        [-30, -8],
        [40, -8],
      ],
      height: 7,
    },
    { id: 's2', kind: 'point', level: 'l2', path: [[7, 1]], height: 1 },
  ],
  walks: [
    {
      id: 'w1',
      path: [
        [1, -9],
        [1, 12],
      ],
    },
  ],
});

describe('marked sources', () => {
  const marked = home({
    levels: [
      { id: 'l1', elevation: 0.5 },
      { id: 'l2', elevation: 3.3 },
    ],
    rounds: ROUNDS,
    readings: READINGS,
    sources: [
      {
        id: 's2',
        kind: 'point',
        name: 'Fridge',
        level: 'l2',
        path: [[2, 2]],
        height: 1.2,
        falloff: 3,
        origin: 'house',
      },
      {
        id: 's10',
        kind: 'line',
        level: 'l1',
        path: box(-9, -9, 9, 9).slice(0, 2),
        height: 8,
        falloff: 'fit',
        origin: 'outside',
      },
    ],
  });

  it('go with the readings, where they are and as they fall off, with the height of each floor', () => {
    const { sources, elevations } = assessQuestion(marked).survey;
    expect(elevations).toEqual({ l1: 0.5, l2: 3.3 });
    expect(sources).toEqual([
      { id: 's2', kind: 'point', level: 'l2', path: [[2, 2]], height: 1.2, falloff: 3, origin: 'house' },
      {
        id: 's10',
        kind: 'line',
        level: 'l1',
        path: [
          [-9, -9],
          [9, -9],
        ],
        height: 8,
        falloff: 'fit',
        origin: 'outside',
      },
    ]);
  });

  it("with the supply off the house's own have nothing to give", () => {
    expect(assessQuestion(marked, { round: 'b' }).survey.sources.map(({ id }) => id)).toEqual(['s10']);
  });
});

describe('the question about the map', () => {
  it('asks with the used readings of the round, in the order of their numbers; one without a round belongs to the first', () => {
    const ids = (round?: string) =>
      assessQuestion(house, round ? { round } : {}).survey.readings.map(({ id }) => id);
    expect(ids()).toEqual(['m1', 'm2', 'm12']);
    expect(ids('a')).toEqual(['m1', 'm2', 'm12']);
    expect(ids('b')).toEqual(['m3']);
    expect(assessQuestion(house).survey.readings[2]).toEqual({
      id: 'm12',
      level: 'l1',
      at: [2, 2],
      height: 0.6,
      value: 0.5,
      meter: COMMON_METER,
      limit: null,
      min: 0.4,
      max: 0.6,
      peak: true,
    });
  });

  it('takes the first meter where none is named, and one of common accuracy, ±10 %, where the home has none', () => {
    const meters = [
      { id: 'g1', percent: 3 },
      { id: 'g2', percent: 5, gain: 0.9 },
    ];
    const named = READINGS.map((reading) => ({ ...reading, meter: reading.id === 'm2' ? 'g2' : null }));
    const asked = (lists: object) =>
      assessQuestion(home({ rounds: ROUNDS, ...lists })).survey.readings.map(({ meter }) => meter);
    expect(asked({ meters, readings: named }).map(({ percent, gain }) => [percent, gain])).toEqual([
      [3, 1],
      [5, 0.9],
      [3, 1],
    ]);
    expect(asked({ readings: READINGS })[0]).toMatchObject({ percent: 10, coverage: 'limits' });
  });

  it('is as the home has it, and as the caller has it where that is said', () => {
    const asHome = assessQuestion(house);
    expect([asHome.survey.method, asHome.target, asHome.guideline.id, asHome.levels[0]!.height]).toEqual([
      'auto',
      0.1,
      'common-practice',
      1,
    ]);
    const asked = assessQuestion(house, {
      method: 'kriging',
      target: 0.3,
      guideline: 'sbm-2015',
      height: 0.5,
      levels: ['l2'],
    });
    expect([asked.survey.method, asked.target, asked.guideline.id]).toEqual(['kriging', 0.3, 'sbm-2015']);
    expect(asked.levels.map(({ id, height }) => [id, height])).toEqual([['l2', 0.5]]);
    expect(asked.rooms.map(({ id }) => id)).toEqual(['r4']);
    expect([asked.pieces, asked.walks]).toEqual([[], []]);
    // Readings of the other level still speak: the model is of the whole home.
    expect(asked.survey.readings).toHaveLength(3);
  });

  it('leaves the rooms drawn over the grounds out of the grounds, on their level', () => {
    const { rooms } = assessQuestion(house);
    expect(rooms.find(({ id }) => id === 'r1')!.without).toEqual([box(0, 0, 4, 3), box(4.1, 0, 7, 3)]);
    expect(rooms.filter(({ id }) => id !== 'r1').flatMap(({ without }) => without)).toEqual([]);
  });

  it('draws a level on cells no more than a computer draws at once, and no level without a floor', () => {
    expect(assessQuestion(house).levels.map(({ id, step }) => [id, step])).toEqual([
      ['l1', 0.2],
      ['l2', 0.1],
    ]);
    expect(assessQuestion(home({ readings: READINGS, rounds: ROUNDS })).levels).toEqual([]);
  });

  it('asks for the dose of everybody at a piece, in the zone where they lie; not for a piece nobody uses', () => {
    const { pieces } = assessQuestion(house);
    expect(pieces).toHaveLength(1);
    const { size, angle, at } = house.pieces.p1!;
    expect(pieces[0]).toEqual({
      id: 'p1',
      level: 'l1',
      height: 0.6,
      uses: [
        { who: 'A', hours: 8, zone: zoneOf('bed', { at, angle }, size, 'left') },
        { who: 'B', hours: 7, zone: zoneOf('bed', { at, angle }, size, 'right') },
      ],
    });
  });

  it('measures a walk from the nearest marked source, at its height over the floor walked on', () => {
    expect(assessQuestion(house).walks[0]!.from).toEqual({
      path: [
        [-30, -8],
        [40, -8],
      ],
      height: 7,
    });
    const upstairs = {
      ...house,
      walks: {
        w1: {
          ...house.walks.w1!,
          path: [
            [6, 0],
            [6, 3],
          ] as Point[],
        },
      },
    };
    // The appliance stands 1 m above a floor that is 2.8 m higher.
    expect(nearestSource(upstairs, upstairs.walks.w1!)!.height).toBeCloseTo(3.8, 12);
    expect(nearestSource({ ...house, sources: {} }, house.walks.w1!)).toBeNull();
  });

  it('finds own guidelines and published ones', () => {
    const own = home({
      guidelines: [{ id: 'own-1', name: 'Ours', edges: [{ value: 0.05, word: 'noticed' }] }],
      settings: { guideline: 'own-1' },
    });
    expect(assessQuestion(own).guideline).toMatchObject({ name: 'Ours', standing: 'own' });
    expect(guidelineOf(own, 'icnirp-2010')!.edges.at(-1)!.value).toBe(200);
    expect(guidelineOf(own, 'constructor')).toBeNull();
  });

  it('a published value is that at the frequency of the home’s mains', () => {
    const at = (mains: 50 | 60) => guidelineOf(home({ settings: { mains } }), 'eu-1999')!.edges.at(-1)!.value;
    expect([at(50), at(60)]).toEqual([100, 83.3]);
  });

  it('says where the house’s supply was off', () => {
    const off = home({ rounds: [{ id: 'a' }, { id: 'b', kind: 'supplyOff' }] });
    expect(assessQuestion(off, { round: 'a' }).supplyOff).toBe(false);
    expect(assessQuestion(off, { round: 'b' }).supplyOff).toBe(true);
  });

  it('is plain data that the engine answers', () => {
    const question = structuredClone(assessQuestion(house));
    const answer = assessHome(question);
    expect(answer.ok && answer.assessment.rooms.map(({ id }) => id)).toEqual(['r1', 'r2', 'r3', 'r4']);
    const off = assessHome(assessQuestion(house, { round: 'b' }));
    expect(off).toEqual({ ok: false, problem: { kind: 'too-few-readings', have: 1, need: 3 } });
  });
});

describe('the question about furniture', () => {
  it('speaks of every room but the grounds, in the order of the ids', () => {
    const answer = assessHome(assessQuestion(house));
    if (!answer.ok) throw new Error('no map');
    const question = arrangeQuestion(house, answer.assessment.fitted, { cautious: true, aim: 'mean' });
    expect(question.rooms.map(({ id }) => id)).toEqual(['r2', 'r3', 'r4']);
    expect(question.pieces).toEqual([house.pieces.p1, house.pieces.p2]);
    expect(question.cautious).toBe(true);
    expect(question.fitted).toBe(answer.assessment.fitted);
  });
});

describe('the floor', () => {
  it('of a level is its rooms and grounds in one, gaps under half a metre closed', () => {
    const indoors = home({
      rooms: [{ outline: box(0, 0, 4, 3) }, { outline: box(4.1, 0, 7, 3) }, { outline: box(7.6, 0, 9, 3) }],
    });
    const floor = levelOutline(indoors, 'l1');
    expect(floor).toHaveLength(2);
    expect(containsEvenOdd(floor, [4.05, 1.5])).toBe(true);
    expect(containsEvenOdd(floor, [7.3, 1.5])).toBe(false);
    expect(floor.reduce((sum, ring) => sum + area(ring), 0)).toBeCloseTo(7 * 3 + 1.4 * 3, 6);
    expect(levelOutline(house, 'l1').map(area)).toEqual([625]);
  });

  it('of a place belongs to the room over the grounds, and to the smaller of two', () => {
    expect(roomAt(house, 'l1', [2, 1])!.id).toBe('r2');
    expect(roomAt(house, 'l1', [-5, 1])!.id).toBe('r1');
    expect(roomAt(house, 'l2', [2, 1])!.id).toBe('r4');
    expect(roomAt(house, 'l2', [-5, 1])).toBeNull();
    const alcove = home({ rooms: [{ outline: box(0, 0, 4, 3) }, { outline: box(1, 1, 2, 2) }] });
    expect(roomAt(alcove, 'l1', [1.5, 1.5])!.id).toBe('r2');
  });
});
