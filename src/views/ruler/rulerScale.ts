import { BAND_EDGES } from '../../engine/contours/thresholds';
import type { GuidelineSet } from '../../engine/judging/guidelines';

/** A vertical logarithmic scale: µT to pixels down the page and back. */
export interface RulerScale {
  low: number;
  high: number;
  top: number;
  bottom: number;
  y(value: number): number;
  value(y: number): number;
  holds(value: number): boolean;
}

/** A scale over a range, between two heights on the page. */
export function rulerScale([low, high]: readonly [number, number], top: number, bottom: number): RulerScale {
  const length = Math.max(0, bottom - top);
  const span = Math.log(high / low);
  return {
    low,
    high,
    top,
    bottom: top + length,
    // Nothing and less have a place too: two decades below the lowest. In plain logarithms: the first load does without the
    // scales of the plots, which come later.
    y: (value) => top + (length * Math.log(high / Math.max(value, low / 100))) / span,
    value: (y) => high * Math.exp((-(y - top) / Math.max(1, length)) * span),
    holds: (value) => value >= low && value <= high,
  };
}

/** The range that shows all values, µT: it grows by whole decades, at most four down, and never shrinks. */
export function grownRange(
  [low, high]: readonly [number, number],
  values: readonly number[],
): [number, number] {
  const positive = values.filter((value) => value > 0);
  let [least, most] = [low, high];
  while (positive.some((value) => value < least) && least > low * 1.1e-4) least /= 10;
  while (positive.some((value) => value > most)) most *= 10;
  return [least, most];
}

export interface Tick {
  value: number;
  size: 'long' | 'short' | 'hair';
}

/** The edge of a slide rule: long at 1, 2, 3 and 5, short at whole numbers, hair between 1 and 2. */
export function rulerTicks({ low, high }: Pick<RulerScale, 'low' | 'high'>): Tick[] {
  const ticks: Tick[] = [];
  const first = Math.floor(Math.log10(low));
  const last = Math.floor(Math.log10(high));
  for (let decade = first; decade <= last; decade++) {
    for (let tenths = 10; tenths < 100; tenths += tenths < 20 ? 2 : 10) {
      // 0.1 × 3 is not 0.3 in double precision; the text of the number is.
      const value = Number(`${tenths}e${decade - 1}`);
      if (value < low || value > high) continue;
      const size = [10, 20, 30, 50].includes(tenths) ? 'long' : tenths % 10 === 0 ? 'short' : 'hair';
      ticks.push({ value, size });
    }
  }
  return ticks;
}

/** Values that get a numeral: band edges, and 1, 2 and 5 of the decades beyond them. */
export function rulerNumerals({ low, high }: Pick<RulerScale, 'low' | 'high'>): number[] {
  const beyond = rulerTicks({ low, high })
    .filter(({ value }) => value < BAND_EDGES[0]! || value > BAND_EDGES[BAND_EDGES.length - 1]!)
    .map(({ value }) => value)
    .filter(
      (value) => [1, 2, 5].includes(Number(value.toExponential()[0])) && /^\de/.test(value.toExponential()),
    );
  const edges = BAND_EDGES.filter((edge) => edge >= low && edge <= high);
  const grown = high > 5 ? beyond : beyond.filter((value) => value < BAND_EDGES[0]!);
  return [...grown, ...edges].sort((a, b) => a - b);
}

export const isDecade = (value: number): boolean => /^1e/.test(value.toExponential());

/** A stretch of the ruler, µT. */
export interface Stretch {
  from: number;
  to: number;
}

/** The bands that the ruler shows, from the lowest; −1 is the one without ink. */
export function rulerBands({ low, high }: Pick<RulerScale, 'low' | 'high'>): (Stretch & { band: number })[] {
  return [-1, ...BAND_EDGES.keys()].flatMap((band) => {
    const from = Math.max(low, band < 0 ? 0 : BAND_EDGES[band]!);
    const to = Math.min(high, BAND_EDGES[band + 1] ?? Infinity);
    return to > from ? [{ band, from, to }] : [];
  });
}

/** The classes of a guideline within the ruler's range, each with its word. */
export function rulerClasses(
  set: Pick<GuidelineSet, 'edges'>,
  { low, high }: Pick<RulerScale, 'low' | 'high'>,
): (Stretch & { word: string })[] {
  return set.edges.flatMap(({ value, word }, i) => {
    const from = Math.max(low, value);
    const to = Math.min(high, set.edges[i + 1]?.value ?? Infinity);
    return to > from ? [{ word, from, to }] : [];
  });
}

/** The next band edge above or below a value, for stepping with the arrow keys. */
export function nextEdge(value: number, direction: 1 | -1): number {
  if (direction > 0) return BAND_EDGES.find((edge) => edge > value * 1.001) ?? value;
  return BAND_EDGES.findLast((edge) => edge < value * 0.999) ?? value;
}

/** A value a person would choose: two significant figures. */
export const chosenValue = (value: number): number => Number(value.toPrecision(2));
