import type { Fixture, Opening, Piece, PieceKind, Source, Use } from './home';

/** Hours a day that someone spends at a piece. */
const HOURS: Record<PieceKind, number> = { bed: 8, cot: 12, desk: 4, seat: 0, other: 0 };

/** Metres above the floor at which a body lies or sits. */
const HEIGHT: Record<PieceKind, number> = { bed: 0.6, cot: 0.5, desk: 1, seat: 1, other: 1 };

const SIZE: Record<PieceKind, readonly [number, number]> = {
  bed: [1.4, 2],
  cot: [0.6, 1.2],
  desk: [1.2, 0.6],
  seat: [0.6, 0.6],
  other: [0.8, 0.5],
};

export const hoursAt = (kind: PieceKind): number => HOURS[kind];

/** Clear floor beside a bed, metres. */
export const ACCESS_BESIDE = 0.75;

/** Whether a bed has somebody on its left half and somebody on its right. */
export const sleepsOnBothSides = (kind: PieceKind, uses: readonly Pick<Use, 'side'>[]): boolean =>
  kind === 'bed' && ['left', 'right'].every((half) => uses.some(({ side }) => side === half));

/**
 * Clear floor a piece asks for. Beds after Approved Document M vol. 1 (2015), M4(2): a principal double 0.75 m at both
 * sides and foot, another double at one side and foot, a single at one side; which double is the principal one is told
 * by its width. Whoever sleeps on a side gets out there. Cot, desk and seat are this project's choice.
 */
export function accessOf(
  kind: PieceKind,
  size: readonly [number, number],
  uses: readonly Pick<Use, 'side'>[] = [],
): Piece['access'] {
  if (kind === 'bed') {
    const [width] = size;
    const two = width >= 1.5 || sleepsOnBothSides(kind, uses);
    return { left: ACCESS_BESIDE, right: two ? ACCESS_BESIDE : 0, foot: width >= 1.2 ? 0.75 : 0 };
  }
  if (kind === 'cot') return { left: 0.75, right: 0, foot: 0 };
  if (kind === 'desk') return { left: 0, right: 0, foot: 0.9 };
  return { left: 0, right: 0, foot: kind === 'seat' ? 0.6 : 0 };
}

/** What a piece of a kind is like where the file or the person says nothing. */
export function pieceDefaults(
  kind: PieceKind,
  size: readonly [number, number] = SIZE[kind],
): Pick<Piece, 'size' | 'height' | 'uses' | 'access'> {
  return {
    size: [size[0], size[1]],
    height: HEIGHT[kind],
    uses: HOURS[kind] > 0 ? [{ who: 'A', side: 'middle', hours: HOURS[kind] }] : [],
    access: accessOf(kind, size),
  };
}

/** The band of frequencies a meter is taken to answer to where nobody says, hertz: mains and its first harmonics. */
export const BAND: readonly [number, number] = [40, 400];

const WIDTH: Record<Opening['kind'], number> = { door: 0.8, window: 1.2, gap: 0.9 };

export function openingDefaults(kind: Opening['kind']): Pick<Opening, 'width' | 'swing'> {
  return { width: WIDTH[kind], swing: kind === 'door' ? 'in' : 'none' };
}

/** A line is taken for one on street poles, a point for an appliance at the height of a table. */
export function sourceDefaults(kind: Source['kind']): Pick<Source, 'height'> {
  return { height: kind === 'line' ? 8 : 1 };
}

/** Metres along the wall and into the room. Commonly met sizes; this project's choice. */
const FIXTURE_SIZE: Record<Fixture['kind'], readonly [number, number]> = {
  wardrobe: [1.2, 0.6],
  radiator: [1, 0.1],
  chimney: [1.2, 0.4],
  other: [0.6, 0.6],
};

export const fixtureSize = (kind: Fixture['kind']): readonly [number, number] => FIXTURE_SIZE[kind];
