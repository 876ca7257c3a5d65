/**
 * What sources are made of: straight wires and dipoles, each nine numbers of one array, so that thousands of them a second
 * cost no object. A wire: from x y z, to x y z, current in phase and ahead (A). A dipole: place x y z, moment in phase x y
 * z, moment ahead x y z (A·m²).
 */
export interface Elements {
  count: number;
  /** 0 a wire, 1 a dipole. */
  kinds: Uint8Array;
  numbers: Float64Array;
}

export const PER_ELEMENT = 9;

export const noElements = (room: number): Elements => ({
  count: 0,
  kinds: new Uint8Array(room),
  numbers: new Float64Array(room * PER_ELEMENT),
});

export function addWire(
  elements: Elements,
  ax: number,
  ay: number,
  az: number,
  bx: number,
  by: number,
  bz: number,
  re: number,
  im: number,
): void {
  const { numbers } = elements;
  const at = elements.count * PER_ELEMENT;
  elements.kinds[elements.count++] = 0;
  numbers[at] = ax;
  numbers[at + 1] = ay;
  numbers[at + 2] = az;
  numbers[at + 3] = bx;
  numbers[at + 4] = by;
  numbers[at + 5] = bz;
  numbers[at + 6] = re;
  numbers[at + 7] = im;
}

/** A dipole of one phase: `re`, `im` its share in phase and ahead, times the moment m. */
export function addDipole(
  elements: Elements,
  x: number,
  y: number,
  z: number,
  mx: number,
  my: number,
  mz: number,
  re: number,
  im: number,
): void {
  const { numbers } = elements;
  const at = elements.count * PER_ELEMENT;
  elements.kinds[elements.count++] = 1;
  numbers[at] = x;
  numbers[at + 1] = y;
  numbers[at + 2] = z;
  numbers[at + 3] = mx * re;
  numbers[at + 4] = my * re;
  numbers[at + 5] = mz * re;
  numbers[at + 6] = mx * im;
  numbers[at + 7] = my * im;
  numbers[at + 8] = mz * im;
}
