import { canvasWords, selectionText } from '../../words/canvas';
import { thingName } from '../../words/things';
import type { EditorState } from '../editorState.svelte';

/** What a person hears of the sheet: what is selected on it. */
export function describe(state: EditorState): string {
  const names = state.selection.map((ref) => thingName(state.home, ref));
  return names.length > 0 ? selectionText(names) : canvasWords.nothingSelected;
}
