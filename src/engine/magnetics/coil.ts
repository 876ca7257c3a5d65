import type { Conductor } from './conductor';
import type { Place } from './phasor';

/** Field on the axis of a round loop of current, µT: 0.2·π·I·R²/(R² + z²)^(3/2), I in A, R and z in m. */
export const loopOnAxis = (amperes: number, radius: number, along: number): number =>
  (0.2 * Math.PI * amperes * radius ** 2) / (radius ** 2 + along ** 2) ** 1.5;

/**
 * A square coil as four conductors: its middle, the side in metres, ampere-turns, and how it is turned: `lean` degrees from
 * lying flat, about an axis that points `bearing` degrees counter-clockwise from +x.
 */
export function squareCoil(coil: {
  at: Place;
  side: number;
  ampereTurns: number;
  lean: number;
  bearing: number;
  degrees: number;
}): Conductor[] {
  const half = coil.side / 2;
  const [lean, bearing] = [(coil.lean * Math.PI) / 180, (coil.bearing * Math.PI) / 180];
  const corner = (u: number, v: number): Place => [
    coil.at[0] + u * Math.cos(bearing) - v * Math.cos(lean) * Math.sin(bearing),
    coil.at[1] + u * Math.sin(bearing) + v * Math.cos(lean) * Math.cos(bearing),
    coil.at[2] + v * Math.sin(lean),
  ];
  const corners = [corner(-half, -half), corner(half, -half), corner(half, half), corner(-half, half)];
  return corners.map((from, i) => ({
    from,
    to: corners[(i + 1) % 4],
    amperes: coil.ampereTurns,
    degrees: coil.degrees,
    endless: false,
  }));
}
