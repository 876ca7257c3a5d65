/** A step that turns the JSON of version `from` into that of `from + 1`. It may trust nothing about the fields. */
interface Migration {
  from: number;
  migrate(file: Record<string, unknown>): Record<string, unknown>;
}

/** The version that this code reads and writes. */
export const VERSION = 1;

/** One numbered step per version, each with a file of the older version among the tests' fixtures. */
const MIGRATIONS: readonly Migration[] = [
  {
    // Version 0 was the draft before the format had a number: one floor, readings in milligauss.
    from: 0,
    migrate: ({ readings, ...rest }) => ({
      ...rest,
      ...(Array.isArray(readings) ? { readings: readings.map(toMicrotesla) } : {}),
    }),
  },
];

function toMicrotesla(reading: unknown): unknown {
  if (typeof reading !== 'object' || reading === null || !('milligauss' in reading)) return reading;
  const { milligauss, ...rest } = reading;
  return { ...rest, value: typeof milligauss === 'number' ? milligauss / 10 : milligauss };
}

/** Brings a file of an older version to the present one, step by step. */
export function migrate(file: Record<string, unknown>, version: number): Record<string, unknown> {
  return MIGRATIONS.filter((step) => step.from >= version).reduce(
    (older, step) => ({ ...step.migrate(older), version: step.from + 1 }),
    file,
  );
}
