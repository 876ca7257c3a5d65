import type { ToolLoad, ToolName } from '../../../editor/editor';
import { sketch } from '../../../words/sketch';

/** The signs that the key can draw. */
export type SignName =
  | 'roomDrag'
  | 'roomCorners'
  | 'door'
  | 'window'
  | 'gap'
  | 'wardrobe'
  | 'radiator'
  | 'chimney'
  | 'other'
  | 'bedTwo'
  | 'bedOne'
  | 'cot'
  | 'desk'
  | 'seat'
  | 'piece'
  | 'line'
  | 'point'
  | 'walk';

/** A sign of the key: what is picked up by pressing it. */
export interface SignOffer {
  sign: SignName;
  word: string;
  tool: ToolName;
  load: ToolLoad;
}

export const SIGN_GROUPS: readonly { title: string; note?: string; offers: readonly SignOffer[] }[] = [
  {
    title: sketch.rooms,
    offers: [
      { sign: 'roomDrag', word: sketch.roomDrag, tool: 'room', load: { room: { by: 'drag' } } },
      { sign: 'roomCorners', word: sketch.roomCorners, tool: 'room', load: { room: { by: 'corners' } } },
    ],
  },
  {
    title: sketch.openings,
    offers: [
      { sign: 'door', word: sketch.door, tool: 'opening', load: { opening: { kind: 'door' } } },
      { sign: 'window', word: sketch.window, tool: 'opening', load: { opening: { kind: 'window' } } },
      { sign: 'gap', word: sketch.gap, tool: 'opening', load: { opening: { kind: 'gap' } } },
    ],
  },
  {
    title: sketch.fixtures,
    offers: [
      { sign: 'wardrobe', word: sketch.wardrobe, tool: 'fixture', load: { fixture: { kind: 'wardrobe' } } },
      { sign: 'radiator', word: sketch.radiator, tool: 'fixture', load: { fixture: { kind: 'radiator' } } },
      { sign: 'chimney', word: sketch.chimney, tool: 'fixture', load: { fixture: { kind: 'chimney' } } },
      { sign: 'other', word: sketch.otherFixture, tool: 'fixture', load: { fixture: { kind: 'other' } } },
    ],
  },
  {
    title: sketch.sources,
    note: sketch.sourceNote,
    offers: [
      { sign: 'line', word: sketch.line, tool: 'source', load: { source: { kind: 'line', name: '' } } },
      { sign: 'point', word: sketch.point, tool: 'source', load: { source: { kind: 'point', name: '' } } },
      { sign: 'walk', word: sketch.walk, tool: 'walk', load: {} },
    ],
  },
];

/** True where this sign is the one in hand. */
export function inHand(offer: SignOffer, tool: ToolName, load: ToolLoad): boolean {
  if (offer.tool !== tool) return false;
  const { room, opening, fixture, source } = offer.load;
  if (room) return load.room?.by === room.by;
  if (opening) return load.opening?.kind === opening.kind;
  if (fixture) return load.fixture?.kind === fixture.kind;
  if (source) return load.source?.kind === source.kind;
  return true;
}
