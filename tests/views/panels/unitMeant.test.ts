import { expect, it } from 'vitest';
import { addMeter, addReading } from '../../../src/home/edits/add';
import { newHome } from '../../../src/home/newHome';
import { unitMeant } from '../../../src/views/panels/map/unitMeant';

function meant(value: number, text: string, unit: 'uT' | 'mG' = 'uT') {
  const home = structuredClone(newHome());
  addMeter({ name: 'House meter', unit }).apply(home);
  const level = Object.keys(home.levels)[0]!;
  addReading({ level, at: [1, 1], value, text }).apply(home);
  const ids = Object.keys(home.readings);
  return unitMeant(home, { ids, level, at: [1, 1], read: value, predicted: 0.1, low: 0.07, high: 0.15 });
}

it('names the unit in which the same figures would be what the others say', () => {
  expect(meant(1.1, '1.1')).toBe('mG');
  expect(meant(1.1, '1.1 uT')).toBe('mG');
  expect(meant(110, '110')).toBe('nT');
  expect(meant(0.011, '0.11', 'mG')).toBe('uT');
});

it('names none where no unit explains it, or where several readings share the place', () => {
  expect(meant(5, '5')).toBeNull();
  expect(meant(0.12, '0.12')).toBeNull();
  const home = newHome();
  expect(
    unitMeant(home, {
      ids: ['m1', 'm2'],
      level: 'l1',
      at: [0, 0],
      read: 1,
      predicted: 0.1,
      low: 0.07,
      high: 0.15,
    }),
  ).toBeNull();
});
