import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { containsEvenOdd } from '../../../src/engine/geometry/polygon';
import type { Point, Ring } from '../../../src/engine/geometry/point';
import { contourLines } from '../../../src/views/canvas/drawing/contourLines';
import { frameMarks, frameStep } from '../../../src/views/canvas/drawing/frameMarks';
import { HATCH, hatchLines } from '../../../src/views/canvas/drawing/hatchLines';
import { insideTest } from '../../../src/views/canvas/drawing/insideTest';
import { clippedSegment, tickedLine } from '../../../src/views/canvas/drawing/sourceLines';

describe('the metre frame', () => {
  test('keeps a mark between 18 and 70 px wherever one of its steps can', () => {
    for (let scale = 2; scale < 700; scale *= 1.07) {
      const steps = [0.1, 0.5, 1, 5, 10].map((step) => step * scale);
      const mark = frameStep(scale) * scale;
      if (steps.some((pixels) => pixels >= 18 && pixels <= 70)) {
        expect(mark).toBeGreaterThanOrEqual(18);
        expect(mark).toBeLessThanOrEqual(70);
      }
    }
  });

  test('fills every other metre of the plan, from its zero', () => {
    expect(frameMarks(200, -0.5, 50)).toEqual([
      { from: 25, to: 75, metres: 0 },
      { from: 125, to: 175, metres: 2 },
    ]);
  });

  test('cuts marks at both ends of an edge', () => {
    expect(frameMarks(100, 0.5, 50)).toEqual([
      { from: 0, to: 25, metres: 0 },
      { from: 75, to: 100, metres: 2 },
    ]);
  });

  test('runs up the page where metres do', () => {
    // Pixel 0 is 3 m up the page: the mark from 2 to 3 m comes first, that from 0 to 1 m two metres below it.
    expect(frameMarks(150, 3, 50, -1)).toEqual([
      { from: 100, to: 150, metres: 0 },
      { from: 0, to: 50, metres: 2 },
    ]);
  });
});

describe('the hatch', () => {
  const box = { x0: 10, y0: 20, x1: 210, y1: 120 };

  test('has its strokes at the pitch and the angle', () => {
    const lines = hatchLines(box, [0, 0]);
    const angle = (HATCH.angle * Math.PI) / 180;
    lines.forEach(([a, b], i) => {
      expect((a[1] - b[1]) / (b[0] - a[0])).toBeCloseTo(Math.tan(angle), 9);
      if (i > 0) expect((a[0] - lines[i - 1]![0][0]) * Math.sin(angle)).toBeCloseTo(HATCH.pitch, 9);
    });
    expect(lines.length).toBeGreaterThan(30);
  });

  test('lies on one lattice, so that two boxes match where they meet', () => {
    const right = hatchLines({ ...box, x0: 100 }, [3, 4]);
    const all = hatchLines(box, [3, 4]).map(([a]) => a[0]);
    for (const [a] of right) expect(all.some((x) => Math.abs(x - a[0]) < 1e-6)).toBe(true);
  });
});

test('the quick test of many places agrees with the plain one', () => {
  // Corners on whole millimetres and places between them: on a side itself either answer is right.
  const corner = fc.tuple(fc.integer({ min: -9000, max: 9000 }), fc.integer({ min: -9000, max: 9000 }));
  const place = corner.map(([x, y]): [number, number] => [x + 0.318, y + 0.271]);
  fc.assert(
    fc.property(
      fc.array(fc.array(corner, { minLength: 3, maxLength: 8 }), { maxLength: 3 }),
      place,
      (rings, p) => {
        expect(insideTest(rings as Ring[])(...p)).toBe(containsEvenOdd(rings as Ring[], p));
      },
    ),
  );
});

describe('lines of a contour', () => {
  const grid = { x0: 0, y0: 0, step: 1, nx: 4, ny: 3 };

  test('a ring inside the grid stays closed', () => {
    const ring: Ring = [
      [1, 1],
      [2, 1],
      [2, 2],
    ];
    expect(contourLines({ value: 0.1, polygons: [[ring]] }, grid)).toEqual([{ points: ring, closed: true }]);
  });

  test('what only follows the edge of the grid is not a contour', () => {
    const ring: Ring = [
      [0, 0],
      [2, 0],
      [2.5, 1.5],
      [2, 3],
      [0, 3],
    ];
    expect(contourLines({ value: 0.1, polygons: [[ring]] }, grid)).toEqual([
      {
        points: [
          [2, 0],
          [2.5, 1.5],
          [2, 3],
        ],
        closed: false,
      },
    ]);
  });

  test('an area that fills the grid has no line at all', () => {
    const ring: Ring = [
      [0, 0],
      [4, 0],
      [4, 3],
      [0, 3],
    ];
    expect(contourLines({ value: 0.02, polygons: [[ring]] }, grid)).toEqual([]);
  });
});

describe('line sources', () => {
  test('are cut to what is seen, however long they are', () => {
    const box = { x0: 0, y0: 0, x1: 100, y1: 50 };
    expect(clippedSegment([-1000, 20], [1000, 20], box)).toEqual([
      [0, 20],
      [100, 20],
    ]);
    expect(clippedSegment([-10, -10], [200, -10], box)).toBeNull();
    expect(clippedSegment([10, 10], [20, 20], box)).toEqual([
      [10, 10],
      [20, 20],
    ]);
  });

  test('carry their ticks across the dashes, square to the line', () => {
    const { dashes, ticks } = tickedLine([
      [0, 0],
      [60, 80],
    ]);
    expect(dashes.length).toBe(8);
    for (const [a, b] of ticks) {
      const along: Point = [0.6, 0.8];
      expect((b[0] - a[0]) * along[0] + (b[1] - a[1]) * along[1]).toBeCloseTo(0, 9);
    }
    expect(ticks.length).toBeGreaterThan(2);
  });
});
