import { toPlan } from '../../editor/camera';
import { canvasWords } from '../../words/canvas';
import { lengthText } from '../../words/numbers';
import { frameStep } from './drawing/frameMarks';
import { write } from './lettering';
import { paintLength } from './paintMarks';
import { levelOf, type Scene } from './scene';
import { onSheet, strokePath, trace, type Sheet } from './sheet';

const CROSS = 3;
const FIRST_ROOM = [4.2, 3.6] as const;

/** A sheet without rooms: crosses at the metres, and while nothing is being drawn the invitation to draw. */
export function paintEmptySheet(sheet: Sheet, scene: Scene): void {
  if (levelOf(scene.home, scene.view.level).rooms.length > 0 || scene.backdrop) return;
  paintCrosses(sheet);
  const isDrawing = scene.overlay.some(({ mark }) => mark === 'ring' || mark === 'path' || mark === 'length');
  if (scene.view.stage === 'sketch' && !isDrawing) paintInvitation(sheet, scene);
}

function paintCrosses(sheet: Sheet): void {
  const { context, camera, ink } = sheet;
  const step = Math.max(1, frameStep(camera.scale));
  const [left, top] = toPlan(camera, 0, 0);
  const [right, bottom] = toPlan(camera, camera.width, camera.height);
  context.beginPath();
  for (let i = Math.ceil(left / step); i * step < right; i++) {
    for (let j = Math.ceil(bottom / step); j * step < top; j++) {
      const [x, y] = onSheet(sheet, [i * step, j * step]);
      context.moveTo(x - CROSS, y);
      context.lineTo(x + CROSS, y);
      context.moveTo(x, y - CROSS);
      context.lineTo(x, y + CROSS);
    }
  }
  strokePath(sheet, { colour: ink.rule, width: 1 });
}

function paintInvitation(sheet: Sheet, { home }: Scene): void {
  const { context, camera, ink } = sheet;
  const [w, h] = [FIRST_ROOM[0] / 2, FIRST_ROOM[1] / 2];
  const [cx, cy] = camera.centre;
  const [x, y] = onSheet(sheet, camera.centre);
  const corners = [
    [cx - w, cy + h],
    [cx + w, cy + h],
    [cx + w, cy - h],
    [cx - w, cy - h],
  ] as const;
  trace(
    context,
    corners.map((p) => onSheet(sheet, p)),
    true,
  );
  context.fillStyle = ink.lift;
  context.fill();
  strokePath(sheet, { colour: ink.accent, width: 2, dash: [7, 4] });
  const unit = home.settings.lengthUnit;
  const off = 20 / camera.scale;
  const aside = 34 / camera.scale;
  const [topLeft, topRight, , bottomLeft] = corners;
  paintLength(
    sheet,
    [topLeft[0], topLeft[1] + off],
    [topRight[0], topRight[1] + off],
    lengthText(FIRST_ROOM[0], unit),
  );
  paintLength(
    sheet,
    [bottomLeft[0] - aside, bottomLeft[1]],
    [topLeft[0] - aside, topLeft[1]],
    lengthText(FIRST_ROOM[1], unit),
  );
  write(sheet, {
    text: canvasWords.firstRoom,
    x,
    y: y - 10,
    hand: { size: 22, weight: 500 },
    fill: ink.text,
  });
  write(sheet, {
    text: canvasWords.firstRoomNote,
    x,
    y: y + 16,
    hand: { size: 15, weight: 400 },
    fill: ink.text2,
  });
}
