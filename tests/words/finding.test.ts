import { expect, it } from 'vitest';
import { foundLead, foundSentences } from '../../src/words/finding';
import { leadParts } from '../../src/words/report';
import { newHome } from '../../src/home/newHome';
import { roomCounts } from '../../src/views/panels/tallies';
import type { Assessment } from '../../src/engine/assess';
import type { Home, RoomUse } from '../../src/home/home';
import type { RoomFigures } from '../../src/engine/judging/rooms';

const figures = (
  id: string,
  median: number,
  factor: number,
  more: Partial<RoomFigures> = {},
): RoomFigures => ({
  id,
  mean: median,
  median,
  low: median / factor,
  high: median * factor,
  p95: 2 * median,
  p95Low: (2 * median) / factor,
  p95High: 2 * median * factor,
  max: 3 * median,
  maxLow: (3 * median) / factor,
  maxHigh: 3 * median * factor,
  maxAt: [0, 0],
  overTarget: 0.74,
  overTargetLow: 0.46,
  overTargetHigh: 0.94,
  supported: 1,
  class: null,
  classLow: null,
  classHigh: null,
  ...more,
});

function homeOf(uses: Record<string, RoomUse>): Home {
  const home = structuredClone(newHome());
  const level = Object.keys(home.levels)[0]!;
  for (const [id, use] of Object.entries(uses))
    home.rooms[id] = { id, level, name: id === 'r1' ? 'Bedroom' : 'Parlour', use, outline: [] };
  return home;
}
const assessed = (...rooms: RoomFigures[]) => ({ rooms }) as unknown as Assessment;
const text = (parts: readonly { text: string }[]) => parts.map((part) => part.text).join('');

it('a share over the target carries its interval in the report', () => {
  const home = homeOf({ r1: 'sleeping' });
  const room = figures('r1', 0.2, 1.2);
  expect(text(foundLead(home, assessed(room), 0.1))).toBe(
    '74\u2009% (46–94) of the bedroom lies over the target of 0.1 µT; half of it lies below 0.20 µT (0.17–0.24).',
  );
  expect(foundSentences(home, assessed(room), 0.1)[0]).toContain('0.60 µT (0.50–0.72)');
});

it('a middle whose interval holds the target is said to be neither over nor under it', () => {
  const lead = text(foundLead(homeOf({ r1: 'sleeping' }), assessed(figures('r1', 0.1, 1.3)), 0.1));
  expect(lead).toContain('cannot be told');
});

it('the lead of a round with the supply off says so first', () => {
  const home = homeOf({ r1: 'sleeping' });
  const room = assessed(figures('r1', 0.2, 1.2));
  expect(text(leadParts(home, room, 0.1, null, true))).toMatch(/^The house’s supply was off: .*74/);
  expect(text(leadParts(home, room, 0.1, null, false))).not.toContain('supply');
});

it('rooms are counted as over, under and not to be told; grounds and undrawn rooms are not counted', () => {
  const home = homeOf({ r1: 'sleeping', r2: 'living', r3: 'living', r4: 'grounds', r5: 'living' });
  const rooms = assessed(
    figures('r1', 0.2, 1.2),
    figures('r2', 0.1, 1.2),
    figures('r3', 0.05, 1.2),
    figures('r4', 0.2, 1.2),
    figures('r5', 0.2, 1.2, { supported: 0.3 }),
  );
  expect(roomCounts(home, rooms)).toEqual({ judged: 3, over: 1, untold: 1, sleeping: 1 });
});
