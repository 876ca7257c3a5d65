import type { Home, Opening, PieceKind, Ref, RoomUse, Round, Source } from '../home/home';

/** What a room is used for, in words. */
export const ROOM_USES: Record<RoomUse, string> = {
  sleeping: 'sleeping',
  living: 'living',
  work: 'work',
  passage: 'passage',
  wet: 'wet room',
  store: 'store',
  grounds: 'grounds',
};

const OPENING_WORDS: Record<Opening['kind'], string> = { door: 'Door', window: 'Window', gap: 'Gap' };

export const FIXTURE_WORDS = {
  wardrobe: 'Built-in wardrobe',
  radiator: 'Radiator',
  chimney: 'Chimney breast',
  other: 'Fixed thing',
} as const;

export const PIECE_WORDS: Record<PieceKind, string> = {
  bed: 'Bed',
  cot: 'Cot',
  desk: 'Desk',
  seat: 'Seat',
  other: 'Other piece',
};

export const SOURCE_WORDS: Record<Source['kind'], string> = { line: 'Line', point: 'Point' };

export const ROUND_WORDS: Record<Round['kind'], string> = {
  asFound: 'as found',
  supplyOff: 'supply off',
  afterChange: 'after a change',
};

/** The number of a reading on paper: 12 of m12. */
export function numberOf(id: string): string {
  return /\d+$/.exec(id)?.[0] ?? id;
}

/** What a thing on the plan is called in a sentence or a row. */
export function thingName(home: Home, ref: Ref): string {
  switch (ref.kind) {
    case 'room':
      return home.rooms[ref.id]?.name || `Room ${numberOf(ref.id)}`;
    case 'opening': {
      const opening = home.openings[ref.id];
      return opening ? OPENING_WORDS[opening.kind] : 'Opening';
    }
    case 'fixture': {
      const fixture = home.fixtures[ref.id];
      return fixture ? fixture.name || FIXTURE_WORDS[fixture.kind] : 'Fixed thing';
    }
    case 'piece': {
      const piece = home.pieces[ref.id];
      return piece ? piece.name || PIECE_WORDS[piece.kind] : 'Piece';
    }
    case 'source':
      return home.sources[ref.id]?.name || `Source ${numberOf(ref.id)}`;
    case 'walk':
      return home.walks[ref.id]?.name || `Walk ${numberOf(ref.id)}`;
    case 'reading':
      return `Reading ${numberOf(ref.id)}`;
  }
}

/** What a room is called, by its id. */
export const roomName = (home: Home, id: string): string => thingName(home, { kind: 'room', id });

/** What a piece or a fixture is called, by its id. */
export const furnitureName = (home: Home, id: string): string =>
  thingName(home, { kind: id in home.fixtures ? 'fixture' : 'piece', id });

/** A name as it stands within a sentence. */
export const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
