import { describe, expect, it } from 'vitest';
import { removalText } from '../../src/words/removal';

describe('what a deletion takes along', () => {
  const readings = (n: number) =>
    Array.from({ length: n }, (_, i) => ({ collection: 'readings' as const, id: `m${i}` }));

  it('is counted by kind, and said to come back with one undo', () => {
    const room = { collection: 'rooms' as const, id: 'r1' };
    const opening = { collection: 'openings' as const, id: 'o1' };
    expect(removalText({ goes: [room, opening, ...readings(12)], changes: [] })).toBe(
      '1 room, 1 opening and 12 readings go with it. One undo brings all back.',
    );
    expect(removalText({ goes: [opening], changes: readings(2) })).toBe(
      '1 opening goes with it. 2 readings stay and no longer name it. One undo brings all back.',
    );
    expect(removalText({ goes: [], changes: readings(1) })).toBe(
      '1 reading stays and no longer names it. One undo brings all back.',
    );
  });

  it('is nothing where nothing else is touched', () => {
    expect(removalText({ goes: [], changes: [] })).toBeNull();
  });
});
