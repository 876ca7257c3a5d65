import { box, places } from './places';
import { build, door, fit, keepAsFound, stand, window } from './builder';
import { newHome } from '../src/home/newHome';
import { put, readRound } from './surveyor';
import type { Home, Id } from '../src/home/home';
import type { Sources } from '../src/engine/magnetics/fieldOfSources';

const INVENTED =
  'Invented, to show what a survey looks like: nobody lives here. The readings are drawn from a known field with 3 % noise, seed 8128.';

/** A current that does not come back the way it goes, in the wall between bedroom and living room and up to the floor above. */
export const FLAT_SOURCES: Sources = {
  conductors: [
    { from: [4.6, -0.3, 0.3], to: [4.6, 4.4, 0.3], amperes: 1.7, degrees: 0, endless: false },
    { from: [4.6, 4.4, 0.3], to: [4.6, 4.4, 5.5], amperes: 1.7, degrees: 0, endless: false },
    { from: [-30, 19, 7], to: [40, 19, 7], amperes: 1.8, degrees: 70, endless: false },
  ],
  dipoles: [
    { at: [0.35, 4.1, 0.6], moment: [0.2, 0.35, 0.1], degrees: 150 },
    { at: [7.5, 6.3, 1.1], moment: [0.1, 0.15, 0.2], degrees: 250 },
  ],
  ambient: 0.025,
};

/** Living room, bedroom, hall, bathroom, store. */
const READ = places(
  `0.6,1.4 1.6,0.6 2.8,0.6 4,0.6 0.9,2.8 2.2,1.9 3.4,2.2 4.1,2 1.1,3.9 2.6,3.5 4,3.7
   5,0.7 6.2,0.6 7.5,0.7 4.95,2.1 5.8,1.9 6.8,2 7.6,2.2 5.1,3.6 6.2,3.5 7.5,3.7
   2.7,5.1 3.7,5.3 4.7,5 5.3,5.2
   6.3,5 7.4,5.9 6.2,6.2
   0.7,5 1.5,5.3`,
);

/** A flat with one bedroom, read in milligauss with a simple meter; the source in its wall is not marked on the plan. */
export function oneBedroomFlat(): Home {
  const home = newHome('Button Court, flat 3 (invented)');
  Object.assign(home.settings, { fieldUnit: 'mG', lengthUnit: 'ft', mains: 60 });
  home.north = -35;
  const level = 'l1';
  Object.assign(home.levels[level], { name: 'Second floor', elevation: 5.6 });
  draw(home, level);
  stand(home, level, 'bed', 'Double bed', { at: [5.6, 2.2], angle: 90, size: [1.4, 2] }, [
    { who: 'person 1', side: 'left', hours: 8 },
    { who: 'person 2', side: 'right', hours: 7.5 },
  ]);
  stand(home, level, 'desk', 'Desk', { at: [4.3, 2], angle: -90 }, [
    { who: 'person 2', side: 'middle', hours: 6 },
  ]);
  keepAsFound(home);
  survey(home, level);
  Object.assign(home.report, {
    purpose: `Whether to take this flat, and where bed and desk would stand. ${INVENTED}`,
    findings:
      'The field is highest along the wall between bedroom and living room, and no appliance stands there.',
    date: '2026-05-19',
  });
  return home;
}

function draw(home: Home, level: Id): void {
  const living = places('0,1 1.2,0 4.6,0 4.6,4.4 0,4.4');
  build(home, level, 'Living room', 'living', living, [
    window(0, 0.2, 1.1),
    window(1, 0.8, 1.8),
    door(3, 0.5, 'end'),
  ]);
  build(home, level, 'Bedroom', 'sleeping', box(4.6, 0, 8, 4.4), [window(1, 1.4, 1.6), door(2, 2.45, 'end')]);
  build(home, level, 'Hall', 'passage', box(2, 4.4, 5.6, 5.8), [door(2, 2.3, 'start', 0.9)]);
  build(home, level, 'Bathroom', 'wet', places('5.6,4.4 8,4.4 8,6.8 5.6,6.8'), [door(3, 1.2, 'start')]);
  build(home, level, 'Store', 'store', box(0, 4.4, 2, 5.8), [{ ...door(1, 0.3, 'start'), swing: 'out' }]);
  fit(home, level, 'wardrobe', 'Wardrobe', box(6.4, 3.8, 8, 4.4), 0);
  fit(home, level, 'radiator', 'Radiator', box(7.9, 1.6, 8, 2.8));
  fit(home, level, 'other', 'Kitchen units', box(0, 3.8, 2.6, 4.4));
  fit(home, level, 'other', 'Shower', box(7.1, 4.4, 8, 5.3));
}

function survey(home: Home, level: Id): void {
  const meter = put(home, 'meters', {
    name: 'Simple meter',
    axes: 3,
    unit: 'mG',
    percent: 5,
    absolute: 0.005,
    coverage: 'limits',
    resolution: 0.01,
    range: [0.01, 200],
    settleSeconds: 4,
    gain: 1,
    offset: 0,
    serial: '',
    calibrated: null,
    band: [40, 800],
  });
  Object.assign(home.rounds.a, { date: '2026-05-18', note: `At a viewing, heating off. ${INVENTED}` });
  const surveyor = { home, level, meter: home.meters[meter], sources: FLAT_SOURCES, seed: 8128 };
  readRound(
    surveyor,
    home.rounds.a,
    '2026-05-18T17:30:00-05:00',
    READ.map((at) => ({ at })),
  );
}
