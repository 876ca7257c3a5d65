import { expect, it } from 'vitest';
import { numberPlaces } from '../../../src/views/panels/map/numberPlaces';

const wish = (x: number, y: number, text: string, rather: 'left' | 'right' = 'left') => ({
  x,
  y,
  text,
  rather,
});

it('a number stands on its own side of its point, and on the other at an edge', () => {
  expect(numberPlaces([wish(100, 50, '7')], 36, 320)[0]).toMatchObject({ anchor: 'end', x: 91 });
  expect(numberPlaces([wish(40, 50, '7')], 36, 320)[0]).toMatchObject({ anchor: 'start', x: 49 });
  expect(numberPlaces([wish(316, 50, '42', 'right')], 36, 320)[0]).toMatchObject({ anchor: 'end' });
});

it('numbers of points that nearly meet do not lie over each other, and what finds no place is left out', () => {
  const placed = numberPlaces([wish(100, 50, '42'), wish(101, 58, '57')], 36, 320);
  expect(placed).toHaveLength(2);
  const [a, b] = placed;
  expect(a!.anchor !== b!.anchor || Math.abs(a!.y - b!.y) >= 10).toBe(true);
  expect(
    numberPlaces(
      Array.from({ length: 9 }, (_, i) => wish(100, 50, `${i}`)),
      36,
      320,
    ),
  ).toHaveLength(4);
});
