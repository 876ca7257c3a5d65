import { keepArrangement, type Otherwise } from '../../../home/edits/arrangements';
import { usesChangedBy } from '../../../home/questions/openPlan';
import type { PlacedPiece } from '../../../engine/arranging/arrange';
import type { Problem } from '../../../home/problem';
import type { EditorState } from '../../editorState.svelte';

/** Keeps how the furniture stands under a name, or with these pieces where an answer has them; with the sources that are tried. */
export function keepShown(bridge: EditorState, name: string, moved: readonly PlacedPiece[]): Problem | null {
  const { home, proposal, tried, editor } = bridge;
  const otherwise: Otherwise = {
    pieces: moved.map(({ id, level, at, angle }) => ({ id, level, at, angle })),
    sources: tried.map(({ id, scale, path }) => ({
      id,
      scale,
      path: path && path.map(([x, y]): [number, number] => [x, y]),
    })),
    rooms: proposal.wishes.open ? usesChangedBy(home, moved) : [],
  };
  return editor.run(keepArrangement(name, otherwise));
}
