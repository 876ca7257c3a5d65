import { expect, test, vi } from 'vitest';
import { arrange } from '../../../src/engine/arranging/arrange';
import { bed, box, desk, door, fitted, readingsOf, request, room } from './homes';
import { fieldsOf } from '../../../src/engine/dose/fieldAt';

const field = (tilt: number) => (x: number, y: number) => 0.05 + 0.3 / (1 + x + tilt * y) ** 2;
const home = (tilt: number) =>
  request({
    fitted: fitted(readingsOf(field(tilt), [0, 0, 9, 4], 0.8)),
    rooms: [room('r1', box(0, 0, 4, 4)), room('r2', box(4.1, 0, 8.4, 4))],
    openings: [door('r1', 0, 1), door('r2', 0, 1)],
    pieces: [bed({ at: [1, 2.9] }), desk({ at: [7, 3.7] })],
  });

test('a question about the same map, come as a copy, predicts no ground again and has the same answer', () => {
  const asked = home(0.3);
  const fieldAt = fieldsOf(asked.fitted);
  const work = [0.6, 1].flatMap((height) => {
    const at = fieldAt('l1', height);
    return [vi.spyOn(at, 'predict'), vi.spyOn(at, 'support')];
  });
  const calls = () => work.reduce((sum, { mock }) => sum + mock.calls.length, 0);
  const first = arrange(asked);
  // Two rooms, two heights: ground and doubt of each.
  expect(calls()).toBe(8);
  const moved = structuredClone(asked);
  expect(arrange(moved)).toEqual(first);
  expect(calls()).toBe(8);
  // Another plan over the same map needs the ground of the room that changed.
  arrange({ ...moved, rooms: [moved.rooms[0], room('r2', box(4.1, 0, 8, 4))] });
  expect(calls()).toBe(12);
});

test('another map has fields of its own', () => {
  const one = home(0.3);
  const other = home(0.31);
  const before = fieldsOf(one.fitted);
  expect(fieldsOf(structuredClone(one.fitted))).toBe(before);
  expect(fieldsOf(other.fitted)).not.toBe(before);
  const answer = arrange(other);
  arrange(one);
  expect(arrange(other)).toEqual(answer);
});
