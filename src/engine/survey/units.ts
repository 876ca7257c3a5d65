/** The units a display may read in. Everything past the keyboard is in µT. */
export type FieldUnit = 'uT' | 'mG' | 'nT';

/** µT in one of each unit: 1 µT = 10 mG = 1000 nT (1 T = 10⁴ G, SI Brochure 9th ed., 2019). */
export const MICROTESLA: Record<FieldUnit, number> = { uT: 1, mG: 0.1, nT: 0.001 };

// Divided by whole numbers: 1.4 mG × 0.1 would be 0.13999999999999999 µT.
const PER_MICROTESLA: Record<FieldUnit, number> = { uT: 1, mG: 10, nT: 1000 };

export const toMicrotesla = (value: number, unit: FieldUnit): number => value / PER_MICROTESLA[unit];

export const fromMicrotesla = (microtesla: number, unit: FieldUnit): number =>
  microtesla * PER_MICROTESLA[unit];
