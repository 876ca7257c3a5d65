import { bounds } from '../../engine/geometry/polygon';
import { rectangle } from '../../engine/geometry/pose';
import type { Piece } from '../../home/home';
import { paper } from './ink';
import type { Box } from './drawing/labelPlaces';
import { ghostsOf, type Scene } from './scene';
import { onSheet, strokePath, trace, type Screen, type Sheet } from './sheet';

/** A staff on the upper right corner of a piece, and an open pennant. */
const FLAG = { staff: 15, wide: 10, tall: 8, width: 1.6, casing: 1.6 } as const;

const footOf = (sheet: Sheet, piece: Piece): Screen => {
  const { x1, y0, y1 } = bounds(rectangle(piece, piece.size).map((p) => onSheet(sheet, p)));
  return [x1 - 5, Math.min(y0 + 8, (y0 + y1) / 2)];
};

/** What breaks a rule where it is shown, on the level shown. */
export function flaggedPieces(scene: Pick<Scene, 'home' | 'view' | 'proposal' | 'broken'>): Piece[] {
  const ghosts = ghostsOf(scene).map(({ ghost }) => ghost);
  const pieces = Object.values(scene.home.pieces).map(
    (piece) => ghosts.find(({ id }) => id === piece.id) ?? piece,
  );
  return pieces.filter(({ id, level }) => scene.broken[id] !== undefined && level === scene.view.level);
}

/** A piece that breaks a rule where it stands; the list says which. */
export function paintFlag(sheet: Sheet, piece: Piece): void {
  const { context, ink } = sheet;
  const [x, y] = footOf(sheet, piece);
  const top = y - FLAG.staff;
  const places: Screen[] = [
    [x, y],
    [x, top],
    [x + FLAG.wide, top + FLAG.tall / 2],
    [x, top + FLAG.tall],
  ];
  trace(context, places);
  context.lineJoin = 'round';
  context.fillStyle = paper(ink);
  context.fill();
  strokePath(sheet, { colour: ink.wall, width: FLAG.width }, FLAG.casing);
  context.lineJoin = 'miter';
}

/** What the flag takes of the sheet. */
export function flagBox(sheet: Sheet, piece: Piece): Box {
  const [x, y] = footOf(sheet, piece);
  return { x: x - 3, y: y - FLAG.staff - 3, width: FLAG.wide + 6, height: FLAG.staff + 6 };
}
