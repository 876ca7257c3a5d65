import type { EvidenceRow } from '../../../engine/mapping/fitSurvey';
import type { EditorState } from '../../editorState.svelte';

/** The row of the evidence that is selected on the plan, or null. */
export const selectedRow = (state: EditorState, rows: readonly EvidenceRow[]): EvidenceRow | null =>
  rows.find(({ ids }) => state.selection.some(({ kind, id }) => kind === 'reading' && ids.includes(id))) ??
  null;

/** Selects the readings of a row on the plan, on their own level. */
export function selectRow({ editor, view }: EditorState, { level, ids }: EvidenceRow): void {
  if (level !== view.level) editor.setLevel(level);
  editor.select(ids.map((id) => ({ kind: 'reading', id })));
}
