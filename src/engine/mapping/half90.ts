/** Half a 90 % interval, in standard deviations. */
export const HALF_90 = 1.6448536269514722;
