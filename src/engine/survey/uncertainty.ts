/** Standard uncertainty of a value known to lie within ± `halfWidth`, all places alike (JCGM 100:2008, 4.3.7). */
export const rectangular = (halfWidth: number): number => halfWidth / Math.sqrt(3);

/** Independent standard uncertainties of a sum, as one: the root of their squares (JCGM 100:2008, 5.1.2). */
export const combined = (components: readonly number[]): number => Math.hypot(...components);
