import { add, dot, rotate, scale, sub } from '../../engine/geometry/point';
import { contains } from '../../engine/geometry/polygon';
import { closestOnSegment } from '../../engine/geometry/segment';
import { tidy } from './tidy';
import type { Point } from '../home';
import type { Handle, Snaps } from './kind';

type Outline = readonly Point[];

/** Wall i of an outline: from corner i to the next. */
export const wallOf = (outline: Outline, wall: number): readonly [Point, Point] => [
  outline[wall]!,
  outline[(wall + 1) % outline.length]!,
];

export const wallsOf = (outline: Outline): (readonly [Point, Point])[] =>
  outline.map((_, i) => wallOf(outline, i));

export const shifted = (points: Outline, delta: Point): Point[] => points.map((p) => tidy(add(p, delta)));

export const turned = (points: Outline, degrees: number, about: Point): Point[] =>
  points.map((p) => tidy(add(about, rotate(sub(p, about), degrees))));

/** Metres from a point to a closed outline, 0 inside. */
export function distanceToOutline(outline: Outline, at: Point): number {
  if (contains(outline, at)) return 0;
  return Math.min(...wallsOf(outline).map(([a, b]) => closestOnSegment(at, a, b).distance));
}

export const outlineSnaps = (outline: Outline): Snaps => ({ points: outline, lines: wallsOf(outline) });

/** A handle at every corner, and one at the middle of every wall. */
export function outlineHandles(outline: Outline): Handle[] {
  return [
    ...outline.map((at, i): Handle => ({ key: `corner-${i}`, at, role: 'corner' })),
    ...wallsOf(outline).map(([a, b], i): Handle => ({
      key: `wall-${i}`,
      at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2],
      role: 'middle',
    })),
  ];
}

/** The outline with one corner put somewhere, or one wall pushed along its own normal until its middle is level with a place. */
export function dragOutline(outline: Outline, key: string, to: Point): Point[] {
  const [part, number] = key.split('-');
  const i = Number(number);
  if (part === 'corner') return outline.map((p, j) => (j === i ? tidy(to) : p));
  const [a, b] = wallOf(outline, i);
  const along = sub(b, a);
  const normal: Point = [-along[1], along[0]];
  const square = dot(normal, normal);
  if (square === 0) return [...outline];
  const push = scale(normal, dot(sub(to, a), normal) / square);
  const next = (i + 1) % outline.length;
  return outline.map((p, j) => (j === i || j === next ? tidy(add(p, push)) : p));
}
