import { inOrder } from '../order';
import { wallsOf } from '../kinds/outlined';
import type { Wall } from '../../engine/mapping/survey';
import type { Home } from '../home';

/** From floor to ceiling where no level lies above, metres, and the least there is between levels: the project's choice. */
const STOREY = 2.5;
const LOW = 1.5;

/** The walls of all rooms, each from its level's floor to that of the next above; grounds have none. */
export function wallStretches(home: Home): Wall[] {
  const floors = inOrder(home.levels).map(({ elevation }) => elevation);
  return inOrder(home.rooms)
    .filter(({ use }) => use !== 'grounds')
    .flatMap(({ level, outline }) => {
      const floor = home.levels[level]!.elevation;
      const above = floors.filter((other) => other >= floor + LOW);
      const ceiling = above.length > 0 ? Math.min(...above) : floor + STOREY;
      return wallsOf(outline).map(([from, to]) => ({ from, to, floor, ceiling }));
    });
}
