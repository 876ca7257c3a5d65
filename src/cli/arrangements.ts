import type { FittedSurvey } from '../engine/mapping/fitSurvey';
import { compareArrangements } from '../engine/whatIf/compareArrangements';
import type { Home } from '../home/home';
import { arrangementRows } from '../home/questions/arrangementRows';
import { compareQuestion } from '../home/questions/compareQuestion';
import { arrangementTitle, worthOf } from '../words/whatIf';

/**
 * The kept arrangements beside each other, as found first, with how things stand now: µT·h a day, mean over the people; `odds` that
 * it is lower than in the first. Null: none is kept; of one, the map cannot tell.
 */
export function arrangementsOf(home: Home, fitted: FittedSurvey) {
  if (Object.keys(home.arrangements).length === 0) return null;
  const compared = compareArrangements(compareQuestion(home, fitted));
  return arrangementRows(home).map((row, i) => {
    const worth = worthOf(compared[i]!);
    const { pieces, sources, rooms } = row.differs;
    return {
      id: row.id,
      name: arrangementTitle(row),
      dose: worth?.whole?.dose ?? null,
      low: worth?.whole?.low ?? null,
      high: worth?.whole?.high ?? null,
      odds: worth?.odds ?? null,
      moved: pieces,
      sources: sources.map(({ id, scale, path }) => ({ id, scale, path })),
      rooms,
    };
  });
}
