import { inOrder } from '../order';
import { arrangementRows } from './arrangementRows';
import type { CompareRequest } from '../../engine/whatIf/compareArrangements';
import type { FittedSurvey } from '../../engine/mapping/fitSurvey';
import type { Home } from '../home';
import type { SourceChange } from '../../engine/whatIf/sourceChange';

/**
 * What a home asks of its arrangements: as found where that is kept, else as it stands, is what the others are held against.
 * `tried`: sources that are being changed, with the furniture as it stands.
 */
export const compareQuestion = (
  home: Home,
  fitted: FittedSurvey,
  tried: readonly SourceChange[] = [],
): CompareRequest => ({
  fitted,
  pieces: inOrder(home.pieces),
  arrangements: arrangementRows(home, tried).map(({ id, places, differs: { sources } }) => ({
    id,
    places,
    sources,
  })),
});
