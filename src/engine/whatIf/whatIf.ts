import { krigedWhatIf, heardInKriging } from './krigedWhatIf';
import { heardInSamples, sampledWhatIf } from './sampledWhatIf';
import type { FittedSurvey } from '../mapping/fitSurvey';
import type { Method } from '../mapping/choose';
import { isUnchanged, type SourceChange } from './sourceChange';

/** Why a map cannot say what would be: it was drawn by a method that knows no sources. */
export interface WithoutSources {
  kind: 'map-without-sources';
  method: Method;
}

/** `unheard`: changed sources to which the map gives nothing, so that nothing comes of the change. */
export type WhatIf =
  { ok: true; fitted: FittedSurvey; unheard: string[] } | { ok: false; problem: WithoutSources };

/**
 * The survey as it would be with some marked sources off, weaker or elsewhere: their own terms change, all else that the map
 * has, other sources and the kriged remainder, stays as the readings have it. Of a sampled map every sample is changed by
 * itself, so that the intervals follow. Nothing of it is measured. Where nothing changes it is the very survey, whatever the
 * method.
 */
export function whatIf(fitted: FittedSurvey, changes: readonly SourceChange[]): WhatIf {
  const asked = changes.filter((change) => !isUnchanged(change));
  if (asked.length === 0) return { ok: true, fitted, unheard: [] };
  const { sources, sampled } = fitted;
  const unheard = (heard: (id: string) => boolean) => asked.flatMap(({ id }) => (heard(id) ? [] : [id]));
  if (sampled) {
    return {
      ok: true,
      fitted: sampledWhatIf(fitted, sampled, asked),
      unheard: unheard(heardInSamples(sampled)),
    };
  }
  if (sources) {
    return {
      ok: true,
      fitted: krigedWhatIf(fitted, sources, asked),
      unheard: unheard(heardInKriging(sources)),
    };
  }
  return { ok: false, problem: { kind: 'map-without-sources', method: fitted.method } };
}
