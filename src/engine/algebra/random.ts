/** A stream of random numbers that is the same for the same seed on every machine. */
export interface Random {
  /** Uniform in [0, 1). */
  next(): number;
  /** Uniform in [low, high). */
  between(low: number, high: number): number;
  /** A whole number 0 … n − 1. */
  below(n: number): number;
  /** Standard normal. */
  normal(): number;
}

/**
 * A seeded generator: sfc32 (Doty-Humphrey, PractRand; public domain), three words of state and a counter, 32 bits a
 * draw, the first twelve draws dropped. Normal deviates by the polar method (Marsaglia & Bray 1964).
 */
export function random(seed: number): Random {
  let a = 0;
  let b = Math.floor(seed / 2 ** 32) | 0;
  let c = seed | 0;
  let counter = 1;
  let spare: number | null = null;

  const word = (): number => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + sum;
    return sum >>> 0;
  };
  for (let i = 0; i < 12; i++) word();

  const next = (): number => word() / 2 ** 32;
  return {
    next,
    between: (low, high) => low + (high - low) * next(),
    below: (n) => Math.floor(next() * n),
    normal() {
      if (spare !== null) {
        const value = spare;
        spare = null;
        return value;
      }
      for (;;) {
        const u = 2 * next() - 1;
        const v = 2 * next() - 1;
        const square = u * u + v * v;
        if (square === 0 || square >= 1) continue;
        const factor = Math.sqrt((-2 * Math.log(square)) / square);
        spare = v * factor;
        return u * factor;
      }
    },
  };
}
