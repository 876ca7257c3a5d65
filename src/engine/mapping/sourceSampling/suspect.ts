import { addWire, noElements } from './elements';
import { squaresOf, type HeardSource } from './heardSamples';
import type { Sites } from './kernel';

/** A place in space, metres; z over the floor common to all levels. */
export type Spot = readonly [number, number, number];

/** One unmarked source of one sample, as it may be compared with those of other samples. */
export interface Suspect {
  sample: number;
  /** `run`: a current along a floor or ceiling; `rise`: one upwards; `street`: a line outside; `appliance`: a dipole. */
  sort: 'run' | 'rise' | 'street' | 'appliance';
  from: Spot;
  /** The same as `from` for an appliance. */
  to: Spot;
  /** A, of the net current along it that would make as much field at the readings; A·m² of an appliance. */
  size: number;
  /** Of B² at each place, 0…1. */
  shares: Float64Array;
}

/** What a source that nobody marked is and where; its first element says where it runs. */
export function suspectOf(
  sample: number,
  { slot, elements, squares }: HeardSource,
  total: Float64Array,
  sites: Sites,
): Suspect {
  const shares = squares.map((square, i) => square / total[i]);
  const { numbers } = elements;
  const from: Spot = [numbers[0], numbers[1], numbers[2]];
  if (elements.kinds[0] === 1) {
    const size = Math.hypot(...numbers.subarray(3, 9));
    return { sample, sort: 'appliance', from, to: from, size, shares };
  }
  const to: Spot = [numbers[3], numbers[4], numbers[5]];
  const upright = Math.hypot(to[0] - from[0], to[1] - from[1]) < Math.abs(to[2] - from[2]);
  const sort = slot.of === 'street' ? 'street' : upright ? 'rise' : 'run';
  return { sample, sort, from, to, size: equivalentCurrent(from, to, squares, sites), shares };
}

/** The current along a wire, A, that would make the same mean square of field; of a single wire its own. */
function equivalentCurrent(from: Spot, to: Spot, squares: Float64Array, sites: Sites): number {
  const one = noElements(1);
  addWire(one, ...from, ...to, 1, 0);
  const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0);
  const unit = sum(squaresOf(one, sites));
  return unit > 0 ? Math.sqrt(sum(squares) / unit) : 0;
}
