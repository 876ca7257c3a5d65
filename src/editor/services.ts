import type { Home, LengthUnit } from '../home/home';
import type { HomeDatabase } from './storage/database';
import type { Locks } from './storage/writer';

/** A line to a worker: a message port, a Worker, or both ends in one thread in a test. */
export interface Line {
  post(message: unknown): void;
  /** `failed` is called when the worker does not load or stops by itself. */
  listen(received: (message: unknown) => void, failed: (detail: string) => void): void;
  end(): void;
}

/** What the surroundings give to a session. A browser gives its own; tests give small ones they can steer. */
export interface Services {
  /** Starts the worker that draws the map. */
  engineFactory: () => Line;
  /** Starts the worker that samples sources. */
  samplingFactory: () => Line;
  /** Starts a worker that plans: arrangements, or where to read next. */
  arrangeFactory: () => Line;
  database: HomeDatabase;
  locks: Locks;
  /** Milliseconds since 1970. */
  clock: () => number;
  /** Runs a task after some milliseconds; the returned function calls it off. */
  schedule: (task: () => void, milliseconds: number) => () => void;
  /** A name for a home on the shelf, never given twice. */
  newName: () => string;
  /** What is open on the very first visit; null where it cannot be had. */
  firstHome?: () => Promise<Home | null>;
  lengthText: (metres: number, unit: LengthUnit) => string;
  parseLength: (text: string, unit: LengthUnit) => { ok: true; metres: number } | { ok: false };
}
