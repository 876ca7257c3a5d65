import { lerp, type Point } from '../../../engine/geometry/point';
import type { Piece } from '../../../home/home';

const BOW = 0.15;

/** The middle that a way from one place to another is drawn towards: to one side, so that two ways can be told apart. */
export function wayBow(from: Point, to: Point): Point {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  return [(from[0] + to[0]) / 2 - dy * BOW, (from[1] + to[1]) / 2 + dx * BOW];
}

/** A piece a share of its way from where it stands to where it would stand, turning the shorter way round. */
export function onItsWay(piece: Piece, ghost: Piece, share: number): Piece {
  if (share >= 1) return ghost;
  const bow = wayBow(piece.at, ghost.at);
  const at = lerp(lerp(piece.at, bow, share), lerp(bow, ghost.at, share), share);
  const turn = ((((ghost.angle - piece.angle) % 360) + 540) % 360) - 180;
  return { ...ghost, at: [...at], angle: piece.angle + turn * share };
}
