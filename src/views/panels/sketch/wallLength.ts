import type { Point } from '../../../home/home';

export function wallLength(outline: readonly Point[], wall: number): number {
  const [a, b] = [outline[wall]!, outline[(wall + 1) % outline.length]!];
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}

/**
 * The outline with one wall of another length: the next wall moves along as a whole, so it keeps its direction and its
 * own length, and the wall after it takes up the difference. A right-angled room stays right-angled.
 */
export function withWallLength(outline: readonly Point[], wall: number, length: number): Point[] {
  const count = outline.length;
  const old = wallLength(outline, wall);
  const [a, b] = [outline[wall]!, outline[(wall + 1) % count]!];
  const grow = (length - old) / old;
  const shift: Point = [(b[0] - a[0]) * grow, (b[1] - a[1]) * grow];
  // In a triangle the next wall ends where this one starts; only the shared corner can move.
  const moving = count > 3 ? [(wall + 1) % count, (wall + 2) % count] : [(wall + 1) % count];
  return outline.map((corner, i) =>
    moving.includes(i) ? [corner[0] + shift[0], corner[1] + shift[1]] : corner,
  );
}
