import { bounds, centroid, contains } from '../geometry/polygon';
import type { AssessRoom, LevelPicture } from '../assess';
import type { Point } from '../geometry/point';

interface Cell {
  at: Point;
  ln: number;
  doubt: number;
}

/** Cells with their middle on the room's floor; of a room smaller than a cell, the one that holds its middle. */
export function cellsOf({ grid, mean, doubt }: LevelPicture, room: AssessRoom): Cell[] {
  const cell = (column: number, row: number): Cell => {
    const i = row * grid.nx + column;
    const at: Point = [grid.x0 + (column + 0.5) * grid.step, grid.y0 + (row + 0.5) * grid.step];
    return { at, ln: mean[i], doubt: doubt[i] };
  };
  const place = (value: number, origin: number, count: number) =>
    Math.min(count - 1, Math.max(0, Math.floor((value - origin) / grid.step)));
  const columnOf = (x: number) => place(x, grid.x0, grid.nx);
  const rowOf = (y: number) => place(y, grid.y0, grid.ny);

  const box = bounds(room.outline);
  const cells: Cell[] = [];
  for (let row = rowOf(box.y0); row <= rowOf(box.y1); row++) {
    for (let column = columnOf(box.x0); column <= columnOf(box.x1); column++) {
      const candidate = cell(column, row);
      if (onFloor(room, candidate.at)) cells.push(candidate);
    }
  }
  const [x, y] = centroid(room.outline);
  return cells.length > 0 ? cells : [cell(columnOf(x), rowOf(y))];
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * About `count` places spread evenly over a floor of so many square metres: a Fibonacci lattice over its bounds, which has no two
 * places in one row or column, so that a share of the floor is told to one place in `count` whichever way the field falls.
 */
export function placesOn(room: AssessRoom, floor: number, count: number): Point[] {
  const { x0, y0, x1, y1 } = bounds(room.outline);
  const [width, depth] = [x1 - x0, y1 - y0];
  const whole = Math.max(1, Math.round((count * width * depth) / floor));
  const places: Point[] = [];
  for (let i = 0; i < whole; i++) {
    const at: Point = [x0 + ((i + 0.5) * width) / whole, y0 + (((i + 0.5) * GOLDEN) % 1) * depth];
    if (onFloor(room, at)) places.push(at);
  }
  return places.length > 0 ? places : [centroid(room.outline)];
}

/** Whether a place lies on the floor of a room, and not in one drawn over it. */
export const onFloor = ({ outline, without }: AssessRoom, at: Point): boolean =>
  contains(outline, at) && !without.some((ring) => contains(ring, at));
