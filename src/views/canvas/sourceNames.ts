import type { Source } from '../../home/home';
import { upright } from './drawing/contourLabels';
import { turnedBox, type Box } from './drawing/labelPlaces';
import { clippedSegment } from './drawing/sourceLines';
import { paper } from './ink';
import { widthOf, write, type Hand } from './lettering';
import { onSheet, type Screen, type Sheet } from './sheet';

const HAND: Hand = { size: 12, weight: 450, italic: true };
const HEIGHT = 14;

/** A place for the name of a source: the middle of the lettering and its turn, radians clockwise. */
interface NamePlace {
  x: number;
  y: number;
  angle: number;
  box: Box;
}

export interface SourceName {
  id: string;
  text: string;
  places: NamePlace[];
}

/** The names of sources, what lies outside the house in italic: round a point, along what is seen of a line. */
export function sourceNames(sheet: Sheet, sources: readonly Source[]): SourceName[] {
  return sources
    .filter(({ name, path }) => name !== '' && path.length > 0)
    .map((source) => {
      const width = widthOf(sheet.context, source.name, HAND) + 4;
      const at = source.path.map((p) => onSheet(sheet, p));
      const places = source.kind === 'point' ? roundPoint(at[0]!, width) : alongLine(sheet, at, width);
      return { id: source.id, text: source.name, places };
    });
}

export function paintSourceNames(sheet: Sheet, names: readonly SourceName[], placed: Map<string, Box>): void {
  const { context, ink } = sheet;
  for (const { id, text, places } of names) {
    const place = places.find(({ box }) => box === placed.get(id));
    if (!place) continue;
    context.save();
    context.translate(place.x, place.y);
    context.rotate(place.angle);
    write(sheet, {
      text,
      x: 0,
      y: 0,
      hand: HAND,
      fill: ink.text,
      halo: { colour: paper(ink), width: 1.75, alpha: 0.72 },
    });
    context.restore();
  }
}

const placeOf = (x: number, y: number, angle: number, width: number): NamePlace => ({
  x,
  y,
  angle,
  box: turnedBox(x, y, width, HEIGHT, angle),
});

const roundPoint = ([x, y]: Screen, width: number): NamePlace[] => [
  placeOf(x, y + 19, 0, width),
  placeOf(x, y - 19, 0, width),
  placeOf(x + 13 + width / 2, y, 0, width),
  placeOf(x - 13 - width / 2, y, 0, width),
];

/** Both sides of the longest part that is seen, from its far end back. */
function alongLine(sheet: Sheet, path: readonly Screen[], width: number): NamePlace[] {
  const { camera } = sheet;
  const box = { x0: 14, y0: 14, x1: camera.width - 14, y1: camera.height - 14 };
  let longest: { a: Screen; b: Screen; length: number } | null = null;
  for (let i = 1; i < path.length; i++) {
    const seen = clippedSegment(path[i - 1]!, path[i]!, box);
    if (!seen) continue;
    const [a, b] = seen;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (!longest || length > longest.length) longest = { a, b, length };
  }
  if (!longest || longest.length < width) return [];
  const { a, b, length } = longest;
  const turn = Math.atan2(b[1] - a[1], b[0] - a[0]);
  const [ux, uy] = [Math.cos(turn), Math.sin(turn)];
  const places: NamePlace[] = [];
  for (let along = length - width / 2 - 30; along >= width / 2; along -= 20) {
    for (const side of [12, -12]) {
      places.push(
        placeOf(a[0] + ux * along - uy * side, a[1] + uy * along + ux * side, upright(turn), width),
      );
    }
  }
  return places;
}
