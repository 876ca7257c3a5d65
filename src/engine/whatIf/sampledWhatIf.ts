import { sampledField } from '../mapping/sourceSampling/sampledField';
import { floorOf } from '../mapping/sourceKriging/sourceTerms';
import { slotsIn } from '../mapping/sourceSampling/model';
import type { FittedSurvey } from '../mapping/fitSurvey';
import type { Place } from '../mapping/observations';
import type { Sampled } from '../mapping/sourceSampling/sampleSurvey';
import type { SourceChange } from './sourceChange';

/** A sampled map with some marks changed in every sample. */
export function sampledWhatIf<T extends FittedSurvey>(
  fitted: T,
  sampled: Sampled,
  changes: readonly SourceChange[],
): T {
  const changed = sampled.question.marked.map(({ id, path }, k) => {
    const before = sampled.changed?.[k] ?? { path, scale: 1 };
    const change = changes.find((one) => one.id === id);
    return change ? { path: change.path ?? before.path, scale: before.scale * change.scale } : before;
  });
  const then = { ...sampled, changed };
  const [was, is] = [fitted.places, fitted.places].map((places, i) => lnAt(i === 0 ? sampled : then, places));
  return {
    ...fitted,
    sampled: then,
    places: fitted.places.map((place, i) => ({ ...place, ln: place.ln + is[i] - was[i] })),
  };
}

/** ln B at some places, each at its own height. */
function lnAt({ question, samples, elevations, changed }: Sampled, places: readonly Place[]): Float64Array {
  const ln = new Float64Array(places.length);
  const heights = places.map(({ level, height }) => floorOf(elevations, level) + height);
  for (const z of new Set(heights)) {
    const own = [...places.keys()].filter((i) => heights[i] === z);
    const mean = sampledField(question, samples, z, changed).mean({
      xs: own.map((i) => places[i].x),
      ys: own.map((i) => places[i].y),
    });
    own.forEach((i, k) => (ln[i] = mean[k]));
  }
  return ln;
}

/** Whether any sample has a source where it was marked. */
export function heardInSamples({ question, samples }: Sampled): (id: string) => boolean {
  const idOf = new Map(
    slotsIn(question).flatMap(({ key, of }) => (typeof of === 'string' ? [] : [[key, of.id] as const])),
  );
  const heard = new Set(
    samples.samples.flatMap(({ sources }) => sources.map(({ slot }) => idOf.get(slot) ?? '')),
  );
  return (id) => heard.has(id);
}
