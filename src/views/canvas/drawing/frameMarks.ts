/** Lengths of the frame's marks, metres. */
const STEPS = [0.1, 0.5, 1, 5, 10, 50, 100] as const;

const SHORTEST = 18;
const LONGEST = 70;

/** The longest step whose mark stays at or under 70 px, unless that would be too short to count. */
export function frameStep(pixelsPerMetre: number): number {
  const fitting = STEPS.findLastIndex((step) => step * pixelsPerMetre <= LONGEST);
  const step = STEPS[Math.max(0, fitting)]!;
  return step * pixelsPerMetre >= SHORTEST ? step : STEPS[Math.min(STEPS.length - 1, fitting + 1)]!;
}

/** A filled mark of the frame, in pixels along the edge, and the metres its beginning stands for. */
export interface FrameMark {
  from: number;
  to: number;
  metres: number;
}

/**
 * The filled marks along one edge of the sheet: every other step of true metres, counted from the plan's zero.
 * `metresAt` is the plan coordinate at pixel 0; `direction` −1 where metres run against the pixels (up the page).
 */
export function frameMarks(
  length: number,
  metresAt: number,
  pixelsPerMetre: number,
  direction: 1 | -1 = 1,
): FrameMark[] {
  const step = frameStep(pixelsPerMetre);
  const pixel = (metres: number) => (metres - metresAt) * pixelsPerMetre * direction;
  const ends = [metresAt, metresAt + (direction * length) / pixelsPerMetre];
  const first = 2 * Math.floor(Math.min(...ends) / step / 2);
  const marks: FrameMark[] = [];
  for (let k = first; k * step < Math.max(...ends); k += 2) {
    const [a, b] = [pixel(k * step), pixel((k + 1) * step)];
    const from = Math.max(0, Math.min(a, b));
    const to = Math.min(length, Math.max(a, b));
    if (to > from) marks.push({ from, to, metres: k * step });
  }
  return marks;
}
