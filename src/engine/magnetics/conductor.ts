import { accumulate, noField, phase, type Phase, type Phasor, type Place } from './phasor';

/** A straight thin conductor from one place to another, or endless through both; A rms, degrees ahead of the reference. */
export interface Conductor {
  from: Place;
  to: Place;
  amperes: number;
  degrees: number;
  endless: boolean;
}

// Inside a conductor the thin-wire field has no meaning and no bound; nobody holds a meter within a millimetre of one.
const LEAST = 1e-3;

/**
 * Field of conductors at a place, µT rms phasor, by the law of Biot and Savart: a long wire gives 0.2·I/r, a part of it
 * 0.1·(I/r)·(cos α + cos β) with α, β its angles at the two ends (I in A, r in m). Nearer than 1 mm counts as 1 mm.
 */
export function conductorField(conductors: readonly Conductor[], at: Place): Phasor {
  const field = noField();
  for (const conductor of conductors) addConductor(field, conductor, phase(conductor.degrees), at);
  return field;
}

function addConductor(
  field: Phasor,
  { from, to, amperes, endless }: Conductor,
  turn: Phase,
  at: Place,
): void {
  const along = [to[0] - from[0], to[1] - from[1], to[2] - from[2]] as const;
  const length = Math.hypot(...along);
  if (length === 0) return;
  const t = [along[0] / length, along[1] / length, along[2] / length] as const;
  const off = [at[0] - from[0], at[1] - from[1], at[2] - from[2]] as const;
  const forward = off[0] * t[0] + off[1] * t[1] + off[2] * t[2];
  // t × off is the direction of the field times the distance r.
  const turned: Place = [
    t[1] * off[2] - t[2] * off[1],
    t[2] * off[0] - t[0] * off[2],
    t[0] * off[1] - t[1] * off[0],
  ];
  const r = Math.max(LEAST, Math.hypot(...turned));
  const ends = endless
    ? 2
    : forward / Math.hypot(forward, r) + (length - forward) / Math.hypot(length - forward, r);
  accumulate(field, turned, (0.1 * amperes * ends) / (r * r), turn);
}
