import { describe, expect, test } from 'vitest';
import { bed, box, desk, door, room } from './homes';
import { fixture, rules, single } from './rulesOf';

describe('in a plain square bedroom', () => {
  test('a bed with its head to the wall and a free side breaks nothing', () => {
    expect(rules({ pieces: [single()] })).toEqual([]);
  });

  test('it may stand in a corner, with the strip on the other side', () => {
    expect(rules({ pieces: [single()] }, { at: [0.45, 3] })).toEqual([]);
    expect(rules({ pieces: [single()] }, { at: [3.55, 3] })).toEqual([]);
  });

  test('half outside', () => {
    expect(rules({ pieces: [single()] }, { at: [0.2, 3] })).toContain('outside-room');
  });

  test('in the garden', () => {
    expect(rules({ pieces: [single()] }, { at: [20, 3] })).toEqual(['unsupported', 'outside-room']);
  });

  test('4 mm into the wall is within tolerance, 6 mm is not', () => {
    expect(rules({ pieces: [single()] }, { at: [0.446, 3] })).toEqual([]);
    expect(rules({ pieces: [single()] }, { at: [0.444, 3] })).toContain('outside-room');
  });

  test('in the middle of the room its head is off the wall', () => {
    expect(rules({ pieces: [single()] }, { at: [2, 2] })).toEqual(['head-off-wall']);
  });

  test('with its foot to the wall its head is off the wall', () => {
    expect(rules({ pieces: [single()] }, { at: [2, 1] })).toEqual(['head-off-wall']);
  });

  test('a headboard of 8 cm is still at the wall', () => {
    expect(rules({ pieces: [single()] }, { at: [2, 2.92] })).toEqual([]);
  });

  test('a desk with its back to the room', () => {
    expect(rules({ pieces: [desk({ at: [2, 2] })] })).toEqual(['back-off-wall']);
  });

  test('a desk at the wall with room to sit', () => {
    expect(rules({ pieces: [desk({ at: [2, 3.7] })] })).toEqual([]);
  });
});

test('in a narrow chamber the strips do not fit', () => {
  const rooms = [room('chamber', box(0, 0, 1.5, 4))];
  expect(rules({ rooms, pieces: [bed({ at: [0.75, 3] })] })).toEqual(['access']);
});

test('in an L-shaped room the reflex corner counts', () => {
  const rooms = [
    room('l', [
      [0, 0],
      [4, 0],
      [4, 2],
      [2, 2],
      [2, 4],
      [0, 4],
    ]),
  ];
  expect(rules({ rooms, pieces: [bed({ at: [0.45, 3] })] })).toEqual([]);
  expect(rules({ rooms, pieces: [bed({ at: [0.8, 3] })] })).toEqual([]);
  expect(rules({ rooms, pieces: [bed({ at: [0.9, 3] })] })).toEqual(['access']);
  expect(rules({ rooms, pieces: [bed({ at: [1.55, 2.5] })] })).toContain('head-off-wall');
  expect(rules({ rooms, pieces: [bed({ at: [2.1, 3] })] })).toContain('outside-room');
});

test('at a slanted wall a bed may lean with the wall', () => {
  const outline = [
    [0, 0],
    [4, 0],
    [4, 3],
    [0, 4],
  ] as const;
  const angle = (Math.atan2(-1, 4) * 180) / Math.PI;
  const along = [4 / Math.hypot(4, 1), -1 / Math.hypot(4, 1)];
  const inward = [along[1], -along[0]];
  const at = [2 + inward[0], 3.5 + inward[1]] as const;
  const rooms = [room('attic', outline)];
  expect(rules({ rooms, pieces: [bed({ at, angle })] })).toEqual([]);
  expect(rules({ rooms, pieces: [bed({ at, angle: 0 })] })).not.toEqual([]);
});

describe('in a bedroom with a door', () => {
  // Wall 0 runs along the foot of the page: the door from 1.0 to 1.8, hinged at 1.0.
  const openings = [door('r1', 0, 1)];

  test('a bed on the landing', () => {
    const pieces = [bed({ at: [1.4, 1], angle: 180 })];
    expect(rules({ openings, pieces })).toEqual(['head-across-door', 'before-door', 'in-door-swing']);
  });

  test('a bed beside the landing keeps out of the sweep', () => {
    expect(rules({ openings, pieces: [bed({ at: [2.25, 1], angle: 180 })] })).toEqual([]);
  });

  test('the leaf sweeps a quarter disc, not a square', () => {
    // Corner of the footprint at (1.62, 0.62): 0.877 from the hinge, in the square and out of the disc of 0.8.
    const pieces = [desk({ at: [2.22, 0.92], access: { left: 0, right: 0, foot: 0 } })];
    expect(rules({ openings, pieces })).not.toContain('in-door-swing');
    // Corner at (1.5, 0.61): 0.789 from the hinge, and off the landing of 0.6 m.
    const nearer = [desk({ at: [2.1, 0.91], access: { left: 0, right: 0, foot: 0 } })];
    expect(rules({ openings, pieces: nearer })).toContain('in-door-swing');
    expect(rules({ openings, pieces: nearer })).not.toContain('before-door');
  });

  test('hinged on the other side the leaf sweeps the other corner', () => {
    const pieces = [desk({ at: [2.1, 0.91], access: { left: 0, right: 0, foot: 0 } })];
    expect(rules({ openings: [door('r1', 0, 1, { hinge: 'end' })], pieces })).toContain('in-door-swing');
    const other = [desk({ at: [0.65, 0.91], access: { left: 0, right: 0, foot: 0 } })];
    expect(rules({ openings, pieces: other })).toContain('in-door-swing');
    expect(rules({ openings: [door('r1', 0, 1, { hinge: 'end' })], pieces: other })).not.toContain(
      'in-door-swing',
    );
  });

  test('a door that opens outwards sweeps nothing here', () => {
    const pieces = [desk({ at: [2.1, 0.91], access: { left: 0, right: 0, foot: 0 } })];
    expect(rules({ openings: [door('r1', 0, 1, { swing: 'out' })], pieces })).not.toContain('in-door-swing');
  });

  test('strips may lie in the sweep', () => {
    const pieces = [bed({ at: [0.45, 1], angle: 180, access: { left: 0.75, right: 0.75, foot: 0 } })];
    expect(rules({ openings, pieces })).toEqual(['access']);
    const free = [bed({ at: [0.45, 1], angle: 180, access: { left: 0.75, right: 0, foot: 0 } })];
    expect(rules({ openings, pieces: free })).toEqual([]);
  });

  test('a head across a gap', () => {
    const gap = [door('r1', 2, 1, { kind: 'gap' })];
    expect(rules({ openings: gap, pieces: [single({ at: [2.5, 3] })] })).toEqual([
      'head-across-door',
      'before-door',
    ]);
  });
});

describe('a door drawn in the next room', () => {
  // A wall of 0.1 m between two rooms; the door belongs to the right room, on its left wall (wall 3, downwards).
  const rooms = [room('left', box(0, 0, 4, 4)), room('right', box(4.1, 0, 8, 4))];
  const through = (swing: 'in' | 'out') => [door('right', 3, 1.6, { swing })];

  test('its landing lies on this side too', () => {
    const pieces = [bed({ at: [3, 2], angle: 270 })];
    expect(rules({ rooms, openings: through('in'), pieces })).toEqual(['head-across-door', 'before-door']);
  });

  test('a leaf that opens outwards sweeps this side', () => {
    // The foot of the bed at the upper wall reaches to y = 2; the leaf sweeps up to 0.8 m into the room from y 1.6 to 2.4.
    const pieces = [bed({ at: [2.9, 3.1], access: { left: 0, right: 0, foot: 0 } })];
    expect(rules({ rooms, openings: through('out'), pieces })).toContain('in-door-swing');
    expect(rules({ rooms, openings: through('in'), pieces })).not.toContain('in-door-swing');
  });

  test('it says nothing to a room further off', () => {
    const far = [rooms[0], room('right', box(4.8, 0, 8, 4))];
    const pieces = [bed({ at: [3, 2], angle: 270 })];
    expect(rules({ rooms: far, openings: through('out'), pieces })).toEqual([]);
  });
});

describe('among fixtures', () => {
  test('on a chimney breast', () => {
    const fixtures = [fixture(box(1.4, 3.6, 2.6, 4), { kind: 'chimney' })];
    expect(rules({ fixtures, pieces: [single()] })).toContain('on-fixture');
  });

  test('a fixture in the strip', () => {
    const fixtures = [fixture(box(2.6, 2.8, 3, 3.2))];
    const pieces = [single({ at: [2, 3], access: { left: 0.75, right: 0.75, foot: 0 } })];
    expect(rules({ fixtures, pieces })).toEqual(['access']);
  });

  test('a bed keeps 0.1 m from a radiator where it can', () => {
    const fixtures = [fixture(box(0, 2, 0.1, 3), { kind: 'radiator' })];
    expect(rules({ fixtures, pieces: [single({ at: [0.6, 3] })] })).toEqual(['near-radiator']);
    expect(rules({ fixtures, pieces: [single({ at: [0.65, 3] })] })).toEqual([]);
  });

  test('a head under a window is avoided where it can be', () => {
    const openings = [{ ...door('r1', 2, 0.4), kind: 'window' as const, width: 1.4 }];
    expect(rules({ openings, pieces: [single({ at: [3, 3] })] })).toEqual(['head-under-window']);
    expect(rules({ openings, pieces: [single({ at: [1, 3] })] })).toEqual([]);
  });

  test('a wardrobe keeps its front free', () => {
    const fixtures = [fixture(box(3.4, 0, 4, 1.2), { kind: 'wardrobe', front: 3 })];
    const near = [bed({ at: [2.4, 1], angle: 180 })];
    expect(rules({ fixtures, pieces: near })).toEqual(['wardrobe-front']);
    expect(rules({ fixtures, pieces: [bed({ at: [2.24, 1], angle: 180 })] })).toEqual([]);
  });

  test('a fixture of the next room says nothing', () => {
    const fixtures = [fixture(box(4.1, 1, 5, 3), { kind: 'radiator' })];
    expect(rules({ fixtures, pieces: [single({ at: [3.55, 3] })] })).toEqual([]);
  });
});

describe('a cot in the nursery', () => {
  const cot = (at: readonly [number, number]) =>
    bed({ id: 'cot', kind: 'cot', size: [0.6, 1.2], at, access: { left: 0, right: 0.6, foot: 0 } });

  test('keeps 0.6 m from a radiator and from a window', () => {
    const fixtures = [fixture(box(0, 2, 0.1, 3), { kind: 'radiator' })];
    expect(rules({ fixtures, pieces: [cot([0.95, 3])] })).toEqual(['cot-near-heat']);
    expect(rules({ fixtures, pieces: [cot([1.01, 3])] })).toEqual([]);
    const openings = [{ ...door('r1', 2, 0), kind: 'window' as const, width: 1 }];
    expect(rules({ openings, pieces: [cot([2.2, 3.4])] })).toEqual(['cot-near-window']);
    expect(rules({ openings, pieces: [cot([2.05, 3.4])] })).toEqual([]);
  });

  test('keeps 0.3 m from the bed', () => {
    const free = { left: 0, right: 0, foot: 0 };
    const pieces = [{ ...cot([3, 3.4]), access: free }, single({ at: [2, 3], access: free })];
    expect(rules({ pieces }, { at: [3, 3.4] })).toEqual(['cot-near-piece']);
    expect(rules({ pieces }, { at: [3.06, 3.4] })).toEqual([]);
  });
});

describe('two pieces in one room', () => {
  const free = { left: 0, right: 0, foot: 0 };
  const pieces = [single(), desk({ at: [0.6, 0.3], angle: 180 })];

  test('one on the other', () => {
    expect(rules({ pieces }, {}, [{ id: 'desk', level: 'l1', at: [2.2, 3], angle: 0 }])).toEqual(['overlap']);
  });

  test("one in the other's strip, whichever is asked", () => {
    const beside = { id: 'desk', level: 'l1', at: [1.75, 1.6], angle: 0 } as const;
    expect(
      rules({ pieces: [single({ access: free }), pieces[1]] }, {}, [{ ...beside, at: [2, 1.6], angle: 180 }]),
    ).toEqual(['access-taken']);
    expect(
      rules({ pieces: [single({ access: { ...free, foot: 0.75 } }), desk({ access: free })] }, {}, [beside]),
    ).toEqual(['access-taken']);
  });

  test('strips may share floor', () => {
    const twoBeds = [
      bed({ id: 'one', at: [0.45, 3], access: { left: 0.75, right: 0, foot: 0 } }),
      bed({ id: 'two', at: [2.1, 3], access: { left: 0, right: 0.75, foot: 0 } }),
    ];
    expect(rules({ pieces: twoBeds })).toEqual([]);
    expect(rules({ pieces: twoBeds }, {}, [{ id: 'two', level: 'l1', at: [1.6, 3], angle: 0 }])).toEqual([
      'access-taken',
    ]);
  });

  test('two beds for two are two households', () => {
    const two = [
      { who: 'A', side: 'left' as const, hours: 8 },
      { who: 'B', side: 'right' as const, hours: 8 },
    ];
    const beds = [
      bed({ id: 'one', at: [0.7, 3], size: [1.4, 2], uses: two, access: free }),
      bed({ id: 'two', at: [3.3, 3], size: [1.4, 2], uses: two, access: free }),
    ];
    expect(rules({ pieces: beds })).toEqual(['two-doubles']);
    expect(rules({ pieces: [beds[0], { ...beds[1], uses: two.slice(0, 1) }] })).toEqual([]);
  });
});

test('a bed where the map does not reach', () => {
  const rooms = [room('r1', box(0, 0, 4, 4)), room('far', box(20, 0, 24, 4))];
  expect(rules({ rooms, pieces: [single()] }, { at: [22, 3] })).toEqual(['unsupported']);
});

test('a bed in a room it may not stand in', () => {
  const rooms = [room('r1', box(0, 0, 4, 4)), room('bath', box(4.1, 0, 8, 4), 'wet')];
  expect(rules({ rooms, pieces: [single()] }, { at: [6, 3] })).toEqual(['wrong-room']);
  expect(rules({ rooms, pieces: [single({ mayStandIn: ['bath'] })] }, { at: [6, 3] })).toEqual([]);
});
