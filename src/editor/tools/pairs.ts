import type { Point } from '../../home/home';

/** Points as the home keeps them: pairs of its own, which an edit may change. */
export const pairs = (points: readonly Point[]): [number, number][] => points.map(([x, y]) => [x, y]);
