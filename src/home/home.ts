/**
 * The home in memory: everything about one dwelling and its survey.
 *
 * Collections are records by id; the arrays of the home file exist in `file/` only. Units everywhere: metres,
 * microtesla, hours, degrees counter-clockwise, seconds. Plan coordinates are right-handed: x to the right, y up the
 * page. Every field is present in memory; defaults are filled in when a file is parsed.
 */

import type { RuleSettings } from '../engine/arranging/ruleSettings';

export type Id = string;
export type Point = readonly [number, number];

export type FieldUnit = 'uT' | 'mG' | 'nT';
export type LengthUnit = 'm' | 'ft';
export type MethodChoice = 'auto' | 'inverse-distance' | 'kriging' | 'source-kriging' | 'source-sampling';

export interface Settings {
  fieldUnit: FieldUnit;
  lengthUnit: LengthUnit;
  mains: 50 | 60;
  mapHeight: number;
  guideline: Id;
  target: number;
  method: MethodChoice;
  night: [string, string];
  base: Id | null;
  rules: RuleSettings;
}

export interface Backdrop {
  image: string;
  at: Point;
  metresPerPixel: number;
  angle: number;
  opacity: number;
}

interface Level {
  id: Id;
  name: string;
  elevation: number;
  backdrop: Backdrop | null;
}

export type RoomUse = 'sleeping' | 'living' | 'work' | 'passage' | 'wet' | 'store' | 'grounds';

export interface Room {
  id: Id;
  level: Id;
  name: string;
  use: RoomUse;
  outline: Point[];
}

export interface Opening {
  id: Id;
  room: Id;
  kind: 'door' | 'window' | 'gap';
  /** Wall i runs from outline[i] to outline[i + 1]. */
  wall: number;
  offset: number;
  width: number;
  hinge: 'start' | 'end';
  swing: 'in' | 'out' | 'none';
}

export interface Fixture {
  id: Id;
  level: Id;
  kind: 'wardrobe' | 'radiator' | 'chimney' | 'other';
  name: string;
  outline: Point[];
  /** The outline's wall that must stay reachable (a wardrobe's doors), or null. */
  front: number | null;
}

export type PieceKind = 'bed' | 'cot' | 'desk' | 'seat' | 'other';
export type Side = 'left' | 'right' | 'middle';

export interface Use {
  who: string;
  side: Side;
  hours: number;
}

export interface Piece {
  id: Id;
  kind: PieceKind;
  name: string;
  level: Id;
  /** Centre of the footprint. */
  at: Point;
  angle: number;
  /** Width, length. */
  size: [number, number];
  height: number;
  uses: Use[];
  locked: boolean;
  /** Null: any room whose use suits the kind. */
  mayStandIn: Id[] | null;
  access: { left: number; right: number; foot: number };
}

export interface Source {
  id: Id;
  kind: 'line' | 'point';
  name: string;
  level: Id;
  path: Point[];
  height: number;
  falloff: 1 | 2 | 3 | 'fit';
  origin: 'outside' | 'house' | 'unknown';
}

export interface Meter {
  id: Id;
  name: string;
  axes: 1 | 3;
  unit: FieldUnit;
  percent: number;
  absolute: number;
  coverage: 'limits' | 'k2';
  resolution: number;
  range: [number, number];
  settleSeconds: number;
  gain: number;
  offset: number;
  serial: string;
  calibrated: string | null;
  band: [number, number];
}

export interface Round {
  id: Id;
  name: string;
  kind: 'asFound' | 'supplyOff' | 'afterChange';
  date: string | null;
  note: string;
}

export interface Walk {
  id: Id;
  name: string;
  level: Id;
  path: Point[];
}

export interface Reading {
  id: Id;
  level: Id;
  at: Point;
  /** What the display showed, µT, the resultant. */
  value: number;
  height: number;
  min: number | null;
  max: number | null;
  axes: [number, number, number] | null;
  taken: 'settled' | 'peak';
  limit: 'below' | 'above' | null;
  /** Null: the first meter, or a meter of common accuracy where the home has none. */
  meter: Id | null;
  /** Null: the first round. */
  round: Id | null;
  walk: Id | null;
  time: string | null;
  /** What was typed. */
  text: string;
  note: string;
  /** The reason it is left out; empty when it is used. */
  excluded: string;
}

interface Recording {
  id: Id;
  name: string;
  level: Id;
  at: Point;
  height: number;
  meter: Id | null;
  start: string;
  samples: [number, number][];
}

interface Comparison {
  id: Id;
  meter: Id;
  reference: Id;
  pairs: [number, number][];
}

/** Where furniture stands, or would; what it would be with sources weaker or elsewhere, and rooms used otherwise. */
export interface Arrangement {
  id: Id;
  name: string;
  pieces: { id: Id; level: Id; at: Point; angle: number }[];
  /** The field of each times `scale`, 0 being off; `path` where it would be moved to, null where it stays. */
  sources: { id: Id; scale: number; path: Point[] | null }[];
  /** Rooms that are not named are used as the home says. */
  rooms: { id: Id; use: RoomUse }[];
}

interface Guideline {
  id: Id;
  name: string;
  year: number;
  source: string;
  basis: 'instant' | 'dayMedian' | 'yearMean' | 'spot';
  kind: 'limit' | 'precaution' | 'practice';
  uses: RoomUse[];
  /** Ascending; the word speaks of values at or above the edge. */
  edges: { value: number; word: string }[];
}

export interface ReportWords {
  preparedFor: string;
  by: string;
  address: string;
  date: string | null;
  purpose: string;
  findings: string;
  advice: string;
}

export interface Home {
  title: string;
  north: number;
  settings: Settings;
  levels: Record<Id, Level>;
  rooms: Record<Id, Room>;
  openings: Record<Id, Opening>;
  fixtures: Record<Id, Fixture>;
  pieces: Record<Id, Piece>;
  sources: Record<Id, Source>;
  meters: Record<Id, Meter>;
  rounds: Record<Id, Round>;
  walks: Record<Id, Walk>;
  readings: Record<Id, Reading>;
  recordings: Record<Id, Recording>;
  comparisons: Record<Id, Comparison>;
  arrangements: Record<Id, Arrangement>;
  guidelines: Record<Id, Guideline>;
  report: ReportWords;
  /** The highest number given out per letter, so that an id on paper is never used again. */
  lastIds: Record<string, number>;
}

/** The names of the collections of a home. */
export type Collection =
  | 'levels'
  | 'rooms'
  | 'openings'
  | 'fixtures'
  | 'pieces'
  | 'sources'
  | 'meters'
  | 'rounds'
  | 'walks'
  | 'readings'
  | 'recordings'
  | 'comparisons'
  | 'arrangements'
  | 'guidelines';

/** The kinds of things that stand on the plan and can be selected. */
export type KindName = 'room' | 'opening' | 'fixture' | 'piece' | 'source' | 'reading' | 'walk';

/** A thing on the plan. */
export interface Ref {
  kind: KindName;
  id: Id;
}
