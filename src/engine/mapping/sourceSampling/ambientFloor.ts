import { logNormal } from './latents';

/**
 * Ambient field of far sources, µT: homes' background is 0.01 to 0.2, its geometric mean 0.036 to 0.07 with all sources in
 * (Swanson & Kaune 1999); what no near source explains is some half of it.
 */
const FLOOR = { median: 0.02, sd: 0.8 };

export const ambientFloor = (z: number): number => logNormal(FLOOR.median, FLOOR.sd, z);
