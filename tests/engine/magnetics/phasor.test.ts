import { expect, it } from 'vitest';
import { accumulate, noField, phase, resultant } from '../../../src/engine/magnetics/phasor';

it('a meter shows the root of the sum of squares of three axes: 1.2, 0.5, 0.8 give 1.526434 (definition)', () => {
  expect(resultant({ re: [1.2, 0.5, 0.8], im: [0, 0, 0] })).toBeCloseTo(1.526434, 6);
});

it('a field that turns reads √2 of one that does not', () => {
  const field = noField();
  accumulate(field, [1, 0, 0], 1, phase(0));
  accumulate(field, [0, 1, 0], 1, phase(90));
  expect(resultant(field)).toBeCloseTo(Math.SQRT2, 12);
});

it('three equal phases in one place add to nothing', () => {
  const field = noField();
  for (const degrees of [0, 120, 240]) accumulate(field, [1, 2, 3], 4, phase(degrees));
  expect(resultant(field)).toBeCloseTo(0, 12);
});
