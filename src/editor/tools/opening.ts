import { lerp } from '../../engine/geometry/point';
import { addOpening } from '../../home/edits/add';
import type { Point } from '../../home/home';
import { openingDefaults } from '../../home/kindDefaults';
import type { Mark } from '../editor';
import { nearestWall } from '../snapping/nearestWall';
import type { WallPlace } from '../snapping/nearestWall';
import { addedThings } from '../things';
import type { Aim, Bench, Tool } from './tool';

/** Metres from a wall at which a pointer still means it. */
const NEAR = 0.6;
/** Metres: offsets come out in whole half-decimetres. */
const GRID = 0.05;

/** Sets doors, windows and gaps into the nearest wall. */
export function createOpeningTool(bench: Bench): Tool {
  let aimed: Aim | null = null;

  const loaded = () => {
    const kind = bench.load.opening?.kind ?? 'door';
    return { kind, width: bench.load.opening?.width ?? openingDefaults(kind).width };
  };

  const wallAt = (aim: Aim) => nearestWall(bench.home, bench.view, aim.at, Math.max(NEAR, aim.reach));

  /** Metres from the wall's start to the opening: on the grid, in the middle or flush with an end where those pull. */
  const offsetIn = ({ along, length }: WallPlace, { pull }: Aim, width: number): number => {
    const free = Math.min(length - width, Math.max(0, along - width / 2));
    if (pull <= 0) return free;
    const wished = [(length - width) / 2, 0, length - width].find((each) => Math.abs(each - free) <= pull);
    return Math.min(length - width, wished ?? Math.round(free / GRID) * GRID);
  };

  return {
    cursor: 'crosshair',
    taps: true,
    down(aim) {
      aimed = aim;
      bench.redrawOverlay();
    },
    move(aim) {
      aimed = aim;
      bench.redrawOverlay();
    },
    up(aim) {
      const place = wallAt(aim);
      const { kind, width } = loaded();
      if (!place) return bench.say({ kind: 'no-wall-near' });
      if (width > place.length)
        return bench.say({ kind: 'opening-too-wide', width, wallLength: place.length });
      const before = bench.home;
      const offset = offsetIn(place, aim, width);
      if (bench.run(addOpening({ room: place.room.id, kind, wall: place.wall, offset, width })))
        bench.select(addedThings(before, bench.home, 'opening'));
      aimed = null;
      bench.redrawOverlay();
    },
    cancel() {
      const busy = aimed?.pressed ?? false;
      aimed = null;
      return busy;
    },
    marks(): Mark[] {
      const place = aimed && wallAt(aimed);
      if (!aimed || !place) return [];
      const { width } = loaded();
      if (width > place.length) return [{ mark: 'ring', points: [place.a, place.b], state: 'broken' }];
      const offset = offsetIn(place, aimed, width);
      const on = (metres: number): Point => lerp(place.a, place.b, metres / place.length);
      const [start, end] = [on(offset), on(offset + width)];
      return [
        { mark: 'path', points: [start, end], closed: false },
        { mark: 'length', from: place.a, to: start, text: bench.lengthText(offset) },
        { mark: 'length', from: end, to: place.b, text: bench.lengthText(place.length - offset - width) },
      ];
    },
  };
}
