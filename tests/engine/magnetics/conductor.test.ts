import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { conductorField, type Conductor } from '../../../src/engine/magnetics/conductor';
import { resultant, type Place } from '../../../src/engine/magnetics/phasor';

/** Endless, level and along y, over plan x at a height. */
const wire = (x: number, height: number, amperes: number, degrees = 0): Conductor => ({
  from: [x, 0, height],
  to: [x, 1, height],
  amperes,
  degrees,
  endless: true,
});
const fieldOf = (conductors: Conductor[], at: Place) => resultant(conductorField(conductors, at));

describe('one wire', () => {
  it('carries 25 A where its field is 1.0e-4 T at 5.0 cm (OpenStax, College Physics, Ampère’s law example)', () => {
    expect(fieldOf([wire(0, 0, 25)], [0.05, 0, 0])).toBeCloseTo(100, 9);
  });

  it('of 10 A, 2 m long, gives 1.41421 µT 1 m off its middle (closed form)', () => {
    const short: Conductor = { from: [0, -1, 0], to: [0, 1, 0], amperes: 10, degrees: 0, endless: false };
    expect(fieldOf([short], [1, 0, 0])).toBeCloseTo(1.41421, 5);
    expect(fieldOf([short], [0, 0, -1])).toBeCloseTo(Math.SQRT2, 12);
  });

  it('falls as 1/r, and cut anywhere its parts make the whole', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 50, noNaN: true }),
        fc.double({ min: -40, max: 40, noNaN: true }),
        (r, cut) => {
          expect(fieldOf([wire(0, 0, 10)], [0, 3, r])).toBeCloseTo(2 / r, 9);
          const part = (from: number, to: number): Conductor => ({
            from: [0, from, 0],
            to: [0, to, 0],
            amperes: 10,
            degrees: 0,
            endless: false,
          });
          expect(fieldOf([part(-60, cut), part(cut, 60)], [r, 3, 0])).toBeCloseTo(
            fieldOf([part(-60, 60)], [r, 3, 0]),
            9,
          );
        },
      ),
    );
  });

  it('curls round its current by the right hand', () => {
    const { re } = conductorField(
      [{ from: [0, 0, 0], to: [0, 0, 1], amperes: 5, degrees: 0, endless: true }],
      [1, 0, 7],
    );
    expect(re[0]).toBeCloseTo(0, 12);
    expect(re[1]).toBeCloseTo(1, 12);
    expect(re[2]).toBeCloseTo(0, 12);
  });

  it('is nothing without length, and bounded on the wire itself', () => {
    expect(fieldOf([{ ...wire(0, 0, 10), to: [0, 0, 0] }], [1, 0, 0])).toBe(0);
    expect(Number.isFinite(fieldOf([wire(0, 0, 10)], [0, 0, 0]))).toBe(true);
  });
});

describe('several wires', () => {
  it('of 2 A at three corners of a 1 cm square give 8.485e-5 T at the fourth (OpenStax, University Physics 2, ch. 12)', () => {
    const three = [wire(0, 0, 2), wire(0.01, 0, 2), wire(0, 0.01, 2)];
    expect(fieldOf(three, [0.01, 0, 0.01])).toBeCloseTo(84.85, 2);
  });

  it('out and back cancel', () => {
    expect(fieldOf([wire(1, 2, 30, 40), wire(1, 2, 30, 220)], [0, 0, 1])).toBeCloseTo(0, 12);
  });

  it('in quadrature add as squares', () => {
    const together = fieldOf([wire(-1, 0, 10, 0), wire(-1, 0, 10, 90)], [1, 0, 0]);
    expect(together).toBeCloseTo(Math.SQRT2, 12);
  });
});

describe('balanced three phases in a row, 1 m apart, 100 A', () => {
  const row = [wire(-1, 0, 100, 0), wire(0, 0, 100, 120), wire(1, 0, 100, 240)];

  // Closed form: 0.2·I·s/(r² + s²)·√(3 + s²/r²).
  it.each([
    [5, 1.3412],
    [10, 0.343552],
    [20, 0.086423],
    [40, 0.021639],
  ])('at %d m square to their plane: %d µT', (r, expected) => {
    expect(fieldOf(row, [0, 0, r])).toBeCloseTo(expected, 6);
    expect(fieldOf(row, [0, 0, r])).toBeCloseTo((20 / (r * r + 1)) * Math.sqrt(3 + 1 / (r * r)), 9);
  });

  it.each([
    [5, 1.452966],
    [10, 0.350492],
    [20, 0.086856],
    [40, 0.021666],
  ])('at %d m in their plane: %d µT', (r, expected) => {
    expect(fieldOf(row, [r, 0, 0])).toBeCloseTo(expected, 6);
  });
});
