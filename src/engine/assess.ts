import type { Evidence, FittedSurvey } from './mapping/fitSurvey';
import type { Answer } from './arranging/answer';
import type { ArrangePiece, ArrangeRoom } from './arranging/request';
import type { Contour } from './contours/bands';
import type { Grid } from './grid/grid';
import type { GuidelineSet } from './judging/guidelines';
import type { Point, Ring } from './geometry/point';
import type { Put } from './arranging/place';
import type { Profile } from './judging/profile';
import type { Pull } from './pulls';
import type { RoomFigures } from './judging/rooms';
import type { Survey } from './mapping/survey';
import type { ZoneDose } from './dose/dose';
import type { Zone } from './dose/zones';

/** What is asked of the engine about one home in one round. Plain data: it crosses to the worker and comes from the CLI. */
export interface AssessRequest {
  survey: Survey;
  /** Levels to draw, each with the floor it has (outer rings and holes, even-odd) and the height of the map. */
  levels: AssessLevel[];
  rooms: AssessRoom[];
  pieces: AssessPiece[];
  walks: AssessWalk[];
  /** Furniture that stands elsewhere than it was found; left out where none does. */
  moved?: MovedFurniture;
  /** µT */
  target: number;
  guideline: GuidelineSet;
  /** The house's supply was off while this round was read. */
  supplyOff: boolean;
}

/** All pieces as they stand, and where those there then were found. */
interface MovedFurniture {
  rooms: readonly ArrangeRoom[];
  pieces: readonly ArrangePiece[];
  found: readonly Put[];
}

/** A level to draw: the floor it has (outer rings and holes, even-odd), the height of the map and its cells, metres. */
export interface AssessLevel {
  id: string;
  height: number;
  outline: Ring[];
  step: number;
}

/** `without`: rooms drawn over grounds, which the grounds leave out. */
export interface AssessRoom {
  id: string;
  level: string;
  use: string;
  outline: Ring;
  without: Ring[];
}

/** A piece where it stands, with the zone of everybody who uses it. */
export interface AssessPiece {
  id: string;
  level: string;
  height: number;
  uses: { who: string; hours: number; zone: Zone }[];
}

/** A walk, and the marked source (a path, or one place) that its fall-off is measured from: the nearest one, or none. */
export interface AssessWalk {
  id: string;
  level: string;
  path: Point[];
  from?: { path: Point[]; height: number } | null;
}

/** The picture of one level. */
export interface LevelPicture {
  level: string;
  grid: Grid;
  /** Median of ln B (µT) per cell, without meter noise. */
  mean: Float64Array;
  /** Variance of ln B per cell; null while a gesture is open. */
  variance: Float64Array | null;
  /** Above 1 the estimate does not deserve to be shown; the boundary of 1 is drawn. All 0 while a gesture is open. */
  doubt: Float64Array;
  /** Per cell: 0 supported, 1 wide, 2 far, 3 few. */
  reason: Uint8Array;
  /** Ascending by value; each holds the area at or above it. */
  contours: Contour[];
  /** Area where nothing is shown, as rings (even-odd), not yet clipped to the floor. */
  unsupported: Ring[];
}

export interface PieceDose {
  id: string;
  /** Mean field over the zones, µT, weighted by hours. */
  mean: number;
  /** µT·h a day, mean over those who use it. */
  dose: ZoneDose;
  uses: { who: string; dose: ZoneDose }[];
  supported: boolean;
}

export interface Assessment {
  fitted: FittedSurvey;
  evidence: Evidence;
  /** One a row of the evidence; null where it cannot be told. */
  pulls: readonly (Pull | null)[];
  pictures: LevelPicture[];
  rooms: RoomFigures[];
  /** Pieces that somebody uses. */
  pieces: PieceDose[];
  profiles: Profile[];
  /** What it is worth that furniture stands where it does and no longer as found; null where none has moved. */
  sinceFound: Answer | null;
}
