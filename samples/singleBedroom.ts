import { box, places } from './places';
import { build, door, fit, keepAsFound, stand, window } from './builder';
import { newHome } from '../src/home/newHome';
import { put, readRound } from './surveyor';
import type { Home } from '../src/home/home';
import type { Sources } from '../src/engine/magnetics/fieldOfSources';

const INVENTED =
  'Invented, to show what a survey looks like: nobody lives here. The readings are drawn from a known field with 3 % noise, seed 1729.';

/** A riser behind the bed head, with a storage heater's coil beside it in the next room. */
export const BEDROOM_SOURCES: Sources = {
  conductors: [
    { from: [-0.25, 2.9, -3], to: [-0.25, 2.9, 5.4], amperes: 1.5, degrees: 0, endless: false },
    { from: [3.4, -9, 6], to: [-40, -9, 6], amperes: 1.2, degrees: 90, endless: false },
  ],
  dipoles: [{ at: [-0.4, 2.2, 0.5], moment: [0.5, 0.2, 0.4], degrees: 40 }],
  ambient: 0.02,
};

/** Ten minutes: twelve places, the corners and the bed among them. */
const READ = places(
  '0.4,0.5 1.8,0.4 3.1,0.5 0.4,1.6 1.7,1.5 3,1.7 0.4,2.5 1.6,2.7 3,2.9 0.4,3.6 1.8,3.7 3.1,3.7',
);

/** One bedroom in twelve readings, with the bed head at the wall where the field is highest. */
export function singleBedroom(): Home {
  const home = newHome('One bedroom, twelve readings (invented)');
  const level = 'l1';
  build(home, level, 'Bedroom', 'sleeping', box(0, 0, 3.5, 4.1), [
    door(0, 0.15, 'start'),
    window(1, 1.3, 1.5),
  ]);
  fit(home, level, 'radiator', 'Radiator', box(3.4, 1.5, 3.5, 2.6));
  fit(home, level, 'wardrobe', 'Wardrobe', box(1.7, 0, 3.5, 0.6), 2);
  stand(home, level, 'bed', 'Bed', { at: [1, 2.8], angle: 90, size: [0.9, 2] }, [
    { who: 'person 1', side: 'middle', hours: 8 },
  ]);
  keepAsFound(home);
  const meter = put(home, 'meters', {
    name: 'Low-cost meter',
    axes: 3,
    unit: 'uT',
    percent: 5,
    absolute: 0.005,
    coverage: 'limits',
    resolution: 0.01,
    range: [0.01, 200],
    settleSeconds: 3,
    gain: 1,
    offset: 0,
    serial: '',
    calibrated: null,
    band: [40, 400],
  });
  Object.assign(home.rounds.a, { date: '2026-01-11', note: `Ten minutes before bedtime. ${INVENTED}` });
  const surveyor = { home, level, meter: home.meters[meter], sources: BEDROOM_SOURCES, seed: 1729 };
  readRound(
    surveyor,
    home.rounds.a,
    '2026-01-11T21:50:00+01:00',
    READ.map((at) => ({ at })),
  );
  Object.assign(home.report, { purpose: `Where the bed should stand. ${INVENTED}`, date: '2026-01-11' });
  return home;
}
