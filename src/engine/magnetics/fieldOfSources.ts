import { conductorField, type Conductor } from './conductor';
import { dipoleField, type Dipole } from './dipole';
import { resultant, type Place } from './phasor';

/** Everything that makes field at a home, of one frequency. */
export interface Sources {
  conductors: readonly Conductor[];
  dipoles: readonly Dipole[];
  /** What many far sources leave everywhere, µT rms; of no fixed phase towards the rest. */
  ambient: number;
}

/**
 * The resultant at a place, µT rms: phasors of conductors and dipoles add as vectors, the ambient field, whose phase is
 * unknown, as squares.
 */
export function fieldOfSources({ conductors, dipoles, ambient }: Sources, at: Place): number {
  const wires = conductorField(conductors, at);
  const small = dipoleField(dipoles, at);
  const sum = (a: readonly number[], b: readonly number[]): [number, number, number] => [
    a[0] + b[0],
    a[1] + b[1],
    a[2] + b[2],
  ];
  return Math.hypot(ambient, resultant({ re: sum(wires.re, small.re), im: sum(wires.im, small.im) }));
}
