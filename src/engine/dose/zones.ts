import { toPlan, type Pose } from '../geometry/pose';
import type { Point, Ring } from '../geometry/point';

/** The floor one body takes, and the places that stand for it. */
export interface Zone {
  ring: Ring;
  /** Middles of equal rectangles that fill the zone. */
  cells: Point[];
}

export type ZoneSide = 'left' | 'right' | 'middle';

/** A zone in the piece's own axes, metres: [x0, x1] × [y0, y1]. */
interface ZoneBox {
  x0: number;
  x1: number;
  y0: number;
  y1: number;
}

// A body's width, and the square someone takes at a table: the project's choice.
const BODY = 0.6;

// Cells no longer than this: the field of a home varies little within a hand's breadth of 0.2 m unless an appliance
// stands in the bed.
const CELL = 0.2;

/**
 * Where a body is, in the piece's own axes (head or back at +y). A bed's or cot's `middle` is the middle 0.6 m of the
 * mattress over its whole length, `left` and `right` its halves, as someone lying face up has them (left is +x). At a
 * desk it is a square of 0.6 m before its foot side; on a seat, or anything else, the middle 0.6 m square of it.
 */
export function bodyOf(kind: string, size: readonly [number, number], side: ZoneSide): ZoneBox {
  const [w, l] = [size[0] / 2, size[1] / 2];
  const half = BODY / 2;
  if (kind === 'bed' || kind === 'cot') {
    const middle = Math.min(half, w);
    if (side === 'left') return { x0: 0, x1: w, y0: -l, y1: l };
    if (side === 'right') return { x0: -w, x1: 0, y0: -l, y1: l };
    return { x0: -middle, x1: middle, y0: -l, y1: l };
  }
  if (kind === 'desk') return { x0: -half, x1: half, y0: -l - BODY, y1: -l };
  return { x0: -half, x1: half, y0: -half, y1: half };
}

/** The zone of one side of a piece where it stands. */
export function zoneOf(kind: string, pose: Pose, size: readonly [number, number], side: ZoneSide): Zone {
  const { x0, x1, y0, y1 } = bodyOf(kind, size, side);
  const across = Math.max(1, Math.ceil((x1 - x0) / CELL - 1e-9));
  const along = Math.max(1, Math.ceil((y1 - y0) / CELL - 1e-9));
  const cells: Point[] = [];
  for (let j = 0; j < along; j++) {
    for (let i = 0; i < across; i++) {
      const x = x0 + ((i + 0.5) * (x1 - x0)) / across;
      const y = y0 + ((j + 0.5) * (y1 - y0)) / along;
      cells.push(toPlan(pose, [x, y]));
    }
  }
  return { ring: zoneRing(kind, pose, size, side), cells };
}

/** The floor of a zone without the places that stand for it. */
export function zoneRing(kind: string, pose: Pose, size: readonly [number, number], side: ZoneSide): Ring {
  const { x0, x1, y0, y1 } = bodyOf(kind, size, side);
  return [toPlan(pose, [x0, y0]), toPlan(pose, [x1, y0]), toPlan(pose, [x1, y1]), toPlan(pose, [x0, y1])];
}
