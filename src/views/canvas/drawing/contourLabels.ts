import { inside, turnedBox, type Box, type Crowd } from './labelPlaces';

/** Where a contour's value stands on its line, pixels, y down; the angle is turned so that it reads upright. */
export interface ContourLabel {
  x: number;
  y: number;
  /** Radians, clockwise on the screen. */
  angle: number;
}

type Screen = readonly [number, number];

const TRY_EVERY = 14;
// A label may not bend: the line under it must run nearly as long as its chord.
const STRAIGHT = 0.94;

/**
 * The straightest free place for a label along a line, or null where the line is too short, too bent or too crowded.
 * `allowed` says where the line is seen at all (on the floor, where the map is drawn). The place is taken in the crowd.
 */
export function contourLabel(
  line: readonly Screen[],
  width: number,
  height: number,
  crowd: Crowd,
  bounds: Box,
  allowed: (x: number, y: number) => boolean,
): ContourLabel | null {
  const run = runLengths(line);
  const total = run[run.length - 1] ?? 0;
  const room = width + 10;
  if (total < room * 1.6) return null;
  let best: { label: ContourLabel; box: Box; straight: number } | null = null;
  for (let at = room / 2; at <= total - room / 2; at += TRY_EVERY) {
    const a = placeAt(line, run, at - room / 2);
    const b = placeAt(line, run, at + room / 2);
    const straight = Math.hypot(b[0] - a[0], b[1] - a[1]) / room;
    if (straight < STRAIGHT || (best && straight <= best.straight)) continue;
    const [x, y] = placeAt(line, run, at);
    const angle = upright(Math.atan2(b[1] - a[1], b[0] - a[0]));
    const box = turnedBox(x, y, width, height, angle);
    if (!inside(box, bounds) || !crowd.isFree(box)) continue;
    if (isSeen([[x, y], a, b], angle, height, allowed)) best = { label: { x, y, angle }, box, straight };
  }
  if (!best) return null;
  crowd.add(best.box);
  return best.label;
}

function runLengths(line: readonly Screen[]): number[] {
  let sum = 0;
  return line.map(([x, y], i) => {
    if (i > 0) sum += Math.hypot(x - line[i - 1]![0], y - line[i - 1]![1]);
    return sum;
  });
}

function placeAt(line: readonly Screen[], run: readonly number[], at: number): [number, number] {
  let low = 0;
  let high = run.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (run[middle]! <= at) low = middle;
    else high = middle;
  }
  const part = run[high]! - run[low]!;
  const t = part > 0 ? (at - run[low]!) / part : 0;
  const [a, b] = [line[low]!, line[high]!];
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
}

export function upright(angle: number): number {
  if (angle > Math.PI / 2) return angle - Math.PI;
  return angle <= -Math.PI / 2 ? angle + Math.PI : angle;
}

/** Whether the places on the line and beside it, as far as the lettering reaches, are all seen. */
function isSeen(
  places: readonly Screen[],
  angle: number,
  height: number,
  allowed: (x: number, y: number) => boolean,
): boolean {
  const [dx, dy] = [(-Math.sin(angle) * height) / 2, (Math.cos(angle) * height) / 2];
  return places.every(([x, y]) => allowed(x, y) && allowed(x + dx, y + dy) && allowed(x - dx, y - dy));
}
