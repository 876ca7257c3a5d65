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
  /** Strength above which it is the less likely the stronger it is, µT² at 1 m. */
  usual: number;
  /** µT² at 1 m; 0 where the readings leave nothing to it. */
  strength: number;
}

/** Places in three dimensions, metres; z above the street. */
export interface Spots {
  xs: ArrayLike<number>;
  ys: ArrayLike<number>;
  zs: ArrayLike<number>;
}

/**
 * Field at 1 m, µT, that few appliances exceed (a moment of 1 A·m²; the project's choice). Without it a mark far from all
 * readings may be given any strength, for what another source does. Lines range from a cable to a trunk line: any is as likely.
 */
const USUAL: Record<MarkedSource['kind'], number> = { line: Infinity, point: 0.1 };

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
  { id, kind, path, level, height }: MarkedSource,
  elevations: Readonly<Record<string, number>>,
  exponent: Exponent,
): SourceTerm => ({
  id,
  path,
  z: floorOf(elevations, level) + height,
  exponent,
  usual: USUAL[kind] ** 2,
  strength: 0,
});

/** Square of the distance from each spot to a source, NEAREST at least. */
function squaredDistances({ path, z }: Pick<SourceTerm, 'path' | 'z'>, spots: Spots): Float64Array {
  const squares = new Float64Array(spots.xs.length).fill(Infinity);
  // A point is a segment of no length.
  for (let corner = Math.min(1, path.length - 1); corner < path.length; corner++)
    lessen(squares, spots, path[Math.max(0, corner - 1)], path[corner]);
  for (let i = 0; i < squares.length; i++)
    squares[i] = Math.max(NEAREST * NEAREST, squares[i] + (spots.zs[i] - z) ** 2);
  return squares;
}

/** Takes in the distance to one segment on the plan: every cell of a map asks, so nothing is made on the way. */
function lessen(squares: Float64Array, { xs, ys }: Spots, [ax, ay]: Point, [bx, by]: Point): void {
  const [ux, uy] = [bx - ax, by - ay];
  const length = ux * ux + uy * uy;
  for (let i = 0; i < squares.length; i++) {
    const [px, py] = [xs[i] - ax, ys[i] - ay];
    const t = length === 0 ? 0 : Math.min(1, Math.max(0, (px * ux + py * uy) / length));
    const [dx, dy] = [px - t * ux, py - t * uy];
    squares[i] = Math.min(squares[i], dx * dx + dy * dy);
  }
}

/** r^(−2n) from r². */
const fallen = (square: number, exponent: Exponent): number =>
  exponent === 1 ? 1 / square : exponent === 2 ? 1 / square ** 2 : 1 / square ** 3;

/** r^(−2n) of a term at each spot. */
export const columnOf = (term: Pick<SourceTerm, 'path' | 'z' | 'exponent'>, spots: Spots): Float64Array =>
  squaredDistances(term, spots).map((square) => fallen(square, term.exponent));
