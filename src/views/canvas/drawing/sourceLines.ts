type Screen = readonly [number, number];
type Segment = [[number, number], [number, number]];

const DASH = 9;
const GAP = 4;
const TICK = 3.5;

/** A line source on the sheet: dashes with a tick across the middle of every other one. Pixels. */
export function tickedLine(path: readonly Screen[]): {
  dashes: [Screen, Screen][];
  ticks: [Screen, Screen][];
} {
  const dashes: [Screen, Screen][] = [];
  const ticks: [Screen, Screen][] = [];
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1]!, path[i]!];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length === 0) continue;
    const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    const at = (s: number): Screen => [a[0] + ux * s, a[1] + uy * s];
    for (let s = 0, k = 0; s < length; s += DASH + GAP, k++) {
      dashes.push([at(s), at(Math.min(length, s + DASH))]);
      if (k % 2 === 1 || s + DASH > length) continue;
      const [x, y] = at(s + DASH / 2);
      ticks.push([
        [x - uy * TICK, y + ux * TICK],
        [x + uy * TICK, y - ux * TICK],
      ]);
    }
  }
  return { dashes, ticks };
}

/** The part of a line inside a box, pixels, or null: a street line may be a kilometre long. */
export function clippedSegment(
  a: Screen,
  b: Screen,
  box: { x0: number; y0: number; x1: number; y1: number },
): Segment | null {
  // Liang and Barsky 1984: the line's parameter is narrowed side by side.
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  let [from, to] = [0, 1];
  for (const [step, room] of [
    [-dx, a[0] - box.x0],
    [dx, box.x1 - a[0]],
    [-dy, a[1] - box.y0],
    [dy, box.y1 - a[1]],
  ] as const) {
    if (step === 0 && room < 0) return null;
    if (step < 0) from = Math.max(from, room / step);
    if (step > 0) to = Math.min(to, room / step);
  }
  if (from > to) return null;
  const at = (t: number): [number, number] => [a[0] + dx * t, a[1] + dy * t];
  return [at(from), at(to)];
}
