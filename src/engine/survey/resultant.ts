/** The field a three-axis meter shows: √(x² + y² + z²) of the rms values along its axes, any unit. */
export const resultant = ([x, y, z]: readonly [number, number, number]): number => Math.hypot(x, y, z);
