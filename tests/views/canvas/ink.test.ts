import { describe, expect, test } from 'vitest';
import { BAND_EDGES, bandOf } from '../../../src/engine/contours/thresholds';
import { contourInk, contourLabelInk, paper, PRINT_INK, tint } from '../../../src/views/canvas/ink';

/** CIE L* of an sRGB colour (IEC 61966-2-1; CIE 15). */
function lightness(hex: string): number {
  const channel = (at: number) => {
    const c = parseInt(hex.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  };
  const y = 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
  return y > 216 / 24389 ? 116 * Math.cbrt(y) - 16 : (24389 / 27) * y;
}

/** WCAG 2.2 contrast of two colours. */
function contrast(a: string, b: string): number {
  const luminance = (hex: string) => {
    const l = lightness(hex);
    return l > 8 ? ((l + 16) / 116) ** 3 : (l * 27) / 24389;
  };
  const [x, y] = [luminance(a), luminance(b)];
  return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05);
}

describe('ink', () => {
  test('grows darker by at least 2.5 L* from every band to the next', () => {
    const steps = PRINT_INK.bands
      .slice(1)
      .map((colour, i) => lightness(PRINT_INK.bands[i]!) - lightness(colour));
    for (const step of steps) expect(step).toBeGreaterThan(2.5);
  });

  test('is paper below the lowest edge, and the same tint for the same value everywhere', () => {
    expect(tint(PRINT_INK, bandOf(0.01))).toBe(paper(PRINT_INK));
    expect(tint(PRINT_INK, bandOf(0.1))).toBe('#cec1ce');
    expect(tint(PRINT_INK, bandOf(3))).toBe('#643553');
  });

  test('labels of contours stay readable on their halo: 7 to 1 at every value', () => {
    for (const value of [...BAND_EDGES, 0.07, 0.15, 0.7]) {
      const { fill, halo } = contourLabelInk(PRINT_INK, value);
      expect(contrast(fill, halo)).toBeGreaterThan(7);
    }
  });

  test('contour lines change side at 0.5 µT', () => {
    expect(contourInk(PRINT_INK, 0.4)).toBe(PRINT_INK.bands[9]);
    expect(contourInk(PRINT_INK, 0.5)).toBe(PRINT_INK.over);
  });
});
