import type { Ring } from '../../../engine/geometry/point';

/**
 * A test for many places against the same rings, even-odd: their sides are laid out once as plain numbers. Lettering
 * asks it thousands of times a frame.
 */
export function insideTest(rings: readonly Ring[]): (x: number, y: number) => boolean {
  const count = rings.reduce((sum, ring) => sum + ring.length, 0);
  const sides = new Float64Array(4 * count);
  let at = 0;
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i++, at += 4) {
      const [a, b] = [ring[i]!, ring[(i + 1) % ring.length]!];
      sides[at] = a[0];
      sides[at + 1] = a[1];
      sides[at + 2] = b[0];
      sides[at + 3] = b[1];
    }
  }
  return (x, y) => {
    let inside = false;
    for (let k = 0; k < sides.length; k += 4) {
      const [y0, y1] = [sides[k + 1]!, sides[k + 3]!];
      if (y0 > y === y1 > y) continue;
      const x0 = sides[k]!;
      if (x < x0 + ((y - y0) / (y1 - y0)) * (sides[k + 2]! - x0)) inside = !inside;
    }
    return inside;
  };
}
