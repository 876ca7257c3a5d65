import { BAND_EDGES } from '../../engine/contours/thresholds';

/** Everything a painter may dip into. One ink, absolute: the same tint means the same µT everywhere. */
export interface Ink {
  /** k0 (paper) to k9, by band index + 1. */
  bands: readonly string[];
  /** Contour lines and labels over the strong tints (0.5 µT and more). */
  over: string;
  lift: string;
  text: string;
  text2: string;
  text3: string;
  wall: string;
  rule: string;
  hatch: string;
  accent: string;
}

const LIGHT_BANDS = [
  '#f5f8f4',
  '#f0edf1',
  '#e8e3e8',
  '#ded6dd',
  '#cec1ce',
  '#bda6bd',
  '#aa87a7',
  '#96688e',
  '#804c71',
  '#643553',
] as const;

/** The light tokens on white paper. */
export const PRINT_INK: Ink = {
  bands: ['#ffffff', ...LIGHT_BANDS.slice(1)],
  over: '#fcfdfb',
  lift: '#fcfdfb',
  text: '#261c29',
  text2: '#5b525e',
  text3: '#6c646e',
  wall: '#382d3b',
  rule: '#cac5c9',
  hatch: '#8a858b',
  accent: '#005f60',
};

/** The page's tokens as they stand now, light or dark. */
export function readInk(root: HTMLElement): Ink {
  const style = getComputedStyle(root);
  const token = (name: string) => style.getPropertyValue(`--${name}`).trim();
  const bands = LIGHT_BANDS.map((fallback, k) => token(`k${k}`) || fallback);
  return {
    bands,
    over: root.dataset.theme === 'dark' ? bands[0]! : token('lift'),
    lift: token('lift'),
    text: token('text'),
    text2: token('text2'),
    text3: token('text3'),
    wall: token('wall'),
    rule: token('rule'),
    hatch: token('hatch'),
    accent: token('accent'),
  };
}

/** The sheet itself: no ink. */
export const paper = (ink: Ink): string => ink.bands[0]!;

/** The tint of a band, −1 (below the lowest edge) to the highest. */
export const tint = (ink: Ink, band: number): string => ink.bands[band + 1]!;

/** Contour lines change side at this value, so that they stand off the tint on either side of them, µT. */
export const STRONG = 0.5;

/** The colour of a contour line. */
export const contourInk = (ink: Ink, value: number): string => (value < STRONG ? ink.bands[9]! : ink.over);

/** The colours of a contour's label: below the change of side haloed with the lower band's own tint. */
export function contourLabelInk(ink: Ink, value: number): { fill: string; halo: string } {
  if (value >= STRONG) return { fill: ink.over, halo: ink.bands[9]! };
  const below = BAND_EDGES.filter((edge) => edge < value).length - 1;
  return { fill: ink.text, halo: tint(ink, below) };
}
