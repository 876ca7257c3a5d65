import type { EditorState } from '../../editorState.svelte';
import { ReadingDraft } from './readingDraft.svelte';

const drafts = new WeakMap<EditorState, { home: string; draft: ReadingDraft }>();

/** The reading that is being typed into the open home: a turned phone or a look at another stage costs nothing of it. */
export function draftOf(bridge: EditorState): ReadingDraft {
  const home = bridge.shelf.current;
  const kept = drafts.get(bridge);
  if (kept?.home === home) return kept.draft;
  const draft = new ReadingDraft(() => bridge.home);
  drafts.set(bridge, { home, draft });
  return draft;
}
