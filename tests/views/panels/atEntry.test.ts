import { describe, expect, it } from 'vitest';
import { atEntry } from '../../../src/views/panels/survey/atEntry';

describe('a value, judged while its reader still stands there', () => {
  it('fits inside the interval', () => {
    for (const value of [0.041, 0.07, 0.099])
      expect(atEntry(value, 'uT', 0.04, 0.1)).toEqual({ kind: 'fits' });
    expect(atEntry(0.109, 'uT', 0.04, 0.1)).toEqual({ kind: 'above' });
  });

  it('is said to lie above or below where it is not far off', () => {
    expect(atEntry(0.2, 'uT', 0.04, 0.1)).toEqual({ kind: 'above' });
    expect(atEntry(0.02, 'uT', 0.04, 0.1)).toEqual({ kind: 'below' });
  });

  it('asks for the unit in which the same figures would fit', () => {
    // 1.4 shown in mG, taken for µT.
    expect(atEntry(1.4, 'uT', 0.1, 0.18)).toEqual({ kind: 'far', side: 'above', unit: 'mG' });
    // 140 shown in nT.
    expect(atEntry(140, 'uT', 0.1, 0.18)).toEqual({ kind: 'far', side: 'above', unit: 'nT' });
    // 0.14 shown in µT, taken for nT.
    expect(atEntry(0.00014, 'nT', 0.1, 0.18)).toEqual({ kind: 'far', side: 'below', unit: 'uT' });
  });

  it('asks without a unit where no unit makes it fit', () => {
    expect(atEntry(6, 'uT', 0.1, 0.18)).toEqual({ kind: 'far', side: 'above', unit: null });
  });
});
