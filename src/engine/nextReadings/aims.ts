import { cellsOn } from './floor';
import { HALF_90 } from '../mapping/interval';
import { normalQuantile } from '../algebra/normalQuantile';
import { normalShare } from '../algebra/normalShare';
import type { Aim, Effect, NextRequest } from './request';
import type { AssessPiece } from '../assess';
import type { FieldAt } from '../dose/fieldAt';
import type { Sum } from './outlook';

/** A part of an aim in one plane: a sum whose error counts. Parts of different planes err independently. */
export interface Part {
  level: string;
  height: number;
  sum: Sum;
}

/**
 * An aim as sums of ln B, to first order: the middle of a room moves as the mean of ln B over its floor; the ln of a mean
 * field as the mean of ln B weighted by the field; the ln of two doses' ratio as the difference of two such sums.
 */
export function partsOf(
  aim: Aim,
  { rooms, height }: Pick<NextRequest, 'rooms' | 'height'>,
  fieldAt: FieldAt,
): Part[] {
  if (aim.kind === 'piece') return [meanField(aim.piece, fieldAt, 1)];
  if (aim.kind === 'choice')
    return together(meanField(aim.now, fieldAt, -1), meanField(aim.then, fieldAt, 1));
  const room = rooms.find(({ id }) => id === aim.id)!;
  const cells = cellsOn(rooms, [room], room.level, fieldAt(room.level, height));
  return [
    {
      level: room.level,
      height,
      sum: {
        xs: cells.map(({ at }) => at[0]),
        ys: cells.map(({ at }) => at[1]),
        weights: cells.map(() => 1 / cells.length),
      },
    },
  ];
}

function meanField({ level, height, uses }: AssessPiece, fieldAt: FieldAt, sign: 1 | -1): Part {
  const resting = uses.every(({ hours }) => hours === 0);
  const cells = uses.flatMap(({ zone, hours }) =>
    zone.cells.map((at) => ({ at, hours: (resting ? 1 : hours) / zone.cells.length })),
  );
  const xs = cells.map(({ at }) => at[0]);
  const ys = cells.map(({ at }) => at[1]);
  const { mean } = fieldAt(level, height).predict(xs, ys, { variance: false });
  const doses = cells.map(({ hours }, i) => hours * Math.exp(mean[i]));
  const total = doses.reduce((sum, dose) => sum + dose, 0);
  return { level, height, sum: { xs, ys, weights: doses.map((dose) => (sign * dose) / total) } };
}

/** Two parts of one plane are one, so that what they share drops out of their difference. */
function together(a: Part, b: Part): Part[] {
  if (a.level !== b.level || a.height !== b.height) return [a, b];
  const joined = (key: keyof Sum) => [...Array.from(a.sum[key]), ...Array.from(b.sum[key])];
  return [{ ...a, sum: { xs: joined('xs'), ys: joined('ys'), weights: joined('weights') } }];
}

/** A choice is made once it is told rightly with this chance; an interval of 90 % leaves as much beyond either end. */
const SURE = 0.95;

/** Whether an answer may still turn out another, once its standard deviation is `ratio` of what it was. */
export function isOpen(aim: Aim, ratio: number): boolean {
  if (aim.kind === 'piece') return true;
  if (aim.kind === 'choice') return chanceToTell(aim.odds, ratio) < SURE;
  const [low, high] = narrowed(aim.said, ratio);
  return aim.edges === null || aim.edges.some((edge) => edge > low && edge <= high);
}

/** Variance of ln B that an aim's interval stands for, once its standard deviation is `ratio` of today's. */
export const varianceSaid = (aim: Aim, ratio: number): number =>
  aim.kind === 'choice' ? Infinity : ((ratio * Math.log(aim.said.high / aim.said.low)) / (2 * HALF_90)) ** 2;

/** What an aim is expected to gain while its standard deviation goes from one share of today's to another. */
export function effectOf(aim: Aim, from: number, to: number): Effect {
  return aim.kind === 'choice'
    ? { kind: 'choice', id: aim.id, before: chanceToTell(aim.odds, from), after: chanceToTell(aim.odds, to) }
    : { kind: aim.kind, id: aim.id, before: narrowed(aim.said, from), after: narrowed(aim.said, to) };
}

/** An interval drawn in about its middle, in ln B. */
const narrowed = (
  { middle, low, high }: { middle: number; low: number; high: number },
  ratio: number,
): [number, number] => [middle * (low / middle) ** ratio, middle * (high / middle) ** ratio];

const STRATA = 64;

/**
 * How likely it is that the better of two places will be told once the standard deviation of their difference is `ratio` of
 * today's: the mean, over what the readings may show, of the odds of whichever then seems better (the preposterior analysis of
 * Raiffa & Schlaifer 1961). With z today's odds as a normal deviate: E Φ(|z + √(1 − ratio²)·u| ÷ ratio), u standard normal.
 */
export function chanceToTell(odds: number, ratio: number): number {
  if (odds <= 0 || odds >= 1) return 1;
  const z = normalQuantile(odds);
  const told = Math.sqrt(Math.max(0, 1 - ratio ** 2));
  let sum = 0;
  for (let i = 0; i < STRATA; i++)
    sum += normalShare(Math.abs(z + told * normalQuantile((i + 0.5) / STRATA)) / Math.max(ratio, 1e-9));
  return sum / STRATA;
}
