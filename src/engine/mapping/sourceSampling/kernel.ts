import { PER_ELEMENT, type Elements } from './elements';

/** Places in space, metres. */
export interface Sites {
  xs: Float64Array;
  ys: Float64Array;
  zs: Float64Array;
}

/** As of conductorField and dipoleField, whose fields these are. */
const LEAST_SQUARE = 1e-6;
const LEAST_DIPOLE_SQUARE = 0.0025;

/**
 * Add the field of wires and dipoles at sites first … end − 1 to `field`: six numbers a site from `start` on, x y z in phase
 * and x y z ahead, µT. The laws of magnetics/conductor (Biot and Savart) and magnetics/dipole, written out without objects.
 */
export function addFields(
  elements: Elements,
  sites: Sites,
  first: number,
  end: number,
  field: Float64Array,
  start = 0,
): void {
  for (let e = 0; e < elements.count; e++)
    if (elements.kinds[e] === 0)
      addWireField(elements.numbers, e * PER_ELEMENT, sites, first, end, field, start);
    else addDipoleField(elements.numbers, e * PER_ELEMENT, sites, first, end, field, start);
}

function addWireField(
  numbers: Float64Array,
  at: number,
  { xs, ys, zs }: Sites,
  first: number,
  end: number,
  field: Float64Array,
  start: number,
): void {
  const ax = numbers[at];
  const ay = numbers[at + 1];
  const az = numbers[at + 2];
  let tx = numbers[at + 3] - ax;
  let ty = numbers[at + 4] - ay;
  let tz = numbers[at + 5] - az;
  const re = 0.1 * numbers[at + 6];
  const im = 0.1 * numbers[at + 7];
  const length = Math.sqrt(tx * tx + ty * ty + tz * tz);
  if (length === 0) return;
  tx /= length;
  ty /= length;
  tz /= length;
  for (let i = first, to = start; i < end; i++, to += 6) {
    const ox = xs[i] - ax;
    const oy = ys[i] - ay;
    const oz = zs[i] - az;
    const forward = ox * tx + oy * ty + oz * tz;
    const back = length - forward;
    const cx = ty * oz - tz * oy;
    const cy = tz * ox - tx * oz;
    const cz = tx * oy - ty * ox;
    let square = cx * cx + cy * cy + cz * cz;
    if (square < LEAST_SQUARE) square = LEAST_SQUARE;
    const size =
      (forward / Math.sqrt(forward * forward + square) + back / Math.sqrt(back * back + square)) / square;
    const inPhase = size * re;
    const ahead = size * im;
    field[to] += cx * inPhase;
    field[to + 1] += cy * inPhase;
    field[to + 2] += cz * inPhase;
    field[to + 3] += cx * ahead;
    field[to + 4] += cy * ahead;
    field[to + 5] += cz * ahead;
  }
}

function addDipoleField(
  numbers: Float64Array,
  at: number,
  { xs, ys, zs }: Sites,
  first: number,
  end: number,
  field: Float64Array,
  start: number,
): void {
  const px = numbers[at];
  const py = numbers[at + 1];
  const pz = numbers[at + 2];
  const ax = numbers[at + 3];
  const ay = numbers[at + 4];
  const az = numbers[at + 5];
  const bx = numbers[at + 6];
  const by = numbers[at + 7];
  const bz = numbers[at + 8];
  for (let i = first, to = start; i < end; i++, to += 6) {
    const ox = xs[i] - px;
    const oy = ys[i] - py;
    // On the very place of a dipole any direction serves: upwards.
    let oz = zs[i] - pz;
    let gap = ox * ox + oy * oy + oz * oz;
    if (gap === 0) gap = (oz = 1e-12) * oz;
    const square = gap < LEAST_DIPOLE_SQUARE ? LEAST_DIPOLE_SQUARE : gap;
    const scale = 0.1 / (square * Math.sqrt(square));
    const inPhase = (3 * (ax * ox + ay * oy + az * oz)) / gap;
    const ahead = (3 * (bx * ox + by * oy + bz * oz)) / gap;
    field[to] += scale * (inPhase * ox - ax);
    field[to + 1] += scale * (inPhase * oy - ay);
    field[to + 2] += scale * (inPhase * oz - az);
    field[to + 3] += scale * (ahead * ox - bx);
    field[to + 4] += scale * (ahead * oy - by);
    field[to + 5] += scale * (ahead * oz - bz);
  }
}
