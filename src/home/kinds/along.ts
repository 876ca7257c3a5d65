import { tidy } from './tidy';
import type { Point } from '../home';
import type { Handle, Snaps } from './kind';

type Path = readonly Point[];

/** A handle at every point of an open path. */
export const pathHandles = (path: Path): Handle[] =>
  path.map((at, i) => ({ key: `end-${i}`, at, role: 'end' }));

export const dragPath = (path: Path, key: string, to: Point): Point[] =>
  path.map((p, i) => (key === `end-${i}` ? tidy(to) : p));

export const pathSnaps = (path: Path): Snaps => ({
  points: path,
  lines: path.slice(1).map((p, i) => [path[i]!, p] as const),
});
