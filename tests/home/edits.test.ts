import { describe, expect, it } from 'vitest';
import {
  addComparison,
  addFixture,
  addLevel,
  addMeter,
  addOpening,
  addPiece,
  addReading,
  addRecording,
  addRoom,
  addRound,
  addSource,
  addWalk,
} from '../../src/home/edits/add';
import { change } from '../../src/home/edits/change';
import { drawGrounds } from '../../src/home/edits/drawGrounds';
import { duplicate } from '../../src/home/edits/duplicate';
import { insertCorner } from '../../src/home/edits/insertCorner';
import { keepArrangement } from '../../src/home/edits/arrangements';
import { useArrangement } from '../../src/home/edits/takePlaces';
import { moveBy } from '../../src/home/edits/moveBy';
import { moveHandle } from '../../src/home/edits/moveHandle';
import { placePieces } from '../../src/home/edits/placePieces';
import { remove } from '../../src/home/edits/remove';
import { removeCorner } from '../../src/home/edits/removeCorner';
import { rotate } from '../../src/home/edits/rotate';
import { setReport } from '../../src/home/edits/setReport';
import { setSettings } from '../../src/home/edits/setSettings';
import { setNorth, setTitle } from '../../src/home/edits/setTitle';
import { whatGoesWith } from '../../src/home/edits/whatGoesWith';
import { newHome } from '../../src/home/newHome';
import { problemText } from '../../src/words/problems';
import type { Edit } from '../../src/home/edits/edit';
import type { Home, Point, Ref } from '../../src/home/home';

/** The home after some edits, none of which may be refused. */
function after(home: Home, ...edits: Edit[]): Home {
  const copy = structuredClone(home);
  for (const edit of edits) {
    const problem = edit.apply(copy);
    if (problem) throw new Error(problemText(problem));
  }
  return copy;
}

/** The sentence an edit is refused with. */
function refused(home: Home, edit: Edit): string {
  const problem = edit.apply(structuredClone(home));
  if (!problem) throw new Error(`${edit.name} was not refused`);
  return problemText(problem);
}

const OUTLINE: Point[] = [
  [0, 0],
  [4, 0],
  [4, 3],
  [0, 3],
];
const R1: Ref = { kind: 'room', id: 'r1' };
const P1: Ref = { kind: 'piece', id: 'p1' };

/** A bedroom with a door in its right wall and a window in its upper one, a bed and two readings. */
const bedroom = after(
  newHome(),
  addRoom({ name: 'Bedroom', use: 'sleeping', outline: OUTLINE }),
  addOpening({ room: 'r1', wall: 1, offset: 0.2, width: 0.8 }),
  addOpening({ room: 'r1', kind: 'window', wall: 2, offset: 1, width: 1.2 }),
  addPiece({ kind: 'bed', at: [1.2, 1.5], mayStandIn: ['r1'] }),
  addReading({ at: [1, 1], value: 0.14 }),
  addReading({ at: [3, 1], value: 0.3 }),
);

describe('adding', () => {
  it('numbers things, and fills in what is not said by the kind', () => {
    expect(bedroom.openings.o2).toMatchObject({ id: 'o2', swing: 'none', hinge: 'start' });
    expect(bedroom.pieces.p1).toMatchObject({
      level: 'l1',
      size: [1.4, 2],
      uses: [
        { who: 'person 1', side: 'left', hours: 8 },
        { who: 'person 2', side: 'right', hours: 8 },
      ],
    });
    expect(bedroom.readings.m2).toMatchObject({ height: 1, round: null, excluded: '' });
    expect(after(bedroom, addRound({ kind: 'supplyOff' }), addRound({})).rounds).toHaveProperty('c');
    expect(after(bedroom, addLevel({ name: 'Upper floor', elevation: 2.8 })).levels.l2!.elevation).toBe(2.8);
  });

  it('is refused in a sentence where the new thing breaks a rule', () => {
    expect(refused(bedroom, addOpening({ room: 'r1', wall: 1, width: 3.1 }))).toBe(
      'Opening o3: width is 3.1 m, wider than its wall of 3 m. Make the opening narrower, or put it in another wall.',
    );
    expect(
      refused(
        bedroom,
        addRoom({
          outline: [
            [0, 0],
            [1, 1],
            [1, 0],
            [0, 1],
          ],
        }),
      ),
    ).toContain('crosses itself');
    expect(refused(bedroom, addReading({ at: [1, 1], value: -1 }))).toBe(
      'Reading m3: value is -1. Write 0 or more.',
    );
    expect(refused(bedroom, addReading({ at: [1, 1], value: Number.NaN }))).toContain('Reading m3: value');
    expect(refused(bedroom, addReading({ at: [1, 1], value: 1, meter: 'g4' }))).toContain(
      'no meter of that id',
    );
    expect(refused(bedroom, addRoom({ outline: OUTLINE, colour: 'red' } as never))).toContain(
      'Room r2: colour',
    );
  });

  it('stops at the limits', () => {
    const full = structuredClone(bedroom);
    for (let i = 3; i <= 2000; i += 1) full.readings[`m${i}`] = { ...full.readings.m1!, id: `m${i}` };
    full.lastIds.m = 2000;
    expect(refused(full, addReading({ at: [0, 0], value: 1 }))).toContain(
      '2001 readings; a home holds at most 2000',
    );
  });
});

describe('changing', () => {
  it('takes any field but the id', () => {
    expect(after(bedroom, change(R1, { name: 'Front bedroom' })).rooms.r1!.name).toBe('Front bedroom');
    expect(
      after(bedroom, change({ collection: 'levels', id: 'l1' }, { name: 'Below' })).levels.l1!.name,
    ).toBe('Below');
    expect(refused(bedroom, change(R1, { id: 'r7' }))).toContain('Room r1: id stays as it is');
    expect(refused(bedroom, change(R1, { colour: 'red' }))).toContain(
      'Room r1: colour is a field this version does not know',
    );
    expect(refused(bedroom, change({ kind: 'room', id: 'r9' }, { name: 'x' }))).toBe(
      'There is no room r9 any more. Choose one from the list.',
    );
    expect(refused(bedroom, change(P1, { level: 'l4' }))).toContain('Piece p1: level is "l4"');
    expect(refused(bedroom, change({ kind: 'reading', id: 'm1' }, { min: 2, max: 1 }))).toContain(
      'the lowest, 2, is above the highest, 1',
    );
  });

  it('slides a door along when its wall gets shorter, and refuses a wall shorter than the door', () => {
    const low = (y: number) =>
      change(R1, { outline: OUTLINE.map(([x, corner]): Point => [x, corner === 3 ? y : corner]) });
    const far = after(bedroom, change({ kind: 'opening', id: 'o1' }, { offset: 2.2 }));
    expect(after(far, low(2)).openings.o1).toMatchObject({ offset: 1.2, width: 0.8 });
    expect(refused(far, low(0.7))).toBe(
      'Opening o1: width is 0.8 m, wider than its wall of 0.7 m. Make the opening narrower, or put it in another wall.',
    );
  });

  it('sets the title, north, the settings and the words of the report by the rules of the file', () => {
    const home = after(
      bedroom,
      setTitle('Larch Cottage'),
      setNorth(30),
      setSettings({ target: 0.2 }),
      setReport({ by: 'B' }),
    );
    expect([home.title, home.north, home.settings.target, home.report.by]).toEqual([
      'Larch Cottage',
      30,
      0.2,
      'B',
    ]);
    expect(refused(bedroom, setSettings({ target: 0 }))).toBe('settings.target is 0. Write more than 0.');
    expect(refused(bedroom, setSettings({ guideline: 'own-9' }))).toContain(
      'there is no guideline of that id',
    );
    expect(refused(bedroom, setSettings({ night: ['22', '07:00'] }))).toContain('settings.night[0] is "22"');
    expect(refused(bedroom, setNorth(Number.NaN))).toContain('north is');
    expect(refused(bedroom, setTitle('x'.repeat(2001)))).toContain('title is');
  });
});

describe('removing', () => {
  const survey = after(
    bedroom,
    addMeter({ name: 'First' }),
    addMeter({ name: 'Second' }),
    addRound({ kind: 'supplyOff' }),
    addWalk({
      path: [
        [0, 0],
        [9, 0],
      ],
    }),
    addReading({ at: [2, 2], value: 0.2, meter: 'g2', round: 'b', walk: 'w1' }),
    addComparison({ meter: 'g1', reference: 'g2' }),
    addRecording({ start: '2026-03-02T18:00:00Z', meter: 'g2' }),
    addSource({
      path: [
        [0, -5],
        [9, -5],
      ],
    }),
    addFixture({
      outline: [
        [0, 0],
        [1, 0],
        [1, 0.2],
        [0, 0.2],
      ],
    }),
    keepArrangement('As found'),
    setSettings({ base: 'b1' }),
  );
  const ids = (list: { id: string }[]) => list.map(({ id }) => id).sort();
  const goes = (...targets: Parameters<typeof whatGoesWith>[1]) => ids(whatGoesWith(survey, targets).goes);
  const changes = (...targets: Parameters<typeof whatGoesWith>[1]) =>
    ids(whatGoesWith(survey, targets).changes);

  it('a room takes its openings, and pieces forget it', () => {
    expect(goes(R1)).toEqual(['o1', 'o2']);
    expect(changes(R1)).toEqual(['p1', 'v1']);
    const home = after(survey, remove([R1]));
    expect(home.openings).toEqual({});
    expect(home.pieces.p1!.mayStandIn).toBeNull();
    expect(Object.keys(home.readings)).toHaveLength(3);
  });

  it('a round takes its readings; the first also those that name none', () => {
    expect(goes({ collection: 'rounds', id: 'b' })).toEqual(['m3']);
    expect(goes({ collection: 'rounds', id: 'a' })).toEqual(['m1', 'm2']);
    expect(Object.keys(after(survey, remove([{ collection: 'rounds', id: 'a' }])).readings)).toEqual(['m3']);
  });

  it('a meter takes its comparisons; its readings stay and count as taken with the first meter left', () => {
    expect(goes({ collection: 'meters', id: 'g2' })).toEqual(['c1']);
    expect(changes({ collection: 'meters', id: 'g2' })).toEqual(['b1', 'm3']);
    expect(changes({ collection: 'meters', id: 'g1' })).toEqual(['m1', 'm2']);
    const home = after(survey, remove([{ collection: 'meters', id: 'g2' }]));
    expect([home.readings.m3!.meter, home.recordings.b1!.meter]).toEqual([null, null]);
  });

  it('a level takes all that stands on it, to the openings of its rooms', () => {
    const home = after(survey, addLevel({ name: 'Upper floor' }));
    const level = { collection: 'levels' as const, id: 'l1' };
    expect(ids(whatGoesWith(home, [level]).goes)).toEqual([
      'b1',
      'f1',
      'm1',
      'm2',
      'm3',
      'o1',
      'o2',
      'p1',
      'r1',
      's1',
      'w1',
    ]);
    const left = after(home, remove([level]));
    expect(Object.keys(left.levels)).toEqual(['l2']);
    expect(left.settings.base).toBeNull();
    expect(left.arrangements.v1).toMatchObject({ pieces: [], sources: [], rooms: [] });
  });

  it('a walk leaves its readings, a piece leaves the arrangements', () => {
    expect(after(survey, remove([{ kind: 'walk', id: 'w1' }])).readings.m3!.walk).toBeNull();
    expect(changes(P1)).toEqual(['v1']);
    expect(after(survey, remove([P1])).arrangements.v1!.pieces).toEqual([]);
  });

  it('refuses the last level and the last round', () => {
    expect(refused(bedroom, remove([{ collection: 'levels', id: 'l1' }]))).toBe(
      'A home keeps at least one level, and this is the last. Add another first, or change this one.',
    );
    expect(refused(bedroom, remove([{ collection: 'rounds', id: 'a' }]))).toContain('at least one round');
    expect(refused(bedroom, remove([{ kind: 'room', id: 'r9' }]))).toContain('no room r9');
  });

  it('never gives an id out again', () => {
    const home = after(
      bedroom,
      remove([{ kind: 'reading', id: 'm2' }]),
      addReading({ at: [0, 0], value: 1 }),
    );
    expect(Object.keys(home.readings)).toEqual(['m1', 'm3']);
  });
});

describe('on the plan', () => {
  it('a room and its selected door move once', () => {
    const home = after(bedroom, moveBy([R1, { kind: 'opening', id: 'o1' }], [1, 0]));
    expect(home.rooms.r1!.outline[0]).toEqual([1, 0]);
    expect(home.openings.o1).toEqual(bedroom.openings.o1);
  });

  it('nothing moves beyond the end of the plan', () => {
    expect(refused(bedroom, moveBy([P1], [999.5, 0]))).toBe('Piece p1: at[0] is 1000.7. Write at most 1000.');
  });

  it('things turn together about their middle', () => {
    const home = after(bedroom, rotate([R1], 90));
    expect(home.rooms.r1!.outline).toEqual([
      [3.5, -0.5],
      [3.5, 3.5],
      [0.5, 3.5],
      [0.5, -0.5],
    ]);
    expect(after(bedroom, rotate([P1], 450)).pieces.p1).toMatchObject({ at: [1.2, 1.5], angle: 90 });
  });

  it('a corner pulled across the room is refused and says which walls would cross', () => {
    expect(refused(bedroom, moveHandle(R1, 'corner-0', [5, 2]))).toContain(
      'Room r1: outline crosses itself: wall',
    );
  });

  it('a copied room has copies of its openings; a reading is never copied', () => {
    const home = after(bedroom, duplicate([R1]));
    expect(home.rooms.r2!.outline[0]).toEqual([4, 0]);
    expect(Object.values(home.openings).map(({ id, room }) => [id, room])).toEqual([
      ['o1', 'r1'],
      ['o2', 'r1'],
      ['o3', 'r2'],
      ['o4', 'r2'],
    ]);
    expect(refused(bedroom, duplicate([{ kind: 'reading', id: 'm1' }]))).toContain(
      'Reading m1 is not copied',
    );
  });

  it('a proposal is taken in one step, and an arrangement brings the old places back', () => {
    const kept = after(bedroom, keepArrangement('As found'));
    const moved = after(kept, placePieces([{ id: 'p1', level: 'l1', at: [3, 1.5], angle: 180 }]));
    expect(moved.pieces.p1).toMatchObject({ at: [3, 1.5], angle: 180 });
    expect(after(moved, useArrangement('v1')).pieces.p1).toEqual(bedroom.pieces.p1);
    expect(refused(kept, placePieces([{ id: 'p7', level: 'l1', at: [3, 1.5], angle: 0 }]))).toContain(
      'no piece p7',
    );
    expect(refused(kept, useArrangement('v4'))).toContain('no arrangement v4');
  });

  it('grounds are drawn around every reading and room', () => {
    const home = after(bedroom, addReading({ at: [-6.3, 9], value: 0.4 }), drawGrounds('l1'));
    expect(home.rooms.r2).toMatchObject({
      use: 'grounds',
      outline: [
        [-9, -2],
        [6, -2],
        [6, 11],
        [-9, 11],
      ],
    });
    expect(refused(newHome(), drawGrounds('l1'))).toContain('nothing on this level to draw grounds around');
  });
});

describe('corners', () => {
  it('a new corner renumbers the walls behind it, and a door stays where it is on the plan', () => {
    const home = after(bedroom, insertCorner(R1, 0, [2, -0.5]));
    expect(home.rooms.r1!.outline).toHaveLength(5);
    expect(home.openings.o1).toMatchObject({ wall: 2, offset: 0.2 });
    expect(home.openings.o2).toMatchObject({ wall: 3, offset: 1 });
  });

  it('a door goes to the half of its wall where its middle is, and is kept between the corners', () => {
    const upper = after(bedroom, insertCorner(R1, 1, [4, 0.5])).openings.o1!;
    expect([upper.wall, upper.offset]).toEqual([2, 0]);
    const lower = after(bedroom, insertCorner(R1, 1, [4, 0.9])).openings.o1!;
    expect([lower.wall, lower.offset]).toEqual([1, 0.1]);
    expect(refused(bedroom, insertCorner(R1, 1, [4, 0.7]))).toContain('wider than its wall of 0.7 m');
  });

  it('without a corner two walls are one, and doors come to lie on it', () => {
    const five = after(bedroom, insertCorner(R1, 1, [4.5, 1.5]));
    const four = after(five, removeCorner(R1, 2));
    expect(four.rooms.r1!.outline).toEqual(bedroom.rooms.r1!.outline);
    expect(four.openings.o1!.wall).toBe(1);
    expect(four.openings.o2).toEqual(bedroom.openings.o2);
    // The first corner gone, the numbers of all walls fall by one, and the last takes the first in.
    const noFirst = after(after(bedroom, insertCorner(R1, 3, [-1, 1.5])), removeCorner(R1, 0));
    expect(noFirst.rooms.r1!.outline[0]).toEqual([4, 0]);
    expect(noFirst.openings.o1).toMatchObject({ wall: 0, offset: 0.2 });
    expect(noFirst.openings.o2).toMatchObject({ wall: 1, offset: 1 });
  });

  it('a wardrobe keeps its front', () => {
    const home = after(
      bedroom,
      addFixture({
        kind: 'wardrobe',
        front: 2,
        outline: [
          [0, 0],
          [2, 0],
          [2, 0.6],
          [0, 0.6],
        ],
      }),
    );
    const F1: Ref = { kind: 'fixture', id: 'f1' };
    expect(after(home, insertCorner(F1, 0, [1, -0.1])).fixtures.f1!.front).toBe(3);
    expect(after(home, removeCorner(F1, 0)).fixtures.f1!.front).toBe(1);
  });

  it('a triangle keeps its corners, and a bed has none to change', () => {
    const triangle = after(bedroom, removeCorner({ kind: 'room', id: 'r1' }, 0));
    expect(refused(triangle, removeCorner(R1, 0))).toContain('at least 3');
    expect(refused(bedroom, removeCorner(R1, 7))).toBe(
      'Room r1: outline has no corner 7. Choose one of its corners.',
    );
    expect(refused(bedroom, insertCorner(R1, 9, [0, 0]))).toContain('walls 0 to 3');
    expect(refused(bedroom, insertCorner(P1, 0, [0, 0]))).toContain('Piece p1 has no corners of its own');
  });
});
