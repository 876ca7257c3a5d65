/** The field a three-axis meter shows: √(x² + y² + z²) of the rms values along its axes, any unit. */
export const resultant = ([x, y, z]: readonly [number, number, number]): number => Math.hypot(x, y, z);

/** The field of a place whose height it depends on: the mean of 0.5, 1.0 and 1.5 m (IEC 62110:2009), any unit. */
export const overHeights = (values: readonly [number, number, number]): number =>
  (values[0] + values[1] + values[2]) / 3;
