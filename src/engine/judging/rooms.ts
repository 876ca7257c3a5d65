import { classOf, judgesBy, type GuidelineSet } from './guidelines';
import { cellsOf, placesOn } from './roomFloor';
import { drawnFloor } from './drawnFloor';
import { isJudged } from './judged';
import type { AssessRoom, LevelPicture } from '../assess';
import type { FieldAt } from '../dose/fieldAt';
import type { Point } from '../geometry/point';

/** What the estimate says of one room, µT: each figure is the median over draws of the field, with its 90 % interval. */
export interface RoomFigures {
  id: string;
  /** Mean over the floor. */
  mean: number;
  /** Half of the floor lies below it. */
  median: number;
  low: number;
  high: number;
  /** 95 % of the floor lie below it. */
  p95: number;
  p95Low: number;
  p95High: number;
  max: number;
  maxLow: number;
  maxHigh: number;
  /** Where the estimate is highest. */
  maxAt: Point;
  /** Share of the floor over the target, 0…1. */
  overTarget: number;
  overTargetLow: number;
  overTargetHigh: number;
  /** Share of the floor where the map deserves to be shown, 0…1. */
  supported: number;
  /** The guideline's word for what it judges by (see `judgesBy`), and for the ends of its interval; null where it does not
   * speak of such rooms, the room is not judged, or the house's supply was off. */
  class: string | null;
  classLow: string | null;
  classHigh: string | null;
}

// Places of one room, and of all rooms together: more tell little more, and cost their square.
const PLACES = 80;
const FEWEST = 24;
const PLACES_IN_ALL = 1200;

/** How many places of each room are drawn in a home of so many rooms. */
export const placesOfEach = (rooms: number): number =>
  Math.min(PLACES, Math.max(FEWEST, Math.floor(PLACES_IN_ALL / rooms)));

/** What rooms are read against. With the supply off nobody lives there so: no room gets a word. */
export interface Measure {
  /** µT */
  target: number;
  guideline: GuidelineSet;
  supplyOff: boolean;
}

/** Figures of one room from the picture of its level, and from draws of the field at so many places of its floor. */
export function roomFigures(
  fieldAt: FieldAt,
  picture: LevelPicture,
  room: AssessRoom,
  height: number,
  { target, guideline, supplyOff }: Measure,
  count = PLACES,
): RoomFigures {
  const cells = cellsOf(picture, room);
  const highest = cells.reduce((a, b) => (b.ln > a.ln ? b : a));
  const places = placesOn(room, cells.length * picture.grid.step ** 2, count);
  const { mean, median, p95, max, over } = drawnFloor(
    fieldAt(room.level, height),
    places,
    highest.at,
    target,
  );
  const supported = cells.filter(({ doubt }) => doubt <= 1).length / cells.length;
  const judged = judgesBy(guideline) === 'highest' ? max : median;
  const wordOf = (value: number) =>
    isJudged({ supported }) && !supplyOff ? classOf(guideline, room.use, value) : null;
  return {
    id: room.id,
    mean: mean.value,
    median: median.value,
    low: median.low,
    high: median.high,
    p95: p95.value,
    p95Low: p95.low,
    p95High: p95.high,
    max: max.value,
    maxLow: max.low,
    maxHigh: max.high,
    maxAt: highest.at,
    overTarget: over.value,
    overTargetLow: over.low,
    overTargetHigh: over.high,
    supported,
    class: wordOf(judged.value),
    classLow: wordOf(judged.low),
    classHigh: wordOf(judged.high),
  };
}
