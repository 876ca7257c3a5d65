import type { Walk } from '../../home/home';
import { sectionLetter } from '../../words/canvas';
import { CHAIN } from './estimateLayer';
import { paper } from './ink';
import { write } from './lettering';
import { onSheet, strokePath, trace, type Screen, type Sheet } from './sheet';

const SQUARE = 17;

/** Walks as they were walked: a thin dashed line. */
export function paintWalks(sheet: Sheet, walks: readonly Walk[]): void {
  for (const { path } of walks) {
    trace(
      sheet.context,
      path.map((p) => onSheet(sheet, p)),
    );
    strokePath(sheet, { colour: sheet.ink.text2, width: 1, dash: [6, 4] }, 1.2);
  }
}

/** Where the letters of a section stand, so that nothing else is written there. */
export function sectionEnds(sheet: Sheet, walk: Walk): Screen[] {
  const ends = [walk.path[0], walk.path.at(-1)];
  return ends.flatMap((p) => (p ? [keptOnSheet(sheet, onSheet(sheet, p))] : []));
}

/** An end beyond the sheet keeps its letter at the edge, so that the section can still be named. */
function keptOnSheet({ camera }: Sheet, [x, y]: Screen): Screen {
  return [Math.min(camera.width - 24, Math.max(24, x)), Math.min(camera.height - 24, Math.max(24, y))];
}

/** Walks as sections: a chain line with its letter in a square at both ends. */
export function paintSections(sheet: Sheet, walks: readonly Walk[]): void {
  const { ink } = sheet;
  walks.forEach(({ path }, i) => {
    const places = path.map((p) => onSheet(sheet, p));
    const [from, to] = [places[0], places[places.length - 1]];
    if (!from || !to || places.length < 2) return;
    trace(sheet.context, places);
    strokePath(sheet, { colour: ink.accent, width: 1.2, dash: CHAIN }, 1.4);
    const letter = sectionLetter(i);
    paintEnd(sheet, from, letter);
    paintEnd(sheet, to, `${letter}′`);
  });
}

function paintEnd(sheet: Sheet, at: Screen, text: string): void {
  const { context, ink } = sheet;
  const hand = { size: 12, weight: 650 };
  const width = SQUARE + (text.length - 1) * 5;
  const [x, y] = keptOnSheet(sheet, at);
  context.beginPath();
  context.rect(x - width / 2, y - SQUARE / 2, width, SQUARE);
  context.fillStyle = paper(ink);
  context.fill();
  strokePath(sheet, { colour: ink.accent, width: 1.3 });
  write(sheet, { text, x, y, hand, fill: ink.accent });
}
