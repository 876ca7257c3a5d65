import { distanceToPath } from '../../../src/engine/geometry/segment';
import type { Conductor } from '../../../src/engine/magnetics/conductor';
import type { GeneratedHome } from './generatedHome';
import type { Point } from '../../../src/engine/geometry/point';
import type { UnmarkedSource } from '../../../src/engine/mapping/sourceSampling/unmarkedSources';

/** A or A·m² below which nobody would call it a source. */
const LEAST = 0.1;

/** Longer than any current in a home, shorter than a street line; shorter than any current, wider than any winding. */
const STREET = 40;
const WINDING = 0.5;

const plan = ([x, y]: readonly number[]): Point => [x, y];
const middle = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

/**
 * Whether a home really has the source: a current within half a metre along half its length and within 25° of its direction; a riser
 * or an appliance within 0.8 m; a street line on that side, within 40°.
 */
export function isThere(home: GeneratedHome, found: UnmarkedSource): boolean {
  const wires = home.sources.conductors.filter(({ amperes }) => amperes >= LEAST);
  const near = (at: Point) => Math.hypot(at[0] - found.path[0][0], at[1] - found.path[0][1]) < 0.8;
  if (found.origin === 'outside')
    return wires.some(
      (wire) => lengthOf(wire) > STREET && parallel(wire, found.path, 40) && sameSide(home, wire, found.path),
    );
  if (found.kind === 'line')
    return wires.some((wire) => {
      const length = lengthOf(wire);
      return length < STREET && length > WINDING && parallel(wire, found.path, 25) && along(wire, found.path);
    });
  if (found.amperes)
    return wires.some((wire) => Math.abs(wire.to[2] - wire.from[2]) > 1 && near(plan(wire.from)));
  return (
    home.sources.dipoles.some(({ at, moment }) => Math.hypot(...moment) >= LEAST && near(plan(at))) ||
    wires.some(
      ({ from, to }) =>
        Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]) < WINDING &&
        near(middle(plan(from), plan(to))),
    )
  );
}

const lengthOf = ({ from, to }: Conductor): number => Math.hypot(to[0] - from[0], to[1] - from[1]);

function parallel(wire: Conductor, [a, b]: readonly Point[], degrees: number): boolean {
  const [ux, uy] = [wire.to[0] - wire.from[0], wire.to[1] - wire.from[1]];
  const [vx, vy] = [b[0] - a[0], b[1] - a[1]];
  const cosine = Math.abs(ux * vx + uy * vy) / (Math.hypot(ux, uy) * Math.hypot(vx, vy));
  return cosine > Math.cos((degrees * Math.PI) / 180);
}

/** Of twenty-one places of one, half lie within half a metre of the other. */
function along({ from, to }: Conductor, path: readonly Point[]): boolean {
  const within = (one: readonly Point[], other: readonly Point[]) =>
    Array.from({ length: 21 }, (_, k): Point => {
      const [a, b] = one;
      return [a[0] + (k / 20) * (b[0] - a[0]), a[1] + (k / 20) * (b[1] - a[1])];
    }).filter((p) => distanceToPath(p, other) <= 0.5).length;
  const wire = [plan(from), plan(to)];
  return Math.max(within(path, wire), within(wire, path)) >= 10;
}

function sameSide({ rooms }: GeneratedHome, { from, to }: Conductor, [a, b]: readonly Point[]): boolean {
  const corners = rooms.flat();
  const [x, y] = [0, 1].map((axis) => Math.max(...corners.map((corner) => corner[axis])) / 2);
  const [one, other] = [middle(plan(from), plan(to)), middle(a, b)];
  return (one[0] - x) * (other[0] - x) + (one[1] - y) * (other[1] - y) > 0;
}
