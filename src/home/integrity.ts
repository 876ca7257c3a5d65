import { GUIDELINES } from '../engine/judging/guidelines';
import { distance } from '../engine/geometry/point';
import { area, selfCrossing } from '../engine/geometry/polygon';
import { COLLECTIONS } from './ids';
import { LIMITS } from './limits';
import { compareIds } from './order';
import { wallOf } from './kinds/outlined';
import type { Collection, Home, Id, Point } from './home';
import type { IntegrityProblem, Path } from './problem';

/** Less floor than a square centimetre is a slip of the hand. */
const LEAST_AREA = 1e-4;

/** Lengths are kept to a tenth of a millimetre, so an opening may seem to pass its corner by that much. */
const SLACK = 2e-4;

function refers(home: Home, path: Path, id: Id | null, wanted: Collection): IntegrityProblem[] {
  if (id === null || Object.hasOwn(home[wanted], id)) return [];
  return [{ kind: 'points-nowhere', path, id, wanted, have: Object.keys(home[wanted]).sort(compareIds) }];
}

function outlineProblems(outline: readonly Point[], path: Path): IntegrityProblem[] {
  if (outline.length < 3) return [{ kind: 'outline-short', path, corners: outline.length, least: 3 }];
  const crossing = selfCrossing(outline);
  if (crossing) return [{ kind: 'outline-crosses', path, ...crossing }];
  return area(outline) < LEAST_AREA ? [{ kind: 'outline-flat', path }] : [];
}

function pathProblems(
  points: readonly Point[],
  path: Path,
  least: number,
  most = Infinity,
): IntegrityProblem[] {
  if (points.length >= least && points.length <= most) return [];
  return [{ kind: 'path-corners', path, points: points.length, least, most }];
}

const ordered = (low: number, high: number, path: Path): IntegrityProblem[] =>
  low > high ? [{ kind: 'low-above-high', path, low, high }] : [];

function rising(values: readonly number[], path: Path): IntegrityProblem[] {
  const index = values.findIndex((value, i) => i > 0 && value < values[i - 1]!);
  return index < 0 ? [] : [{ kind: 'out-of-order', path, index }];
}

/** Bytes of the picture in a base64 data address. */
const pictureBytes = (address: string): number => ((address.length - address.indexOf(',') - 1) * 3) / 4;

type Check<C extends Collection> = (home: Home, member: Home[C][Id], path: Path) => IntegrityProblem[];

/** What the parts of one member and its references must keep to. */
const CHECKS: { [C in Collection]: Check<C> } = {
  levels: (_home, { backdrop }, path) => {
    const bytes = backdrop ? pictureBytes(backdrop.image) : 0;
    if (bytes <= LIMITS.image) return [];
    return [{ kind: 'picture-too-large', path: [...path, 'backdrop', 'image'], bytes, limit: LIMITS.image }];
  },
  rooms: (home, { level, outline }, path) => [
    ...refers(home, [...path, 'level'], level, 'levels'),
    ...outlineProblems(outline, [...path, 'outline']),
  ],
  openings: (home, { room, wall, offset, width }, path) => {
    const lost = refers(home, [...path, 'room'], room, 'rooms');
    if (lost.length > 0) return lost;
    const { outline } = home.rooms[room]!;
    if (wall >= outline.length)
      return [{ kind: 'no-such-wall', path: [...path, 'wall'], wall, walls: outline.length }];
    const wallLength = distance(...wallOf(outline, wall));
    if (width > wallLength + SLACK)
      return [{ kind: 'wider-than-wall', path: [...path, 'width'], width, wallLength }];
    return offset + width > wallLength + SLACK
      ? [{ kind: 'beyond-wall', path: [...path, 'offset'], offset, width, wallLength }]
      : [];
  },
  fixtures: (home, { level, outline, front }, path) => [
    ...refers(home, [...path, 'level'], level, 'levels'),
    ...outlineProblems(outline, [...path, 'outline']),
    ...(front !== null && front >= outline.length
      ? [{ kind: 'no-such-wall' as const, path: [...path, 'front'], wall: front, walls: outline.length }]
      : []),
  ],
  pieces: (home, { level, mayStandIn }, path) => [
    ...refers(home, [...path, 'level'], level, 'levels'),
    ...(mayStandIn ?? []).flatMap((room, i) => refers(home, [...path, 'mayStandIn', i], room, 'rooms')),
  ],
  sources: (home, { level, kind, path: points }, path) => [
    ...refers(home, [...path, 'level'], level, 'levels'),
    ...(kind === 'point'
      ? pathProblems(points, [...path, 'path'], 1, 1)
      : pathProblems(points, [...path, 'path'], 2)),
  ],
  meters: (_home, { range, band }, path) => [
    ...ordered(range[0], range[1], [...path, 'range']),
    ...ordered(band[0], band[1], [...path, 'band']),
  ],
  rounds: () => [],
  walks: (home, { level, path: points }, path) => [
    ...refers(home, [...path, 'level'], level, 'levels'),
    ...pathProblems(points, [...path, 'path'], 2),
  ],
  readings: (home, { level, meter, round, walk, min, max }, path) => [
    ...refers(home, [...path, 'level'], level, 'levels'),
    ...refers(home, [...path, 'meter'], meter, 'meters'),
    ...refers(home, [...path, 'round'], round, 'rounds'),
    ...refers(home, [...path, 'walk'], walk, 'walks'),
    ...(min !== null && max !== null ? ordered(min, max, [...path, 'min']) : []),
  ],
  recordings: (home, { level, meter, samples }, path) => [
    ...refers(home, [...path, 'level'], level, 'levels'),
    ...refers(home, [...path, 'meter'], meter, 'meters'),
    ...rising(
      samples.map(([seconds]) => seconds),
      [...path, 'samples'],
    ),
  ],
  comparisons: (home, { meter, reference }, path) => [
    ...refers(home, [...path, 'meter'], meter, 'meters'),
    ...refers(home, [...path, 'reference'], reference, 'meters'),
    ...(meter === reference ? [{ kind: 'compared-with-itself' as const, path }] : []),
  ],
  arrangements: (home, { pieces, sources, rooms }, path) => [
    ...pieces.flatMap(({ id, level }, i) => [
      ...refers(home, [...path, 'pieces', i, 'id'], id, 'pieces'),
      ...refers(home, [...path, 'pieces', i, 'level'], level, 'levels'),
    ]),
    ...sources.flatMap(({ id }, i) => refers(home, [...path, 'sources', i, 'id'], id, 'sources')),
    ...rooms.flatMap(({ id }, i) => refers(home, [...path, 'rooms', i, 'id'], id, 'rooms')),
  ],
  guidelines: (_home, { edges }, path) =>
    rising(
      edges.map(({ value }) => value),
      [...path, 'edges'],
    ),
};

/** What is wrong with one member as it stands in its home. */
export function memberProblems<C extends Collection>(home: Home, collection: C, id: Id): IntegrityProblem[] {
  const member = home[collection][id] as Home[C][Id];
  return CHECKS[collection](home, member, [collection, id]);
}

/** What the settings refer to must be there: a recording, and a published or an own guideline. */
export function settingsProblems(home: Home): IntegrityProblem[] {
  const { base, guideline } = home.settings;
  const published = GUIDELINES.map((set) => set.id);
  const own = Object.keys(home.guidelines).sort(compareIds);
  return [
    ...refers(home, ['settings', 'base'], base, 'recordings'),
    ...(published.includes(guideline) || own.includes(guideline)
      ? []
      : [
          {
            kind: 'points-nowhere' as const,
            path: ['settings', 'guideline'],
            id: guideline,
            wanted: 'guidelines' as const,
            have: [...own, ...published],
          },
        ]),
  ];
}

/** How much a home holds, against `LIMITS`. */
export function limitProblems(home: Home): IntegrityProblem[] {
  const counts = {
    readings: Object.keys(home.readings).length,
    rooms: Object.keys(home.rooms).length,
    pieces: Object.keys(home.pieces).length,
    levels: Object.keys(home.levels).length,
    images: Object.values(home.levels).filter(({ backdrop }) => backdrop !== null).length,
    samples: Object.values(home.recordings).reduce((sum, { samples }) => sum + samples.length, 0),
  };
  return Object.entries(counts).flatMap(([name, count]): IntegrityProblem[] => {
    const limit = LIMITS[name as keyof typeof counts];
    return count > limit ? [{ kind: 'too-many', path: [name], count, limit }] : [];
  });
}

/** Everything that does not fit together in a home; empty for a sound one. */
export function integrity(home: Home): IntegrityProblem[] {
  return [
    ...limitProblems(home),
    ...settingsProblems(home),
    ...COLLECTIONS.flatMap((name) => Object.keys(home[name]).flatMap((id) => memberProblems(home, name, id))),
  ];
}
