import { pieceLetters } from '../../words/canvas';
import { letterPlace, pieceLines } from './drawing/pieceLines';
import { paper } from './ink';
import { paintDisc } from './paintPiece';
import { ghostsOf, type Scene } from './scene';
import { onSheet, paintLines, strokePath, trace, type Screen, type Sheet } from './sheet';

const OUTLINE = 2;
const PAPER = 0.35;

/** The proposal: each piece at its new place in accent, with the dotted way from the old one. Stale: without accent. */
export function paintGhosts(sheet: Sheet, scene: Scene): void {
  const { context, ink } = sheet;
  const letters = pieceLetters(scene.home);
  const { stale } = scene.proposal;
  const colour = stale ? ink.text2 : ink.accent;
  for (const { piece, ghost } of ghostsOf(scene)) {
    if (ghost.level !== scene.view.level) continue;
    const [outline, ...inner] = pieceLines(ghost);
    trace(
      context,
      outline!.points.map((p) => onSheet(sheet, p)),
      true,
    );
    context.globalAlpha = PAPER;
    context.fillStyle = paper(ink);
    context.fill();
    context.globalAlpha = 1;
    strokePath(sheet, { colour, width: OUTLINE, dash: stale ? [4, 3] : undefined }, 1.6);
    paintLines(sheet, inner, colour, 0);
    if (piece.level === ghost.level)
      paintWay(sheet, onSheet(sheet, piece.at), onSheet(sheet, letterPlace(ghost)), colour);
    const letter = letters[piece.id];
    if (letter) paintDisc(sheet, onSheet(sheet, letterPlace(ghost)), letter, colour);
  }
}

/** From an open ring at the old centre, dotted and a little bowed, so that two ways can be told apart. */
function paintWay(sheet: Sheet, from: Screen, to: Screen, colour: string): void {
  const { context, ink } = sheet;
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const bow: Screen = [(from[0] + to[0]) / 2 + dy * 0.15, (from[1] + to[1]) / 2 - dx * 0.15];
  context.beginPath();
  context.moveTo(...from);
  context.quadraticCurveTo(...bow, ...to);
  strokePath(sheet, { colour, width: 2, dash: [2, 3] }, 1.4);
  context.beginPath();
  context.arc(...from, 3.2, 0, 2 * Math.PI);
  context.fillStyle = paper(ink);
  context.fill();
  strokePath(sheet, { colour, width: 1.5 });
}
