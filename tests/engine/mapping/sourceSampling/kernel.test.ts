import { describe, expect, it } from 'vitest';
import { addDipole, addWire, noElements } from '../../../../src/engine/mapping/sourceSampling/elements';
import { addFields } from '../../../../src/engine/mapping/sourceSampling/kernel';
import { conductorField } from '../../../../src/engine/magnetics/conductor';
import { dipoleField } from '../../../../src/engine/magnetics/dipole';
import { phase, type Place } from '../../../../src/engine/magnetics/phasor';
import { random } from '../../../../src/engine/algebra/random';

const SEED = 301;

describe('fields of wires and dipoles at many places', () => {
  it(`are those of magnetics, to 1e-12 of their size (seed ${SEED})`, () => {
    const chance = random(SEED);
    const place = (): Place => [chance.between(-5, 5), chance.between(-5, 5), chance.between(0, 3)];
    for (let round = 0; round < 200; round++) {
      const [from, to, at, moment] = [place(), place(), place(), place()];
      const [amperes, degrees] = [chance.between(0.1, 5), chance.between(0, 360)];
      const { re, im } = phase(degrees);
      const elements = noElements(2);
      addWire(elements, ...from, ...to, amperes * re, amperes * im);
      addDipole(elements, ...at, ...moment, re, im);
      const places = Array.from({ length: 5 }, place);
      const sites = {
        xs: Float64Array.from(places, ([x]) => x),
        ys: Float64Array.from(places, ([, y]) => y),
        zs: Float64Array.from(places, ([, , z]) => z),
      };
      const field = new Float64Array(6 * 3);
      addFields(elements, sites, 1, 4, field);
      for (let i = 1; i < 4; i++) {
        const wire = conductorField([{ from, to, amperes, degrees, endless: false }], places[i]);
        const small = dipoleField([{ at, moment, degrees }], places[i]);
        const expected = [
          ...wire.re.map((part, k) => part + small.re[k]),
          ...wire.im.map((part, k) => part + small.im[k]),
        ];
        const size = Math.hypot(...wire.re, ...wire.im) + Math.hypot(...small.re, ...small.im);
        expected.forEach((part, k) =>
          expect(Math.abs(field[6 * (i - 1) + k] - part)).toBeLessThan(1e-12 * size),
        );
      }
    }
  });

  it('have bounds where a place is inside a source', () => {
    const elements = noElements(3);
    addWire(elements, 0, 0, 0, 2, 0, 0, 1, 0);
    addDipole(elements, 1, 0, 0, 0, 0, 0.3, 1, 0);
    // A wire of no length makes nothing.
    addWire(elements, 1, 1, 1, 1, 1, 1, 5, 0);
    const sites = { xs: Float64Array.of(1), ys: Float64Array.of(0), zs: Float64Array.of(0) };
    const field = new Float64Array(6);
    addFields(elements, sites, 0, 1, field);
    const dipole = dipoleField([{ at: [1, 0, 0], moment: [0, 0, 0.3], degrees: 0 }], [1, 0, 0]);
    expect(field[2]).toBeCloseTo(dipole.re[2], 9);
    expect([...field].every(Number.isFinite)).toBe(true);
  });
});
