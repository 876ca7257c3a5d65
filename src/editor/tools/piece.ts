import type { Pose } from '../../engine/geometry/pose';
import { addPiece } from '../../home/edits/add';
import { againstWall, footprint } from '../snapping/againstWall';
import { snapScene } from '../snapping/candidates';
import { snapPoint } from '../snapping/snapPoint';
import { addedThings } from '../things';
import type { Aim, Bench, Tool } from './tool';

/** Sets down a piece of furniture of the size that was picked, its head or back to the wall. */
export function createPieceTool(bench: Bench): Tool {
  let aimed: Aim | null = null;
  /** Degrees the person has turned it by, where no wall says how it stands. */
  let turned = 0;

  const pose = (aim: Aim, size: readonly [number, number]): Pose => {
    const wall = aim.pull > 0 ? againstWall(bench.home, bench.view, aim.at, size) : null;
    if (wall && turned === 0) return wall;
    return { at: snapPoint(snapScene(bench.home, bench.view), aim.at, { pull: aim.pull }).at, angle: turned };
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
      const piece = bench.load.piece;
      aimed = null;
      if (!piece) return;
      const before = bench.home;
      const { kind, name, size } = piece;
      const { at, angle } = pose(aim, size);
      if (!bench.run(addPiece({ level: bench.view.level, kind, name, size, at: [at[0], at[1]], angle })))
        return;
      turned = 0;
      bench.select(addedThings(before, bench.home, 'piece'));
      bench.takeUp();
    },
    key({ key, shift, command }) {
      if (command || key.toLowerCase() !== 'r') return false;
      turned = (turned + (shift ? 270 : 90)) % 360;
      bench.redrawOverlay();
      return true;
    },
    cancel() {
      const busy = aimed?.pressed ?? false;
      aimed = null;
      turned = 0;
      return busy;
    },
    marks() {
      const piece = bench.load.piece;
      if (!piece || !aimed) return [];
      return [{ mark: 'ring', points: footprint(pose(aimed, piece.size), piece.size), state: 'drawing' }];
    },
  };
}
