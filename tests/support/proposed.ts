import { expect } from 'vitest';
import { addLevel, addOpening, addPiece, addReading, addRoom } from '../../src/home/edits/add';
import { shownAnswer } from '../../src/editor/shownAnswer';
import { tryEdit } from '../../src/editor/store';
import type { Edit } from '../../src/home/edits/edit';
import type { Home, Point } from '../../src/home/home';
import type { PlacedPiece } from '../../src/engine/arranging/arrange';
import { bedroom, box } from './homes';
import { drive, type Driver } from './driver';

const withEdits = (home: Home, ...edits: Edit[]): Home =>
  edits.reduce((sum, edit) => {
    const tried = tryEdit(sum, edit);
    if ('problem' in tried) throw new Error(JSON.stringify(tried.problem));
    return tried.change.home;
  }, home);

const desk = (at: [number, number], angle: number) =>
  addPiece({
    kind: 'desk',
    name: 'Desk',
    level: 'l1',
    at,
    angle,
    size: [1.2, 0.7],
    uses: [{ who: 'A', hours: 4 }],
  });

/** The bedroom with a door in its right half, and a desk: the strong end is at the left. */
export const furnished = (deskAt: [number, number] = [1, 0.35], angle = 180) =>
  withEdits(
    bedroom(),
    addOpening({ room: 'r1', kind: 'door', wall: 0, offset: 3.9, width: 0.8 }),
    desk(deskAt, angle),
  );

/** The bedroom, and over it one in which the field is a tenth as strong. */
export const upstairs = () =>
  withEdits(
    bedroom(),
    addLevel({ name: 'Up' }),
    addRoom({ level: 'l2', use: 'sleeping', outline: box(0, 0, 5, 4) }),
    ...Object.values(bedroom().readings).map(({ at, value }) =>
      addReading({ level: 'l2', at, value: Number((value / 10).toFixed(4)) }),
    ),
  );

/** A home with its arrangement worked out and looked at. */
export async function proposed(home = furnished()): Promise<Driver> {
  const driver = await drive({ home });
  const { editor } = driver;
  editor.setStage('arrange');
  driver.settle();
  editor.stopSampling();
  driver.engine.work();
  driver.planner.work();
  expect(editor.arranging.state.proposal).not.toBeNull();
  return driver;
}

export const state = ({ editor }: Driver) => editor.arranging.state;
export const answer = (driver: Driver) => shownAnswer(state(driver))!;
export const placed = (driver: Driver, id: string) => answer(driver).pieces.find((piece) => piece.id === id)!;
export const placeOf = ({ level, at, angle }: Pick<PlacedPiece, 'level' | 'at' | 'angle'>) => ({
  level,
  at,
  angle,
});
export const kinds = (driver: Driver, id = 'p1') => placed(driver, id).breaks.map(({ kind }) => kind);

/** Presses on a ghost, moves it over half the way and then all of it, and lets go. */
export function dragGhost(driver: Driver, id: string, to: Point, how = {}) {
  const { at } = placed(driver, id);
  driver.drag([at, [(at[0] + to[0]) / 2, (at[1] + to[1]) / 2], to], how);
}
