import { pieceDefaults } from '../src/home/kindDefaults';
import { put } from './surveyor';
import type { Fixture, Home, Id, Opening, Piece, PieceKind, Point, RoomUse, Use } from '../src/home/home';

export type Hole = Omit<Opening, 'id' | 'room'>;

/** `wall` counts from the room's first corner; `offset` runs along it. */
export const door = (wall: number, offset: number, hinge: Opening['hinge'], width = 0.8): Hole => ({
  kind: 'door',
  wall,
  offset,
  width,
  hinge,
  swing: 'in',
});

export const window = (wall: number, offset: number, width: number): Hole => ({
  kind: 'window',
  wall,
  offset,
  width,
  hinge: 'start',
  swing: 'none',
});

export const gap = (wall: number, offset: number, width: number): Hole => ({
  ...window(wall, offset, width),
  kind: 'gap',
});

/** A room with its openings. */
export function build(
  home: Home,
  level: Id,
  name: string,
  use: RoomUse,
  outline: Point[],
  holes: readonly Hole[],
): Id {
  const room = put(home, 'rooms', { level, name, use, outline });
  for (const hole of holes) put(home, 'openings', { room, ...hole });
  return room;
}

export function fit(
  home: Home,
  level: Id,
  kind: Fixture['kind'],
  name: string,
  outline: Point[],
  front: number | null = null,
): Id {
  return put(home, 'fixtures', { level, kind, name, outline, front });
}

/** A piece with what is usual for its kind and size. */
export function stand(
  home: Home,
  level: Id,
  kind: PieceKind,
  name: string,
  where: Pick<Piece, 'at' | 'angle'> & Partial<Pick<Piece, 'size' | 'mayStandIn'>>,
  uses: Use[],
): Id {
  const usual = pieceDefaults(kind, where.size);
  return put(home, 'pieces', {
    ...usual,
    mayStandIn: null,
    ...where,
    size: usual.size,
    kind,
    name,
    level,
    uses,
    locked: false,
  });
}

/** Note where everything stands now. */
export function keepAsFound(home: Home): Id {
  const pieces = Object.values(home.pieces).map(({ id, level, at, angle }) => ({ id, level, at, angle }));
  return put(home, 'arrangements', { name: 'As found', pieces, sources: [], rooms: [] });
}
