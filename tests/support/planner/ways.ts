import { before, eachStrip, footprint, holeOf, type Place } from './places';
import { toEdges, toRing, winding, type P } from './shapes';
import type { ArrangeRequest } from '../../../src/engine/arranging/request';

const CELL = 0.05;
const CLOSE = 1e-6;

/** Yes or no for each cell, row after row. */
type Cells = Uint8Array;

const LEAST_PATH = 0.5;

/**
 * Who can still get where in one room, by a plain queue over cells: as broad as asked for, or as the bare room lets somebody be
 * who comes to all that the least body comes to, in whole millimetres.
 */
export class Floor {
  private readonly own: FloorAt;

  constructor(request: ArrangeRequest, roomId: string) {
    const { path } = request.rules;
    const least = new FloorAt(request, roomId, Math.min(path, LEAST_PATH));
    let floor = new FloorAt(request, roomId, path, least);
    let width = Math.ceil(path * 1000) - 1;
    // One by one would take long: in big steps down, in small ones up again.
    if (floor.links() < least.links()) {
      while (new FloorAt(request, roomId, width / 1000).links() < least.links()) width -= 50;
      while (new FloorAt(request, roomId, (width + 1) / 1000).links() >= least.links()) width++;
      floor = new FloorAt(request, roomId, Math.max(500, width) / 1000, least);
    }
    this.own = floor;
  }

  allows(places: readonly Place[]): boolean {
    return this.own.allows(places);
  }
}

class FloorAt {
  private readonly i0: number;
  private readonly j0: number;
  private readonly wide: number;
  private readonly high: number;
  private readonly reach: number;
  private readonly open: Cells;
  private readonly doors: Cells[];
  private readonly groups: Cells[][];
  private readonly windows: Cells[];
  private readonly all: Cells;
  private readonly taken = new Map<Place, Cells>();
  private readonly sides = new Map<Place, Cells[]>();

  constructor(
    request: ArrangeRequest,
    roomId: string,
    path: number,
    private readonly least: FloorAt | null = null,
  ) {
    const room = request.rooms.find(({ id }) => id === roomId)!;
    this.reach = (path - CELL) / 2 - CLOSE;
    const [xs, ys] = [room.outline.map(([x]) => x), room.outline.map(([, y]) => y)];
    this.i0 = Math.floor(Math.min(...xs) / CELL) - 2;
    this.j0 = Math.floor(Math.min(...ys) / CELL) - 2;
    this.wide = Math.ceil(Math.max(...xs) / CELL) + 2 - this.i0;
    this.high = Math.ceil(Math.max(...ys) / CELL) + 2 - this.j0;
    const fixtures = request.fixtures.filter(({ level }) => level === room.level);
    this.open = this.within(room.outline, 0, (p) => {
      return (
        winding(room.outline, p) !== 0 &&
        toEdges(p, room.outline) >= this.reach &&
        fixtures.every(({ outline }) => toRing(p, outline) >= this.reach)
      );
    });
    const own = request.openings.filter((opening) => opening.room === roomId);
    const standing = (opening: (typeof own)[number]) =>
      this.near(before(holeOf(room.outline, opening), 0.6), CLOSE);
    this.doors = own
      .filter(({ kind }) => kind !== 'window')
      .map(standing)
      .filter((cells) => share(cells, this.open));
    this.all = this.from(this.open, this.doors);
    this.groups = [];
    for (const door of this.doors) {
      const known = this.groups.find(([first]) => share(this.from(this.open, [first]), door));
      if (known) known.push(door);
      else this.groups.push([door]);
    }
    this.windows =
      room.use === 'sleeping'
        ? own
            .filter(({ kind, width }) => kind === 'window' && width >= 0.45)
            .map(standing)
            .filter((cells) => share(cells, this.all))
        : [];
  }

  /** Doors, groups of doors that do not lead to each other, and windows: of two widths, more where somebody narrower walks. */
  links(): number {
    return 2 * this.doors.length - this.groups.length + this.windows.length;
  }

  /** Whether everything that is come to in the empty room still is, with these pieces in it. */
  allows(places: readonly Place[]): boolean {
    if (this.doors.length === 0) return true;
    const open = this.open.slice();
    for (const place of places) {
      const taken = this.takenBy(place);
      for (let cell = 0; cell < open.length; cell++) if (taken[cell]) open[cell] = 0;
    }
    const connected = this.groups.every(([first, ...others]) => {
      if (!share(first, open)) return false;
      const found = others.length > 0 ? this.from(open, [first]) : open;
      return others.every((door) => share(door, found));
    });
    if (!connected) return false;
    const found = this.from(open, this.doors);
    return (
      places.every((place) => this.sidesOf(place).every((side) => share(side, found))) &&
      (this.windows.length === 0 || this.windows.some((cells) => share(cells, found)))
    );
  }

  /** Cells near the bounds of a ring that pass a test. */
  private within(ring: readonly P[], reach: number, test: (p: P) => boolean): Cells {
    const cells = new Uint8Array(this.wide * this.high);
    const [xs, ys] = [ring.map(([x]) => x), ring.map(([, y]) => y)];
    const [left, right] = [Math.min(...xs) - reach, Math.max(...xs) + reach];
    const [low, top] = [Math.min(...ys) - reach, Math.max(...ys) + reach];
    const cell = (metres: number, first: number, count: number) =>
      Math.min(count - 1, Math.max(0, Math.floor(metres / CELL) - first));
    const [i0, i1] = [cell(left, this.i0, this.wide), cell(right, this.i0, this.wide)];
    const [j0, j1] = [cell(low, this.j0, this.high), cell(top, this.j0, this.high)];
    for (let j = j0; j <= j1; j++) {
      for (let i = i0; i <= i1; i++) {
        const [x, y] = [(this.i0 + i + 0.5) * CELL, (this.j0 + j + 0.5) * CELL];
        if (x >= left && x <= right && y >= low && y <= top && test([x, y])) cells[j * this.wide + i] = 1;
      }
    }
    return cells;
  }

  private near(ring: readonly P[], reach: number): Cells {
    return this.within(ring, reach, (p) => toRing(p, ring) < reach);
  }

  private comesTo(strip: readonly P[]): boolean {
    return share(this.near(strip, this.reach), this.all);
  }

  private takenBy(place: Place): Cells {
    const cells = this.taken.get(place) ?? this.near(footprint(place), this.reach);
    this.taken.set(place, cells);
    return cells;
  }

  private sidesOf(place: Place): Cells[] {
    const cells =
      this.sides.get(place) ??
      eachStrip(place)
        .filter((strip) => this.comesTo(strip) || this.least?.comesTo(strip))
        .map((strip) => this.near(strip, this.reach));
    this.sides.set(place, cells);
    return cells;
  }

  private from(open: Cells, starts: readonly Cells[]): Cells {
    const found = new Uint8Array(open.length);
    const queue = new Int32Array(open.length);
    let due = 0;
    const come = (cell: number) => {
      if (!open[cell] || found[cell]) return;
      found[cell] = 1;
      queue[due++] = cell;
    };
    for (const start of starts) for (let cell = 0; cell < start.length; cell++) if (start[cell]) come(cell);
    const { wide } = this;
    while (due > 0) {
      const cell = queue[--due];
      for (let row = cell - wide; row <= cell + wide; row += wide) {
        come(row - 1);
        come(row);
        come(row + 1);
      }
    }
    return found;
  }
}

function share(a: Cells, b: Cells): boolean {
  for (let cell = 0; cell < a.length; cell++) if (a[cell] && b[cell]) return true;
  return false;
}
