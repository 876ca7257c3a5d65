import type { Editor } from '../../../editor/editor';
import { change } from '../../../home/edits/change';
import { problemText } from '../../../words/problems';
import { readPicture } from './pictureFile';

/** A new picture is taken to be 12 m wide until its scale is set. */
const FIRST_WIDTH = 12;

/** Lays a picture under the level that is shown and takes up its scale; the sentence where it cannot be, or ''. */
export async function traceOver(editor: Editor, file: File): Promise<string> {
  const picture = await readPicture(file);
  if (!picture.ok) return picture.sentence;
  const backdrop = {
    image: picture.image,
    at: [0, 0] as const,
    metresPerPixel: FIRST_WIDTH / picture.width,
    angle: 0,
    opacity: 0.5,
  };
  const problem = editor.run(change({ collection: 'levels', id: editor.view.level }, { backdrop }));
  if (problem) return problemText(problem);
  editor.showAll();
  editor.useTool('scale');
  return '';
}
