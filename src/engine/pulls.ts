import { bilinear } from './grid/grid';
import { cellsOf, placesOn } from './judging/roomFloor';
import { changesWithout } from './mapping/pull/changesWithout';
import { fitSurvey } from './mapping/fitSurvey';
import type { AssessRoom, LevelPicture } from './assess';
import type { Evidence, FittedSurvey } from './mapping/fitSurvey';
import type { Method } from './mapping/choose';
import type { Point } from './geometry/point';
import type { Survey } from './mapping/survey';

/** How much the map hangs on one reading: what leaving it out changes. */
export interface Pull {
  /** Whose map it is, where that is not the map that is drawn: sampled sources would have to be sampled anew. */
  by: Method | null;
  /** Root mean square, over the drawn floor of all levels that were read, of the change of ln B. */
  change: number;
  /** The room whose mean of ln B changes most, and by how much: without the reading less with it. */
  room: string;
  roomChange: number;
}

/** Places of the whole floor at which a change is looked at: more tell no more. */
const PLACES = 150;

/** A small room is looked at in so many all the same. */
const FEWEST = 3;

interface RoomFloor {
  id: string;
  places: Point[];
}

/** What has been worked out of a home, whose readings are to be told by their pull. */
interface Drawn {
  survey: Survey;
  fitted: FittedSurvey;
  evidence: Pick<Evidence, 'rows'>;
  rooms: readonly AssessRoom[];
  pictures: readonly LevelPicture[];
}

/**
 * The pull of each row of the evidence, over places spread evenly over the floor where the map deserves to be shown; null
 * for all where no floor is drawn. `heightOf`: of the map above a level's floor, metres.
 */
export function pullsOf(drawn: Drawn, heightOf: (level: string) => number): (Pull | null)[] {
  const { rooms, pictures } = drawn;
  const { rows } = drawn.evidence;
  const { fitted, by } = toldBy(drawn);
  const area = rooms.map((room) => {
    const picture = pictures.find(({ level }) => level === room.level)!;
    return cellsOf(picture, room).length * picture.grid.step ** 2;
  });
  const whole = area.reduce((sum, one) => sum + one, 0);
  const floors: { room: string; changes: Float64Array[] }[] = [];
  for (const picture of pictures) {
    if (!fitted.places.some(({ level }) => level === picture.level)) continue;
    const own = rooms
      .flatMap((room, r): RoomFloor[] => {
        if (room.level !== picture.level) return [];
        const count = Math.max(FEWEST, Math.round((PLACES * area[r]) / whole));
        const drawn = placesOn(room, area[r], count).filter(
          (at) => bilinear(picture.grid, picture.doubt, at) <= 1,
        );
        return [{ id: room.id, places: drawn }];
      })
      .filter(({ places }) => places.length > 0);
    const points = own.flatMap(({ places }) => places);
    if (points.length === 0) continue;
    const changes = changesWithout(fitted, {
      level: picture.level,
      height: heightOf(picture.level),
      xs: points.map(([x]) => x),
      ys: points.map(([, y]) => y),
    });
    let first = 0;
    for (const { id, places } of own) {
      const [from, to] = [first, (first += places.length)];
      floors.push({ room: id, changes: changes.map((change) => change.subarray(from, to)) });
    }
  }
  if (floors.length === 0) return rows.map(() => null);
  const placeOf = new Map(fitted.places.map(({ ids }, i) => [ids[0], i]));
  return rows.map(({ ids }) => ({ by, ...pullOf(floors, placeOf.get(ids[0])!) }));
}

/** The map whose changes are told: the one that is drawn, or instead of sampled sources the one that is there at once. */
function toldBy({ fitted, survey }: Drawn): { fitted: FittedSurvey; by: Method | null } {
  const instant = fitted.sampled ? fitSurvey({ ...survey, method: 'auto' }) : null;
  return instant?.ok ? { fitted: instant.fitted, by: instant.fitted.method } : { fitted, by: null };
}

function pullOf(floors: readonly { room: string; changes: Float64Array[] }[], i: number): Omit<Pull, 'by'> {
  let [squares, count] = [0, 0];
  const means = floors.map(({ room, changes }) => {
    let sum = 0;
    for (const change of changes[i]) {
      sum += change;
      squares += change * change;
    }
    count += changes[i].length;
    return { room, change: sum / changes[i].length };
  });
  const most = means.reduce((a, b) => (Math.abs(b.change) > Math.abs(a.change) ? b : a));
  return { change: Math.sqrt(squares / count), room: most.room, roomChange: most.change };
}
