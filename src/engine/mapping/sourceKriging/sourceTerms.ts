import { closestOnSegment } from '../../geometry/segment';
import type { MarkedSource } from '../survey';
import type { Place } from '../observations';
import type { Point } from '../../geometry/point';

/** How B falls with the distance r, B ∝ r^(−n): a net current 1, a balanced line 2, an appliance 3. */
export const EXPONENTS = [1, 2, 3] as const;

export type Exponent = (typeof EXPONENTS)[number];

/** What a marked source gives to B²: strength · r^(−2 · exponent), r in metres and in three dimensions. */
export interface SourceTerm {
  id: string;
  path: readonly Point[];
  /** Above the street, metres. */
  z: number;
  exponent: Exponent;
  /** µT² at 1 m; 0 where the readings leave nothing to it. */
  strength: number;
}

/** Places in three dimensions, metres; z above the street. */
export interface Spots {
  xs: ArrayLike<number>;
  ys: ArrayLike<number>;
  zs: ArrayLike<number>;
}

/** Nearer than this no reading is taken and no source is a line or a point, metres. */
const NEAREST = 0.3;

/** A level that is not listed lies at the street. */
export const floorOf = (elevations: Readonly<Record<string, number>>, level: string): number =>
  elevations[level] ?? 0;

export const spotsOf = (places: readonly Place[], elevations: Readonly<Record<string, number>>): Spots => ({
  xs: places.map(({ x }) => x),
  ys: places.map(({ y }) => y),
  zs: places.map(({ level, height }) => floorOf(elevations, level) + height),
});

/** A marked source as a term whose strength is still to be found. */
export const termOf = (
  { id, path, level, height }: MarkedSource,
  elevations: Readonly<Record<string, number>>,
  exponent: Exponent,
): SourceTerm => ({ id, path, z: floorOf(elevations, level) + height, exponent, strength: 0 });

/** Square of the distance from each spot to a source, NEAREST at least. */
export function squaredDistances({ path, z }: Pick<SourceTerm, 'path' | 'z'>, spots: Spots): Float64Array {
  return Float64Array.from(spots.xs, (x, i) => {
    const p: Point = [x, spots.ys[i]];
    let least = (p[0] - path[0][0]) ** 2 + (p[1] - path[0][1]) ** 2;
    for (let corner = 1; corner < path.length; corner++)
      least = Math.min(least, closestOnSegment(p, path[corner - 1], path[corner]).distance ** 2);
    return Math.max(NEAREST ** 2, least + (spots.zs[i] - z) ** 2);
  });
}

/** r^(−2n) from r². */
export const fallen = (square: number, exponent: Exponent): number =>
  exponent === 1 ? 1 / square : exponent === 2 ? 1 / square ** 2 : 1 / square ** 3;

/** r^(−2n) of a term at each spot. */
export const columnOf = (term: Pick<SourceTerm, 'path' | 'z' | 'exponent'>, spots: Spots): Float64Array =>
  squaredDistances(term, spots).map((square) => fallen(square, term.exponent));
