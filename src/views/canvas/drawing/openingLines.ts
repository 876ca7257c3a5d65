import { signedArea } from '../../../engine/geometry/polygon';
import { add, distance, lerp, scale, sub, type Point } from '../../../engine/geometry/point';
import type { Opening, Room } from '../../../home/home';
import type { Line } from './line';

const DOOR_LEAF = 1.8;
const DOOR_ARC = 0.6;
const WINDOW_BOX = 1;
const WINDOW_MIDDLE = 0.8;

/** An opening's ends on its wall, and the unit vector that points out of its room. */
export interface OpeningPlace {
  start: Point;
  end: Point;
  out: Point;
}

/** Null where the wall is not there or has no length. */
export function openingPlace(opening: Opening, room: Room): OpeningPlace | null {
  const { outline } = room;
  const a = outline[opening.wall];
  const b = outline[(opening.wall + 1) % outline.length];
  if (!a || !b) return null;
  const length = distance(a, b);
  if (length === 0) return null;
  const along = scale(sub(b, a), 1 / length);
  const turn = signedArea(outline) > 0 ? 1 : -1;
  return {
    start: lerp(a, b, opening.offset / length),
    end: lerp(a, b, (opening.offset + opening.width) / length),
    out: [along[1] * turn, -along[0] * turn],
  };
}

/** The strokes of an opening in a wall that reaches `thickness` metres out of its room. */
export function openingLines(opening: Opening, place: OpeningPlace, thickness: number): Line[] {
  if (opening.kind === 'window') return windowLines(place, thickness);
  return opening.kind === 'door' && opening.swing !== 'none' ? doorLines(opening, place) : [];
}

function doorLines(opening: Opening, { start, end, out }: OpeningPlace): Line[] {
  const [hinge, latch] = opening.hinge === 'start' ? [start, end] : [end, start];
  const shut = sub(latch, hinge);
  const width = Math.hypot(...shut);
  const open = scale(out, opening.swing === 'out' ? width : -width);
  const arc = Array.from({ length: 13 }, (_, i): Point => {
    const angle = (i / 12) * (Math.PI / 2);
    return add(hinge, add(scale(shut, Math.cos(angle)), scale(open, Math.sin(angle))));
  });
  return [
    { points: arc, weight: DOOR_ARC },
    { points: [hinge, add(hinge, open)], weight: DOOR_LEAF },
  ];
}

function windowLines({ start, end, out }: OpeningPlace, thickness: number): Line[] {
  const outer = scale(out, thickness);
  const middle = scale(out, thickness / 2);
  return [
    {
      points: [start, end, add(end, outer), add(start, outer)],
      closed: true,
      weight: WINDOW_BOX,
      fill: 'paper',
    },
    { points: [add(start, middle), add(end, middle)], weight: WINDOW_MIDDLE },
  ];
}
