import { fixture } from './fixture';
import { opening } from './opening';
import { piece } from './piece';
import { reading } from './reading';
import { room } from './room';
import { source } from './source';
import { walk } from './walk';
import type { KindName } from '../home';
import type { Kind, Things } from './kind';

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
