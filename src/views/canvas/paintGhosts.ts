import type { Point } from '../../home/home';
import { pieceLetters } from '../../words/canvas';
import { letterPlace, pieceLines } from './drawing/pieceLines';
import { onItsWay, wayBow } from './drawing/way';
import { paper } from './ink';
import { paintDisc } from './paintPiece';
import { ghostsOf, type Scene } from './scene';
import { onSheet, paintLines, strokePath, trace, type Sheet } from './sheet';

const OUTLINE = 2;
const PAPER = 0.35;

/** The proposal: each piece at its new place in accent, with the dotted way from the old one. Stale: without accent. */
export function paintGhosts(sheet: Sheet, scene: Scene): void {
  const { context, ink } = sheet;
  const letters = pieceLetters(scene.home);
  const { stale } = scene.proposal;
  const colour = stale ? ink.text2 : ink.accent;
  for (const { piece, ghost: end } of ghostsOf(scene)) {
    if (end.level !== scene.view.level) continue;
    const isHere = piece.level === end.level;
    const ghost = isHere ? onItsWay(piece, end, scene.travel) : end;
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
    if (isHere) paintWay(sheet, piece.at, letterPlace(end), colour);
    const letter = letters[piece.id];
    if (letter) paintDisc(sheet, onSheet(sheet, letterPlace(ghost)), letter, colour);
  }
}

/** From an open ring at the old centre, dotted. */
function paintWay(sheet: Sheet, from: Point, to: Point, colour: string): void {
  const { context, ink } = sheet;
  const start = onSheet(sheet, from);
  context.beginPath();
  context.moveTo(...start);
  context.quadraticCurveTo(...onSheet(sheet, wayBow(from, to)), ...onSheet(sheet, to));
  strokePath(sheet, { colour, width: 2, dash: [2, 3] }, 1.4);
  context.beginPath();
  context.arc(...start, 3.2, 0, 2 * Math.PI);
  context.fillStyle = paper(ink);
  context.fill();
  strokePath(sheet, { colour, width: 1.5 });
}
