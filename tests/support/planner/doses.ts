import { fieldOf } from '../../../src/engine/mapping/field';
import { quad, type P } from './shapes';
import type { ArrangePiece, ArrangeRequest } from '../../../src/engine/arranging/request';
import type { FittedSurvey } from '../../../src/engine/mapping/fitSurvey';
import type { Place } from './places';

/** The body's rectangle in the axes of its piece. */
function body({ kind, size }: ArrangePiece, side: string): [number, number, number, number] {
  const [w, l] = [size[0] / 2, size[1] / 2];
  if (kind === 'desk') return [-0.3, 0.3, -l - 0.6, -l];
  if (kind !== 'bed' && kind !== 'cot') return [-0.3, 0.3, -0.3, 0.3];
  if (side === 'left') return [0, w, -l, l];
  if (side === 'right') return [-w, 0, -l, l];
  return [-Math.min(0.3, w), Math.min(0.3, w), -l, l];
}

const CELL = 0.1;
const SUPPORT_CELL = 0.2;

/** The estimate at the middles of cells of a lattice, each asked for once. */
interface Cells {
  value(i: number, j: number): number;
  doubt(i: number, j: number): number;
}

const known = new WeakMap<FittedSurvey, Map<string, Cells>>();

function cellsOf(fitted: FittedSurvey, level: string, height: number): Cells {
  const made = known.get(fitted) ?? new Map<string, Cells>();
  known.set(fitted, made);
  const key = `${level} ${height}`;
  const cells = made.get(key) ?? makeCells(fitted, level, height);
  made.set(key, cells);
  return cells;
}

function makeCells(fitted: FittedSurvey, level: string, height: number): Cells {
  const field = fieldOf(fitted, level, height);
  const kept = <T>(make: (x: number, y: number) => T, cell: number) => {
    const found = new Map<string, T>();
    return (i: number, j: number): T => {
      const key = `${i} ${j}`;
      const value = found.get(key) ?? make((i + 0.5) * cell, (j + 0.5) * cell);
      found.set(key, value);
      return value;
    };
  };
  return {
    value: kept((x, y) => Math.exp(field.predict([x], [y], { variance: false }).mean[0]), CELL),
    doubt: kept((x, y) => field.support([x], [y]).doubt[0], SUPPORT_CELL),
  };
}

const levelOf = (request: ArrangeRequest, { room }: Place): string =>
  request.rooms.find(({ id }) => id === room)!.level;

/** Whether 95 % of a body's 0.2 m cells lie in cells of the map that deserve to be shown. */
export function supported(request: ArrangeRequest, place: Place, side: string): boolean {
  const { doubt } = cellsOf(request.fitted, levelOf(request, place), place.piece.height);
  const [x0, x1, y0, y1] = body(place.piece, side);
  const [m, n] = [Math.ceil((x1 - x0) / 0.2 - 1e-9), Math.ceil((y1 - y0) / 0.2 - 1e-9)];
  let drawn = 0;
  for (let i = 0; i < m; i++)
    for (let j = 0; j < n; j++) {
      const [u, v] = [x0 + ((i + 0.5) * (x1 - x0)) / m, y0 + ((j + 0.5) * (y1 - y0)) / n];
      const [x, y] = quad(place, [u, u, v, v])[0];
      if (doubt(Math.floor(x / SUPPORT_CELL), Math.floor(y / SUPPORT_CELL)) <= 1) drawn++;
    }
  return drawn >= 0.95 * m * n;
}

/** Planned daily dose at a place, µT·h, summed over users: the field's 0.1 m cells, each weighed with the floor it shares with the body. */
export function planned(request: ArrangeRequest, place: Place): number {
  const { piece } = place;
  const { value } = cellsOf(request.fitted, levelOf(request, place), piece.height);
  const upright = Math.abs(place.angle / 90 - Math.round(place.angle / 90)) < 1e-9;
  return piece.uses.reduce((sum, { side, hours }) => {
    const extent = body(piece, side);
    const mean = upright ? cellsMean(value, quad(place, extent)) : samplesMean(value, place, extent);
    return sum + hours * mean;
  }, 0);
}

function cellsMean(value: Cells['value'], ring: readonly P[]): number {
  const xs = ring.map(([x]) => x);
  const ys = ring.map(([, y]) => y);
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  let [sum, total] = [0, 0];
  for (let i = Math.floor(x0 / CELL - 1e-9); i * CELL < x1; i++) {
    for (let j = Math.floor(y0 / CELL - 1e-9); j * CELL < y1; j++) {
      const wide = Math.min(x1, (i + 1) * CELL) - Math.max(x0, i * CELL);
      const high = Math.min(y1, (j + 1) * CELL) - Math.max(y0, j * CELL);
      if (wide <= 0 || high <= 0) continue;
      sum += wide * high * value(i, j);
      total += wide * high;
    }
  }
  return sum / total;
}

/** Samples not further apart than 0.05 m, each between the four cell middles round it. */
function samplesMean(
  value: Cells['value'],
  place: Place,
  [x0, x1, y0, y1]: readonly [number, number, number, number],
): number {
  const m = Math.ceil((x1 - x0) / 0.05 - 1e-9);
  const n = Math.ceil((y1 - y0) / 0.05 - 1e-9);
  let sum = 0;
  for (let k = 0; k < m * n; k++) {
    const u = x0 + (((k % m) + 0.5) * (x1 - x0)) / m;
    const v = y0 + ((Math.floor(k / m) + 0.5) * (y1 - y0)) / n;
    const [x, y] = quad(place, [u, u, v, v])[0];
    const [i, j] = [Math.floor(x / CELL - 0.5), Math.floor(y / CELL - 0.5)];
    const [s, t] = [x / CELL - 0.5 - i, y / CELL - 0.5 - j];
    sum +=
      (value(i, j) * (1 - s) + value(i + 1, j) * s) * (1 - t) +
      (value(i, j + 1) * (1 - s) + value(i + 1, j + 1) * s) * t;
  }
  return sum / (m * n);
}
