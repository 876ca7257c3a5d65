import type { Point, Ref } from '../../home/home';
import { sameRef, thingsShown } from '../things';
import { createDrag } from './drag';
import { moved } from './moved';
import { WAYS } from './nudge';
import type { Aim, Bench, Tool } from './tool';

type State =
  | { doing: 'nothing' }
  | { doing: 'press'; from: Aim; hit: Ref | null }
  | { doing: 'drag'; move(aim: Aim): void }
  | { doing: 'pan'; last: Aim };

/** Metres an arrow key moves the place of the next reading; with shift ten times that. */
const STEP = 0.1;

/** CSS pixels within which the cross covers a reading. */
const COVERS = 12;

/** Whole centimetres: nobody holds a meter more exactly. */
const centimetres = ([x, y]: Point): Point => [Math.round(x * 100) / 100, Math.round(y * 100) / 100];

/** Says where the next reading was taken; its value is typed in the panel. A reading that is there is picked or moved. */
export function createReadingTool(bench: Bench): Tool {
  let state: State = { doing: 'nothing' };
  const isOver = (at: Point) => {
    const near = COVERS / bench.camera.scale;
    return [...thingsShown(bench.home, bench.view, ['reading'])].some(
      ({ kind, thing }) => kind.distanceTo(bench.home, thing, at) <= near,
    );
  };
  const isSelected = (ref: Ref) => bench.selection.some((each) => sameRef(each, ref));

  return {
    cursor: 'crosshair',
    down(aim) {
      state = { doing: 'press', from: aim, hit: bench.hit(aim, ['reading']) };
    },
    move(aim) {
      if (state.doing === 'nothing') return bench.hoverOver(bench.hit(aim, ['reading']));
      if (state.doing === 'press') {
        const { from, hit } = state;
        if (!moved(from, aim)) return;
        // Under a finger the paper is meant, unless the reading was picked before: no place shifts by accident.
        if (hit && (aim.type !== 'touch' || isSelected(hit))) {
          bench.select([hit]);
          state = { doing: 'drag', ...createDrag(bench, bench, [hit], from) };
        } else state = { doing: 'pan', last: from };
      }
      if (state.doing === 'drag') state.move(aim);
      else {
        bench.panBy(aim.x - state.last.x, aim.y - state.last.y);
        state = { doing: 'pan', last: aim };
      }
    },
    up() {
      const was = state;
      state = { doing: 'nothing' };
      if (was.doing === 'drag') bench.commit();
      if (was.doing !== 'press') return;
      bench.select(was.hit ? [was.hit] : []);
      const planned = was.hit ? null : bench.planned(was.from);
      if (planned) bench.pickNext(planned.rank);
      bench.setReadingPlace(was.hit ? null : (planned?.at ?? centimetres(was.from.at)));
    },
    key({ key, shift, command }) {
      const way = WAYS[key];
      if (!way || command) return false;
      const step = shift ? 10 * STEP : STEP;
      const from = bench.readingPlace ?? bench.camera.centre;
      bench.setReadingPlace(centimetres([from[0] + way[0] * step, from[1] + way[1] * step]));
      return true;
    },
    cancel() {
      const busy = state.doing !== 'nothing';
      if (state.doing === 'drag') bench.bail();
      state = { doing: 'nothing' };
      if (busy || !bench.readingPlace) return busy;
      bench.setReadingPlace(null);
      return true;
    },
    marks() {
      const at = bench.readingPlace;
      return at ? [{ mark: 'aim', at, over: isOver(at) }] : [];
    },
  };
}
