import { bodyOf, zoneOf } from '../dose/zones';
import { bounds } from '../geometry/polygon';
import { bandsOf, outlineOfKnown, outlineUnder } from './goodContours';
import { PIECE_RULES, together } from './rules';
import { gridOver, type Grid } from '../grid/grid';
import { hasSides, standOf, type Stand } from './stand';
import { roomAt, siteOf, type Site } from './site';
import { hoursOf, roomsFor, type Grounds } from './plan';
import { rotate, type Point, type Ring } from '../geometry/point';
import type { Contour } from '../contours/bands';
import type { ArrangePiece, ArrangeRequest } from './request';
import { supports, type Ground } from './ground';
import type { Put } from './place';

/** The dose of one piece at every place of a room where it may stand, turned as it is. */
interface GoodRoom {
  room: string;
  level: string;
  /** One cell a place: the middle of the piece's footprint. */
  grid: Grid;
  /** µT·h a day of those who use it, mean over them; NaN where it may not stand. */
  dose: Float64Array;
  /** Where its middle may be: outlines and holes, to be read even-odd. */
  may: Ring[];
  /** The mean field of those who use it there, in the bands of the map, µT: to be cut to `may`. */
  bands: Contour[];
}

export interface GoodArea {
  /** The rooms it may be put in, also those where it may stand nowhere at this angle. */
  rooms: GoodRoom[];
  /** The least of all rooms, µT·h, and where; null where it may stand nowhere at this angle. */
  least: number | null;
  leastAt: { level: string; at: Point } | null;
  /** Where the dose is within a twentieth of the least: outlines and holes by level, to be read even-odd. */
  good: { level: string; rings: Ring[] }[];
}

/** Cells of the places tried; those of the map, so that the zone covers the same cells wherever it stands. Metres. */
const CELL = 0.1;
const SAMPLE = 0.05;
const WITHIN = 1.05;

/**
 * The dose of a piece at every place on a lattice of 0.1 m where it may stand at its present angle, in all rooms it may
 * stand in: inside the walls with its access strips, off fixtures, doors and other pieces. That its head has a wall is not
 * asked for: whoever drags it will put it there. The dose is a sum of the map over the cells that a body covers, the same
 * sum at every place.
 */
export function goodArea(
  request: ArrangeRequest,
  ground: Grounds,
  put: Put,
  others: readonly Put[] = [],
): GoodArea {
  const piece = request.pieces.find(({ id }) => id === put.id)!;
  const people = Math.max(1, new Set(piece.uses.map(({ who }) => who)).size);
  const hours = hoursOf(piece) / people;
  const rooms = roomsFor(request, piece, roomAt(request, piece.level, piece.at)).map((room): GoodRoom => {
    const site = siteOf(request, room);
    const standing = request.pieces
      .filter(({ id }) => id !== put.id)
      .map((other) => ({ other, at: others.find(({ id }) => id === other.id) ?? other }))
      .filter(({ at }) => roomAt(request, at.level, at.at) === room)
      .map(({ other, at }) => standOf(other, room.id, at, false));
    const grid = gridOver(bounds(room.outline), CELL);
    const field = ground(room.id, piece.height);
    const sums = kernelOf(piece, put.angle);
    const dose = new Float64Array(grid.nx * grid.ny).fill(NaN);
    for (let j = 0; j < grid.ny; j++) {
      for (let i = 0; i < grid.nx; i++) {
        const at = middleOf(grid, j * grid.nx + i);
        const stands = (hasSides(piece) ? [false, true] : [false]).map((mirrored) =>
          standOf(piece, room.id, { at, angle: put.angle }, mirrored),
        );
        const speaks = () =>
          piece.uses.every(({ side }) =>
            supports(field, zoneOf(piece.kind, stands[0].pose, piece.size, side)),
          );
        if (stands.some((stand) => mayStand(stand, site, standing)) && speaks())
          dose[j * grid.nx + i] = summed(field, grid, i, j, sums) / people;
      }
    }
    const bands = bandsOf(
      grid,
      dose.map((value) => value / hours),
    );
    return { room: room.id, level: room.level, grid, dose, may: outlineOfKnown(grid, dose), bands };
  });
  let least = Infinity;
  let leastAt: GoodArea['leastAt'] = null;
  for (const { level, grid, dose } of rooms) {
    dose.forEach((value, k) => {
      if (value < least) [least, leastAt] = [value, { level, at: middleOf(grid, k) }];
    });
  }
  if (!leastAt) return { rooms, least: null, leastAt, good: [] };
  const good = rooms.flatMap(({ level, grid, dose }) => {
    const rings = outlineUnder(grid, dose, least * WITHIN);
    return rings.length > 0 ? [{ level, rings }] : [];
  });
  return { rooms, least, leastAt, good };
}

const middleOf = ({ x0, y0, nx }: Grid, k: number): Point => [
  x0 + ((k % nx) + 0.5) * CELL,
  y0 + (Math.floor(k / nx) + 0.5) * CELL,
];

/** Rules that hold wherever it is dragged: not that of the wall behind it, and no preference. */
const ALONE = PIECE_RULES.filter(
  ({ kind, preference }) =>
    !preference && !['head-off-wall', 'back-off-wall', 'head-across-door'].includes(kind),
);

function mayStand(stand: Stand, site: Site, standing: readonly Stand[]): boolean {
  return (
    ALONE.every(({ breach }) => breach(stand, site) === null) &&
    standing.every((other) => together(stand, other, site.rules))
  );
}

/** A cell beside that of the middle, and the hours times its share of the bodies. */
interface Part {
  di: number;
  dj: number;
  weight: number;
}

/** What those who use a piece at an angle weigh the cells round its middle with: samples of each body, shared out between four cells. */
function kernelOf({ kind, size, uses }: ArrangePiece, angle: number): Part[] {
  const parts = new Map<string, Part>();
  const add = (di: number, dj: number, weight: number) => {
    const key = `${di} ${dj}`;
    const known = parts.get(key);
    if (known) known.weight += weight;
    else if (weight > 0) parts.set(key, { di, dj, weight });
  };
  for (const { side, hours } of uses) {
    const { x0, x1, y0, y1 } = bodyOf(kind, size, side);
    const [m, n] = [Math.ceil((x1 - x0) / SAMPLE - 1e-9), Math.ceil((y1 - y0) / SAMPLE - 1e-9)];
    for (let k = 0; k < m * n; k++) {
      const local = [
        x0 + (((k % m) + 0.5) * (x1 - x0)) / m,
        y0 + ((Math.floor(k / m) + 0.5) * (y1 - y0)) / n,
      ] as const;
      const [u, v] = rotate(local, angle).map((metres) => metres / CELL);
      const [i, j] = [Math.floor(u), Math.floor(v)];
      const [s, t] = [u - i, v - j];
      const weight = hours / (m * n);
      add(i, j, weight * (1 - s) * (1 - t));
      add(i + 1, j, weight * s * (1 - t));
      add(i, j + 1, weight * (1 - s) * t);
      add(i + 1, j + 1, weight * s * t);
    }
  }
  return [...parts.values()];
}

/** Both grids lie on one lattice; a body may reach a little past the map of a room. */
function summed(
  { grid: map, values }: Ground,
  grid: Grid,
  i: number,
  j: number,
  parts: readonly Part[],
): number {
  const [i0, j0] = [Math.round((grid.x0 - map.x0) / CELL) + i, Math.round((grid.y0 - map.y0) / CELL) + j];
  let sum = 0;
  for (const { di, dj, weight } of parts) {
    const x = Math.min(map.nx - 1, Math.max(0, i0 + di));
    const y = Math.min(map.ny - 1, Math.max(0, j0 + dj));
    sum += weight * values[y * map.nx + x];
  }
  return sum;
}
