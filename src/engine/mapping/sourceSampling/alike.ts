import { cross, distance, dot, lerp, sub, type Point } from '../../geometry/point';
import type { Spot, Suspect } from './suspect';

/** Where a source is, whatever its strength. */
export type Where = Pick<Suspect, 'sort' | 'from' | 'to'>;

/**
 * Runs closer than this beside each other, metres, are one found twice, and so are street lines and, by their places, risers and
 * appliances: no survey of a home tells them apart. The project's choice, as are the angle and the storey.
 */
const BESIDE = { run: 0.5, street: 6 };
const NEAR = 0.8;

/** Cosine of the angle up to which two runs are parallel: 20°. */
const PARALLEL = Math.cos(Math.PI / 9);

/** Floor and ceiling of one storey, metres: readings at one height can hardly tell which of them a current runs in. */
const STOREY = 3.2;

export const onPlan = ([x, y]: Spot): Point => [x, y];

/** Whether two sources are the same thing as far as a survey can tell. */
export function alike(a: Where, b: Where): boolean {
  if (a.sort !== b.sort) return false;
  if (a.sort === 'street') return beside(a, b, BESIDE.street);
  if (Math.abs(a.from[2] + a.to[2] - b.from[2] - b.to[2]) / 2 > STOREY) return false;
  if (a.sort === 'run') return beside(a, b, BESIDE.run);
  return distance(onPlan(a.from), onPlan(b.from)) <= NEAR;
}

/** Parallel, side by side along half of the shorter one at least, and no farther apart than `gap` there. */
export function beside(a: Pick<Where, 'from' | 'to'>, b: Pick<Where, 'from' | 'to'>, gap: number): boolean {
  const [from, to] = [onPlan(b.from), onPlan(b.to)];
  const along = sub(onPlan(a.to), onPlan(a.from));
  const other = sub(to, from);
  const [length, otherLength] = [Math.hypot(...along), Math.hypot(...other)];
  if (Math.abs(dot(along, other)) < PARALLEL * length * otherLength) return false;
  const [first, last] = [from, to].map((end) => dot(sub(end, onPlan(a.from)), along) / length);
  const low = Math.max(0, Math.min(first, last));
  const high = Math.min(length, Math.max(first, last));
  if (high - low < Math.min(length, Math.abs(last - first)) / 2) return false;
  const there = lerp(from, to, ((low + high) / 2 - first) / (last - first));
  return Math.abs(cross(along, sub(there, onPlan(a.from)))) / length <= gap;
}
