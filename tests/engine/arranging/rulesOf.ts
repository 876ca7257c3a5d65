import { bed, box, fitted, readingsOf, request, room } from './homes';
import { brokenRules } from '../../../src/engine/arranging/brokenRules';
import type { Put } from '../../../src/engine/arranging/place';
import type { ArrangeFixture, ArrangePiece, ArrangeRequest } from '../../../src/engine/arranging/request';

const survey = fitted(readingsOf((x, y) => 0.1 + 0.01 * x + 0.005 * y, [-1, -1, 9, 5]));

/** Rules that the first piece breaks where it is put. */
export function rules(more: Partial<ArrangeRequest>, put: Partial<Put> = {}, others: Put[] = []): string[] {
  const home = request({ fitted: survey, rooms: [room('r1', box(0, 0, 4, 4))], ...more });
  const { id, level, at, angle } = home.pieces[0];
  return brokenRules(home)({ id, level, at, angle, ...put }, others).map(({ kind }) => kind);
}

export const fixture = (
  outline: ArrangeFixture['outline'],
  more: Partial<ArrangeFixture> = {},
): ArrangeFixture => ({
  id: 'f1',
  level: 'l1',
  kind: 'other',
  outline,
  front: null,
  ...more,
});

/** A single bed with its head at the upper wall, its strip to the right of the page. */
export const single = (more: Partial<ArrangePiece> = {}) => bed({ at: [2, 3], ...more });
