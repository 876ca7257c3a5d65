import { describe, expect, test } from 'vitest';
import { bed, box, desk, door, room } from './homes';
import { fixture, rules, single } from './rulesOf';
import { RULE_DEFAULTS } from '../../../src/engine/arranging/ruleSettings';
import type { ArrangePiece } from '../../../src/engine/arranging/request';

describe('ways through a room', () => {
  const free = { left: 0, right: 0, foot: 0 };
  const chest = (at: readonly [number, number], size: readonly [number, number]): ArrangePiece =>
    bed({ id: 'chest', kind: 'other', at, size, uses: [], access: free });

  test('between two doors stays a way of 0.6 m, to the cell of 5 cm', () => {
    const openings = [door('r1', 0, 0.2, { swing: 'out' }), door('r1', 2, 0.2, { swing: 'out' })];
    const rooms = [room('r1', box(0, 0, 2, 4))];
    const across = (wide: number) => rules({ rooms, openings, pieces: [chest([wide / 2, 2], [wide, 0.5])] });
    expect(across(1.4)).toEqual([]);
    expect(across(1.5)).toEqual(['no-way']);
  });

  test('a way asked to be broader is no longer there', () => {
    const openings = [door('r1', 0, 0.2, { swing: 'out' }), door('r1', 2, 0.2, { swing: 'out' })];
    const home = { rooms: [room('r1', box(0, 0, 2, 4))], openings, pieces: [chest([0.65, 2], [1.3, 0.5])] };
    expect(rules(home)).toEqual([]);
    expect(rules({ ...home, rules: { ...RULE_DEFAULTS, path: 0.9 } })).toEqual(['no-way']);
  });

  test('doors that the empty room does not join need not be joined', () => {
    const fixtures = [fixture(box(0, 1.8, 4, 2.2))];
    const openings = [door('r1', 0, 0.2, { swing: 'out' }), door('r1', 2, 0.2, { swing: 'out' })];
    expect(rules({ fixtures, openings, pieces: [chest([3, 0.5], [1, 0.5])] })).toEqual([]);
  });

  test('every used side of a bed is come to, of the others too', () => {
    const openings = [door('r1', 0, 0.2, { swing: 'out' })];
    const rooms = [room('r1', box(0, 0, 2, 4))];
    const pieces = [chest([1.2, 1.6], [1.6, 0.3]), bed({ at: [0.45, 3] })];
    expect(rules({ rooms, openings, pieces })).toEqual(['no-way']);
    expect(rules({ rooms, openings, pieces: [pieces[1]] })).toEqual([]);
    expect(rules({ rooms, openings, pieces: [chest([0.6, 1.6], [1.2, 0.3]), pieces[1]] })).toEqual([]);
  });

  test('two pieces that shut a way together are each told', () => {
    const openings = [door('r1', 0, 0.2, { swing: 'out' }), door('r1', 2, 0.2, { swing: 'out' })];
    const rooms = [room('r1', box(0, 0, 3, 4))];
    const left = { ...chest([0.6, 2], [1.2, 0.5]), id: 'left' };
    const right = { ...chest([2.4, 2], [1.2, 0.5]), id: 'right' };
    const put = ({ id, level, at, angle }: ArrangePiece) => ({ id, level, at, angle });
    const home = { rooms, openings, pieces: [left, right] };
    expect(rules(home, {}, [put(left), put({ ...right, at: [2.4, 3.4] })])).toEqual([]);
    expect(rules(home, {}, [put(left), put({ ...right, at: [1.7, 2] })])).toContain('overlap');
    expect(rules({ ...home, pieces: [left, { ...right, size: [1.6, 0.5], at: [2.2, 2] }] })).toEqual([
      'no-way',
    ]);
  });

  test('what the others already take is not laid at this piece', () => {
    const openings = [door('r1', 0, 0.2, { swing: 'out' }), door('r1', 2, 0.2, { swing: 'out' })];
    const rooms = [room('r1', box(0, 0, 2, 4))];
    const pieces = [chest([0.3, 3.5], [0.6, 0.5]), { ...chest([0.9, 2], [1.8, 0.5]), id: 'wall' }];
    expect(rules({ rooms, openings, pieces })).toEqual([]);
  });
});

describe('a window to escape by', () => {
  const openings = [
    door('r1', 0, 0.2, { swing: 'out' }),
    { ...door('r1', 2, 0.4), id: 'w1', kind: 'window' as const, width: 1 },
  ];
  const rooms = [room('r1', box(0, 0, 1.8, 4))];
  const shelf = bed({
    id: 'shelf',
    kind: 'other',
    size: [1.8, 0.4],
    at: [0.9, 3],
    uses: [],
    access: { left: 0, right: 0, foot: 0 },
  });

  test('stays within reach in a room that is slept in', () => {
    expect(rules({ rooms, openings, pieces: [shelf] })).toEqual(['no-escape']);
    expect(rules({ rooms, openings, pieces: [{ ...shelf, size: [1, 0.4], at: [0.5, 3] }] })).toEqual([]);
  });

  test('is not asked for elsewhere, nor of a window too narrow to climb through', () => {
    const study = [room('r1', box(0, 0, 1.8, 4), 'work')];
    expect(rules({ rooms: study, openings, pieces: [shelf] })).toEqual([]);
    const slit = [openings[0], { ...openings[1], width: 0.4 }];
    expect(rules({ rooms, openings: slit, pieces: [shelf] })).toEqual([]);
  });

  test('one of two is enough', () => {
    const two = [...openings, { ...openings[1], id: 'w2', wall: 1, offset: 1 }];
    expect(rules({ rooms, openings: two, pieces: [shelf] })).toEqual([]);
  });

  test('cannot be switched off', () => {
    const none = {
      landing: 0.3,
      path: 0.5,
      wardrobe: 0,
      bedToRadiator: 0,
      headClearOfWindow: false,
      oneDouble: false,
      deskSideways: true,
    };
    expect(rules({ rooms, openings, rules: none, pieces: [shelf] })).toEqual(['no-escape']);
  });
});

describe('rules that a person sets', () => {
  const openings = [door('r1', 0, 1)];

  test('the landing', () => {
    const near = [desk({ at: [1.4, 0.75], angle: 0, access: { left: 0, right: 0, foot: 0 } })];
    expect(rules({ openings, pieces: near })).toContain('before-door');
    expect(rules({ openings, rules: { ...RULE_DEFAULTS, landing: 0.4 }, pieces: near })).not.toContain(
      'before-door',
    );
  });

  test('the wardrobe, the radiator, the window over the head, two beds for two: each can be switched off', () => {
    const off = {
      ...RULE_DEFAULTS,
      wardrobe: 0,
      bedToRadiator: 0,
      headClearOfWindow: false,
      oneDouble: false,
      deskSideways: true,
    };
    const radiator = [fixture(box(0, 2, 0.1, 3), { kind: 'radiator' })];
    expect(rules({ fixtures: radiator, rules: off, pieces: [single({ at: [0.6, 3] })] })).toEqual([]);
    const wardrobe = [fixture(box(3.4, 0, 4, 1.2), { kind: 'wardrobe', front: 3 })];
    const before = [bed({ at: [2.4, 1], angle: 180 })];
    expect(rules({ fixtures: wardrobe, rules: off, pieces: before })).toEqual([]);
    const window = [{ ...door('r1', 2, 0.4), kind: 'window' as const, width: 1.4 }];
    expect(rules({ openings: window, rules: off, pieces: [single({ at: [3, 3] })] })).toEqual([]);
    const two = [
      { who: 'A', side: 'left' as const, hours: 8 },
      { who: 'B', side: 'right' as const, hours: 8 },
    ];
    const access = { left: 0, right: 0, foot: 0 };
    const beds = [
      bed({ id: 'one', at: [0.7, 3], size: [1.4, 2], uses: two, access }),
      bed({ id: 'two', at: [3.3, 3], size: [1.4, 2], uses: two, access }),
    ];
    expect(rules({ rules: off, pieces: beds })).toEqual([]);
  });
});
