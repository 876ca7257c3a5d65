import { bodyOf } from '../dose/zones';
import { toPlan } from '../geometry/pose';
import type { ArrangePiece } from './request';
import type { Place } from './place';
import type { Point } from '../geometry/point';
import type { Worth } from './compare';

/** A place for a reading that helps to decide. */
export interface ReadingPlace {
  /** The piece it is about, and whether it is where that stands or where it might. */
  piece: string;
  when: 'now' | 'then';
  level: string;
  at: Point;
  /** Above the level's floor, metres. */
  height: number;
}

type Judged = Pick<Worth, 'decision' | 'before' | 'after'> & Place & { id: string };

/**
 * Two places at the present bed and two at the proposed one, at the quarters of the body's length, for the piece that gains
 * most of those whose gain is likely and not sure. On known fields two readings each, taken before deciding, doubled the
 * moves that were right.
 */
export function placesToRead(
  pieces: readonly ArrangePiece[],
  placed: readonly Judged[],
  foundAt: (piece: ArrangePiece) => Place,
): ReadingPlace[] {
  const open = placed.filter(({ decision }) => decision === 'measure-both');
  const gain = ({ before, after }: Judged) => before!.dose - after!.dose;
  const [most] = open.toSorted((a, b) => gain(b) - gain(a));
  const piece = most && pieces.find(({ id }) => id === most.id);
  if (!piece) return [];
  const at = (place: Place, when: ReadingPlace['when']) =>
    quarters(piece).map((spot): ReadingPlace => ({
      piece: piece.id,
      when,
      level: place.level,
      at: toPlan(place, spot),
      height: piece.height,
    }));
  return [...at(foundAt(piece), 'now'), ...at(most, 'then')];
}

/** In the piece's own axes, a quarter and three quarters along the longer extent of those who use it. */
function quarters({ kind, size, uses }: ArrangePiece): Point[] {
  const bodies = uses.map(({ side }) => bodyOf(kind, size, side));
  const x0 = Math.min(...bodies.map((body) => body.x0));
  const x1 = Math.max(...bodies.map((body) => body.x1));
  const y0 = Math.min(...bodies.map((body) => body.y0));
  const y1 = Math.max(...bodies.map((body) => body.y1));
  return [0.25, 0.75].map((t): Point => [(x0 + x1) / 2, y0 + t * (y1 - y0)]);
}
