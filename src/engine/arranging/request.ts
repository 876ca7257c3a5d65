import type { FittedSurvey } from '../mapping/fitSurvey';
import type { Point, Ring } from '../geometry/point';
import type { RuleSettings } from './ruleSettings';
import type { ZoneSide } from '../dose/zones';

export interface ArrangeRoom {
  id: string;
  level: string;
  use: string;
  outline: Ring;
}

/** Wall i of its room runs from outline[i] to outline[i + 1]; `offset` is from there to the opening's near end. */
export interface ArrangeOpening {
  id: string;
  room: string;
  kind: 'door' | 'window' | 'gap';
  wall: number;
  offset: number;
  width: number;
  hinge: 'start' | 'end';
  swing: 'in' | 'out' | 'none';
}

export interface ArrangeFixture {
  id: string;
  level: string;
  kind: 'wardrobe' | 'radiator' | 'chimney' | 'other';
  outline: Ring;
  front: number | null;
}

export type ArrangeKind = 'bed' | 'cot' | 'desk' | 'seat' | 'other';

/** A piece where it stands now. `at` is the middle of its footprint; head or back is at +y of its own axes. */
export interface ArrangePiece {
  id: string;
  kind: ArrangeKind;
  level: string;
  at: Point;
  angle: number;
  size: readonly [number, number];
  height: number;
  uses: readonly { who: string; side: ZoneSide; hours: number }[];
  locked: boolean;
  /** Null: any room whose use suits the kind, and the room it stands in. */
  mayStandIn: readonly string[] | null;
  access: { left: number; right: number; foot: number };
}

/** What is asked of the planner. Plain data: it crosses to the worker and comes from the CLI. */
export interface ArrangeRequest {
  fitted: FittedSurvey;
  rooms: readonly ArrangeRoom[];
  openings: readonly ArrangeOpening[];
  fixtures: readonly ArrangeFixture[];
  pieces: readonly ArrangePiece[];
  rules: RuleSettings;
  /** What is made least: the mean dose of the people, or that of the worst off. */
  aim: 'mean' | 'worst-off';
  /** Plan on the 95th percentile of the field instead of its median. */
  cautious: boolean;
  /** Metres between places tried along a wall; 0.05 … 0.1. */
  step: number;
  /** Most nodes of one search; beyond it the best so far is given, unproven. */
  budget: number;
}

/** Uses of rooms that suit a kind of piece: the project's choice. */
const SUITS: Record<ArrangeKind, readonly string[]> = {
  bed: ['sleeping'],
  cot: ['sleeping'],
  desk: ['work', 'living', 'sleeping'],
  seat: ['living', 'work', 'sleeping'],
  other: ['living', 'work', 'sleeping'],
};

/** Whether a kind of piece may stand in rooms of a use where nothing else is said: the project’s choice. */
export const suits = (kind: ArrangeKind, use: string): boolean => SUITS[kind].includes(use);
