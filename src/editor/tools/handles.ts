import { distance } from '../../engine/geometry/point';
import { bounds } from '../../engine/geometry/polygon';
import type { Handle } from '../../home/kinds/kind';
import type { Mark } from '../editor';
import { MOVES } from '../stages';
import { kindOf, thingOf } from '../things';
import type { Aim, Bench } from './tool';

/** The handles of what is selected, where exactly one thing is. */
function handlesShown(bench: Bench): Handle[] {
  const ref = bench.selection.length === 1 ? bench.selection[0] : undefined;
  if (ref && bench.answer.has(ref)) {
    // An answer has places and no sizes: its pieces are turned only.
    const { home } = bench.answer;
    return kindOf(ref)
      .handles(home, thingOf(home, ref)!)
      .filter(({ role }) => role === 'turn');
  }
  const thing = ref && thingOf(bench.home, ref);
  // Where nothing may move a selection only says what is spoken of.
  return ref && thing && MOVES[bench.view.stage].includes(ref.kind)
    ? kindOf(ref).handles(bench.home, thing)
    : [];
}

export function handleMarks(bench: Bench): Mark[] {
  return handlesShown(bench).map(({ at, role, key }) => ({ mark: 'handle', at, role, key }));
}

/** The handle under the pointer; a middle one gives way to a corner beside it. */
export function handleAt(bench: Bench, aim: Aim): Handle | null {
  const handles = handlesShown(bench);
  const { x0, y0, x1, y1 } = bounds(handles.filter(({ role }) => role === 'corner').map(({ at }) => at));
  // On a small thing the handles leave its middle free, or it could never be moved.
  const corner = x1 > x0 ? Math.min(aim.reach, Math.max(x1 - x0, y1 - y0) / 4) : aim.reach;
  const reached = handles
    .map((handle) => ({ handle, far: distance(handle.at, aim.at) }))
    .filter(
      ({ handle, far }) => far <= (handle.role === 'corner' || handle.role === 'middle' ? corner : aim.reach),
    );
  const weight = ({ handle, far }: (typeof reached)[number]) =>
    far + (handle.role === 'middle' ? aim.reach / 2 : 0);
  reached.sort((a, b) => weight(a) - weight(b));
  return reached[0]?.handle ?? null;
}
