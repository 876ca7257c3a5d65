import type { Editor } from '../../editor/editor';
import { openFile } from './homeFiles';
import { traceOver } from './sketch/traceOver';

/** What is dropped on the page: a home file is opened, a picture in sketch is traced over, anything else is refused. */
export async function openDropped(editor: Editor, file: File): Promise<void> {
  if (/\.json$/i.test(file.name)) return openFile(editor, file);
  const isTraced =
    file.type.startsWith('image/') && editor.view.stage === 'sketch' && !(await traceOver(editor, file));
  if (!isTraced) editor.say({ text: { kind: 'file-not-taken', fileName: file.name }, tone: 'problem' });
}
