/** Half a 90 % interval of a normal law, in standard deviations: its 95th percentile. */
export const HALF_90 = 1.6448536269514722;
