import { rectangle, toPlan, type Pose } from '../../../engine/geometry/pose';
import type { Piece, Point } from '../../../home/home';
import { arcPoints, type Line } from './line';

const INNER = 0.9;
const SITTER_RADIUS = 0.25;
const BAR_EVERY = 0.12;
const BAR_LENGTH = 0.06;

type Local = (x: number, y: number) => Point;
type Signs = (local: Local, w: number, l: number, piece: Piece) => Line[];

/** The strokes of a piece of furniture where it stands: its outline first, then what tells its kind. */
export function pieceLines(piece: Piece): Line[] {
  const pose: Pose = { at: piece.at, angle: piece.angle };
  const [w, l] = piece.size;
  const local: Local = (x, y) => toPlan(pose, [x, y]);
  const outline: Line = { points: rectangle(pose, piece.size), closed: true, weight: 1.5, fill: 'veil' };
  return [outline, ...SIGNS[piece.kind](local, w, l, piece)];
}

/** Where the disc with the piece's letter stands: towards the foot of a bed, clear of the pillows. */
export function letterPlace(piece: Piece): Point {
  const down = piece.kind === 'bed' || piece.kind === 'cot' ? -0.22 * piece.size[1] : 0;
  return toPlan({ at: piece.at, angle: piece.angle }, [0, down]);
}

const SIGNS: Record<Piece['kind'], Signs> = { bed, cot, desk, seat, other: () => [] };

function bed(local: Local, w: number, l: number, piece: Piece): Line[] {
  const two = sleepsTwo(piece);
  const fold = l / 2 - Math.min(0.58, l * 0.3);
  const [low, high] = [fold + 0.1, l / 2 - 0.08];
  const pillow = (x0: number, x1: number) => box(local, x0, low, x1, high);
  const lines: Line[] = [{ points: [local(-w / 2, fold), local(w / 2, fold)], weight: INNER }];
  if (!two) return [...lines, pillow(-w / 2 + 0.1, w / 2 - 0.1)];
  return [
    ...lines,
    pillow(-w / 2 + 0.08, -0.04),
    pillow(0.04, w / 2 - 0.08),
    { points: [local(0, fold), local(0, -l / 2)], weight: INNER, dash: [2.5, 2.5] },
  ];
}

/** Two zones where two sides are slept on, or where the mattress is wide and nobody is named. */
function sleepsTwo(piece: Piece): boolean {
  const sides = new Set(piece.uses.map((use) => use.side));
  return (sides.has('left') && sides.has('right')) || (piece.size[0] >= 1.3 && !sides.has('middle'));
}

function cot(local: Local, w: number, l: number): Line[] {
  const count = Math.max(1, Math.floor(l / BAR_EVERY) - 1);
  const inset = (l - (count - 1) * BAR_EVERY) / 2;
  const bars = Array.from({ length: count }, (_, i) => -l / 2 + inset + i * BAR_EVERY);
  return [-1, 1].flatMap((side) =>
    bars.map((y): Line => ({
      points: [local((side * w) / 2, y), local(side * (w / 2 - BAR_LENGTH), y)],
      weight: INNER,
    })),
  );
}

function desk(local: Local, _w: number, l: number): Line[] {
  return [
    { points: arcPoints([0, -l / 2], SITTER_RADIUS, 180, 360).map(([x, y]) => local(x, y)), weight: INNER },
  ];
}

function seat(local: Local, w: number, l: number): Line[] {
  const back = l / 2 - Math.min(0.18, l * 0.25);
  return [{ points: [local(-w / 2, back), local(w / 2, back)], weight: INNER }];
}

function box(local: Local, x0: number, y0: number, x1: number, y1: number): Line {
  return {
    points: [local(x0, y0), local(x1, y0), local(x1, y1), local(x0, y1)],
    closed: true,
    weight: INNER,
  };
}
