import { fixture } from './fixture';
import { opening } from './opening';
import { piece } from './piece';
import { reading } from './reading';
import { room } from './room';
import { source } from './source';
import { walk } from './walk';
import type { Home, KindName, Ref } from '../home';
import type { Kind, Thing, Things } from './kind';

/** The descriptor of every kind of thing on the plan. */
export const KINDS: { [K in KindName]: Kind<Things[K]> } = {
  room,
  opening,
  fixture,
  piece,
  source,
  reading,
  walk,
};

/** What a reference names, or undefined where it is gone. */
export function thingOf(home: Home, ref: Ref): Thing | undefined {
  const things: Record<string, Thing> = home[KINDS[ref.kind].collection];
  return Object.hasOwn(things, ref.id) ? things[ref.id] : undefined;
}
