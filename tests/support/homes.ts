import { addOpening, addPiece, addReading, addRoom } from '../../src/home/edits/add';
import { setSettings } from '../../src/home/edits/setSettings';
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

/** A room in which no bed for two keeps its strips. */
export const tight = () =>
  homeWith(
    room(box(0, 0, 2.6, 2.5)),
    addOpening({ room: 'r1', kind: 'door', wall: 0, offset: 1.6, width: 0.8 }),
    addPiece({
      kind: 'bed',
      name: 'Bed',
      level: 'l1',
      at: [0.7, 1.5],
      size: [1.4, 2],
      uses: [
        { who: 'A', hours: 8 },
        { who: 'B', hours: 8 },
      ],
    }),
    ...[0, 1, 2].flatMap((i) =>
      [0, 1, 2].map((j) =>
        addReading({
          level: 'l1',
          at: [0.3 + i, 0.3 + 0.9 * j],
          value: Number((0.4 / (i + 0.8) + 0.01 * j).toFixed(3)),
        }),
      ),
    ),
  );

/** A bed for two among readings so few and so uneven that a better place is likely and not sure. */
export const doubtful = () =>
  homeWith(
    setSettings({ method: 'kriging' }),
    room(box(0, 0, 5, 4)),
    addOpening({ room: 'r1', kind: 'door', wall: 0, offset: 3.5 }),
    addOpening({ room: 'r1', kind: 'window', wall: 2, offset: 1.5 }),
    addPiece({
      kind: 'bed',
      level: 'l1',
      at: [1, 3],
      size: [1.5, 2],
      uses: [
        { who: 'A', side: 'left', hours: 8 },
        { who: 'B', side: 'right', hours: 8 },
      ],
    }),
    ...READINGS.map(([x, y, value]) => addReading({ level: 'l1', at: [x, y], value })),
  );

const READINGS: [number, number, number][] = [
  [2.35, 1.6, 0.055],
  [4.42, 3.4, 0.116],
  [3.97, 1.81, 0.138],
  [3.04, 2.83, 0.068],
  [1.04, 3.1, 0.14],
  [3.83, 0.86, 0.062],
  [3.63, 3.23, 0.088],
  [0.64, 2.48, 0.157],
  [1.32, 2.19, 0.081],
  [0.86, 1.85, 0.081],
];
