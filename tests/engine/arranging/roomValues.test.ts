import { describe, expect, test } from 'vitest';
import { assignRooms } from '../../../src/engine/arranging/assignRooms';
import { bed, box, desk, door, fitted, readingsOf, request, room } from './homes';
import { effortWithin } from '../../../src/engine/arranging/effort';
import { fieldsOf } from '../../../src/engine/dose/fieldAt';
import { groundsOf, planOf } from '../../../src/engine/arranging/plan';
import { inEachRoom, mostUsed, otherAnswers } from '../../../src/engine/arranging/others';
import { roomValues } from '../../../src/engine/arranging/roomValues';
import { search, type Wishes } from '../../../src/engine/arranging/solve';

const home = request({
  fitted: fitted(readingsOf((x, y) => 0.05 + 0.3 / (1 + x + 0.3 * y) ** 2, [0, 0, 13, 4], 0.9)),
  rooms: [0, 4.1, 8.2].map((x, i) => room(`r${i}`, box(x, 0, x + 4, 3.6))),
  openings: [0, 1, 2].map((i) => door(`r${i}`, 0, 1)),
  pieces: [bed({ at: [1, 2.5] }), bed({ id: 'child', at: [6, 2.5] }), desk({ at: [10, 3.2] })],
});
const plan = planOf(home, groundsOf(home, fieldsOf(home.fitted)));

/** Values of the home's rooms, and how often somebody walked through one. */
function counted() {
  const walks = { count: 0 };
  const values = roomValues(
    plan.hands.map(({ rooms }) => rooms),
    home.rules,
    (number, stands) => {
      walks.count++;
      return plan.ways(home.rooms[number].id).lost(stands.map((stand) => [stand]));
    },
  );
  return { values, walks };
}

describe('what was found of a room', () => {
  const { values, walks } = counted();
  const everywhere = plan.hands.map((_, piece) => values.domain(piece, 'anywhere', () => true));
  const first = assignRooms(3, everywhere, values, effortWithin({ budget: 1e6 }));
  const used = walks.count;
  // Without one wall of the first bed's room: the other rooms keep their candidates.
  const own = first.chosen![0].room;
  const narrowed = values.domain(0, 'elsewhere', ({ stand, wall }) => stand.room !== `r${own}` || wall !== 0);

  test('serves another question that leaves the same candidates there', () => {
    home.rooms.forEach((_, number) => {
      const same = narrowed.ids[number] === everywhere[0].ids[number];
      expect(same).toBe(number !== own);
    });
  });

  test('the same question walks through no room again', () => {
    const again = plan.hands.map((_, piece) => values.domain(piece, 'wherever', () => true));
    expect(assignRooms(3, again, values, effortWithin({ budget: 1e6 }))).toEqual(first);
    expect(walks.count).toBe(used);
  });

  test('and one that changes a single room walks less than from the beginning, to the same answer', () => {
    const before = walks.count;
    const domains = [narrowed, ...everywhere.slice(1)];
    const found = assignRooms(3, domains, values, effortWithin({ budget: 1e6 }));
    const fresh = counted();
    const anew = plan.hands.map((_, piece) =>
      piece === 0
        ? fresh.values.domain(0, 'elsewhere', ({ stand, wall }) => stand.room !== `r${own}` || wall !== 0)
        : fresh.values.domain(piece, 'anywhere', () => true),
    );
    expect(found.cost).toBe(assignRooms(3, anew, fresh.values, effortWithin({ budget: 1e6 })).cost);
    expect(walks.count - before).toBeLessThan(fresh.walks.count);
  });
});

test('other answers are refined when they are taken, not when they are weighed', () => {
  const work = { searched: 0, chosen: 0 };
  const searchFor = (wishes?: Wishes) => {
    work.searched++;
    const { choose, ...found } = search(plan, home.step, { budget: 1e6 }, wishes);
    return {
      ...found,
      choose() {
        work.chosen++;
        return choose();
      },
    };
  };
  const hand = mostUsed(plan.hands)!;
  const best = searchFor().choose()!;
  const rooms = inEachRoom(plan, { hand, rooms: home.rooms.map(({ id }) => id), best }, searchFor);
  Object.assign(work, { searched: 0, chosen: 0 });
  const others = otherAnswers(plan, { hand, best, elsewhere: null }, searchFor);
  expect(rooms).toHaveLength(3);
  expect(others).toHaveLength(4);
  // Two beds part the rest in two each time; after the fourth answer nothing is parted.
  expect(work.searched).toBeLessThanOrEqual(2 * 4 + 1);
  expect(work.chosen).toBeLessThanOrEqual(5);
  expect(work.searched).toBeGreaterThan(work.chosen);
});
