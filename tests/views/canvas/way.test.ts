import { describe, expect, test } from 'vitest';
import { distance } from '../../../src/engine/geometry/point';
import { onItsWay } from '../../../src/views/canvas/drawing/way';
import { createTravel } from '../../../src/views/canvas/travel';
import { bedroom } from '../../support/homes';

describe('ghosts on their way', () => {
  const bed = bedroom().pieces.p1!;
  const there = { ...bed, at: [4, 1] as const, angle: bed.angle + 270 };

  test('leave from the old place and arrive at the new one', () => {
    expect(distance(onItsWay(bed, there, 0).at, bed.at)).toBeCloseTo(0, 9);
    expect(onItsWay(bed, there, 1)).toBe(there);
  });

  test('turn the shorter way round', () => {
    expect(onItsWay(bed, there, 0.5).angle).toBeCloseTo(bed.angle - 45, 9);
  });

  test('go once for each answer, within 400 ms', () => {
    const travel = createTravel(() => false);
    const answer = {};
    expect(travel(null, 0)).toBe(1);
    expect(travel(answer, 1000)).toBe(0);
    expect(travel(answer, 1200)).toBeGreaterThan(0.5);
    expect(travel(answer, 1400)).toBe(1);
    expect(travel(answer, 9000)).toBe(1);
    expect(travel({}, 9000)).toBe(0);
  });

  test('are there at once where motion is unwelcome', () => {
    expect(createTravel(() => true)({}, 5)).toBe(1);
  });
});
