import type { KindName } from '../home/home';
import type { Stage } from './editor';

/** In the order of the job. */
export const STAGES: readonly Stage[] = ['sketch', 'survey', 'map', 'judge', 'arrange', 'report'];

const PLAN: readonly KindName[] = ['room', 'opening', 'fixture', 'piece', 'source', 'walk'];

/** What answers to the pointer: what is not shown at a stage must not be in the way of what is. */
export const ANSWERS: Record<Stage, readonly KindName[]> = {
  sketch: PLAN,
  survey: [...PLAN, 'reading'],
  map: [...PLAN, 'reading'],
  judge: PLAN,
  arrange: ['room', 'opening', 'fixture', 'piece', 'source'],
  report: PLAN,
};

/** What the hand may move: a plan that is only looked at does not shift under it. */
export const MOVES: Record<Stage, readonly KindName[]> = {
  sketch: PLAN,
  survey: ['reading', 'walk'],
  map: [],
  judge: [],
  arrange: ['piece'],
  report: [],
};
