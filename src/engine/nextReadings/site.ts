import { cellsOn, doubtOf, reaches } from './floor';
import { heightVariance } from '../mapping/plane';
import { observe } from '../mapping/observations';
import { outlookOf, type Outlook, type Sum } from './outlook';
import { spotsOn } from './spots';
import type { FieldAt } from '../dose/fieldAt';
import type { MeterSpec } from '../survey/meter';
import type { NextRequest } from './request';
import type { Part } from './aims';
import type { Point } from '../geometry/point';

/** One level: where it may be read, and what the readings taken so far would leave unsure there. */
export interface Site {
  level: string;
  spots: readonly Point[];
  /** Variance of ln B of a reading at each spot, by the meter. */
  noise: readonly number[];
  /** Not taken as read yet. */
  free(spot: number): boolean;
  /** Of what an aim has on this level. */
  variance(aim: number): number;
  /** What a reading at a spot would take from it. */
  lowers(spot: number, aim: number): number;
  /** What it would take from the doubt of the floor asked; null where no floor is. */
  gain(spot: number): number | null;
  /** Floor it would have drawn, m². */
  drawn(spot: number): number;
  read(spot: number): void;
}

/**
 * `aims`: of each its parts, of which those on this level count. Every height asked has an outlook of its own, since a reading
 * tells less of another height than of its own.
 */
export function siteOf(
  request: NextRequest,
  level: string,
  aims: readonly (readonly Part[])[],
  fieldAt: FieldAt,
): Site {
  const { rooms, floor, meter, height } = request;
  const field = fieldAt(level, height);
  const spots = spotsOn(request, level);
  const points = { xs: spots.map(([x]) => x), ys: spots.map(([, y]) => y) };
  const noise = Array.from(field.predict(points.xs, points.ys, { variance: false }).mean, (ln, i) =>
    readingVariance(meter, level, spots[i], height, Math.exp(ln)),
  );
  const cells = cellsOn(
    rooms,
    rooms.filter(({ id }) => floor.includes(id)),
    level,
    field,
  );

  const heights = new Map<number, Sum[]>([
    [height, cells.map(({ at: [x, y] }) => ({ xs: [x], ys: [y], weights: [1] }))],
  ]);
  const own = aims.map((parts) =>
    parts
      .filter((part) => part.level === level)
      .map((part) => {
        const sums = heights.get(part.height) ?? [];
        heights.set(part.height, sums);
        return { height: part.height, sum: sums.push(part.sum) - 1 };
      }),
  );
  const outlooks = new Map<number, Outlook>();
  for (const [asked, sums] of heights)
    outlooks.set(
      asked,
      outlookOf(
        fieldAt(level, asked),
        points,
        noise.map((variance) => variance + heightVariance(height, asked)),
        sums,
      ),
    );
  const main = outlooks.get(height)!;
  const taken = new Set<number>();

  return {
    level,
    spots,
    noise,
    free: (spot) => !taken.has(spot),
    variance: (aim) =>
      own[aim].reduce((total, { height, sum }) => total + outlooks.get(height)!.variances[sum], 0),
    lowers: (spot, aim) =>
      own[aim].reduce((total, { height, sum }) => total + outlooks.get(height)!.lowers(spot, sum), 0),
    gain(spot) {
      if (floor.length === 0) return null;
      return cells.reduce((total, cell, c) => {
        const [variance, { unread }] = [main.variances[c], cell];
        return (
          total +
          doubtOf(cell, variance, unread) -
          doubtOf(cell, variance - main.lowers(spot, c), unread && !reaches(cell, spots[spot]))
        );
      }, 0);
    },
    drawn: (spot) =>
      cells.reduce((total, cell) => total + (cell.unread && reaches(cell, spots[spot]) ? cell.area : 0), 0),
    read(spot) {
      taken.add(spot);
      for (const outlook of outlooks.values()) outlook.read(spot);
      for (const cell of cells) if (reaches(cell, spots[spot])) cell.unread = false;
    },
  };
}

/** Variance of ln B of a reading that is still to come, were it to show what the map expects (µT): as of one that is there. */
function readingVariance(meter: MeterSpec, level: string, at: Point, height: number, field: number): number {
  const value = Math.max(0, (field - meter.offset) / meter.gain);
  const coming = { id: '', level, at, height, value, meter, limit: null, min: null, max: null, peak: false };
  return observe([coming])[0].variance;
}
