import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { conductorField } from '../../../src/engine/magnetics/conductor';
import { loopOnAxis, squareCoil } from '../../../src/engine/magnetics/coil';
import { dipoleField, probeShare, type Dipole } from '../../../src/engine/magnetics/dipole';
import { resultant } from '../../../src/engine/magnetics/phasor';

const upright: Dipole = { at: [0, 0, 0], moment: [0, 0, 2], degrees: 0 };
const fieldOf = (dipoles: Dipole[], at: [number, number, number]) => resultant(dipoleField(dipoles, at));

describe('dipoles', () => {
  it('give 0.2·m/r³ on the axis and half of it beside (closed form)', () => {
    expect(fieldOf([upright], [0, 0, 2])).toBeCloseTo((0.2 * 2) / 8, 12);
    expect(fieldOf([upright], [2, 0, 0])).toBeCloseTo((0.1 * 2) / 8, 12);
  });

  it('fall as 1/r³ in every direction', () => {
    const part = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(part, part, part, (x, y, z) => {
        const r = Math.hypot(x, y, z);
        fc.pre(r > 0.1);
        expect(fieldOf([upright], [3 * x, 3 * y, 3 * z]) * 27).toBeCloseTo(fieldOf([upright], [x, y, z]), 8);
      }),
    );
  });

  it('a quarter period apart add as squares', () => {
    expect(fieldOf([upright, { ...upright, degrees: 90 }], [0, 0, 2])).toBeCloseTo(0.05 * Math.SQRT2, 12);
  });

  it('stay bounded at their own place', () => {
    expect(fieldOf([upright], [0, 0, 0])).toBeCloseTo((0.2 * 2) / 0.05 ** 3, 6);
  });
});

describe('coils', () => {
  it('two loops of 10 mA opposed, 0.50 m wide at 0.25 m and 1.00 m at 0.75 m: 5.77477e-9 T (OpenStax, University Physics 2, ch. 12)', () => {
    expect(loopOnAxis(0.01, 0.5, 0.25) - loopOnAxis(0.01, 1, 0.75)).toBeCloseTo(5.77477e-3, 8);
  });

  it('of many sides approach the round loop', () => {
    const n = 720;
    const corner = (i: number): [number, number, number] => [
      0.5 * Math.cos((2 * Math.PI * i) / n),
      0.5 * Math.sin((2 * Math.PI * i) / n),
      0,
    ];
    const sides = Array.from({ length: n }, (_, i) => ({
      from: corner(i),
      to: corner(i + 1),
      amperes: 10,
      degrees: 0,
      endless: false,
    }));
    expect(resultant(conductorField(sides, [0, 0, 0.25]))).toBeCloseTo(loopOnAxis(10, 0.5, 0.25), 4);
  });

  it('square give 0.8·√2·I/side at the middle (closed form)', () => {
    const coil = squareCoil({ at: [1, 2, 3], side: 0.4, ampereTurns: 5, lean: 0, bearing: 30, degrees: 0 });
    expect(resultant(conductorField(coil, [1, 2, 3]))).toBeCloseTo((0.8 * Math.SQRT2 * 5) / 0.4, 9);
  });

  it('look like a dipole of moment I·side² from far off, however turned', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 180, noNaN: true }),
        fc.double({ min: 0, max: 360, noNaN: true }),
        (lean, bearing) => {
          const coil = squareCoil({ at: [0, 0, 0], side: 0.1, ampereTurns: 50, lean, bearing, degrees: 0 });
          const [l, b] = [(lean * Math.PI) / 180, (bearing * Math.PI) / 180];
          const m = 50 * 0.01;
          const dipole: Dipole = {
            at: [0, 0, 0],
            moment: [m * Math.sin(l) * Math.sin(b), -m * Math.sin(l) * Math.cos(b), m * Math.cos(l)],
            degrees: 0,
          };
          const at: [number, number, number] = [1.2, -0.7, 0.9];
          const [far, near] = [resultant(conductorField(coil, at)), fieldOf([dipole], at)];
          expect(Math.abs(far / near - 1)).toBeLessThan(0.01);
        },
      ),
    );
  });
});

describe('a probe coil close to an appliance', () => {
  // Closed form: the mean of an axial dipole's field over a disc of radius a, against its middle.
  it.each([
    [3, -14.6],
    [5, -5.7],
    [10, -1.5],
  ])('at %d radii reads %d %% off', (radii, percent) => {
    expect((probeShare(0.05, radii * 0.05) - 1) * 100).toBeCloseTo(percent, 1);
  });

  it('is what the mean over the disc comes to', () => {
    const [a, r, rings] = [0.05, 0.15, 4000];
    let flux = 0;
    for (let i = 0; i < rings; i++) {
      const x = ((i + 0.5) / rings) * a;
      flux += dipoleField([upright], [x, 0, r]).re[2] * 2 * x * (a / rings);
    }
    expect(flux / a ** 2 / fieldOf([upright], [0, 0, r])).toBeCloseTo(probeShare(a, r), 6);
  });
});
