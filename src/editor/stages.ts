import type { KindName } from '../home/home';
import type { Stage, ToolName } from './editor';

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

/** Where places to read next are shown. */
export const PLANS: readonly Stage[] = ['survey', 'map'];

/** What the hand goes back to when nothing else is picked up: who surveys has the meter in hand. */
export const AT_REST: Record<Stage, ToolName> = {
  sketch: 'select',
  survey: 'reading',
  map: 'select',
  judge: 'select',
  arrange: 'select',
  report: 'select',
};
