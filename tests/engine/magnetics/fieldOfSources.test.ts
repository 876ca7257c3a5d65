import { expect, it } from 'vitest';
import { fieldOfSources } from '../../../src/engine/magnetics/fieldOfSources';
import type { Conductor } from '../../../src/engine/magnetics/conductor';

const wire: Conductor = { from: [0, 0, 0], to: [0, 1, 0], amperes: 10, degrees: 0, endless: true };

it('adds wires and dipoles as phasors and the ambient field as squares', () => {
  // 10 A at 2 m is 1 µT upright (−z at x > 0); 40 A·m² upright at 2 m beside it is 0.5 µT the same way.
  const dipole = { at: [0, 0, 0] as const, moment: [0, 0, 40] as const, degrees: 0 };
  expect(fieldOfSources({ conductors: [wire], dipoles: [dipole], ambient: 0 }, [2, 0, 0])).toBeCloseTo(
    1.5,
    12,
  );
  const against = { ...dipole, degrees: 180 };
  expect(fieldOfSources({ conductors: [wire], dipoles: [against], ambient: 0 }, [2, 0, 0])).toBeCloseTo(
    0.5,
    12,
  );
  const quarter = { ...dipole, degrees: 90 };
  expect(fieldOfSources({ conductors: [wire], dipoles: [quarter], ambient: 0.6 }, [2, 0, 0])).toBeCloseTo(
    Math.hypot(1, 0.5, 0.6),
    12,
  );
});

it('of no source is the ambient field', () => {
  expect(fieldOfSources({ conductors: [], dipoles: [], ambient: 0.02 }, [5, 5, 1])).toBe(0.02);
});
