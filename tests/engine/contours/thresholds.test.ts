import { expect, it } from 'vitest';
import { BAND_EDGES, bandOf, HALF_STEPS } from '../../../src/engine/contours/thresholds';

it('puts an edge into the band it opens', () => {
  expect(bandOf(0)).toBe(-1);
  expect(bandOf(0.0199)).toBe(-1);
  BAND_EDGES.forEach((edge, i) => {
    expect(bandOf(edge)).toBe(i);
    expect(bandOf(edge * 0.999)).toBe(i - 1);
  });
  expect(bandOf(200)).toBe(BAND_EDGES.length - 1);
});

it('has one half step inside every band', () => {
  expect(HALF_STEPS.map(bandOf)).toEqual(BAND_EDGES.map((_, i) => i));
});
