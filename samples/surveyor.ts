import { newId } from '../src/home/ids';
import { fieldOfSources, type Sources } from '../src/engine/magnetics/fieldOfSources';
import { random } from '../src/engine/algebra/random';
import type { Collection, FieldUnit, Home, Id, Meter, Point, Round } from '../src/home/home';

/** Put a thing into a home under the next id of its collection. */
export function put<C extends Collection>(home: Home, collection: C, fields: Omit<Home[C][Id], 'id'>): Id {
  const id = newId(home, collection);
  (home[collection] as Record<Id, unknown>)[id] = { ...fields, id };
  return id;
}

/** A place to read, and what differs there from the rest of the round. */
export interface Stop {
  at: Point;
  /** Metres above the floor; 1.0 where not given. */
  height?: number;
  walk?: Id;
  note?: string;
}

/** A person with a meter who reads a known field. */
export interface Surveyor {
  home: Home;
  level: Id;
  meter: Meter;
  sources: Sources;
  /** Of the noise. */
  seed: number;
}

/** Standard deviation of one reading, as a share of the field. */
const NOISE = 0.03;

const SECONDS_A_READING = 75;

/** Take one round of readings, place after place, and write them into the home. `begins` is ISO 8601 with its offset. */
export function readRound(surveyor: Surveyor, round: Round, begins: string, stops: readonly Stop[]): void {
  const { home, level, sources, meter, seed } = surveyor;
  const chance = random(seed);
  stops.forEach(({ at, height = 1, walk = null, note = '' }, i) => {
    const field = fieldOfSources(sources, [at[0], at[1], height]) * (1 + NOISE * chance.normal());
    const value = shown(meter, field);
    put(home, 'readings', {
      level,
      at,
      value,
      height,
      min: null,
      max: null,
      axes: null,
      taken: 'settled',
      limit: null,
      meter: meter.id,
      round: round.id,
      walk,
      time: later(begins, i * SECONDS_A_READING),
      text: typed(meter, value),
      note,
      excluded: '',
    });
  });
}

/** What the display shows: whole steps of its resolution. */
function shown({ resolution, range }: Meter, field: number): number {
  const steps = Math.max(Math.round(range[0] / resolution), Math.round(field / resolution));
  return Number((steps * resolution).toFixed(6));
}

const IN_A_MICROTESLA: Record<FieldUnit, number> = { uT: 1, mG: 10, nT: 1000 };
const SIGN: Record<FieldUnit, string> = { uT: 'µT', mG: 'mG', nT: 'nT' };

/** As it is written down from the display, with every digit that it has. */
function typed({ unit, resolution }: Meter, value: number): string {
  const digits = Math.max(0, Math.round(-Math.log10(resolution * IN_A_MICROTESLA[unit])));
  return `${(value * IN_A_MICROTESLA[unit]).toFixed(digits)} ${SIGN[unit]}`;
}

/** The same clock, so many seconds later, within the same day. */
function later(begins: string, seconds: number): string {
  const [, day, hours, minutes, rest, offset] = /^(.{10})T(\d\d):(\d\d):(\d\d)(.*)$/.exec(begins)!;
  const total = Number(hours) * 3600 + Number(minutes) * 60 + Number(rest) + seconds;
  const two = (n: number) => String(Math.floor(n)).padStart(2, '0');
  return `${day}T${two(total / 3600)}:${two((total / 60) % 60)}:${two(total % 60)}${offset}`;
}
