import { bounds } from '../../geometry/polygon';
import { bareFloors, cellsNear } from './bareFloor';
import { clear, copyOf, copyTo, flood, meet, noBits, take, type Bits } from './bits';
import { routesFrom, type Start } from './route';
import { gridOver, type Grid } from '../../grid/grid';
import { usedSides, type Stand } from '../stand';
import type { Box } from '../box';
import type { BrokenRule } from '../rules';
import type { Point } from '../../geometry/point';
import type { Site } from '../site';

/** Cells on which ways are looked for, metres. A way is as broad as asked for to within one of them. */
const CELL = 0.05;

/** The ways of one room: from its doors to one another, to every used side of its pieces, and to a window to escape by. */
export interface Ways {
  /**
   * What is no longer come to when pieces stand there, each in one of the ways given for it (its strips on either side),
   * that the room has without them; null where nothing is lost. Furniture only takes floor, so that what some pieces cut
   * off stays cut off with more of them.
   */
  lost(pieces: readonly (readonly Stand[])[]): BrokenRule | null;
  /**
   * The shortest way from a door to each used side of one piece that the room lets one come to, past what is fixed and the
   * piece itself: where the middle of somebody walks; null where none is left.
   */
  routes(piece: Stand): (readonly Point[] | null)[];
}

/**
 * Somebody is a disc as broad as the path, whose middle walks from cell to cell, clear of walls, fixtures and pieces. Only
 * what is come to in the room with its `fixed` pieces is asked for: nobody can be blamed for what was never there.
 */
export function waysOf(site: Site, fixed: readonly Stand[]): Ways {
  const grid = gridOver(bounds(site.room.outline), CELL);
  const { asked, least } = bareFloors(site, grid, fixed);
  const { reach, open: empty, doors, entrances, all, groups, escapes } = asked;
  const shadows = new Map<Box, Bits>();
  const shadowOf = (foot: Box): Bits => {
    const known = shadows.get(foot);
    if (known) return known;
    const shadow = cellsNear(grid, foot, reach);
    shadows.set(foot, shadow);
    return shadow;
  };
  const cleared = (floor: Bits, stands: readonly Stand[]): Bits => {
    const open = copyOf(floor);
    for (const { foot } of stands) take(open, shadowOf(foot));
    return open;
  };

  const sides = new Map<Stand, Bits[]>();
  /** Cells from which each used side of a stand is come to, of those that the least way leads to in the empty room. */
  const sidesOf = (stand: Stand): Bits[] => {
    const known = sides.get(stand);
    if (known) return known;
    const wanted = usedSides(stand).flatMap((box) => {
      const cells = cellsNear(grid, box, reach);
      const isComeTo = meet(cells, all) || meet(cellsNear(grid, box, least.reach), least.all);
      return isComeTo ? [cells] : [];
    });
    sides.set(stand, wanted);
    return wanted;
  };

  // A search asks thousands of times.
  const [open, found] = [noBits(grid.nx, grid.ny), noBits(grid.nx, grid.ny)];
  return {
    lost(pieces) {
      if (doors.length === 0) return null;
      copyTo(open, empty);
      for (const [{ foot }] of pieces) take(open, shadowOf(foot));
      clear(found);
      for (const { doors: together } of groups) {
        if (together.length > 1) {
          clear(found);
          flood(open, together[0].cells, found);
        }
        const from = together.length > 1 ? found : open;
        const shut = together.find(({ cells }) => !meet(cells, from));
        if (shut) return { kind: 'no-way', with: shut.id };
      }
      flood(open, entrances, found);
      const reached = (stand: Stand) => sidesOf(stand).every((cells) => meet(cells, found));
      const cutOff = [...fixed.map((stand) => [stand]), ...pieces].find((ways) => !ways.some(reached));
      if (cutOff) return { kind: 'no-way', with: cutOff[0].piece.id };
      if (escapes.length > 0 && !escapes.some(({ cells }) => meet(cells, found)))
        return { kind: 'no-escape', with: escapes[0].id };
      return null;
    },
    routes(piece) {
      const floor = cleared(empty, [piece]);
      const starts = doors.flatMap(({ cells, at }) => startsIn(cells, grid, at));
      return sidesOf(piece).map(routesFrom(floor, grid, starts));
    },
  };
}

/** Cells of the floor before a door: one would like to set out from its middle. */
function startsIn(cells: Bits, { x0, y0, step, nx }: Grid, [x, y]: Point): Start[] {
  const starts: Start[] = [];
  for (let j = cells.low; j < cells.high; j++) {
    for (let i = 0; i < nx; i++) {
      if (((cells.row[j * cells.words + (i >> 5)] >>> (i & 31)) & 1) === 0) continue;
      const off = Math.hypot(x0 + (i + 0.5) * step - x, y0 + (j + 0.5) * step - y) / step;
      starts.push({ cell: j * nx + i, off });
    }
  }
  return starts;
}
