import { readFirst } from '../../editor/shownAnswer';
import { PLANS } from '../../editor/stages';
import { paintTriangle } from './paintTriangle';
import type { Scene } from './scene';
import { onSheet, type Sheet } from './sheet';

/** Where to read next, by rank. */
export function paintNext(sheet: Sheet, { next, view }: Pick<Scene, 'next' | 'view'>): void {
  if (!PLANS.includes(view.stage)) return;
  const { picked, stale } = next;
  next.answer?.readings.forEach(({ level, at }, rank) => {
    if (level === view.level)
      paintTriangle(sheet, onSheet(sheet, at), rank, { isPicked: rank === picked, stale });
  });
}

/** While furniture is arranged: where to read before deciding, at both places of the piece that may move. */
export function paintReadFirst(sheet: Sheet, { proposal, view }: Pick<Scene, 'proposal' | 'view'>): void {
  if (view.stage !== 'arrange') return;
  readFirst(proposal).forEach(({ level, at }, rank) => {
    if (level === view.level) paintTriangle(sheet, onSheet(sheet, at), rank, { stale: proposal.stale });
  });
}
