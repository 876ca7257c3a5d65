import { bounds, centroid, contains } from '../geometry/polygon';
import { classOf, type GuidelineSet } from './guidelines';
import { HALF_90 } from '../mapping/interval';
import type { AssessRoom, LevelPicture } from '../assess';
import type { FieldAt } from '../dose/fieldAt';
import type { Point } from '../geometry/point';

/** The estimate over one room, µT. */
export interface RoomFigures {
  id: string;
  /** Mean over the floor. */
  mean: number;
  /** Half of the floor lies below it; with its 90 % interval. */
  median: number;
  low: number;
  high: number;
  p95: number;
  max: number;
  maxAt: Point;
  /** Share of the floor over the target, 0…1. */
  overTarget: number;
  /** Share of the floor where the map deserves to be shown, 0…1. */
  supported: number;
  /** The guideline's word for the median, or null where it does not speak of such rooms or the room is not judged. */
  class: string | null;
}

// The middle of a floor is known where half of it is: the project's choice.
const JUDGED_SHARE = 0.5;

/** A room is judged where at least half of its floor has a map that deserves to be shown. */
export const isJudged = ({ supported }: Pick<RoomFigures, 'supported'>): boolean => supported >= JUDGED_SHARE;

// The interval is that of an average, which a few dozen places tell as well as thousands.
const THINNED = 64;

/**
 * Figures of one room from the picture of its level. The interval of the median is exp(±1.645·sd) of the mean of ln B over a
 * thinned set of the room's cells, with their covariance: for a log-normal field the two are the same.
 */
export function roomFigures(
  fieldAt: FieldAt,
  picture: LevelPicture,
  room: AssessRoom,
  height: number,
  { target, guideline }: { target: number; guideline: GuidelineSet },
): RoomFigures {
  const field = fieldAt(room.level, height);
  const cells = cellsOf(picture, room);
  const values = cells.map(({ ln }) => Math.exp(ln));
  const ascending = Float64Array.from(values).sort();
  const highest = values.indexOf(ascending[ascending.length - 1]);
  const median = quantile(ascending, 0.5);

  const thinned = thin(cells);
  const { covariance } = field.covariance(
    thinned.map(({ at }) => at[0]),
    thinned.map(({ at }) => at[1]),
  );
  const variance = covariance.reduce((sum, value) => sum + value, 0) / thinned.length ** 2;
  const spread = Math.exp(HALF_90 * Math.sqrt(Math.max(0, variance)));
  const share = (counts: (i: number) => boolean) => values.filter((_, i) => counts(i)).length / values.length;

  const supported = share((i) => cells[i].doubt <= 1);
  return {
    id: room.id,
    mean: values.reduce((sum, value) => sum + value, 0) / values.length,
    median,
    low: median / spread,
    high: median * spread,
    p95: quantile(ascending, 0.95),
    max: values[highest],
    maxAt: cells[highest].at,
    overTarget: share((i) => values[i] > target),
    supported,
    class: isJudged({ supported }) ? classOf(guideline, room.use, median) : null,
  };
}

interface Cell {
  at: Point;
  ln: number;
  doubt: number;
  column: number;
  row: number;
}

/** Cells with their middle on the room's floor; of a room smaller than a cell, the one that holds its middle. */
function cellsOf({ grid, mean, doubt }: LevelPicture, { outline, without }: AssessRoom): Cell[] {
  const cell = (column: number, row: number): Cell => {
    const i = row * grid.nx + column;
    const at: Point = [grid.x0 + (column + 0.5) * grid.step, grid.y0 + (row + 0.5) * grid.step];
    return { at, ln: mean[i], doubt: doubt[i], column, row };
  };
  const place = (value: number, origin: number, count: number) =>
    Math.min(count - 1, Math.max(0, Math.floor((value - origin) / grid.step)));
  const columnOf = (x: number) => place(x, grid.x0, grid.nx);
  const rowOf = (y: number) => place(y, grid.y0, grid.ny);

  const box = bounds(outline);
  const cells: Cell[] = [];
  for (let row = rowOf(box.y0); row <= rowOf(box.y1); row++) {
    for (let column = columnOf(box.x0); column <= columnOf(box.x1); column++) {
      const candidate = cell(column, row);
      const taken = without.some((ring) => contains(ring, candidate.at));
      if (!taken && contains(outline, candidate.at)) cells.push(candidate);
    }
  }
  const [x, y] = centroid(outline);
  return cells.length > 0 ? cells : [cell(columnOf(x), rowOf(y))];
}

/** Every so many columns and rows, so that about `THINNED` cells stay, spread as the room is. */
function thin(cells: readonly Cell[]): Cell[] {
  const stride = Math.ceil(Math.sqrt(cells.length / THINNED));
  const column = Math.min(...cells.map((cell) => cell.column));
  const row = Math.min(...cells.map((cell) => cell.row));
  const kept = cells.filter(
    (cell) => (cell.column - column) % stride === 0 && (cell.row - row) % stride === 0,
  );
  return kept.length > 0 ? kept : cells.slice(0, THINNED);
}

/** Linear between order statistics (Hyndman & Fan 1996, definition 7). */
function quantile(ascending: Float64Array, share: number): number {
  const at = share * (ascending.length - 1);
  const low = Math.floor(at);
  const high = Math.min(low + 1, ascending.length - 1);
  return ascending[low] + (at - low) * (ascending[high] - ascending[low]);
}
