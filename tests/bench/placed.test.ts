import { expect, it } from 'vitest';
import { measurePlaced } from './placed';

it('readings placed by the rule bring known homes nearer than as many more spread ones', () => {
  const { first, fixed, placed, won } = measurePlaced({ method: 'source-kriging', marked: true, homes: 8 });
  expect(fixed.median).toBeLessThan(first.median);
  expect(placed.median).toBeLessThan(fixed.median);
  expect(won).toBeGreaterThan(4);
});
