import type { GoesWith } from '../home/edits/whatGoesWith';
import { countOf } from './collections';

/** “2 openings and 12 readings”, in the order of the first of each. */
function counted(members: GoesWith['goes']): string {
  const counts = new Map<string, number>();
  for (const { collection } of members) counts.set(collection, (counts.get(collection) ?? 0) + 1);
  const parts = [...counts].map(([collection, n]) => countOf(collection, n));
  return parts.length > 1 ? `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}` : (parts[0] ?? '');
}

/** What a deletion takes along, to be said before it is done; null where nothing else is touched. */
export function removalText({ goes, changes }: GoesWith): string | null {
  if (goes.length === 0 && changes.length === 0) return null;
  const along = goes.length > 0 ? `${counted(goes)} ${goes.length === 1 ? 'goes' : 'go'} with it.` : '';
  const left =
    changes.length > 0
      ? `${counted(changes)} ${changes.length === 1 ? 'stays' : 'stay'} and no longer ${changes.length === 1 ? 'names' : 'name'} it.`
      : '';
  return `${[along, left].filter(Boolean).join(' ')} One undo brings all back.`;
}
