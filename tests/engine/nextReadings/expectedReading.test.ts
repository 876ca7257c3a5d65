import { describe, expect, it } from 'vitest';
import { COMMON_METER, correct } from '../../../src/engine/survey/meter';
import { expectedReading } from '../../../src/engine/nextReadings/expectedReading';
import { fieldOf } from '../../../src/engine/mapping/field';
import { HALF_90 } from '../../../src/engine/mapping/interval';
import { random } from '../../../src/engine/algebra/random';
import { kriged, METER, readAt, scattered } from './surveyed';

const EXACT = { ...COMMON_METER, percent: 0, absolute: 0, resolution: 0 };

describe('what a meter is expected to show', () => {
  it('is the field itself where the meter never errs, and wider the more it may', () => {
    expect(expectedReading(EXACT, 0.05, 0.2).low).toBeCloseTo(0.05, 12);
    expect(expectedReading(EXACT, 0.05, 0.2).high).toBeCloseTo(0.2, 12);
    const [fine, rough] = [5, 25].map((percent) => expectedReading({ ...EXACT, percent }, 0.05, 0.2));
    expect(rough.low).toBeLessThan(fine.low);
    expect(rough.high).toBeGreaterThan(fine.high);
    expect(fine.low).toBeLessThan(0.05);
  });

  it('fault: the display of a meter that is corrected was held against the corrected field', () => {
    const meter = { ...EXACT, gain: 0.5, offset: 0.01 };
    const { low, high } = expectedReading(meter, 0.05, 0.2);
    expect(correct(meter, low)).toBeCloseTo(0.05, 12);
    expect(correct(meter, high)).toBeCloseTo(0.2, 12);
  });

  it('holds nine in ten of the readings that come', () => {
    const chance = random(77);
    let inside = 0;
    const trials = 600;
    for (let seed = 1; seed <= trials; seed++) {
      const [coming, ...before] = readAt(scattered(13, [0, 0, 6, 5], seed), seed);
      const { mean, variance } = fieldOf(kriged(before), 'l1', 1).predict([coming.at[0]], [coming.at[1]], {
        variance: true,
      });
      const half = HALF_90 * Math.sqrt(variance![0]);
      const rough = { ...METER, percent: 30 };
      const { low, high } = expectedReading(rough, Math.exp(mean[0] - half), Math.exp(mean[0] + half));
      // Read by a rougher meter than the others: 15 %, one standard deviation.
      const shown = coming.value * (1 + 0.15 * chance.normal());
      if (shown >= low && shown <= high) inside++;
    }
    expect(inside / trials).toBeGreaterThan(0.87);
    expect(inside / trials).toBeLessThan(0.93);
  });
});
