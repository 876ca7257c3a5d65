import { canvasWords, selectionText } from '../../words/canvas';
import { placeSaid } from '../../words/placeSaid';
import { thingName } from '../../words/things';
import type { EditorState } from '../editorState.svelte';

type Described = Pick<EditorState, 'home' | 'selection' | 'atHand' | 'results' | 'proposal'> & {
  readonly editor: Pick<EditorState['editor'], 'carrying'>;
};

/**
 * What a person hears of the sheet: what is selected on it, and of a piece that a key has just moved its dose and the rules it
 * breaks. Null while a hand carries something, or the dose is being worked out: what was heard last holds.
 */
export function describe(state: Described): string | null {
  const { selection, home, editor } = state;
  if (editor.carrying) return null;
  const { atHand } = state;
  const piece = atHand && home.pieces[atHand.id];
  if (atHand?.told && piece) {
    const { adjusted, problem } = state.proposal;
    if (state.results.state === 'running' || (adjusted?.judging && !problem)) return null;
    return placeSaid(home, { ...piece, ...atHand.put }, atHand);
  }
  const names = selection.map((ref) => thingName(home, ref));
  return names.length > 0 ? selectionText(names) : canvasWords.nothingSelected;
}
