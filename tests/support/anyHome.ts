import fc from 'fast-check';
import { highestIds } from '../../src/home/ids';
import { newHome } from '../../src/home/newHome';
import type { Home, Id, Point, Room } from '../../src/home/home';

/** Places as they are kept: to a tenth of a millimetre. */
const coordinate = fc.integer({ min: -400_000, max: 400_000 }).map((n) => n / 10_000);
const place: fc.Arbitrary<Point> = fc.tuple(coordinate, coordinate);
const words = fc.string({ unit: 'grapheme', maxLength: 12 });
const field = fc.double({ min: 0, max: 500, noNaN: true }).map((n) => n + 0);
const angle = fc.integer({ min: 0, max: 359_999 }).map((n) => n / 1000);
const height = fc.integer({ min: 0, max: 300 }).map((n) => n / 100);
const length = fc.integer({ min: 30, max: 300 }).map((n) => n / 100);
const date = fc.option(fc.constantFrom('2026-03-02', '2025-12-31'));
const time = fc.constantFrom('2026-03-02T19:40:00+01:00', '2026-03-02T19:40Z', '2026-03-02T19:40:12.5');

/** An outline that never crosses itself: corners all round a middle, each at its own distance. */
const outline: fc.Arbitrary<Point[]> = fc
  .tuple(place, fc.array(fc.integer({ min: 100, max: 500 }), { minLength: 3, maxLength: 8 }), fc.boolean())
  .map(([[x, y], radii, clockwise]) => {
    const at = (n: number) => Math.round(n * 1e4) / 1e4 + 0;
    const ring = radii.map((r, i): Point => {
      const turn = (2 * Math.PI * i) / radii.length;
      return [at(x + (r / 100) * Math.cos(turn)), at(y + (r / 100) * Math.sin(turn))];
    });
    return clockwise ? ring.reverse() : ring;
  });

/** Members of one collection under the letter, with gaps between their numbers. */
function collection<T extends { id: Id }>(
  letter: string,
  of: fc.Arbitrary<Omit<T, 'id'>>,
  maxLength: number,
) {
  return fc.array(fc.tuple(fc.integer({ min: 1, max: 4 }), of), { maxLength }).map((list) => {
    let number = 0;
    return Object.fromEntries(
      list.map(([gap, member]) => {
        number += gap;
        return [`${letter}${number}`, { ...member, id: `${letter}${number}` } as T];
      }),
    );
  });
}

const oneOf = (record: Record<Id, unknown>): fc.Arbitrary<Id> => fc.constantFrom(...Object.keys(record));
const maybeOf = (record: Record<Id, unknown>): fc.Arbitrary<Id | null> =>
  fc.constantFrom(null, ...Object.keys(record));
const among = <const T extends readonly unknown[]>(...values: T): fc.Arbitrary<T[number]> =>
  fc.constantFrom(...values);

const backdrop = fc.record({
  image: among('data:image/png;base64,iVBORw0KGgo='),
  at: place,
  metresPerPixel: among(0.01, 0.02),
  angle,
  opacity: among(0, 0.5, 1),
});

const meter: fc.Arbitrary<Omit<Home['meters'][Id], 'id'>> = fc.record({
  name: words,
  axes: among(1, 3),
  unit: among('uT', 'mG', 'nT'),
  percent: among(3, 5, 10),
  absolute: among(0.002, 0.01),
  coverage: among('limits', 'k2'),
  resolution: among(0.001, 0.01),
  range: fc.constantFrom<[number, number]>([0.001, 200], [0.01, 20]),
  settleSeconds: among(0, 3),
  gain: among(1, 0.97),
  offset: among(0, -0.001),
  serial: words,
  calibrated: date,
  band: fc.constantFrom<[number, number]>([40, 400], [16, 2000]),
});

/** What everything else refers to. */
const ground = fc.record({
  levels: collection<Home['levels'][Id]>(
    'l',
    fc.record({ name: words, elevation: height, backdrop: fc.option(backdrop) }),
    3,
  ).map((levels) => (Object.keys(levels).length > 0 ? levels : newHome().levels)),
  meters: collection<Home['meters'][Id]>('g', meter, 2),
  rounds: fc
    .subarray(['a', 'b', 'd'], { minLength: 1 })
    .map((ids) =>
      Object.fromEntries(
        ids.map((id) => [id, { id, name: id, kind: 'supplyOff' as const, date: null, note: '' }]),
      ),
    ),
});

type Ground = Pick<Home, 'levels' | 'meters' | 'rounds'>;
type Plan = Ground & Pick<Home, 'rooms' | 'walks' | 'sources'>;

const plan = (base: Ground): fc.Arbitrary<Plan> =>
  fc.record({
    levels: fc.constant(base.levels),
    meters: fc.constant(base.meters),
    rounds: fc.constant(base.rounds),
    rooms: collection<Room>(
      'r',
      fc.record({
        level: oneOf(base.levels),
        name: words,
        use: among('sleeping', 'living', 'grounds', 'wet'),
        outline,
      }),
      5,
    ),
    walks: collection<Home['walks'][Id]>(
      'w',
      fc.record({
        name: words,
        level: oneOf(base.levels),
        path: fc.array(place, { minLength: 2, maxLength: 2 }),
      }),
      2,
    ),
    sources: collection<Home['sources'][Id]>(
      's',
      fc
        .record({
          name: words,
          level: oneOf(base.levels),
          points: fc.array(place, { minLength: 2, maxLength: 4 }),
          height,
          falloff: among(1, 2, 3, 'fit'),
          origin: among('outside', 'house', 'unknown'),
          line: fc.boolean(),
        })
        .map(({ points, line, ...rest }) => ({
          ...rest,
          kind: line ? ('line' as const) : ('point' as const),
          path: line ? points : points.slice(0, 1),
        })),
      3,
    ),
  });

function opening(rooms: Record<Id, Room>): fc.Arbitrary<Omit<Home['openings'][Id], 'id'>> {
  return fc
    .record({
      room: oneOf(rooms),
      kind: among('door', 'window', 'gap'),
      corner: fc.nat(7),
      share: fc.tuple(fc.integer({ min: 10, max: 90 }), fc.integer({ min: 0, max: 100 })),
      hinge: among('start', 'end'),
      swing: among('in', 'out', 'none'),
    })
    .map(({ corner, share, ...rest }) => {
      const corners = rooms[rest.room]!.outline;
      const wall = corner % corners.length;
      const [a, b] = [corners[wall]!, corners[(wall + 1) % corners.length]!];
      const long = Math.hypot(a[0] - b[0], a[1] - b[1]);
      const down = (n: number) => Math.floor(n * 1e4) / 1e4;
      const width = down((long * share[0]) / 100);
      return { ...rest, wall, width, offset: down(((long - width) * share[1]) / 100) };
    });
}

const piece = ({ levels, rooms }: Plan): fc.Arbitrary<Omit<Home['pieces'][Id], 'id'>> =>
  fc.record({
    kind: among('bed', 'cot', 'desk', 'seat', 'other'),
    name: words,
    level: oneOf(levels),
    at: place,
    angle,
    size: fc.tuple(length, length),
    height,
    uses: fc.array(
      fc.record({
        who: words,
        side: among('left', 'right', 'middle'),
        hours: fc.integer({ min: 0, max: 24 }),
      }),
      { maxLength: 2 },
    ),
    locked: fc.boolean(),
    mayStandIn: fc.option(fc.subarray(Object.keys(rooms))),
    access: fc.record({ left: height, right: height, foot: height }),
  });

const reading = ({ levels, meters, rounds, walks }: Plan): fc.Arbitrary<Omit<Home['readings'][Id], 'id'>> =>
  fc
    .record({
      level: oneOf(levels),
      at: place,
      value: field,
      height,
      span: fc.option(fc.tuple(field, field)),
      axes: fc.option(fc.tuple(field, field, field)),
      taken: among('settled', 'peak'),
      limit: among(null, 'below', 'above'),
      meter: maybeOf(meters),
      round: maybeOf(rounds),
      walk: maybeOf(walks),
      time: fc.option(time),
      text: words,
      note: words,
      excluded: among('', '', 'phone in hand'),
    })
    .map(({ span, ...rest }) => ({
      ...rest,
      min: span ? Math.min(...span) : null,
      max: span ? Math.max(...span) : null,
    }));

const contents = (base: Plan) =>
  fc.record({
    title: words,
    north: angle,
    openings:
      Object.keys(base.rooms).length > 0
        ? collection<Home['openings'][Id]>('o', opening(base.rooms), 5)
        : fc.constant({}),
    fixtures: collection<Home['fixtures'][Id]>(
      'f',
      fc.record({
        level: oneOf(base.levels),
        kind: among('wardrobe', 'radiator', 'chimney', 'other'),
        name: words,
        outline,
        front: among(null, 0, 2),
      }),
      3,
    ),
    pieces: collection<Home['pieces'][Id]>('p', piece(base), 4),
    readings: collection<Home['readings'][Id]>('m', reading(base), 8),
    recordings: collection<Home['recordings'][Id]>(
      'b',
      fc.record({
        name: words,
        level: oneOf(base.levels),
        at: place,
        height,
        meter: maybeOf(base.meters),
        start: time,
        samples: fc
          .array(field, { maxLength: 4 })
          .map((values) => values.map((value, i): [number, number] => [60 * i, value])),
      }),
      2,
    ),
    report: fc.record({
      preparedFor: words,
      by: words,
      address: words,
      date,
      purpose: words,
      findings: words,
      advice: words,
    }),
    mapHeight: height,
    givenOut: fc.dictionary(among('m', 'p', 'r', 'round', 'own-'), fc.integer({ min: 1, max: 40 })),
  });

/** Homes of every kind of content that keep to all the rules, with ids that were given out and are gone. */
export const anyHome: fc.Arbitrary<Home> = ground.chain(plan).chain((base) =>
  contents(base).map(({ mapHeight, givenOut, ...parts }): Home => {
    const blank = newHome();
    const [one, other] = Object.keys(base.meters);
    const home: Home = {
      ...blank,
      ...base,
      ...parts,
      settings: { ...blank.settings, mapHeight, base: Object.keys(parts.recordings)[0] ?? null },
      comparisons:
        one && other ? { c1: { id: 'c1', meter: one, reference: other, pairs: [[0.62, 0.58]] } } : {},
      arrangements: {
        v1: {
          id: 'v1',
          name: 'As found',
          pieces: Object.values(parts.pieces).map(({ id, level, at, angle: turned }) => ({
            id,
            level,
            at,
            angle: turned,
          })),
          sources: Object.values(base.sources).map(({ id, path }) => ({
            id,
            scale: 0,
            path: parts.north > 0 ? path : null,
          })),
          rooms: Object.keys(base.rooms).map((id) => ({ id, use: 'work' as const })),
        },
      },
      guidelines: {
        'own-2': {
          id: 'own-2',
          name: 'Ours',
          year: 2026,
          source: '',
          basis: 'spot',
          kind: 'practice',
          uses: ['sleeping'],
          edges: [{ value: 0.1, word: 'above aim' }],
        },
      },
      lastIds: {},
    };
    const present = highestIds(home);
    const letters = new Set([...Object.keys(present), ...Object.keys(givenOut)]);
    const highest = (letter: string) => Math.max(present[letter] ?? 0, givenOut[letter] ?? 0);
    return { ...home, lastIds: Object.fromEntries([...letters].map((letter) => [letter, highest(letter)])) };
  }),
);
