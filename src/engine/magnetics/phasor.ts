/** A place in space, metres: plan x, plan y, height above the level's floor or the ground. */
export type Place = readonly [number, number, number];

/**
 * A sinusoidal field at one place as rms phasors: the parts in phase with the reference and a quarter period ahead of it,
 * each a vector, µT.
 */
export interface Phasor {
  re: [number, number, number];
  im: [number, number, number];
}

/** A current or moment as a share of its rms amplitude in phase and a quarter period ahead. */
export interface Phase {
  re: number;
  im: number;
}

/** The phase at so many degrees ahead of the reference. */
export function phase(degrees: number): Phase {
  const angle = (degrees * Math.PI) / 180;
  return { re: Math.cos(angle), im: Math.sin(angle) };
}

export const noField = (): Phasor => ({ re: [0, 0, 0], im: [0, 0, 0] });

/** Add vector × factor × phase to a field in place. */
export function accumulate(field: Phasor, vector: Place, factor: number, { re, im }: Phase): void {
  for (let axis = 0; axis < 3; axis++) {
    field.re[axis] += vector[axis] * factor * re;
    field.im[axis] += vector[axis] * factor * im;
  }
}

/** What a three-axis meter shows, µT rms: the root of the sum of squares over axes and over both parts. */
export const resultant = ({ re, im }: Phasor): number => Math.hypot(...re, ...im);
