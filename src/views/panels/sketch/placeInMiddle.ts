import type { Editor, ToolLoad, ToolName } from '../../../editor/editor';
import { addFixture, addPiece, addRoom, addSource, addWalk } from '../../../home/edits/add';
import type { Edit } from '../../../home/edits/edit';
import { fixtureSize } from '../../../home/kindDefaults';
import type { KindName, Point, RoomUse } from '../../../home/home';
import { sketch } from '../../../words/sketch';

const around = ([x, y]: Point, width: number, length: number): Point[] => [
  [x - width / 2, y - length / 2],
  [x + width / 2, y - length / 2],
  [x + width / 2, y + length / 2],
  [x - width / 2, y + length / 2],
];

function editFor(editor: Editor, tool: ToolName, load: ToolLoad): Edit | null {
  const { home, camera, view } = editor;
  const level = view.level;
  const at: Point = [Math.round(camera.centre[0] * 10) / 10, Math.round(camera.centre[1] * 10) / 10];
  const across: Point[] = [
    [at[0] - 2, at[1]],
    [at[0] + 2, at[1]],
  ];
  if (tool === 'room') {
    const name = sketch.roomName(Object.keys(home.rooms).length + 1);
    return addRoom({
      level,
      name,
      use: (load.room?.use ?? 'sleeping') as RoomUse,
      outline: around(at, 4, 3),
    });
  }
  if (tool === 'fixture' && load.fixture)
    return addFixture({
      level,
      kind: load.fixture.kind,
      outline: around(at, ...fixtureSize(load.fixture.kind)),
    });
  if (tool === 'piece' && load.piece) {
    const { kind, name, size } = load.piece;
    return addPiece({ level, kind, name, size, at });
  }
  if (tool === 'source' && load.source) {
    const { kind, name } = load.source;
    return addSource({ level, kind, name, path: kind === 'line' ? across : [at] });
  }
  if (tool === 'walk') return addWalk({ level, path: across });
  return null;
}

/**
 * For who works by keyboard: what a sign stands for, put into the middle of what is in view and selected, to be moved by
 * the arrow keys or by its fields. Openings are put into a wall from their room's row.
 */
export function placeInMiddle(editor: Editor, tool: ToolName, load: ToolLoad): void {
  const edit = editFor(editor, tool, load);
  if (!edit) return;
  const kind = tool as KindName;
  const collection = {
    room: 'rooms',
    fixture: 'fixtures',
    piece: 'pieces',
    source: 'sources',
    walk: 'walks',
  }[kind as 'room'] as 'rooms';
  const before = new Set(Object.keys(editor.home[collection]));
  if (editor.run(edit)) return;
  const id = Object.keys(editor.home[collection]).find((one) => !before.has(one));
  if (id) editor.select([{ kind, id }]);
}
