import type { Point, Ring } from '../../engine/geometry/point';

/** What a drawing of the report is made of, in the order it is laid down; CSS pixels, y down. */
export type Mark =
  | { is: 'area'; d: string; fill: string; opacity?: number; clip?: string }
  | {
      is: 'line';
      d: string;
      stroke: string;
      width: number;
      dash?: readonly number[];
      opacity?: number;
      clip?: string;
    }
  | { is: 'text'; text: string; x: number; y: number; hand: Hand; clip?: string };

/** How a line of writing is set. */
export interface Hand {
  size: number;
  fill: string;
  weight?: number;
  italic?: boolean;
  anchor?: 'start' | 'middle' | 'end';
  /** Letter-spacing, em. */
  spaced?: number;
  /** Degrees, clockwise on the sheet. */
  angle?: number;
  halo?: { colour: string; width: number; opacity?: number };
}

/** Marks with the areas they are clipped to, by name. */
export interface Drawing {
  width: number;
  /** Room to the left of x = 0, of the width. */
  left?: number;
  height: number;
  clips: Record<string, string>;
  marks: Mark[];
}

export type OnSheet = (p: Point) => readonly [number, number];

// A hundredth of a pixel is 3 µm on paper.
const number = (value: number): string => String(Math.round(value * 100) / 100);

/** SVG path through places of the sheet. */
export function sheetPath(points: readonly (readonly [number, number])[], closed: boolean): string {
  const corners = points.map(([x, y]) => `${number(x)} ${number(y)}`).join('L');
  return corners === '' ? '' : `M${corners}${closed ? 'Z' : ''}`;
}

export const linePath = (points: readonly Point[], onSheet: OnSheet, closed = false): string =>
  sheetPath(
    points.map((p) => onSheet(p)),
    closed,
  );

/** Rings as one path, to be filled even-odd. */
export const ringsPath = (rings: readonly Ring[], onSheet: OnSheet): string =>
  rings.map((ring) => linePath(ring, onSheet, true)).join('');

export function rectanglePath(x: number, y: number, width: number, height: number): string {
  return sheetPath(
    [
      [x, y],
      [x + width, y],
      [x + width, y + height],
      [x, y + height],
    ],
    true,
  );
}

export function circlePath(x: number, y: number, radius: number): string {
  const r = number(radius);
  return `M${number(x - radius)} ${number(y)}a${r} ${r} 0 1 0 ${number(2 * radius)} 0a${r} ${r} 0 1 0 ${number(-2 * radius)} 0Z`;
}

// Mean advance of the report's face, em: digits and lower case, and capitals; a little generous, so that a place found
// for a label without a screen is never too small on paper.
const ADVANCE = 0.53;
const DIGIT = 0.56;
const CAPITAL = 0.66;
const PERCENT = 0.85;

/** How wide a line of writing will be, pixels. */
export function textWidth(text: string, { size, spaced = 0 }: Pick<Hand, 'size' | 'spaced'>): number {
  const ems = [...text].reduce(
    (sum, c) =>
      sum +
      (/\p{Lu}/u.test(c)
        ? CAPITAL
        : /[.,\s]/.test(c)
          ? 0.27
          : c === '%'
            ? PERCENT
            : /\d/.test(c)
              ? DIGIT
              : ADVANCE),
    0,
  );
  return size * (ems + spaced * text.length);
}
