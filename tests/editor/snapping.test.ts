import { describe, expect, it } from 'vitest';
import { snapMove } from '../../src/editor/snapping/snapMove';
import { snapPoint } from '../../src/editor/snapping/snapPoint';
import { snapTurn } from '../../src/editor/snapping/snapTurn';
import type { SnapScene } from '../../src/editor/snapping/candidates';
import type { Point } from '../../src/home/home';

const nothing: SnapScene = { points: [], lines: [] };
/** A wall that rises 3 in 4, from the origin to (4, 3). */
const slanted: SnapScene = {
  points: [
    [0, 0],
    [4, 3],
  ],
  lines: [
    [
      [0, 0],
      [4, 3],
    ],
  ],
};
const pull = 0.08;

describe('a point', () => {
  it('falls on the decimetre where nothing pulls, and anywhere with snapping off', () => {
    expect(snapPoint(nothing, [1.234, 5.678], { pull })).toEqual({
      at: [1.2, 5.7],
      reason: 'grid',
      guides: [],
    });
    expect(snapPoint(nothing, [1.234, 5.678], { pull: 0 })).toEqual({
      at: [1.234, 5.678],
      reason: 'free',
      guides: [],
    });
  });

  it('prefers a corner to its walls', () => {
    expect(snapPoint(slanted, [3.95, 2.99], { pull })).toMatchObject({ at: [4, 3], reason: 'corner' });
  });

  it('lies exactly on a slanted wall, not on the grid beside it', () => {
    const { at, reason } = snapPoint(slanted, [2.03, 1.47], { pull });
    expect(reason).toBe('wall');
    expect(Math.abs(3 * at[0] - 4 * at[1]) / 5).toBeLessThan(1e-4);
  });

  it('keeps to the grid along a wall of the page', () => {
    const wall: SnapScene = {
      points: [],
      lines: [
        [
          [0, 0.03],
          [9, 0.03],
        ],
      ],
    };
    expect(snapPoint(wall, [3.33, 0.06], { pull }).at).toEqual([3.3, 0.03]);
  });

  it('comes level with a corner far off, and shows it by a guide', () => {
    const scene: SnapScene = { points: [[7.03, 1]], lines: [] };
    const { at, reason, guides } = snapPoint(scene, [7.05, 6.12], { pull });
    expect(at).toEqual([7.03, 6.1]);
    expect(reason).toBe('aligned');
    expect(guides).toEqual([{ from: [7.03, 1], to: [7.03, 6.1] }]);
  });

  it('goes square to the corner before, and square to a slanted wall just drawn', () => {
    expect(snapPoint(nothing, [3.02, 1.05], { pull, from: [1, 1] })).toMatchObject({
      at: [3, 1],
      reason: 'square',
    });
    const { at, reason } = snapPoint(nothing, [4 - 1.2 + 0.01, 3 + 1.6 - 0.02], {
      pull,
      from: [4, 3],
      along: [[4, 3]],
    });
    expect(reason).toBe('square');
    // At right angles to (4, 3), in whole decimetres: 2 m along (−3, 4)/5.
    expect(at[0]).toBeCloseTo(4 - 1.2, 3);
    expect(at[1]).toBeCloseTo(3 + 1.6, 3);
  });

  it('on the way square from a corner it stops at a wall that is crossed', () => {
    const scene: SnapScene = {
      points: [],
      lines: [
        [
          [3.04, -1],
          [3.04, 5],
        ],
      ],
    };
    expect(snapPoint(scene, [3.0, 1.02], { pull, from: [1, 1] })).toMatchObject({
      at: [3.04, 1],
      reason: 'wall',
    });
  });
});

describe('a thing that moves', () => {
  const square: Point[] = [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ];

  it('puts a corner on a corner', () => {
    const { delta } = snapMove({ points: [[5, 5]], lines: [] }, square, [3.95, 4.03], pull);
    expect(delta[0]).toBeCloseTo(4, 9);
    expect(delta[1]).toBeCloseTo(4, 9);
  });

  it('slides into the corner between two walls', () => {
    const walls: SnapScene = {
      points: [],
      lines: [
        [
          [-1, 0.02],
          [9, 0.02],
        ],
        [
          [8.03, -1],
          [8.03, 9],
        ],
      ],
    };
    const { delta } = snapMove(walls, square, [7, 0.05], pull);
    expect(delta[0]).toBeCloseTo(7.03, 9);
    expect(delta[1]).toBeCloseTo(0.02, 9);
  });

  it('touches a slanted wall with its nearest corner', () => {
    const { delta } = snapMove(slanted, square, [1, 0.8], pull);
    const [x, y] = delta;
    expect(Math.abs(3 * x - 4 * y) / 5).toBeLessThan(1e-9);
    expect(Math.hypot(delta[0] - 1, delta[1] - 0.8)).toBeLessThanOrEqual(pull);
  });

  it('moves by what the hand moved with snapping off', () => {
    expect(snapMove(slanted, square, [0.123, 0.456], 0).delta).toEqual([0.123, 0.456]);
  });
});

describe('a thing that turns', () => {
  const handle = (degrees: number): Point => [
    Math.cos((degrees * Math.PI) / 180),
    Math.sin((degrees * Math.PI) / 180),
  ];
  const rests = (scene: SnapScene, degrees: number, reach = pull) => {
    const [x, y] = snapTurn(scene, [0, 0], handle(degrees), reach);
    return (Math.atan2(y, x) * 180) / Math.PI;
  };

  it('rests every 15°, longer at right angles', () => {
    expect(rests(nothing, 33)).toBeCloseTo(30, 9);
    expect(rests(nothing, 84)).toBeCloseTo(90, 9);
    expect(rests(nothing, 39)).toBeCloseTo(45, 9);
  });

  it('rests square to a slanted wall', () => {
    const wall = (Math.atan2(3, 4) * 180) / Math.PI;
    expect(rests(slanted, wall + 3)).toBeCloseTo(wall, 9);
    expect(rests(slanted, wall + 94)).toBeCloseTo(wall + 90, 9);
  });

  it('turns freely with snapping off', () => {
    expect(rests(slanted, 33.3, 0)).toBeCloseTo(33.3, 9);
  });
});
