import type {
  Fixture,
  Home,
  Id,
  KindName,
  Opening,
  Piece,
  Point,
  Reading,
  Ref,
  Room,
  Source,
  Walk,
} from '../home';
import type { Problem } from '../problem';

/** The things on the plan, by the name of their kind. */
export interface Things {
  room: Room;
  opening: Opening;
  fixture: Fixture;
  piece: Piece;
  source: Source;
  reading: Reading;
  walk: Walk;
}

export type Thing = Things[KindName];

/** The collections that hold things on the plan. */
type PlanCollection = 'rooms' | 'openings' | 'fixtures' | 'pieces' | 'sources' | 'readings' | 'walks';

/** A thing's geometry in plan coordinates: a closed outline, an open path, or one point. */
interface Shape {
  points: readonly Point[];
  closed: boolean;
}

/** A place of a thing that can be dragged by itself. `key` names it to `dragHandle`. */
export interface Handle {
  key: string;
  at: Point;
  role: 'corner' | 'middle' | 'end' | 'turn';
}

/** What other things may snap to. */
export interface Snaps {
  points: readonly Point[];
  lines: readonly (readonly [Point, Point])[];
}

/** All that differs between the kinds of things on the plan. Nothing else switches on the kind. */
export interface Kind<T extends Thing = Thing> {
  readonly kind: KindName;
  readonly collection: PlanCollection;
  level(home: Home, thing: T): Id;
  shape(home: Home, thing: T): Shape;
  /** Metres from a plan point to the thing; 0 inside it. */
  distanceTo(home: Home, thing: T, at: Point): number;
  handles(home: Home, thing: T): Handle[];
  /** The thing moved as a whole. */
  drag(home: Home, thing: T, delta: Point): T;
  /** The thing with one handle moved to a place. */
  dragHandle(home: Home, thing: T, key: string, to: Point): T;
  snaps(home: Home, thing: T): Snaps;
  /** The thing turned counter-clockwise about a point. */
  turn(home: Home, thing: T, degrees: number, about: Point): T;
  /**
   * The thing with another outline whose walls are the old ones renumbered: `walls` says what an old wall has become.
   * Absent where a kind has no corners of its own.
   */
  reshape?(thing: T, outline: readonly Point[], walls: (old: number) => readonly number[]): T;
  /** Why a thing of this kind cannot be copied; absent where it can. */
  uncopied?(thing: T): Problem;
  /** What is deleted with it. */
  follows(home: Home, id: Id): Ref[];
}
