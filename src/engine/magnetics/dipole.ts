import { accumulate, noField, phase, type Phasor, type Place } from './phasor';

/** A small source far smaller than its distance: an appliance, a transformer. A·m² rms along each axis. */
export interface Dipole {
  at: Place;
  moment: Place;
  degrees: number;
}

/**
 * Field of dipoles at a place, µT rms phasor: 0.1·(3(m·r̂)r̂ − m)/r³ (m in A·m², r in m), so 0.2·m/r³ on the axis and
 * 0.1·m/r³ beside it. Within 5 cm the distance counts as 5 cm, where no appliance is a dipole any more.
 */
export function dipoleField(dipoles: readonly Dipole[], at: Place): Phasor {
  const field = noField();
  for (const { at: place, moment, degrees } of dipoles) {
    const off = [at[0] - place[0], at[1] - place[1], at[2] - place[2]] as const;
    const gap = Math.hypot(...off);
    const r = Math.max(0.05, gap);
    const unit = gap === 0 ? ([0, 0, 1] as const) : ([off[0] / gap, off[1] / gap, off[2] / gap] as const);
    const along = moment[0] * unit[0] + moment[1] * unit[1] + moment[2] * unit[2];
    const vector: Place = [
      3 * along * unit[0] - moment[0],
      3 * along * unit[1] - moment[1],
      3 * along * unit[2] - moment[2],
    ];
    accumulate(field, vector, 0.1 / r ** 3, phase(degrees));
  }
  return field;
}

/**
 * What a coil of radius a reads of an axial dipole at distance r, as a share of the field at its middle: the mean over its
 * disc is (1 + (a/r)²)^(−3/2) of it.
 */
export const probeShare = (radius: number, distance: number): number =>
  (1 + (radius / distance) ** 2) ** -1.5;
