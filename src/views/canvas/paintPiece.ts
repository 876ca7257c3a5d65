import type { Piece } from '../../home/home';
import { letterPlace, pieceLines } from './drawing/pieceLines';
import { paper } from './ink';
import { write } from './lettering';
import { onSheet, paintLines, strokePath, trace, type Screen, type Sheet } from './sheet';

const DISC = 9;

export function paintPiece(sheet: Sheet, piece: Piece, letter: string | undefined): void {
  paintLines(sheet, pieceLines(piece), sheet.ink.wall);
  if (letter) paintDisc(sheet, onSheet(sheet, letterPlace(piece)), letter, sheet.ink.wall);
}

/** The place a piece leaves: its outline alone, dashed. */
export function paintLeftPlace(sheet: Sheet, piece: Piece): void {
  const [outline] = pieceLines(piece);
  trace(
    sheet.context,
    outline!.points.map((p) => onSheet(sheet, p)),
    true,
  );
  strokePath(sheet, { colour: sheet.ink.text2, width: 1, dash: [3, 3] });
}

/** The disc with a piece's letter, the same on the plan and beside the ruler. */
export function paintDisc(sheet: Sheet, [x, y]: Screen, letter: string, colour: string): void {
  const { context, ink } = sheet;
  context.beginPath();
  context.arc(x, y, DISC + 1.6, 0, 2 * Math.PI);
  context.fillStyle = paper(ink);
  context.fill();
  context.beginPath();
  context.arc(x, y, DISC, 0, 2 * Math.PI);
  context.fillStyle = colour;
  context.fill();
  write(sheet, { text: letter, x, y, hand: { size: 12, weight: 700 }, fill: paper(ink) });
}
