import { addRoom } from '../../home/edits/add';
import type { Point, RoomUse } from '../../home/home';
import { addedThings } from '../things';
import { createDraft } from './draft';
import { createRectangleTool } from './rectangle';
import { pairs } from './pairs';
import type { Bench, Tool } from './tool';

/** Draws rooms: by dragging a rectangle, or corner by corner where walls slant. */
export function createRoomTool(bench: Bench): Tool {
  const make = (outline: Point[]): boolean => {
    const before = bench.home;
    // Who draws one room comes for a bedroom; later ones are told apart by hand.
    const first = Object.keys(before.rooms).length === 0;
    const use = (bench.load.room?.use ?? (first ? 'sleeping' : undefined)) as RoomUse | undefined;
    const done = bench.run(
      addRoom({ level: bench.view.level, outline: pairs(outline), ...(use && { use }) }),
    );
    if (done) bench.select(addedThings(before, bench.home, 'room'));
    return done;
  };
  const rectangle = createRectangleTool(bench, { make });
  const draft = createDraft(bench, () => ({ closed: true, least: 3, most: Infinity, finish: make }));
  const inHand = () => (bench.load.room?.by === 'corners' ? draft : rectangle);
  return {
    cursor: 'crosshair',
    down: (aim) => inHand().down(aim),
    move: (aim) => inHand().move(aim),
    up: (aim) => inHand().up(aim),
    doubleClick: (aim) => inHand().doubleClick?.(aim),
    key: (input) => inHand().key?.(input) ?? false,
    stepBack: () => inHand().stepBack?.() ?? false,
    lose() {
      const { lose, cancel } = inHand();
      if (lose) lose();
      else cancel();
    },
    cancel: () => inHand().cancel(),
    marks: () => inHand().marks(),
  };
}
