import { learn, type KnownZone } from './knownZones';
import { logNormalSums } from './logNormalSum';
import type { FieldAt } from './fieldAt';
import type { FittedSurvey } from '../mapping/fitSurvey';
import type { SumsOfDraw } from './overDraws';
import type { Zone } from './zones';

/** Somebody in a zone. */
export interface Stay {
  level: string;
  height: number;
  zone: Zone;
}

/** Weighted sums of the mean fields of some stays, µT: a row holds one weight a stay. */
export interface MeansOfStays {
  /** As the estimate has them. */
  said(rows: readonly (readonly number[])[]): SumsOfDraw[];
  /** With intervals that leave-one-out found too narrow made up for; those too wide stay as they are. */
  widened(rows: readonly (readonly number[])[]): SumsOfDraw[];
}

/** Gives what an estimate has of some stays. */
export type ZoneMeans = (stays: readonly Stay[]) => MeansOfStays;

/**
 * Mean fields over zones in every draw of an estimate, with what their errors share: the one place where a dose and the odds
 * of a change come from. What is found of a zone, and of two zones together, is kept for whoever asks next.
 *
 * In a draw ln B is normal with mean μ and covariance C. Of a zone, mᵢ = exp(μᵢ + Cᵢᵢ/2) and E = mean of mᵢ; of two,
 * Cov = mean over both of mᵢmⱼ(exp Cᵢⱼ − 1). Levels are read apart, and err independently within a draw; heights of one
 * level err together, as two places in the lower plane do. Widened, C is `meanSquareZ` times as large, and so is the square
 * of what the draws' μ are apart.
 */
export function zoneMeans(
  fieldAt: FieldAt,
  { meanSquareZ }: Pick<FittedSurvey, 'meanSquareZ'> = { meanSquareZ: 1 },
): ZoneMeans {
  const inflations = meanSquareZ > 1 ? [1, meanSquareZ] : [1];
  const known = new Map<string, KnownZone>();
  const zoneAt = ({ level, height, zone: { cells } }: Stay): KnownZone => {
    const key = `${level} ${height} ${cells.join(' ')}`;
    const zone = known.get(key) ?? {
      number: known.size,
      level,
      height,
      xs: cells.map(([x]) => x),
      ys: cells.map(([, y]) => y),
      weights: [],
      parts: [],
      expected: [],
      shared: new Map(),
    };
    known.set(key, zone);
    return zone;
  };
  return (stays) => {
    const zones = stays.map(zoneAt);
    learn([...new Set(zones)], fieldAt, inflations);
    return {
      said: (rows) => sumsOf(zones, rows, 0),
      widened: (rows) => sumsOf(zones, rows, inflations.length - 1),
    };
  };
}

function sumsOf(
  zones: readonly KnownZone[],
  rows: readonly (readonly number[])[],
  inflation: number,
): SumsOfDraw[] {
  const counting = rows.map((row) => [...row.keys()].filter((k) => row[k] !== 0));
  return zones[0].weights.map((weight, s) => {
    const covariance = (a: number, b: number) => {
      let sum = 0;
      for (const k of counting[a])
        for (const l of counting[b]) {
          const shared = zones[k].shared.get(zones[l]);
          // Nothing is shared between levels.
          if (shared) sum += rows[a][k] * rows[b][l] * shared[inflation][s];
        }
      return sum;
    };
    return {
      weight,
      ...logNormalSums(
        rows.map((row, a) =>
          counting[a].reduce((sum, k) => sum + row[k] * zones[k].expected[inflation][s], 0),
        ),
        rows.map((_, a) => rows.map((__, b) => covariance(a, b))),
      ),
    };
  });
}
