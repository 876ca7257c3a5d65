import { doubtOf, supports } from './ground';
import { isDrawn } from '../dose/isDrawn';
import { keptBy } from './plan';
import { roomAt } from './site';
import { zoneMeans, type ZoneMeans } from '../dose/zoneMeans';
import { zoneOf } from '../dose/zones';
import type { ArrangePiece, ArrangeRequest } from './request';
import type { FieldAt } from '../dose/fieldAt';
import type { FittedSurvey } from '../mapping/fitSurvey';
import type { Place } from './place';

/** What a map has to say of pieces and their places. */
export interface MapOver {
  means: ZoneMeans;
  /** Whether it speaks for every zone of a piece at a place: true where nobody uses it. */
  speaksFor(piece: ArrangePiece, place: Place): boolean;
}

/**
 * The map over some rooms. Within a room it speaks where the planner would put a piece; elsewhere, as outside the house, it is
 * asked at the zones themselves.
 */
export function mapOver(
  { rooms }: Pick<ArrangeRequest, 'rooms'>,
  fieldAt: FieldAt,
  fitted: FittedSurvey,
): MapOver {
  const doubtIn = keptBy((id) => {
    const { level, outline } = rooms.find((room) => room.id === id)!;
    return keptBy((height) => doubtOf(fieldAt(level, Number(height)), outline));
  });
  return {
    means: zoneMeans(fieldAt, fitted),
    speaksFor(piece, { level, at, angle }) {
      const room = roomAt({ rooms }, level, at);
      return piece.uses.every(({ side }) => {
        const zone = zoneOf(piece.kind, { at, angle }, piece.size, side);
        const said = room && supports(doubtIn(room.id)(String(piece.height)), zone);
        return said ?? isDrawn(fieldAt(level, piece.height), zone.cells);
      });
    },
  };
}
