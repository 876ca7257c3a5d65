import { addPiece, addReading, addRoom } from '../../src/home/edits/add';
import { tryEdit } from '../../src/editor/store';
import type { Edit } from '../../src/home/edits/edit';
import type { Home } from '../../src/home/home';
import { newHome } from '../../src/home/newHome';

/** A home after some edits; an edit that is refused fails the test that made it. */
export function homeWith(...edits: Edit[]): Home {
  return edits.reduce((home, edit) => {
    const tried = tryEdit(home, edit);
    if ('problem' in tried) throw new Error(`${edit.name}: ${JSON.stringify(tried.problem)}`);
    return tried.change.home;
  }, newHome('Made up'));
}

export const room = (outline: [number, number][], use = 'sleeping') =>
  addRoom({ level: 'l1', use: use as 'sleeping', outline });

export const box = (x0: number, y0: number, x1: number, y1: number): [number, number][] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

/** A bedroom of 5 × 4 m with a bed, and readings that fall from its left wall to its right one. */
export function bedroom(): Home {
  const readings = [0, 1, 2, 3].flatMap((i) =>
    [0, 1, 2].map((j) => {
      const [x, y] = [0.5 + 1.3 * i, 0.5 + 1.5 * j];
      return addReading({ level: 'l1', at: [x, y], value: Number((0.4 / (x + 0.5) + 0.01 * j).toFixed(3)) });
    }),
  );
  return homeWith(
    room(box(0, 0, 5, 4)),
    addPiece({
      kind: 'bed',
      name: 'Bed',
      level: 'l1',
      at: [1, 3],
      size: [1.4, 2],
      uses: [{ who: 'A', hours: 8 }],
    }),
    ...readings,
  );
}
