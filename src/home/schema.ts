import * as z from 'zod';
import { LIMITS } from './limits';
import type { Format } from './problem';

// A content-security policy without 'unsafe-eval' forbids the compiled validators.
z.config({ jitless: true });

const formatted = (pattern: RegExp, format: Format) => z.string().regex(pattern, { error: format });
const oneOf = <const T extends readonly string[]>(...values: T) => z.enum(values);

const id = formatted(/^[a-z0-9-]{1,24}$/, 'id');
const text = z.string().max(LIMITS.text);
const blank = text.default('');
const metres = z.number().min(-LIMITS.coordinate).max(LIMITS.coordinate);
const point = z.tuple([metres, metres]);
const degrees = z.number();
/** A length of something that stands in a home. */
const length = z.number().positive().max(LIMITS.coordinate);
/** A height above the level's floor; buried cables are below it. */
const height = z.number().min(-20).max(100);
const field = z.number().min(0).max(1e6);
const date = formatted(/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/, 'date');
const time = formatted(
  /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])T([01]\d|2[0-3]):[0-5]\d(:[0-5]\d(\.\d{1,9})?)?(Z|[+-]([01]\d|2[0-3]):[0-5]\d)?$/,
  'time',
);
const clock = formatted(/^([01]\d|2[0-3]):[0-5]\d$/, 'clock');
const picture = formatted(/^data:image\/(png|jpeg|webp|gif);base64,[A-Za-z0-9+/]+={0,2}$/, 'picture');
const outline = z.array(point).max(LIMITS.corners);
const roomUse = oneOf('sleeping', 'living', 'work', 'passage', 'wet', 'store', 'grounds');
/** Absent and null mean the same. */
const nullable = <T extends z.ZodType>(of: T) => of.nullable().default(() => null);

const settings = z.strictObject({
  fieldUnit: oneOf('uT', 'mG', 'nT').default('uT'),
  lengthUnit: oneOf('m', 'ft').default('m'),
  mains: z.literal([50, 60]).default(50),
  mapHeight: height.default(1),
  guideline: id.default('common-practice'),
  target: z.number().positive().max(1e6).default(0.1),
  method: oneOf('auto', 'inverse-distance', 'kriging', 'source-kriging', 'source-sampling').default('auto'),
  night: z.tuple([clock, clock]).default(['22:00', '07:00']),
  base: nullable(id),
});

const backdrop = z.strictObject({
  image: picture,
  at: point.default([0, 0]),
  metresPerPixel: z.number().positive().max(10).default(0.01),
  angle: degrees.default(0),
  opacity: z.number().min(0).max(1).default(0.5),
});

const level = z.strictObject({
  id: id.optional(),
  name: blank,
  elevation: metres.default(0),
  backdrop: nullable(backdrop),
});

const room = z.strictObject({
  id: id.optional(),
  level: id.optional(),
  name: blank,
  use: roomUse.default('living'),
  outline,
});

const opening = z.strictObject({
  id: id.optional(),
  room: id,
  kind: oneOf('door', 'window', 'gap').default('door'),
  wall: z.int().min(0).default(0),
  offset: z.number().min(0).max(LIMITS.coordinate).default(0),
  width: length.optional(),
  hinge: oneOf('start', 'end').default('start'),
  swing: oneOf('in', 'out', 'none').optional(),
});

const fixture = z.strictObject({
  id: id.optional(),
  level: id.optional(),
  kind: oneOf('wardrobe', 'radiator', 'chimney', 'other').default('other'),
  name: blank,
  outline: outline.default([]),
  front: nullable(z.int().min(0)),
});

const use = z.strictObject({
  who: text.default('A'),
  side: oneOf('left', 'right', 'middle').default('middle'),
  hours: z.number().min(0).max(24).optional(),
});

const strip = z.number().min(0).max(10);
const piece = z.strictObject({
  id: id.optional(),
  kind: oneOf('bed', 'cot', 'desk', 'seat', 'other').default('bed'),
  name: blank,
  level: id.optional(),
  at: point.default([0, 0]),
  angle: degrees.default(0),
  size: z.tuple([length, length]).optional(),
  height: height.optional(),
  uses: z.array(use).optional(),
  locked: z.boolean().default(false),
  mayStandIn: nullable(z.array(id)),
  access: z
    .strictObject({ left: strip.default(0), right: strip.default(0), foot: strip.default(0) })
    .optional(),
});

const source = z.strictObject({
  id: id.optional(),
  kind: oneOf('line', 'point').default('line'),
  name: blank,
  level: id.optional(),
  path: outline.default([]),
  height: height.optional(),
  falloff: z.literal([1, 2, 3, 'fit']).default('fit'),
  origin: oneOf('outside', 'house', 'unknown').default('unknown'),
});

const meter = z.strictObject({
  id: id.optional(),
  name: blank,
  axes: z.literal([1, 3]).default(3),
  unit: oneOf('uT', 'mG', 'nT').default('uT'),
  percent: z.number().min(0).max(100).default(5),
  absolute: field.default(0.002),
  coverage: oneOf('limits', 'k2').default('limits'),
  resolution: field.default(0.001),
  range: z.tuple([field, field]).default([0.001, 200]),
  settleSeconds: z.number().min(0).max(3600).default(3),
  gain: z.number().positive().max(100).default(1),
  offset: z.number().min(-1e6).max(1e6).default(0),
  serial: blank,
  calibrated: nullable(date),
  band: z.tuple([field, field]).default([40, 400]),
});

const round = z.strictObject({
  id: id.optional(),
  name: blank,
  kind: oneOf('asFound', 'supplyOff', 'afterChange').default('asFound'),
  date: nullable(date),
  note: blank,
});

const walk = z.strictObject({
  id: id.optional(),
  name: blank,
  level: id.optional(),
  path: outline.default([]),
});

const reading = z.strictObject({
  id: id.optional(),
  level: id.optional(),
  at: point,
  value: field,
  height: height.default(1),
  min: nullable(field),
  max: nullable(field),
  axes: nullable(
    z.tuple([z.number().min(-1e6).max(1e6), z.number().min(-1e6).max(1e6), z.number().min(-1e6).max(1e6)]),
  ),
  taken: oneOf('settled', 'peak').default('settled'),
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
  id: id.optional(),
  name: blank,
  level: id.optional(),
  at: point.default([0, 0]),
  height: height.default(1),
  meter: nullable(id),
  start: time,
  samples: z.array(z.tuple([z.number().min(0).max(1e9), field])).default([]),
});

const comparison = z.strictObject({
  id: id.optional(),
  meter: id,
  reference: id,
  pairs: z.array(z.tuple([field, field])).default([]),
});

const arrangement = z.strictObject({
  id: id.optional(),
  name: blank,
  pieces: z
    .array(z.strictObject({ id, level: id.optional(), at: point.default([0, 0]), angle: degrees.default(0) }))
    .default([]),
  sources: z.array(z.strictObject({ id, scale: z.number().min(0).max(1000).default(1) })).default([]),
});

const guideline = z.strictObject({
  id: id.optional(),
  name: blank,
  year: z.int().min(1900).max(2200).default(2026),
  source: blank,
  basis: oneOf('instant', 'dayMedian', 'yearMean', 'spot').default('instant'),
  kind: oneOf('limit', 'precaution', 'practice').default('practice'),
  uses: z.array(roomUse).max(7).default([]),
  edges: z
    .array(z.strictObject({ value: field, word: blank }))
    .max(20)
    .default([]),
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

const listOf = <T extends z.ZodType>(of: T) => z.array(of).default([]);

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
export const PARTS: { [C in keyof typeof MEMBERS]: z.ZodType<object> } = {
  levels: level.partial(),
  rooms: room.partial(),
  openings: opening.partial(),
  fixtures: fixture.partial(),
  pieces: piece.partial(),
  sources: source.partial(),
  meters: meter.partial(),
  rounds: round.partial(),
  walks: walk.partial(),
  readings: reading.partial(),
  recordings: recording.partial(),
  comparisons: comparison.partial(),
  arrangements: arrangement.partial(),
  guidelines: guideline.partial(),
};

/** The home file, version 1. Strict: a field it does not name is an error. */
export const homeFile = z.strictObject({
  format: z.literal('stillroom-home'),
  version: z.literal(1),
  title: text,
  north: degrees.default(0),
  settings: settings.prefault({}),
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
  report: report.prefault({}),
  lastIds: z.record(formatted(/^[a-z-]{1,8}$/, 'letters'), z.int().min(0).max(999_999_999)).default({}),
});

/** The file with its defaults filled in, before ids and defaults by kind. */
export type HomeFile = z.output<typeof homeFile>;
