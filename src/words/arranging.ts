import type { Answer, Decision, PlacedPiece } from '../engine/arranging/arrange';
import type { Fault } from '../engine/arranging/check/checkArrangement';
import type { ArrangeRequest } from '../engine/arranging/request';
import type { Worth } from '../engine/arranging/compare';
import type { BrokenRule } from '../engine/arranging/rules';
import type { FieldUnit, PieceKind } from '../home/home';
import { doseText, doseUnitName, intervalText, oddsText } from './numbers';

/** What using a piece for its hours is called. */
export function spellName(kind: PieceKind): string {
  return kind === 'bed' || kind === 'cot' ? 'A night in' : 'A day at';
}

/** 'better here: 96 %', or why to wait or to stay. */
export function decisionText(decision: Decision, odds: number | null): string {
  if (decision === 'stay' || odds === null) return 'no clear gain: stay';
  const better = `better here: ${oddsText(odds)}`;
  return decision === 'move' ? better : `${better}. Measure both places first`;
}

/** Whether a piece that moves is lower there; one that makes way for another may not be. */
export const isLower = ({ moves, before, after }: Pick<Worth, 'moves' | 'before' | 'after'>): boolean =>
  moves && before !== null && after !== null && after.dose < before.dose;

/** The piece that an answer is told by: the one it is about where that gains, or else the one that gains most. */
export function leadOf({ pieces }: Pick<Answer, 'pieces'>, about: string | null): PlacedPiece | null {
  const gain = ({ before, after }: PlacedPiece) => before!.dose - after!.dose;
  const lower = pieces.filter(isLower);
  return (
    lower.find(({ id }) => id === about) ??
    lower.reduce<PlacedPiece | null>((most, one) => (most && gain(most) >= gain(one) ? most : one), null)
  );
}

/** What to do, and why, for whoever has not met it before. */
export function decisionSentence(decision: Decision, aim: ArrangeRequest['aim'] = 'mean'): string {
  switch (decision) {
    case 'move':
      return 'Move: the gain is larger than what the readings leave open.';
    case 'measure-both':
      return 'Measure both places first: the gain is likely, not certain. Two readings at each, then work it out again.';
    case 'stay':
      return `No clear gain: stay. No arrangement tried is clearly lower for ${aim === 'mean' ? 'the home as a whole' : 'whoever is worst off'} than the present one.`;
  }
}

/** The same of a change that has been made. */
export function takenSentence(decision: Decision): string {
  switch (decision) {
    case 'move':
      return 'The gain is larger than what the readings leave open.';
    case 'measure-both':
      return 'The gain is likely but not certain.';
    case 'stay':
      return 'It is no clear gain over how the furniture was found.';
  }
}

/** '1.9 → 0.64 µT·h' without the arrow, which the page draws itself. */
export interface ChangeText {
  before: string;
  after: string;
  interval: string;
  unit: string;
}

export function changeText(
  answer: Pick<Answer, 'before' | 'after' | 'low' | 'high'>,
  unit: FieldUnit,
): ChangeText {
  return {
    before: doseText(answer.before, unit),
    after: doseText(answer.after, unit),
    interval: intervalText(answer.low, answer.high, unit),
    unit: doseUnitName(unit),
  };
}

/** Why a piece may not stand somewhere. `other` is the name of what is in its way. */
export function ruleSentence({ kind }: BrokenRule, other: string | null): string {
  const it = other ?? 'something';
  switch (kind) {
    case 'outside-room':
      return 'It does not fit inside the walls.';
    case 'wrong-room':
      return 'It may not stand in this room.';
    case 'on-fixture':
      return `It would stand on ${it}.`;
    case 'in-door-swing':
      return 'A door would strike it.';
    case 'before-door':
      return 'It would stand before a door.';
    case 'head-off-wall':
      return 'Its head has no wall behind it.';
    case 'head-across-door':
      return 'Its head would stand across a door or gap.';
    case 'back-off-wall':
      return 'It has no wall behind or beside it.';
    case 'access':
      return 'There is no way to get at it.';
    case 'near-radiator':
      return 'It would touch a radiator.';
    case 'cot-near-heat':
      return 'A cot never stands beside a radiator.';
    case 'cot-near-window':
      return 'A cot never stands beside a window.';
    case 'unsupported':
      return 'The map has no reading near enough there.';
    case 'overlap':
      return `It would stand on ${it}.`;
    case 'access-taken':
      return `${other ?? 'Another piece'} would stand in the way to it.`;
    case 'cot-near-piece':
      return `A cot keeps clear of ${it}.`;
    case 'two-doubles':
      return 'One room takes one bed for two.';
    case 'no-way':
      return `No way would be left to ${it}.`;
    case 'no-escape':
      return 'No window to escape by could be reached.';
    case 'not-tried':
      return 'More pieces can be moved than are placed at one time; it stays, being used less.';
    case 'head-under-window':
      return 'Its head would lie under a window.';
    case 'crowded':
      return 'The other pieces leave no place for it.';
    case 'wardrobe-front':
      return `It would stand before the doors of ${it}.`;
  }
}

const FAULTS: Record<Fault['rule'], string> = {
  outside: 'it would not lie inside the walls',
  access: 'the floor beside it would not be free',
  fixture: 'it would stand on something fixed',
  wall: 'it would have no wall behind it',
  door: 'it would stand in the way of a door',
  heat: 'it would stand too near a radiator',
  window: 'it would stand too near a window',
  piece: 'it would stand in the way of another piece',
  way: 'no way would lead to it',
  escape: 'no window to escape by could be reached',
};

/** What a second look found wrong with a place, of a piece and in a room named so; either may have no name. */
export const faultSentence = ({
  piece,
  room,
  rule,
}: {
  piece: string;
  room: string;
  rule: Fault['rule'];
}): string => `${piece || 'A piece'}${room && `, in ${room}`}: ${FAULTS[rule]}.`;
