import { remaindersAt, REMAINDERS, type Remainder } from './remainder';
import { slotsOf, type Extent, type Slot } from './slots';
import type { Sites } from './kernel';
import type { SamplingQuestion } from './question';

/** What all chains share: the readings, the sources there may be, the remainder's factors. */
export interface Model {
  sites: Sites;
  lns: Float64Array;
  slots: readonly Slot[];
  remainders: readonly Remainder[];
  /** Elements the largest slot may write. */
  room: number;
}

/** The readings, the sources there may be and the remainder's factors of a question. */
export function modelOf(question: SamplingQuestion): Model {
  const { places, marked } = question;
  const sites = sitesOf(places);
  return {
    sites,
    lns: Float64Array.from(places, ({ ln }) => ln),
    slots: slotsIn(question),
    remainders: remaindersAt(
      sites,
      places.map(({ variance }) => variance),
      REMAINDERS,
    ),
    room: roomFor(marked),
  };
}

/** Where the readings were taken. */
export const sitesOf = (places: SamplingQuestion['places']): Sites => ({
  xs: Float64Array.from(places, ({ x }) => x),
  ys: Float64Array.from(places, ({ y }) => y),
  zs: Float64Array.from(places, ({ z }) => z),
});

/** Every source there may be in the home of a question. */
export const slotsIn = ({ places, walls, marked }: SamplingQuestion): Slot[] =>
  slotsOf(walls, marked, extentOf(places, walls));

/** Elements the largest slot may write. */
export const roomFor = (marked: SamplingQuestion['marked']): number =>
  Math.max(1, ...marked.map(({ path }) => 5 * (path.length + 2)), 5);

/** Everything walled and read, a metre round it where no wall is, from floor to ceiling. */
function extentOf(places: SamplingQuestion['places'], walls: SamplingQuestion['walls']): Extent {
  const xs = walls.length > 0 ? walls.flatMap(({ from, to }) => [from[0], to[0]]) : places.map(({ x }) => x);
  const ys = walls.length > 0 ? walls.flatMap(({ from, to }) => [from[1], to[1]]) : places.map(({ y }) => y);
  const low = places.reduce((least, { z }) => Math.min(least, z - 1), Infinity);
  return {
    x0: Math.min(...xs),
    x1: Math.max(...xs),
    y0: Math.min(...ys),
    y1: Math.max(...ys),
    floor: walls.length > 0 ? Math.min(...walls.map(({ floor }) => floor)) : low,
    ceiling: walls.length > 0 ? Math.max(...walls.map(({ ceiling }) => ceiling)) : low + 2.5,
  };
}
