import { cellsIn, cellsInside, markNear } from './cells';
import { flood, meet, noBits, put, take, type Bits } from './bits';
import { distance, lerp, sub, type Point, type Ring } from '../../geometry/point';
import { LEAST_PATH } from '../ruleSettings';
import { usedSides, type Stand } from '../stand';
import type { Box } from '../box';
import type { Grid } from '../../grid/grid';
import type { Site } from '../site';

// A window less broad lets nobody out (Approved Document B, volume 1: 450 mm; from memory).
const NARROWEST_ESCAPE = 0.45;

/** Widths of ways are told apart to this, metres. */
const FINEST = 1e-3;

interface Door {
  id: string;
  at: Point;
  /** From which somebody opens it. */
  cells: Bits;
}

/** The floor of a room before the pieces that are placed stand on it, and what somebody as broad as the path comes to there. */
export interface BareFloor {
  /** From the middle of somebody to what that body touches, metres. */
  reach: number;
  /** Where the middle of somebody may be. */
  open: Bits;
  doors: Door[];
  entrances: Bits;
  /** What is come to from any door. */
  all: Bits;
  /** Doors that lead to each other, by the first of them. */
  groups: { from: Bits; doors: Door[] }[];
  /** Windows to escape by. */
  escapes: { id: string; cells: Bits }[];
  /** Used sides of what is fixed that are come to. */
  sides: number;
}

/**
 * The bare floor for the way that is asked for, and for the least way. A room that has not every connection at the asked width
 * that it has at the least is asked for the widest way at which it has them: else asking for more would ask for nothing.
 */
export function bareFloors(
  site: Site,
  grid: Grid,
  fixed: readonly Stand[],
): Record<'asked' | 'least', BareFloor> {
  const { path } = site.rules;
  const asked = bareFloor(site, grid, fixed, path);
  if (path <= LEAST_PATH) return { asked, least: asked };
  const least = bareFloor(site, grid, fixed, LEAST_PATH);
  if (isAsJoined(asked, least)) return { asked, least };
  // The broader somebody is, the less is come to: halving finds the widest.
  let [widest, low, high] = [least, Math.round(LEAST_PATH / FINEST), Math.ceil(path / FINEST)];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    const floor = bareFloor(site, grid, fixed, middle * FINEST);
    if (isAsJoined(floor, least)) [widest, low] = [floor, middle];
    else high = middle;
  }
  return { asked: widest, least };
}

/** A broader body comes nowhere that a narrower one does not: equal counts are the same connections. */
const isAsJoined = (broad: BareFloor, narrow: BareFloor): boolean =>
  broad.doors.length === narrow.doors.length &&
  broad.groups.length === narrow.groups.length &&
  broad.escapes.length === narrow.escapes.length &&
  broad.sides === narrow.sides;

function bareFloor(site: Site, grid: Grid, fixed: readonly Stand[], path: number): BareFloor {
  const reach = (path - grid.step) / 2;
  const open = walkable(site, grid, reach);
  for (const { foot } of fixed) take(open, cellsNear(grid, foot, reach));
  const doors = site.landings
    .map(({ id, before }) => ({ id, at: [before.x, before.y] as const, cells: cellsIn(grid, before) }))
    .filter(({ cells }) => meet(cells, open));
  const entrances = noBits(grid.nx, grid.ny);
  for (const { cells } of doors) put(entrances, cells);
  const all = flood(open, entrances);
  const groups: BareFloor['groups'] = [];
  for (const door of doors) {
    const group = groups.find(({ from }) => meet(from, door.cells));
    if (group) group.doors.push(door);
    else groups.push({ from: flood(open, door.cells), doors: [door] });
  }
  const escapes =
    site.room.use === 'sleeping'
      ? site.windows
          .filter(({ ring: [a, b] }) => distance(a, b) >= NARROWEST_ESCAPE)
          .map(({ id, before }) => ({ id, cells: cellsIn(grid, before) }))
          .filter(({ cells }) => meet(cells, all))
      : [];
  const sides = fixed.flatMap(usedSides).filter((side) => meet(cellsNear(grid, side, reach), all)).length;
  return { reach, open, doors, entrances, all, groups, escapes, sides };
}

/** Cells whose middles are nearer to a box than `reach`, metres. */
export function cellsNear(grid: Grid, box: Box, reach: number): Bits {
  const cells = noBits(grid.nx, grid.ny);
  markNear(cells, grid, box, reach);
  return cells;
}

/** Where the middle of somebody may be with nothing standing in the room but its fixtures. */
function walkable(site: Site, grid: Grid, reach: number): Bits {
  const open = cellsInside(grid, site.room.outline);
  const taken = noBits(grid.nx, grid.ny);
  const rings = [site.room.outline, ...site.fixtures.map(({ ring }) => ring)];
  for (const ring of rings) edgesOf(ring).forEach((edge) => markNear(taken, grid, edge, reach));
  for (const { ring } of site.fixtures) take(open, cellsInside(grid, ring));
  take(open, taken);
  return open;
}

const edgesOf = (ring: Ring): Box[] =>
  ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length];
    return distance(a, b) > 0 ? [lineBox(a, b)] : [];
  });

/** A box without depth. */
function lineBox(a: Point, b: Point): Box {
  const [x, y] = lerp(a, b, 0.5);
  const [dx, dy] = sub(b, a);
  const length = Math.hypot(dx, dy);
  return { x, y, ux: dx / length, uy: dy / length, hx: length / 2, hy: 0 };
}
