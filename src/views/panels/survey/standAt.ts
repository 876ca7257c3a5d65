import type { Point } from '../../../home/home';
import type { EditorState } from '../../editorState.svelte';
import { layout } from '../../layout.svelte';

/** Puts the place of the next reading: on a phone the plan moves under the cross, elsewhere the cross moves. */
export function standAt({ editor }: EditorState, at: Point): void {
  if (layout.form === 'phone') {
    const { centre, scale } = editor.camera;
    editor.panBy((centre[0] - at[0]) * scale, (at[1] - centre[1]) * scale);
  }
  editor.setReadingPlace(at);
}
