import { describe, expect, it } from 'vitest';
import { measureAccuracy } from '../../bench/accuracy';
import type { BuildName } from '../../support/generators/builds';
import type { MethodChoice } from '../../../src/engine/mapping/survey';

const known = new Map<string, ReturnType<typeof measureAccuracy>>();

function of(build: BuildName, method: MethodChoice, readings = 36) {
  const key = `${build} ${method} ${readings}`;
  if (!known.has(key)) known.set(key, measureAccuracy({ build, method, readings, homes: 40, marked: true }));
  return known.get(key)!;
}

describe('source kriging of known homes whose visible sources are marked', () => {
  it.each([
    ['along walls', 12],
    ['along walls', 36],
    ['wandering', 36],
    ['off by 8 cm', 24],
  ] as const)('%s, %d readings: much nearer than kriging, with intervals that hold', (build, readings) => {
    const explained = of(build, 'source-kriging', readings);
    const kriged = of(build, 'kriging', readings);
    expect(explained.median).toBeLessThan(0.75 * kriged.median);
    expect(explained.p90).toBeLessThan(kriged.p90);
    expect(explained.coverage).toBeGreaterThan(0.88);
    expect(explained.coverage).toBeLessThan(0.96);
  });

  it('at 36 readings lies within a factor of 1.2 in half of the homes, and of 1.4 in nine of ten', () => {
    const { median, p90 } = of('along walls', 'source-kriging');
    expect(median).toBeLessThan(Math.log10(1.2));
    expect(p90).toBeLessThan(Math.log10(1.4));
  });
});

describe('the choice among methods', () => {
  it.each(['along walls', 'wandering', 'no current', 'wrong marks', 'off by 8 cm'] as const)(
    '%s: never notably worse than kriging, whatever is marked',
    (build) => {
      const auto = of(build, 'auto');
      const kriged = of(build, 'kriging');
      expect(auto.median).toBeLessThan(1.1 * kriged.median);
      expect(auto.p90).toBeLessThan(1.15 * kriged.p90);
      expect(auto.worst.error).toBeLessThan(1.3 * kriged.worst.error);
      expect(auto.coverage).toBeGreaterThan(0.88);
    },
  );

  it('takes the sources where they explain', () => {
    expect(of('along walls', 'auto').median).toBeLessThan(0.65 * of('along walls', 'kriging').median);
  });
});
