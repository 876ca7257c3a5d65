import { appliance, hiddenAppliance } from './dipoleSlots';
import { markedLine, streetLine } from './lineSlots';
import { freeWire, markedRiser, riser, wallWire } from './wireSlots';
import type { Elements } from './elements';
import type { Mark } from './question';
import type { Wall } from '../survey';

/** A place in the model for one source, there or not. */
export interface Slot {
  /** Names the source from one run to the next. */
  key: string;
  /** What it would be: a source that was marked, or one that was not, in the house or along the street. */
  of: Mark | 'house' | 'street';
  /** That it is there, before any reading. */
  probability: number;
  /** How many latents from `at` on it reads, each standard normal a priori. */
  latents: number;
  /** Adds the wires and dipoles those latents mean. */
  write(z: Float64Array, at: number, elements: Elements): void;
}

/** Latents a slot may have. */
export const MOST_LATENTS = 12;

/** Bounds of everything walled and read, with a metre round it. */
export interface Extent {
  x0: number;
  y0: number;
  x1: number;
  y1: number;
  floor: number;
  ceiling: number;
}

/**
 * Every source there may be. Unmarked currents in wiring and pipes are the main cause of field in most homes, as network
 * operators report; how likely each stretch of wall is to carry one is the project's choice: about two and a half in a
 * home, so that many drawn walls make no more currents than few.
 */
export function slotsOf(walls: readonly Wall[], marked: readonly Mark[], extent: Extent): Slot[] {
  const lines = marked.filter(({ kind, path }) => kind === 'line' && path.length > 1);
  const points = marked.filter(({ kind, path }) => kind === 'point' && path.length > 0);
  const rises = marked.filter(({ kind, path }) => kind === 'rise' && path.length > 0);
  const distinct = withoutRepeats(walls);
  const perWall = Math.min(0.15, 2.5 / Math.max(1, distinct.length));
  const hidden = points.length > 0 ? 0.08 : 0.15;
  const street = lines.some(({ passes }) => passes) ? 0.08 : 0.25;
  return [
    ...lines.map((line, i) => markedLine(`line ${i + 1}`, line)),
    ...points.map((point, i) => appliance(`appliance ${i + 1}`, point)),
    ...rises.map((rise, i) => markedRiser(`rise ${i + 1}`, rise, extent)),
    ...distinct.map((wall) => wallWire(wallKey(wall), perWall, wall)),
    freeWire('free 1', 0.15, extent),
    freeWire('free 2', 0.1, extent),
    riser('riser', 0.15, extent, distinct),
    ...[1, 2, 3].map((i) => hiddenAppliance(`hidden ${i}`, hidden, extent, distinct)),
    streetLine('street', street, extent),
  ];
}

const wallKey = ({ from, to, floor }: Wall): string =>
  `wall ${[...from, ...to, floor].map((x) => x.toFixed(2)).join(' ')}`;

/** Two rooms share a wall, drawn once in each direction. */
function withoutRepeats(walls: readonly Wall[]): Wall[] {
  const seen = new Set<string>();
  return walls.filter((wall) => {
    if (Math.hypot(wall.to[0] - wall.from[0], wall.to[1] - wall.from[1]) < 0.3) return false;
    if (seen.has(wallKey(wall)) || seen.has(wallKey({ ...wall, from: wall.to, to: wall.from }))) return false;
    seen.add(wallKey(wall));
    return true;
  });
}
