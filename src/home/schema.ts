import * as z from 'zod/mini';
import { LEAST_LANDING, LEAST_PATH, RULE_DEFAULTS } from '../engine/arranging/ruleSettings';
import { LIMITS } from './limits';
import { BAND } from './kindDefaults';
import type { Format } from './problem';

// A content-security policy without 'unsafe-eval' forbids the compiled validators.
z.config({ jitless: true });

const formatted = (pattern: RegExp, format: Format) => z.string().check(z.regex(pattern, { error: format }));
const within = (low: number, high: number) => z.number().check(z.minimum(low), z.maximum(high));
const above0 = (high: number) => z.number().check(z.positive(), z.maximum(high));
const oneOf = <const T extends readonly string[]>(...values: T) => z.enum(values);

const id = formatted(/^[a-z0-9-]{1,24}$/, 'id');
const text = z.string().check(z.maxLength(LIMITS.text));
const blank = z._default(text, '');
const metres = within(-LIMITS.coordinate, LIMITS.coordinate);
const point = z.tuple([metres, metres]);
const degrees = z.number();
/** A length of something that stands in a home. */
const length = above0(LIMITS.coordinate);
/** A height above the level's floor; buried cables are below it. */
const height = within(-20, 100);
const field = within(0, 1e6);
/** A day that the calendar has, leap years too. */
const DAY = z.regexes.date.source.slice(1, -1);
const CLOCK = String.raw`([01]\d|2[0-3]):[0-5]\d`;
const date = formatted(new RegExp(`^${DAY}$`), 'date');
const time = formatted(
  new RegExp(String.raw`^${DAY}T${CLOCK}(:[0-5]\d(\.\d{1,9})?)?(Z|[+-]${CLOCK})?$`),
  'time',
);
const clock = formatted(new RegExp(`^${CLOCK}$`), 'clock');
const picture = formatted(/^data:image\/(png|jpeg|webp|gif);base64,[A-Za-z0-9+/]+={0,2}$/, 'picture');
const outline = z.array(point).check(z.maxLength(LIMITS.corners));
const roomUse = oneOf('sleeping', 'living', 'work', 'passage', 'wet', 'store', 'grounds');
/** Absent and null mean the same. */
const nullable = <T extends z.ZodMiniType>(of: T) => z._default(z.nullable(of), () => null);

const rules = z.strictObject({
  landing: z._default(within(LEAST_LANDING, 3), RULE_DEFAULTS.landing),
  path: z._default(within(LEAST_PATH, 3), RULE_DEFAULTS.path),
  wardrobe: z._default(within(0, 3), RULE_DEFAULTS.wardrobe),
  bedToRadiator: z._default(within(0, 3), RULE_DEFAULTS.bedToRadiator),
  headClearOfWindow: z._default(z.boolean(), RULE_DEFAULTS.headClearOfWindow),
  oneDouble: z._default(z.boolean(), RULE_DEFAULTS.oneDouble),
  deskSideways: z._default(z.boolean(), RULE_DEFAULTS.deskSideways),
});

const settings = z.strictObject({
  fieldUnit: z._default(oneOf('uT', 'mG', 'nT'), 'uT'),
  lengthUnit: z._default(oneOf('m', 'ft'), 'm'),
  mains: z._default(z.literal([50, 60]), 50),
  mapHeight: z._default(height, 1),
  guideline: z._default(id, 'common-practice'),
  target: z._default(above0(1e6), 0.1),
  method: z._default(
    oneOf('auto', 'inverse-distance', 'kriging', 'source-kriging', 'source-sampling'),
    'auto',
  ),
  night: z._default(z.tuple([clock, clock]), ['22:00', '07:00']),
  base: nullable(id),
  rules: z.prefault(rules, {}),
});

const backdrop = z.strictObject({
  image: picture,
  at: z._default(point, [0, 0]),
  metresPerPixel: z._default(above0(10), 0.01),
  angle: z._default(degrees, 0),
  opacity: z._default(within(0, 1), 0.5),
});

const level = z.strictObject({
  id: z.optional(id),
  name: blank,
  elevation: z._default(metres, 0),
  backdrop: nullable(backdrop),
});

const room = z.strictObject({
  id: z.optional(id),
  level: z.optional(id),
  name: blank,
  use: z._default(roomUse, 'living'),
  outline,
});

const opening = z.strictObject({
  id: z.optional(id),
  room: id,
  kind: z._default(oneOf('door', 'window', 'gap'), 'door'),
  wall: z._default(z.int().check(z.minimum(0)), 0),
  offset: z._default(within(0, LIMITS.coordinate), 0),
  width: z.optional(length),
  hinge: z._default(oneOf('start', 'end'), 'start'),
  swing: z.optional(oneOf('in', 'out', 'none')),
});

const fixture = z.strictObject({
  id: z.optional(id),
  level: z.optional(id),
  kind: z._default(oneOf('wardrobe', 'radiator', 'chimney', 'other'), 'other'),
  name: blank,
  outline: z._default(outline, []),
  front: nullable(z.int().check(z.minimum(0))),
});

const use = z.strictObject({
  who: z._default(text, 'A'),
  side: z._default(oneOf('left', 'right', 'middle'), 'middle'),
  hours: z.optional(within(0, 24)),
});

const strip = within(0, 10);
const piece = z.strictObject({
  id: z.optional(id),
  kind: z._default(oneOf('bed', 'cot', 'desk', 'seat', 'other'), 'bed'),
  name: blank,
  level: z.optional(id),
  at: z._default(point, [0, 0]),
  angle: z._default(degrees, 0),
  size: z.optional(z.tuple([length, length])),
  height: z.optional(height),
  uses: z.optional(z.array(use)),
  locked: z._default(z.boolean(), false),
  mayStandIn: nullable(z.array(id)),
  access: z.optional(
    z.strictObject({ left: z._default(strip, 0), right: z._default(strip, 0), foot: z._default(strip, 0) }),
  ),
});

const source = z.strictObject({
  id: z.optional(id),
  kind: z._default(oneOf('line', 'point'), 'line'),
  name: blank,
  level: z.optional(id),
  path: z._default(outline, []),
  height: z.optional(height),
  falloff: z._default(z.literal([1, 2, 3, 'fit']), 'fit'),
  origin: z._default(oneOf('outside', 'house', 'unknown'), 'unknown'),
});

const meter = z.strictObject({
  id: z.optional(id),
  name: blank,
  axes: z._default(z.literal([1, 3]), 3),
  unit: z._default(oneOf('uT', 'mG', 'nT'), 'uT'),
  percent: z._default(within(0, 100), 5),
  absolute: z._default(field, 0.002),
  coverage: z._default(oneOf('limits', 'k2'), 'limits'),
  resolution: z._default(field, 0.001),
  range: z._default(z.tuple([field, field]), [0.001, 200]),
  settleSeconds: z._default(within(0, 3600), 3),
  gain: z._default(above0(100), 1),
  offset: z._default(within(-1e6, 1e6), 0),
  serial: blank,
  calibrated: nullable(date),
  band: z._default(z.tuple([field, field]), [...BAND]),
});

const round = z.strictObject({
  id: z.optional(id),
  name: blank,
  kind: z._default(oneOf('asFound', 'supplyOff', 'afterChange'), 'asFound'),
  date: nullable(date),
  note: blank,
});

const walk = z.strictObject({
  id: z.optional(id),
  name: blank,
  level: z.optional(id),
  path: z._default(outline, []),
});

const reading = z.strictObject({
  id: z.optional(id),
  level: z.optional(id),
  at: point,
  value: field,
  height: z._default(height, 1),
  min: nullable(field),
  max: nullable(field),
  axes: nullable(z.tuple([within(-1e6, 1e6), within(-1e6, 1e6), within(-1e6, 1e6)])),
  taken: z._default(oneOf('settled', 'peak'), 'settled'),
  limit: nullable(oneOf('below', 'above')),
  meter: nullable(id),
  round: nullable(id),
  walk: nullable(id),
  time: nullable(time),
  text: blank,
  note: blank,
  excluded: blank,
});

const recording = z.strictObject({
  id: z.optional(id),
  name: blank,
  level: z.optional(id),
  at: z._default(point, [0, 0]),
  height: z._default(height, 1),
  meter: nullable(id),
  start: time,
  samples: z._default(z.array(z.tuple([within(0, 1e9), field])), []),
});

const comparison = z.strictObject({
  id: z.optional(id),
  meter: id,
  reference: id,
  pairs: z._default(z.array(z.tuple([field, field])), []),
});

const arrangement = z.strictObject({
  id: z.optional(id),
  name: blank,
  pieces: z._default(
    z.array(
      z.strictObject({
        id,
        level: z.optional(id),
        at: z._default(point, [0, 0]),
        angle: z._default(degrees, 0),
      }),
    ),
    [],
  ),
  sources: z._default(
    z.array(
      z.strictObject({
        id,
        scale: z._default(within(0, 1000), 1),
        path: nullable(outline.check(z.minLength(1))),
      }),
    ),
    [],
  ),
  rooms: z._default(z.array(z.strictObject({ id, use: roomUse })), []),
});

const guideline = z.strictObject({
  id: z.optional(id),
  name: blank,
  year: z._default(z.int().check(z.minimum(1900), z.maximum(2200)), 2026),
  source: blank,
  basis: z._default(oneOf('instant', 'dayMedian', 'yearMean', 'spot'), 'instant'),
  kind: z._default(oneOf('limit', 'precaution', 'practice'), 'practice'),
  uses: z._default(z.array(roomUse).check(z.maxLength(7)), []),
  edges: z._default(z.array(z.strictObject({ value: field, word: blank })).check(z.maxLength(20)), []),
});

const report = z.strictObject({
  preparedFor: blank,
  by: blank,
  address: blank,
  date: nullable(date),
  purpose: blank,
  findings: blank,
  advice: blank,
});

const listOf = <T extends z.ZodMiniType>(of: T) => z._default(z.array(of), []);

/** The items of the file's lists, by collection. */
export const MEMBERS = {
  levels: level,
  rooms: room,
  openings: opening,
  fixtures: fixture,
  pieces: piece,
  sources: source,
  meters: meter,
  rounds: round,
  walks: walk,
  readings: reading,
  recordings: recording,
  comparisons: comparison,
  arrangements: arrangement,
  guidelines: guideline,
};

/** The same with any of the fields, for changing a member. */
export const PARTS: { [C in keyof typeof MEMBERS]: z.ZodMiniType<object> } = {
  levels: z.partial(level),
  rooms: z.partial(room),
  openings: z.partial(opening),
  fixtures: z.partial(fixture),
  pieces: z.partial(piece),
  sources: z.partial(source),
  meters: z.partial(meter),
  rounds: z.partial(round),
  walks: z.partial(walk),
  readings: z.partial(reading),
  recordings: z.partial(recording),
  comparisons: z.partial(comparison),
  arrangements: z.partial(arrangement),
  guidelines: z.partial(guideline),
};

/** The home file, version 1. Strict: a field it does not name is an error. */
export const homeFile = z.strictObject({
  format: z.literal('stillroom-home'),
  version: z.literal(1),
  title: text,
  north: z._default(degrees, 0),
  settings: z.prefault(settings, {}),
  levels: listOf(level),
  rooms: listOf(room),
  openings: listOf(opening),
  fixtures: listOf(fixture),
  pieces: listOf(piece),
  sources: listOf(source),
  meters: listOf(meter),
  rounds: listOf(round),
  walks: listOf(walk),
  readings: listOf(reading),
  recordings: listOf(recording),
  comparisons: listOf(comparison),
  arrangements: listOf(arrangement),
  guidelines: listOf(guideline),
  report: z.prefault(report, {}),
  lastIds: z._default(
    z.record(formatted(/^[a-z-]{1,8}$/, 'letters'), z.int().check(z.minimum(0), z.maximum(999_999_999))),
    {},
  ),
});

/** The file with its defaults filled in, before ids and defaults by kind. */
export type HomeFile = z.output<typeof homeFile>;
