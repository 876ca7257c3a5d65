import { bounds, centroid } from '../geometry/polygon';
import { cellCentres, gridOver } from '../grid/grid';
import { onFloor } from '../judging/roomFloor';
import { REASONS, WIDEST } from '../mapping/support';
import { HALF_90 } from '../mapping/interval';
import { reachOn } from '../reachOn';
import type { AssessRoom } from '../assess';
import type { Field } from '../mapping/field';
import type { Point } from '../geometry/point';

/** A piece of floor that is to be mapped surer. */
export interface Cell {
  at: Point;
  /** m² */
  area: number;
  /** What a square metre of it counts. */
  counts: number;
  /** Not drawn for want of a reading near. */
  unread: boolean;
  /** Metres within which a reading would have it drawn. */
  reach: number;
}

const UNREAD: readonly (typeof REASONS)[number][] = ['far', 'few'];

/** Metres; and cells of a level: their covariances are the work. */
const CELL = 0.4;
const MOST = 800;

/**
 * What a square metre counts by the room's use: where people sleep twice where they spend the day, that twice where they pass
 * through; grounds hardly, or a garden would take every reading. The project's choice.
 */
const COUNTS: Record<string, number> = { sleeping: 2, living: 1, work: 1, grounds: 0.1 };
const PASSED = 0.5;

/** Floor that is not drawn is as unsure as floor whose interval is just too wide to be drawn: variance of ln B. */
const UNDRAWN = (Math.log(WIDEST) / (2 * HALF_90)) ** 2;

/** The floor of some rooms of one level as cells, each with how the map stands to it. */
export function cellsOn(
  all: readonly AssessRoom[],
  asked: readonly AssessRoom[],
  level: string,
  field: Field,
): Cell[] {
  const rooms = asked.filter((room) => room.level === level);
  const boxes = rooms.map(({ outline }) => bounds(outline));
  const whole = boxes.reduce((sum, { x0, x1, y0, y1 }) => sum + (x1 - x0) * (y1 - y0), 0);
  const step = Math.max(CELL, Math.sqrt(whole / MOST));
  const reachAt = reachOn({ rooms: [...all] }, level);
  const cells = rooms.flatMap((room, i) => {
    const { xs, ys } = cellCentres(gridOver(boxes[i], step));
    const inside = Array.from(xs, (x, c): Point => [x, ys[c]]).filter((p) => onFloor(room, p));
    return (inside.length > 0 ? inside : [centroid(room.outline)]).map((at) => ({
      at,
      area: step * step,
      counts: COUNTS[room.use] ?? PASSED,
      reach: reachAt(at),
    }));
  });
  const xs = cells.map(({ at }) => at[0]);
  const ys = cells.map(({ at }) => at[1]);
  const { reason } = field.support(
    xs,
    ys,
    cells.map(({ reach }) => reach),
  );
  return cells.map((cell, i) => ({ ...cell, unread: UNREAD.includes(REASONS[reason[i]]) }));
}

/** What a cell's doubt weighs while its variance of ln B is this. */
export const doubtOf = ({ area, counts }: Cell, variance: number, unread: boolean): number =>
  area * counts * (unread ? Math.max(variance, UNDRAWN) : variance);

/** Whether a reading at a place has an undrawn cell drawn, as far as nearness goes. */
export const reaches = ({ at: [x, y], reach }: Cell, [px, py]: Point): boolean =>
  Math.hypot(x - px, y - py) <= reach;
