import { alike } from './alike';
import type { Suspect } from './suspect';

/** One thing, as several samples found it. */
export interface Cluster {
  /** The member with the like of it in most samples. */
  seed: Suspect;
  members: Suspect[];
  /** Of the samples, those that have a member, 0…1. */
  share: number;
}

/**
 * Sources of different samples put together, what most samples have first, while `least` of the samples have another: the
 * source with the like of it in most samples is taken with all that is like it, then the next of what is left.
 */
export function clusters(suspects: readonly Suspect[], weights: readonly number[], least: number): Cluster[] {
  const like = neighbours(suspects);
  const taken = suspects.map(() => false);
  const shareOf = (members: readonly number[]): number => {
    const having = new Set(members.filter((i) => !taken[i]).map((i) => suspects[i].sample));
    return [...having].reduce((sum, sample) => sum + weights[sample], 0);
  };
  const found: Cluster[] = [];
  for (;;) {
    let [seed, share] = [-1, 0];
    suspects.forEach((_, i) => {
      const own = taken[i] ? 0 : shareOf(like[i]);
      if (own > share) [seed, share] = [i, own];
    });
    if (seed < 0 || share < least) return found;
    const members = like[seed].filter((i) => !taken[i]);
    found.push({ seed: suspects[seed], members: members.map((i) => suspects[i]), share });
    for (const i of members) taken[i] = true;
  }
}

/** Indices of those that each is like, itself among them. */
function neighbours(suspects: readonly Suspect[]): number[][] {
  const like: number[][] = suspects.map((_, i) => [i]);
  for (let i = 0; i < suspects.length; i++)
    for (let j = i + 1; j < suspects.length; j++)
      if (alike(suspects[i], suspects[j]) && alike(suspects[j], suspects[i])) {
        like[i].push(j);
        like[j].push(i);
      }
  return like;
}
