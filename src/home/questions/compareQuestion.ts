import { inOrder } from '../order';
import { asFound } from './asFound';
import type { Arrangement, Home, Source } from '../home';
import type { AskedArrangement, CompareRequest } from '../../engine/whatIf/compareArrangements';
import type { FittedSurvey } from '../../engine/mapping/fitSurvey';
import type { SourceChange } from '../../engine/whatIf/whatIf';

/** What stands for the furniture as it stands now, beside the ids of kept arrangements; and for that on the map that is tried. */
export const NOW = 'now';
export const TRIED = 'tried';

/** The kept arrangements, as found first. */
export function keptArrangements(home: Pick<Home, 'arrangements'>): Arrangement[] {
  const found = asFound(home);
  const others = inOrder(home.arrangements).filter((one) => one !== found);
  return found ? [found, ...others] : others;
}

/** What an arrangement makes of the sources that the home still has; where a path is none for its source, that stays where it is. */
export const sourceChangesOf = (
  { sources }: Pick<Home, 'sources'>,
  arrangement: Pick<Arrangement, 'sources'>,
): SourceChange[] =>
  arrangement.sources.flatMap(({ id, scale, path }) => {
    const source = sources[id];
    return source ? [{ id, scale, path: path && isPathOf(source, path) ? path : null }] : [];
  });

const isPathOf = ({ kind }: Source, path: readonly unknown[]): boolean =>
  kind === 'point' ? path.length === 1 : path.length > 1;

/**
 * What a home asks of its arrangements: as found where that is kept, else as it stands, is what the others are held against.
 * `tried`: sources that are being changed, with the furniture as it stands.
 */
export function compareQuestion(
  home: Home,
  fitted: FittedSurvey,
  tried: readonly SourceChange[] = [],
): CompareRequest {
  const asked = (arrangement: Arrangement): AskedArrangement => ({
    id: arrangement.id,
    places: arrangement.pieces,
    sources: sourceChangesOf(home, arrangement),
  });
  const found = asFound(home);
  return {
    fitted,
    pieces: inOrder(home.pieces),
    arrangements: [
      ...(found ? [asked(found)] : []),
      { id: NOW, places: [], sources: [] },
      ...(tried.length > 0 ? [{ id: TRIED, places: [], sources: tried }] : []),
      ...keptArrangements(home)
        .filter((one) => one !== found)
        .map(asked),
    ],
  };
}

/** The name a further arrangement is given where nobody says: the first of 'Arrangement 2', 'Arrangement 3' … that is free. */
export function nextName(home: Pick<Home, 'arrangements'>, word: string): string {
  const names = new Set(Object.values(home.arrangements).map(({ name }) => name));
  for (let n = 2; ; n++) if (!names.has(`${word} ${n}`)) return `${word} ${n}`;
}
