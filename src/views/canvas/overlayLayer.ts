import { paintProbe } from './paintProbe';
import { paintEmptySheet } from './paintEmptySheet';
import { flaggedPieces, paintFlag } from './paintFlag';
import { paintFrame } from './paintFrame';
import { paintGhosts } from './paintGhosts';
import { paintHandNote } from './paintHandNote';
import { paintMarks } from './paintMarks';
import { paintNext, paintReadFirst } from './paintNext';
import { paintNorth } from './paintNorth';
import { paintRules } from './paintRules';
import { paintHover, paintSelection } from './paintSelection';
import { paintChosenSuspect } from './paintSuspects';
import { paintTried } from './paintTried';
import type { Scene } from './scene';
import { SHOWN } from './shown';
import type { Sheet } from './sheet';

/** All that follows the hand: what is hovered, selected, proposed, being drawn; and the frame over everything. */
export function paintOverlay(sheet: Sheet, scene: Scene): void {
  const { results, probe, view, overlay, home } = scene;
  paintEmptySheet(sheet, scene);
  paintTried(sheet, scene);
  paintGhosts(sheet, scene);
  paintHover(sheet, scene);
  if (scene.atHand?.shapes && scene.atHand.put.level === view.level) paintRules(sheet, scene.atHand.shapes);
  paintSelection(sheet, scene);
  if (scene.suspect && scene.suspects.includes(scene.suspect)) paintChosenSuspect(sheet, scene.suspect);
  for (const piece of flaggedPieces(scene)) paintFlag(sheet, piece);
  paintNext(sheet, scene);
  paintReadFirst(sheet, scene);
  paintMarks(sheet, overlay);
  paintHandNote(sheet, scene);
  if (probe && SHOWN[view.stage].probe && overlay.length === 0)
    paintProbe(sheet, probe, home.settings.fieldUnit, home.settings.lengthUnit);
  paintFrame(sheet, results.state === 'running' ? results.progress : null);
  paintNorth(sheet, home.north);
}
