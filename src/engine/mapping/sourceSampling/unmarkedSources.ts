import { dot, lerp, sub, type Point } from '../../geometry/point';
import { alike, beside, type Where } from './alike';
import { clusters } from './clusters';
import { described } from './described';
import { heardSamples } from './heardSamples';
import { sitesOf } from './model';
import { suspectOf } from './suspect';
import type { Mark, SamplingQuestion } from './question';
import type { SourceSamples } from './samples';

/** Where a source that nobody marked is likely. A suspect: it would explain readings, and no fault has been found. */
export interface UnmarkedSource {
  /** A line on the plan; or one place, of an appliance or of a current that rises. */
  kind: 'line' | 'point';
  origin: 'house' | 'outside';
  level: string;
  path: Point[];
  /** Above the level's floor, metres. */
  height: number;
  /** How likely it is, 0…1. */
  odds: number;
  /** Net current, A, or the one that would make the field of a street line; 90 % interval where it is. Null of an appliance. */
  amperes: [number, number] | null;
  /** Field of an appliance a metre from it, µT, rms over all directions; 90 % interval. Null of a current. */
  atOneMetre: [number, number] | null;
  /** Indices of the question's places at which it makes a quarter or more of B². */
  explains: number[];
}

/** Less than this is not worth a name: A, or A·m² (0.014 µT a metre away). The project's choice. */
const LEAST = 0.1;

/** Nothing less likely than not is listed. */
const LISTED = 0.5;

/**
 * Samples are surer than homes allow: the model takes currents for straight and appliances for dipoles. On known homes of unlike
 * builds this power of the samples' odds comes true as often as it says (scaling of log-odds: Platt 1999, without offset).
 */
const TEMPER = 0.4;

/** How far a street line is drawn past what was read, metres. */
const PAST = 2;

/** Parallel to a marked line and closer than this, metres, a source is that line over again. */
const SAME_LINE = { run: 1, rise: 0, street: 6, appliance: 0 };

/**
 * What nobody marked and the samples agree on, the likeliest first; elevations, metres, of at least one level. The same
 * samples give the same list.
 */
export function unmarkedSources(
  question: SamplingQuestion,
  samples: SourceSamples,
  elevations: Readonly<Record<string, number>>,
): UnmarkedSource[] {
  const heard = heardSamples(question, samples);
  const sites = sitesOf(question.places);
  const suspects = heard
    .flatMap(({ sources, total }, sample) =>
      sources
        .filter(({ slot }) => typeof slot.of === 'string')
        .map((source) => suspectOf(sample, source, total, sites)),
    )
    .filter((suspect) => suspect.size >= LEAST && !question.marked.some((mark) => isMarked(mark, suspect)));
  const weights = heard.map(({ weight }) => weight);
  return clusters(suspects, weights, LISTED)
    .map((cluster) => {
      const found = described(cluster, weights, elevations);
      const path = found.origin === 'outside' ? besideHome(found.path, question.places) : found.path;
      return { ...found, path, odds: likelihood(cluster.share, heard.length) };
    })
    .filter(({ explains }) => explains.length > 0);
}

/** Half a sample is counted for and against, so that none says never or always. */
function likelihood(share: number, samples: number): number {
  const counted = (share * samples + 0.5) / (samples + 1);
  return 1 / (1 + ((1 - counted) / counted) ** TEMPER);
}

/** The part of a street line that passes what was read, and a little more; how far it goes on nobody can tell. */
function besideHome([a, b]: readonly Point[], places: SamplingQuestion['places']): Point[] {
  const along = sub(b, a);
  const length = Math.hypot(...along);
  const shares = places.map(({ x, y }) => dot(sub([x, y], a), along) / length ** 2);
  const past = PAST / length;
  return [Math.min(...shares) - past, Math.max(...shares) + past].map((t) => lerp(a, b, t));
}

/** What the readings make of a source that is marked there already belongs to its mark. */
function isMarked({ kind, path, z }: Mark, suspect: Where): boolean {
  const corners = path.map(([x, y]) => [x, y, z] as const);
  if (kind !== 'line') {
    const sort = kind === 'rise' ? 'rise' : 'appliance';
    return corners.some((at) => alike({ sort, from: at, to: at }, suspect));
  }
  return corners.some(
    (to, i) => i > 0 && beside({ from: corners[i - 1], to }, suspect, SAME_LINE[suspect.sort]),
  );
}
