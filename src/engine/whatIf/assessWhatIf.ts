import { answerSince } from '../arranging/answer';
import { mapOver } from '../arranging/mapOver';
import { drawLevel } from '../drawLevel';
import { fieldsOf } from '../dose/fieldAt';
import { pieceDose } from '../dose/pieceDose';
import { reachOn } from '../reachOn';
import { type SourceChange } from './sourceChange';
import { whatIf, type WithoutSources } from './whatIf';
import type { AssessRequest, Assessment } from '../assess';
import type { FittedSurvey } from '../mapping/fitSurvey';

/** What is asked of a home with some of its sources changed; `rough`: a picture for a hand that moves one. */
export interface WhatIfRequest {
  request: AssessRequest;
  fitted: FittedSurvey;
  changes: readonly SourceChange[];
  rough: boolean;
}

/** What of an assessment follows from the map: the rest is as it was found. */
export interface Supposed extends Pick<Assessment, 'fitted' | 'pictures' | 'pieces' | 'sinceFound'> {
  /** Changed sources to which the map gives nothing. */
  unheard: string[];
}

/**
 * A home as it would be with some sources off, weaker or elsewhere: pictures of its levels, doses of its pieces, what moved
 * furniture is worth. `progress` is told the share done, 0…1.
 */
export function assessWhatIf(
  { request, fitted, changes, rough }: WhatIfRequest,
  progress?: (share: number) => void,
): { ok: true; supposed: Supposed } | { ok: false; problem: WithoutSources } {
  const then = whatIf(fitted, changes);
  if (!then.ok) return then;
  const fieldAt = fieldsOf(then.fitted);
  const levels = request.levels.filter(({ outline }) => outline.some((ring) => ring.length > 0));
  const pictures = levels.map((level, i) =>
    drawLevel(
      fieldAt,
      level,
      rough
        ? { variance: false }
        : { variance: true, target: request.target, reach: reachOn(request, level.id) },
      (share) => progress?.((i + share) / (levels.length + 1)),
    ),
  );
  const { moved } = request;
  return {
    ok: true,
    supposed: {
      fitted: then.fitted,
      pictures,
      pieces: request.pieces.flatMap((piece) => pieceDose(fieldAt, piece) ?? []),
      sinceFound: moved ? answerSince(moved, mapOver(moved, fieldAt, then.fitted), moved.found) : null,
      unheard: then.unheard,
    },
  };
}
