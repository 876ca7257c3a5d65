import { bilinearForm } from '../algebra/bilinearForm';
import type { Draw, Field } from '../mapping/field';
import type { FieldAt } from './fieldAt';

/** What is known of a zone; the first index of parts and of what is shared is that of the inflation, the second the draw. */
export interface KnownZone {
  /** How many were known before it. */
  number: number;
  level: string;
  height: number;
  xs: number[];
  ys: number[];
  /** Shares of the draws; none before the zone was first looked at. */
  weights: number[];
  /** mᵢ ÷ number of cells, µT. */
  parts: Float64Array[][];
  expected: number[][];
  shared: Map<KnownZone, number[][]>;
}

/** Some zones of one plane beside others, in every draw; where the cells of each begin. */
interface Look {
  rows: readonly KnownZone[];
  columns: readonly KnownZone[];
  rowStarts: number[];
  columnStarts: number[];
  width: number;
  draws: Draw[];
}

/** Finds out what is not yet known of some zones and of any two of them on one level (see `zoneMeans`). */
export function learn(zones: readonly KnownZone[], fieldAt: FieldAt, inflations: readonly number[]): void {
  const looks = zones.flatMap(({ level, height }, i) => {
    const isFirst = zones.findIndex((zone) => zone.level === level && zone.height === height) === i;
    return isFirst ? looksAt(zones, level, height, fieldAt) : [];
  });
  for (const look of looks)
    look.rows.forEach((zone, r) => zone.weights.length === 0 && expect(zone, r, look, inflations));
  for (const look of looks)
    look.rows.forEach((a, r) =>
      look.columns.forEach((b, c) => {
        if (a.shared.has(b)) return;
        const shared = sharedBy(
          a,
          b,
          look,
          look.rowStarts[r] * look.width + look.columnStarts[c],
          inflations,
        );
        a.shared.set(b, shared);
        b.shared.set(a, shared);
      }),
    );
}

/** What is to be seen of a plane: as few of its zones as hold what is not yet known of two, and those beside zones above it. */
function looksAt(zones: readonly KnownZone[], level: string, height: number, fieldAt: FieldAt): Look[] {
  const own = zones.filter((zone) => zone.level === level && zone.height === height);
  // The last known are the least known.
  const least = own
    .toSorted((a, b) => b.number - a.number)
    .reduce<KnownZone[]>(
      (some, a) => (own.some((b) => !a.shared.has(b) && !some.includes(b)) ? [...some, a] : some),
      [],
    );
  const rows = own.filter((zone) => least.includes(zone));
  const above = zones.filter(
    (b) => b.level === level && b.height > height && own.some((a) => !a.shared.has(b)),
  );
  const below = own.filter((a) => above.some((b) => !a.shared.has(b)));
  return [look(fieldAt(level, height), rows, own), look(fieldAt(level, height), below, above)].filter(
    ({ draws }) => draws.length > 0,
  );
}

function look(field: Field, rows: readonly KnownZone[], columns: readonly KnownZone[]): Look {
  const points = pointsOf(rows);
  // Points that are their own others are seen in half the time.
  const isSquare = rows.length === columns.length && rows.every((zone, i) => zone === columns[i]);
  const columnStarts = startsOf(columns);
  return {
    rows,
    columns,
    rowStarts: startsOf(rows),
    columnStarts,
    width: columnStarts[columns.length],
    draws: rows.length > 0 ? field.draws(points, isSquare ? points : pointsOf(columns)) : [],
  };
}

const pointsOf = (zones: readonly KnownZone[]) => ({
  xs: zones.flatMap(({ xs }) => xs),
  ys: zones.flatMap(({ ys }) => ys),
});

/** Where the cells of each zone begin, and where the last ends. */
function startsOf(zones: readonly KnownZone[]): number[] {
  const starts = [0];
  for (const { xs } of zones) starts.push(starts[starts.length - 1] + xs.length);
  return starts;
}

function expect(zone: KnownZone, row: number, look: Look, inflations: readonly number[]): void {
  const { draws, width } = look;
  const first = look.rowStarts[row];
  const diagonal = first * width + look.columnStarts[look.columns.indexOf(zone)];
  const cells = zone.xs.map((_, i) => i);
  const middles = cells.map((i) =>
    draws.reduce((sum, { weight, mean }) => sum + weight * mean[first + i], 0),
  );
  zone.weights = draws.map(({ weight }) => weight);
  zone.parts = inflations.map((inflation) =>
    draws.map(({ mean, covariance }) =>
      Float64Array.from(cells, (i) => {
        const off =
          inflation === 1
            ? mean[first + i]
            : middles[i] + Math.sqrt(inflation) * (mean[first + i] - middles[i]);
        return Math.exp(off + (inflation * covariance[diagonal + i * (width + 1)]) / 2) / cells.length;
      }),
    ),
  );
  zone.expected = zone.parts.map((draws) => draws.map((parts) => parts.reduce((sum, part) => sum + part, 0)));
}

/** Cov of two zones in every draw, µT²; `corner` is where their block of the covariance begins. */
function sharedBy(
  a: KnownZone,
  b: KnownZone,
  { draws, width }: Look,
  corner: number,
  inflations: readonly number[],
): number[][] {
  const [m, n] = [a.xs.length, b.xs.length];
  return inflations.map((inflation, k) => {
    const excesses = new Map<Float64Array, Float64Array>();
    const excessOf = (covariance: Float64Array): Float64Array => {
      const known = excesses.get(covariance);
      if (known) return known;
      const excess = new Float64Array(m * n);
      for (let i = 0; i < m; i++)
        for (let j = 0; j < n; j++)
          excess[i * n + j] = Math.expm1(inflation * covariance[corner + i * width + j]);
      excesses.set(covariance, excess);
      return excess;
    };
    return draws.map(({ covariance }, s) => bilinearForm(a.parts[k][s], excessOf(covariance), b.parts[k][s]));
  });
}
