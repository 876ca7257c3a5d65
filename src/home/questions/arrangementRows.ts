import { isElsewhere, type Put } from '../../engine/arranging/place';
import { isUnchanged, type SourceChange } from '../../engine/whatIf/sourceChange';
import { asFound } from './asFound';
import { indoorsOf } from './arrangeQuestion';
import { inOrder } from '../order';
import type { Arrangement, Home, Id, Point, Source } from '../home';

/** What stands for the furniture as it stands now, beside the ids of kept arrangements; and for that on the map that is tried. */
export const NOW = 'now';
export const TRIED = 'tried';

/** The kept arrangements, as found first. */
function keptArrangements(home: Pick<Home, 'arrangements'>): Arrangement[] {
  const found = asFound(home);
  const others = inOrder(home.arrangements).filter((one) => one !== found);
  return found ? [found, ...others] : others;
}

/** What an arrangement makes of the sources that the home still has; where a path is none for its source, that stays where it is. */
const sourceChangesOf = (
  { sources }: Pick<Home, 'sources'>,
  arrangement: Pick<Arrangement, 'sources'>,
): SourceChange[] =>
  arrangement.sources.flatMap(({ id, scale, path }) => {
    const source = sources[id];
    return source ? [{ id, scale, path: path && isPathOf(source, path) ? path : null }] : [];
  });

const isPathOf = ({ kind }: Source, path: readonly unknown[]): boolean =>
  kind === 'point' ? path.length === 1 : path.length > 1;

/** Changes that change something: a source that is moved to where it is, and is no weaker, is as it is. */
export const realChanges = (
  { sources }: Pick<Home, 'sources'>,
  changes: readonly SourceChange[],
): SourceChange[] =>
  changes
    .map((change) => (samePath(sources[change.id]?.path, change.path) ? { ...change, path: null } : change))
    .filter((change) => !isUnchanged(change));

const samePath = (a: readonly Point[] | undefined, b: readonly Point[] | null): boolean =>
  a !== undefined &&
  b !== null &&
  a.length === b.length &&
  a.every(([x, y], i) => Math.hypot(x - b[i]![0], y - b[i]![1]) < 1e-6);

/** What an arrangement has otherwise than another: pieces that stand elsewhere, sources, rooms by their use. */
export interface Differences {
  pieces: readonly Id[];
  sources: readonly SourceChange[];
  rooms: Arrangement['rooms'];
}

/** An arrangement among those that are compared. */
export interface ArrangementRow {
  /** Of the arrangement; or NOW, or TRIED. */
  id: Id;
  /** Null where it is no kept one. */
  name: string | null;
  /** It is what the others are held against. */
  isFirst: boolean;
  /** Every piece of the home. */
  places: readonly Put[];
  /** Against the first. */
  differs: Differences;
}

interface State {
  id: Id;
  name: string | null;
  places: readonly Put[];
  sources: readonly SourceChange[];
  rooms: Arrangement['rooms'];
}

/** The arrangements of a home as they are compared: as found first, then now, what is tried, and those that are kept. */
export function arrangementRows(home: Home, tried: readonly SourceChange[] = []): ArrangementRow[] {
  const pieces = inOrder(home.pieces);
  const now: State = {
    id: NOW,
    name: null,
    places: pieces.map(({ id, level, at, angle }) => ({ id, level, at, angle })),
    sources: [],
    rooms: indoorsOf(home).map(({ id, use }) => ({ id, use })),
  };
  const state = (kept: Arrangement): State => ({
    id: kept.id,
    name: kept.name,
    places: now.places.map((place) => kept.pieces.find(({ id }) => id === place.id) ?? place),
    sources: realChanges(home, sourceChangesOf(home, kept)),
    rooms: now.rooms.map((room) => kept.rooms.find(({ id }) => id === room.id) ?? room),
  });
  const found = asFound(home);
  const states = [
    ...(found ? [state(found)] : []),
    now,
    ...(tried.length > 0 ? [{ ...now, id: TRIED, sources: tried }] : []),
    ...keptArrangements(home)
      .filter((one) => one !== found)
      .map(state),
  ];
  const first = states[0]!;
  return states.map(({ id, name, places, sources, rooms }) => ({
    id,
    name,
    isFirst: id === first.id,
    places,
    differs: {
      pieces: places.filter((place, i) => isElsewhere(place, first.places[i]!)).map((place) => place.id),
      sources,
      rooms: rooms.filter(({ use }, i) => use !== first.rooms[i]!.use),
    },
  }));
}

/** The name a further arrangement is given where nobody says: the first of 'Arrangement 2', 'Arrangement 3' … that is free. */
export function nextName(home: Pick<Home, 'arrangements'>, word: string): string {
  const names = new Set(Object.values(home.arrangements).map(({ name }) => name));
  for (let n = 2; ; n++) if (!names.has(`${word} ${n}`)) return `${word} ${n}`;
}
