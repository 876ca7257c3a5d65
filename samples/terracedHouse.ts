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
const LINE_Y = -6.6;

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
    { from: [2.7, -6, -0.4], to: [2.7, 5.2, -0.4], amperes: 0.35, degrees: 35, endless: false },
  ],
  dipoles: [],
  ambient: 0.018,
};

/** With the supply on there are also the meter cupboard, a fridge, a boiler pump and a plug-in transformer in the study. */
export const HOUSE_SOURCES: Sources = {
  ...FROM_OUTSIDE,
  dipoles: [
    { at: [4.15, 0.75, 1.4], moment: [0.9, 0.5, 0.5], degrees: 60 },
    { at: [2.85, 10.3, 0.5], moment: [0.18, 0.08, 0.15], degrees: 200 },
    { at: [0.3, 7.7, 1.2], moment: [0.1, 0.3, 0.1], degrees: 110 },
    { at: [1.6, 0.2, 0.4], moment: [0.08, 0.05, 0.12], degrees: 310 },
  ],
};

/** Along the walk from the street to the back fence. */
const WALKED = places(
  `3.8,-4.3 3.8,-2.6 3.8,-1 3.8,0.9 3.8,2.6 3.8,4.3 3.8,6 3.8,7.6 3.8,9.4 3.8,11.3
   3.8,13 3.8,15 3.8,16.8 3.8,18.7`,
);

/** Room after room, from the front garden to the back. */
const READ = places(
  `0.8,-3.9 0.9,-1.1 6.2,-3.8 6.4,-1.2 8,-2.6
   0.5,0.6 1.5,0.7 0.7,2.3 2.2,1.9
   0.9,3.9 2,4.7
   0.9,6.1 0.9,7.5
   4.8,0.7 4.9,2 6.2,0.7 7.7,0.9 6.3,2.2 7.9,2.6 5.2,3.6 7.2,3.3
   5.2,5.2 6.7,4.8 7.8,6.9 5.4,6.4 6.2,7.5
   0.8,8.9 0.8,11.3 2.4,10.3 2.1,9
   3.5,10.2 4.8,9.2 4.7,11.3
   5.9,9.2 7.6,8.7 6.8,10.1 7.8,11.2 6.2,11.4
   1.2,13.2 7.2,13.6 1.4,17.4 6.8,17.8`,
);

/** Read again with the main switch off. */
const READ_OFF = places('3.8,-1 4.9,2 6.3,2.2 3.8,4.3 6.7,4.8 2.4,10.3 6.8,10.1');

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
    path: places('4.15,0.75'),
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
  build(home, level, 'Study', 'work', box(0, 0, 2.9, 3), [window(0, 0.8, 1.3), door(1, 2, 'end')]);
  build(home, level, 'Bathroom', 'wet', box(0, 3, 2.9, 5.3), [door(1, 1.3, 'end')]);
  const utility = places('0,5.3 2.9,5.3 2.9,6.9 1.8,6.9 1.8,8.1 0,8.1');
  build(home, level, 'Utility', 'store', utility, [door(1, 0.5, 'end')]);
  const hall = places('2.9,0 4.3,0 4.3,6.9 6.6,6.9 6.6,8.1 1.8,8.1 1.8,6.9 2.9,6.9');
  build(home, level, 'Hall', 'passage', hall, [door(0, 0.25, 'start', 0.9)]);
  build(home, level, 'Front bedroom', 'sleeping', box(4.3, 0, 8.4, 4.2), [
    window(0, 1.3, 1.7),
    door(3, 0.1, 'start'),
  ]);
  const parlour = places('4.3,4.2 8.4,4.2 8.4,8.1 6.6,8.1 6.6,6.9 4.3,6.9');
  build(home, level, 'Parlour', 'living', parlour, [gap(5, 0.4, 1.1)]);
  build(home, level, 'Kitchen', 'living', box(0, 8.1, 3.1, 12), [
    door(0, 2.1, 'end'),
    { ...door(2, 0.3, 'start', 0.85), swing: 'out' },
    window(2, 1.5, 1.2),
  ]);
  build(home, level, 'Nursery', 'sleeping', box(3.1, 8.1, 5.3, 12), [
    door(0, 0.15, 'start'),
    window(2, 0.6, 1),
  ]);
  build(home, level, 'Back bedroom', 'sleeping', box(5.3, 8.1, 8.4, 12), [
    door(0, 0.3, 'start'),
    window(2, 0.7, 1.4),
  ]);
  build(home, level, 'Front garden', 'grounds', box(0, -4.6, 8.4, 0), []);
  build(home, level, 'Back garden', 'grounds', box(0, 12, 8.4, 19), []);

  fit(home, level, 'wardrobe', 'Wardrobe', box(6.7, 3.6, 8.4, 4.2), 0);
  fit(home, level, 'radiator', 'Radiator', box(5.8, 0, 7.1, 0.1));
  fit(home, level, 'chimney', 'Chimney breast', box(8, 5, 8.4, 6.4));
  fit(home, level, 'other', 'Bath', box(0, 3, 0.75, 4.7));
  fit(home, level, 'other', 'Kitchen units', box(0, 8.1, 0.6, 11.4));
  fit(home, level, 'wardrobe', 'Wardrobe', box(6.9, 8.1, 8.4, 8.7), 2);
  fit(home, level, 'radiator', 'Radiator', box(6.4, 11.9, 7.6, 12));
  fit(home, level, 'radiator', 'Radiator', box(3.8, 11.9, 4.6, 12));
}

function furnish(home: Home, level: Id): void {
  stand(home, level, 'bed', 'Double bed', { at: [5.3, 1.6], angle: 90, size: [1.5, 2] }, [
    { who: 'A', side: 'left', hours: 8 },
    { who: 'B', side: 'right', hours: 8 },
  ]);
  stand(home, level, 'bed', 'Single bed', { at: [6.25, 10.6], angle: 90, size: [0.9, 1.9] }, [
    { who: 'C', side: 'middle', hours: 9 },
  ]);
  stand(home, level, 'cot', 'Cot', { at: [3.7, 10.3], angle: 90 }, [{ who: 'D', side: 'middle', hours: 12 }]);
  stand(home, level, 'desk', 'Desk', { at: [1.45, 0.3], angle: 180 }, [
    { who: 'A', side: 'middle', hours: 5 },
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
  const walk = put(home, 'walks', { name: 'Street to back fence', level, path: places('3.8,-4.5 3.8,18.9') });
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
    { at: [4.6, 1.2], height: 0.6, note: 'at the pillow' },
    { at: [3.7, 10.3], height: 0.5, note: 'on the cot mattress' },
  ];
  const surveyor = { home, level, meter: home.meters[meter] };
  const [on, dark] = ['2026-03-02T19:05:00+00:00', '2026-03-02T20:40:00+00:00'];
  readRound({ ...surveyor, sources: HOUSE_SOURCES, seed: 4711 }, home.rounds.a, on, stops);
  const again = READ_OFF.map((at) => ({ at }));
  readRound({ ...surveyor, sources: FROM_OUTSIDE, seed: 4711 }, home.rounds[off], dark, again);
}
