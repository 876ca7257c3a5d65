import { describe, expect, it } from 'vitest';
import { COMMON_METER } from '../../../src/engine/survey/meter';
import { observe } from '../../../src/engine/mapping/observations';
import { reading } from '../../support/readings';

describe('observe', () => {
  it('corrects before it takes logarithms', () => {
    const meter = { ...COMMON_METER, gain: 0.5, offset: 0.1 };
    expect(observe([reading(1, [0, 0], 1, { meter })])[0].ln).toBeCloseTo(Math.log(0.6), 12);
  });

  it('makes one place of readings under a millimetre apart, of two otherwise', () => {
    const places = observe([
      reading(1, [1, 1], 0.2),
      reading(2, [1.0005, 1], 0.2),
      reading(3, [1.002, 1], 0.2),
      reading(4, [1, 1], 0.2, { height: 0.6 }),
      reading(5, [1, 1], 0.2, { level: 'l2' }),
    ]);
    expect(places.map(({ ids }) => ids)).toEqual([['m1', 'm2'], ['m3'], ['m4'], ['m5']]);
  });

  it('weights by what the meters are worth', () => {
    const fine = { ...COMMON_METER, percent: 1, absolute: 0, resolution: 0 };
    const coarse = { ...COMMON_METER, percent: 10, absolute: 0, resolution: 0 };
    const [place] = observe([
      reading(1, [0, 0], 0.2, { meter: fine }),
      reading(2, [0, 0], 0.3, { meter: coarse }),
    ]);
    const share = (place.ln - Math.log(0.2)) / (Math.log(0.3) - Math.log(0.2));
    expect(share).toBeCloseTo(1 / 101, 3);
  });

  it('does not believe a meter more for being asked twice', () => {
    const once = observe([reading(1, [0, 0], 0.2, { meter: COMMON_METER })])[0];
    const twice = observe([1, 2].map((id) => reading(id, [0, 0], 0.2, { meter: COMMON_METER })))[0];
    expect(twice.ln).toBeCloseTo(once.ln, 12);
    expect(twice.variance).toBeCloseTo(once.variance, 12);
  });

  it('adds the scatter of repeats as a standard error: JCGM 100 4.2.3', () => {
    const [place] = observe([0.1, 0.1 * Math.E].map((value, i) => reading(i, [0, 0], value)));
    expect(place.ln).toBeCloseTo(Math.log(0.1) + 0.5, 12);
    expect(place.variance).toBeCloseTo(0.25, 12);
  });

  it('counts a wandering display and a peak-hold figure as less sure', () => {
    const [steady, wandering, peak] = observe([
      reading(1, [0, 0], 0.2),
      reading(2, [1, 0], 0.2, { min: 0.1, max: 0.4 }),
      reading(3, [2, 0], 0.2, { peak: true }),
    ]).map(({ variance }) => variance);
    expect(steady).toBe(0);
    expect(wandering).toBeCloseTo(Math.log(4) ** 2 / 12, 12);
    expect(peak).toBeCloseTo(0.04, 12);
  });

  it('takes a value past an end of the range for a limit, marked or not', () => {
    const meter = { ...COMMON_METER, range: [0.01, 20] as const };
    const [below, under, above, over] = observe([
      reading(1, [0, 0], 0.02, { meter, limit: 'below' }),
      reading(2, [1, 0], 0, { meter }),
      reading(3, [2, 0], 20, { meter, limit: 'above' }),
      reading(4, [3, 0], 25, { meter }),
    ]);
    expect(below.ln).toBeCloseTo(Math.log(0.01), 12);
    expect(under.ln).toBeCloseTo(Math.log(0.005), 12);
    expect(above.ln).toBeCloseTo(Math.log(40), 12);
    expect(over.ln).toBeCloseTo(Math.log(40), 12);
    expect([below, under, above, over].map(({ limited }) => limited)).toEqual([
      'below',
      'below',
      'above',
      'above',
    ]);
    for (const { variance } of [below, under, above, over])
      expect(2 * Math.sqrt(variance)).toBeCloseTo(Math.LN2, 12);
  });

  it('keeps a logarithm of nothing finite', () => {
    const meter = { ...COMMON_METER, offset: -0.05 };
    const [place] = observe([reading(1, [0, 0], 0.03, { meter })]);
    expect(place.ln).toBeCloseTo(Math.log(0.001), 12);
    expect(Number.isFinite(place.variance)).toBe(true);
  });
});
