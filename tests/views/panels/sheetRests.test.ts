import { describe, expect, it } from 'vitest';
import { restAt, restHeights } from '../../../src/views/panels/sheetRests';

describe('the phone’s sheet', () => {
  it('rests at one sentence, about half, and whole less the top line', () => {
    expect(restHeights(844, 'judge')).toEqual([96, 380, 788]);
    expect(restHeights(844, 'survey')).toEqual([96, 447, 788]);
  });

  it('gives the number pad its room on a small phone, and never more than there is', () => {
    expect(restHeights(667, 'survey')).toEqual([96, 440, 611]);
    const [low, half, whole] = restHeights(400, 'survey');
    expect(low).toBeLessThan(half);
    expect(half).toBe(whole);
  });

  it('comes to the nearest rest, and one further on a flick', () => {
    const heights: [number, number, number] = [96, 380, 788];
    expect(restAt(250, 0, heights)).toBe(1);
    expect(restAt(230, 0, heights)).toBe(0);
    expect(restAt(420, 1.2, heights)).toBe(2);
    expect(restAt(420, -1.2, heights)).toBe(0);
  });
});
