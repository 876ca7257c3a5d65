import { box, places } from './places';
import { build, door, fit, gap, keepAsFound, stand, window } from './builder';
import { newHome } from '../src/home/newHome';
import { put, readRound, type Stop } from './surveyor';
import type { Conductor } from '../src/engine/magnetics/conductor';
import type { Home, Id } from '../src/home/home';
import type { Sources } from '../src/engine/magnetics/fieldOfSources';

const INVENTED =
  'Invented, to show what a survey looks like: nobody lives here. The readings are drawn from a known field with 3 % noise, seed 4711.';

const LINE_HEIGHT = 6.4;
const LINE_Y = -5.6;

/** One wire of the street line, so many metres to the back of its middle. */
const street = (off: number, amperes: number, degrees: number): Conductor => ({
  from: [-60, LINE_Y + off, LINE_HEIGHT],
  to: [70, LINE_Y + off, LINE_HEIGHT],
  amperes,
  degrees,
  endless: false,
});

/** What stays when the main switch is off: the street line, and a current on the water pipe under the hall. */
const FROM_OUTSIDE: Sources = {
  conductors: [
    street(-0.55, 84, 0),
    street(0, 84, 120),
    street(0.55, 84, 240),
    street(0, 2.2, 300),
    { from: [3.1, -5, -0.4], to: [3.1, 4.8, -0.4], amperes: 0.35, degrees: 35, endless: false },
  ],
  dipoles: [],
  ambient: 0.018,
};

/** With the supply on there are also the meter cupboard, a fridge, a boiler pump and a plug-in transformer in the study. */
export const HOUSE_SOURCES: Sources = {
  ...FROM_OUTSIDE,
  dipoles: [
    { at: [4.85, 0.75, 1.4], moment: [0.9, 0.5, 0.5], degrees: 60 },
    { at: [3.55, 9.4, 0.5], moment: [0.22, 0.08, 0.15], degrees: 60 },
    { at: [0.3, 7, 1.2], moment: [0.1, 0.3, 0.1], degrees: 110 },
    { at: [1.9, 0.2, 0.4], moment: [0.08, 0.05, 0.12], degrees: 310 },
  ],
};

/** Along the walk from the street to the back fence. */
const WALKED = places(
  `4.4,-3 4.4,-1.9 4.4,-0.8 4.4,0.9 4.4,2.4 4.4,3.9 4.4,5.4 4.4,6.9 4.4,8.7 4.4,10.4
   4.4,11.9 4.4,13.2 4.4,14.5`,
);

/** Room after room, from the front garden to the back. */
const READ = places(
  `0.9,-2.7 1,-0.9 7.2,-2.7 7.5,-0.9 9.5,-1.8
   0.6,0.6 1.8,0.7 0.8,2.1 2.7,1.7
   1.1,3.6 2.5,4.3
   1,5.6 1.1,6.8
   5.6,0.7 5.8,1.9 7.3,0.7 9.2,0.8 7.5,2.1 9.4,2.4 6.1,3.4 8.3,3
   6,4.8 7.9,4.5 9.2,6.4 6.3,5.9 7.1,6.9
   0.9,8.2 0.9,10.5 2.9,9.4 2.5,8.2
   4.2,9.3 5.6,8.4 5.5,10.5
   6.9,8.4 8.9,8.3 7.9,9.3 9.4,10.3 6.9,10.5
   1.4,12.3 8.6,12.6 1.6,14.2 8.2,14.2`,
);

/** Read again with the main switch off. */
const READ_OFF = places('4.4,-0.8 5.8,1.9 7.5,2.1 4.4,3.9 7.9,4.5 2.9,9.4 7.9,9.3');

/** A terraced house beside a street line, with its gardens: two rounds, one walk, four pieces of furniture. */
export function terracedHouse(): Home {
  const home = newHome('Thimble Row, number 4 (invented)');
  home.north = 12;
  const level = 'l1';
  draw(home, level);
  furnish(home, level);
  put(home, 'sources', {
    kind: 'line',
    name: 'Street line',
    level,
    path: places(`-30,${LINE_Y} 40,${LINE_Y}`),
    height: LINE_HEIGHT,
    falloff: 'fit',
    origin: 'outside',
  });
  put(home, 'sources', {
    kind: 'point',
    name: 'Meter cupboard',
    level,
    path: places('4.85,0.75'),
    height: 1.4,
    falloff: 3,
    origin: 'house',
  });
  survey(home, level);
  Object.assign(home.report, {
    purpose: `Where the beds, the cot and the desk should stand. ${INVENTED}`,
    findings:
      'The field falls from the street to the back fence; the meter cupboard adds to it beside the front bedroom.',
    date: '2026-03-03',
  });
  return home;
}

function draw(home: Home, level: Id): void {
  build(home, level, 'Study', 'work', box(0, 0, 3.4, 2.8), [window(0, 0.9, 1.4), door(1, 1.8, 'end')]);
  build(home, level, 'Bathroom', 'wet', box(0, 2.8, 3.4, 4.9), [door(1, 1.1, 'end')]);
  const utility = places('0,4.9 3.4,4.9 3.4,6.3 2.2,6.3 2.2,7.4 0,7.4');
  build(home, level, 'Utility', 'store', utility, [door(1, 0.4, 'end')]);
  const hall = places('3.4,0 5,0 5,6.3 7.6,6.3 7.6,7.4 2.2,7.4 2.2,6.3 3.4,6.3');
  build(home, level, 'Hall', 'passage', hall, [door(0, 0.35, 'start', 0.9)]);
  build(home, level, 'Front bedroom', 'sleeping', box(5, 0, 10, 4), [
    window(0, 1.7, 1.8),
    door(3, 0.1, 'start'),
  ]);
  const parlour = places('5,4 10,4 10,7.4 7.6,7.4 7.6,6.3 5,6.3');
  build(home, level, 'Parlour', 'living', parlour, [gap(5, 0.4, 1.1)]);
  build(home, level, 'Kitchen', 'living', box(0, 7.4, 3.8, 11.2), [
    door(0, 2.6, 'end'),
    { ...door(2, 0.3, 'start', 0.85), swing: 'out' },
    window(2, 1.6, 1.4),
  ]);
  build(home, level, 'Nursery', 'sleeping', box(3.8, 7.4, 6.2, 11.2), [
    door(0, 0.15, 'start'),
    window(2, 0.6, 1.1),
  ]);
  build(home, level, 'Back bedroom', 'sleeping', box(6.2, 7.4, 10, 11.2), [
    door(0, 0.3, 'start'),
    window(2, 0.9, 1.5),
  ]);
  build(home, level, 'Front garden', 'grounds', box(0, -3.2, 10, 0), []);
  build(home, level, 'Back garden', 'grounds', box(0, 11.2, 10, 14.8), []);

  fit(home, level, 'wardrobe', 'Wardrobe', box(8, 3.4, 10, 4), 0);
  fit(home, level, 'radiator', 'Radiator', box(7, 0, 8.2, 0.1));
  fit(home, level, 'chimney', 'Chimney breast', box(9.6, 4.8, 10, 6.2));
  fit(home, level, 'other', 'Bath', box(0, 2.8, 0.75, 4.5));
  fit(home, level, 'other', 'Kitchen units', box(0, 7.4, 0.6, 10.6));
  fit(home, level, 'wardrobe', 'Wardrobe', box(8.3, 7.4, 10, 8), 2);
  fit(home, level, 'radiator', 'Radiator', box(7.7, 11.1, 8.9, 11.2));
  fit(home, level, 'radiator', 'Radiator', box(4.6, 11.1, 5.4, 11.2));
}

function furnish(home: Home, level: Id): void {
  stand(home, level, 'bed', 'Double bed', { at: [6, 1.6], angle: 90, size: [1.5, 2] }, [
    { who: 'person 1', side: 'left', hours: 8 },
    { who: 'person 2', side: 'right', hours: 8 },
  ]);
  stand(home, level, 'bed', 'Single bed', { at: [7.15, 9.9], angle: 90, size: [0.9, 1.9] }, [
    { who: 'person 3', side: 'middle', hours: 9 },
  ]);
  stand(home, level, 'cot', 'Cot', { at: [4.4, 9.4], angle: 90 }, [
    { who: 'person 4', side: 'middle', hours: 12 },
  ]);
  // Nobody wants to work in the kitchen or where somebody sleeps.
  const mayStandIn = Object.values(home.rooms)
    .filter(({ name }) => ['Study', 'Parlour'].includes(name))
    .map(({ id }) => id);
  stand(home, level, 'desk', 'Desk', { at: [1.8, 0.3], angle: 180, mayStandIn }, [
    { who: 'person 1', side: 'middle', hours: 5 },
  ]);
  keepAsFound(home);
}

function survey(home: Home, level: Id): void {
  const meter = put(home, 'meters', {
    name: 'Three-axis meter',
    axes: 3,
    unit: 'uT',
    percent: 3,
    absolute: 0.001,
    coverage: 'limits',
    resolution: 0.001,
    range: [0.001, 200],
    settleSeconds: 3,
    gain: 1,
    offset: 0,
    serial: '',
    calibrated: null,
    band: [30, 2000],
  });
  const walk = put(home, 'walks', { name: 'Street to back fence', level, path: places('4.4,-3.1 4.4,14.7') });
  Object.assign(home.rounds.a, { date: '2026-03-02', note: `Everything on, as of an evening. ${INVENTED}` });
  const off = put(home, 'rounds', {
    name: 'Supply off',
    kind: 'supplyOff',
    date: '2026-03-02',
    note: `Main switch off, seven places read again. ${INVENTED}`,
  });
  const stops: Stop[] = [
    ...WALKED.map((at) => ({ at, walk })),
    ...READ.map((at) => ({ at })),
    { at: [5.3, 1.3], height: 0.6, note: 'at the pillow' },
    { at: [4.4, 9.4], height: 0.5, note: 'on the cot mattress' },
  ];
  const surveyor = { home, level, meter: home.meters[meter] };
  const [on, dark] = ['2026-03-02T19:05:00+00:00', '2026-03-02T20:40:00+00:00'];
  readRound({ ...surveyor, sources: HOUSE_SOURCES, seed: 4711 }, home.rounds.a, on, stops);
  const again = READ_OFF.map((at) => ({ at }));
  readRound({ ...surveyor, sources: FROM_OUTSIDE, seed: 4711 }, home.rounds[off], dark, again);
}
