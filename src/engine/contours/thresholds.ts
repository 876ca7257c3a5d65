/** Lower edges of the tinted bands, µT: values somebody published or works by, and the steps between them. */
export const BAND_EDGES: readonly number[] = [0.02, 0.03, 0.05, 0.1, 0.2, 0.3, 0.5, 1, 2];

/** Contours drawn between band edges without a change of tint, µT. */
export const HALF_STEPS: readonly number[] = [0.025, 0.04, 0.07, 0.15, 0.25, 0.4, 0.7, 1.5, 3];

/** The band that holds a value, µT: −1 below the first edge, else the index of the highest edge not above it. */
export function bandOf(value: number): number {
  let band = -1;
  while (band + 1 < BAND_EDGES.length && value >= BAND_EDGES[band + 1]) band++;
  return band;
}
