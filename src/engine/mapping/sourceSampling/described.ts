import { distance, dot, sub, type Point } from '../../geometry/point';
import { onPlan } from './alike';
import { weightedQuantile } from './weightedQuantile';
import type { Cluster } from './clusters';
import type { Suspect } from './suspect';
import type { UnmarkedSource } from './unmarkedSources';

/** Of B² at a place, from which on a source explains the reading there. */
const QUARTER = 0.25;

/** µT a metre away by A·m², root mean square over directions: 0.1 √(mean of 1 + 3 cos²) = 0.1 √2. */
const RMS_AT_ONE_METRE = 0.1 * Math.SQRT2;

/** A level's floor and whatever lies up to this under it, metres, belongs to the level: pipes run there. */
const UNDER_FLOOR = 0.4;

/** Where a thing lies, how strong it is and what it explains: middles over all its members, by the weight of their samples. */
export function described(
  { seed, members }: Cluster,
  weights: readonly number[],
  elevations: Readonly<Record<string, number>>,
): Omit<UnmarkedSource, 'odds'> {
  const own = members.map(({ sample }) => weights[sample]);
  const middle = (of: (member: Suspect) => number) => weightedQuantile(members.map(of), own, 0.5);
  const range = (unit: number): [number, number] => {
    const sizes = members.map(({ size }) => unit * size);
    return [weightedQuantile(sizes, own, 0.05), weightedQuantile(sizes, own, 0.95)];
  };
  const isLine = seed.sort === 'run' || seed.sort === 'street';
  const z = middle(({ from, to }) => (from[2] + to[2]) / 2);
  const level = levelAt(z, elevations);
  return {
    kind: isLine ? 'line' : 'point',
    origin: seed.sort === 'street' ? 'outside' : 'house',
    level,
    path: isLine
      ? lineThrough(seed, middle)
      : [[middle(({ from }) => from[0]), middle(({ from }) => from[1])]],
    height: z - elevations[level],
    amperes: seed.sort === 'appliance' ? null : range(1),
    atOneMetre: seed.sort === 'appliance' ? range(RMS_AT_ONE_METRE) : null,
    explains: explained(members, own),
  };
}

function explained(members: readonly Suspect[], weights: readonly number[]): number[] {
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return [...members[0].shares.keys()].filter(
    (i) => members.reduce((total, { shares }, m) => total + weights[m] * shares[i], 0) >= QUARTER * sum,
  );
}

/** From where the middle one begins to where the middle one ends, as far off to the side as it, in the direction of the seed. */
function lineThrough(
  { from, to }: Suspect,
  middle: (of: (member: Suspect) => number) => number,
): [Point, Point] {
  const start = onPlan(from);
  const along = sub(onPlan(to), start);
  const length = distance(start, onPlan(to));
  const [u, v] = [along[0] / length, along[1] / length];
  const reach = (member: Suspect): [number, number] => {
    const [a, b] = [member.from, member.to].map((end) => dot(sub(onPlan(end), start), [u, v]));
    return [Math.min(a, b), Math.max(a, b)];
  };
  const off = middle((member) => {
    const [a, b] = [member.from, member.to].map((end) => dot(sub(onPlan(end), start), [-v, u]));
    return (a + b) / 2;
  });
  const at = (t: number): Point => [start[0] + t * u - off * v, start[1] + t * v + off * u];
  return [at(middle((member) => reach(member)[0])), at(middle((member) => reach(member)[1]))];
}

function levelAt(z: number, elevations: Readonly<Record<string, number>>): string {
  const levels = Object.keys(elevations).sort((a, b) => elevations[a] - elevations[b]);
  return levels.filter((level) => elevations[level] - UNDER_FLOOR <= z).at(-1) ?? levels[0];
}
