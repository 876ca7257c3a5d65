import type { Home, KindName, Point, Ref } from '../home/home';
import type { Kind, Thing } from '../home/kinds/kind';
import { KINDS } from '../home/kinds/kinds';
import { firstOf } from '../home/order';
import type { View } from './editor';

/** The descriptor of a kind, for those who do not care which it is. */
export const kindOf = (ref: Pick<Ref, 'kind'>): Kind => KINDS[ref.kind];

export const sameRef = (a: Ref | null, b: Ref | null) => a === b || (a?.kind === b?.kind && a?.id === b?.id);

/** What a reference names, or undefined where it is gone. */
export const thingOf = (home: Home, ref: Ref): Thing | undefined => home[KINDS[ref.kind].collection][ref.id];

export interface Placed {
  ref: Ref;
  thing: Thing;
  kind: Kind;
}

const KIND_NAMES = Object.keys(KINDS) as readonly KindName[];

/** All things of some kinds that stand on the level (and, readings, in the round) that is shown. */
export function* thingsShown(home: Home, view: View, kinds = KIND_NAMES): Generator<Placed> {
  const firstRound = firstOf(home.rounds)?.id;
  for (const name of kinds) {
    const kind = kindOf({ kind: name });
    for (const thing of Object.values(home[kind.collection]) as Thing[]) {
      if (kind.level(home, thing) !== view.level) continue;
      if (name === 'reading' && (home.readings[thing.id]!.round ?? firstRound) !== view.round) continue;
      yield { ref: { kind: name, id: thing.id }, thing, kind };
    }
  }
}

/** The things of a kind that an edit has put into a home. */
export function addedThings(before: Home, after: Home, kind: KindName): Ref[] {
  const { collection } = KINDS[kind];
  return Object.keys(after[collection])
    .filter((id) => !Object.hasOwn(before[collection], id))
    .map((id) => ({ kind, id }));
}

/** The copies of some things. Copied rooms bring copies of their doors; those are not what was asked for. */
export function copiesOf(refs: readonly Ref[], before: Home, after: Home): Ref[] {
  return [...new Set(refs.map(({ kind }) => kind))].flatMap((kind) => addedThings(before, after, kind));
}

/**
 * What a whole view must hold: rooms and readings. A street line may run on for hundreds of metres and is cut at the edge of
 * the sheet; it counts where there is nothing else.
 */
export function pointsToShow(home: Home, view: View): Point[] {
  const points = (kinds: readonly KindName[]) =>
    [...thingsShown(home, view, kinds)].flatMap(({ thing, kind }) => [...kind.shape(home, thing).points]);
  const main = points(['room', 'reading']);
  return main.length > 0 ? main : points(KIND_NAMES);
}
