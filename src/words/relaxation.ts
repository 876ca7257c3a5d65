import type { Relaxation } from '../engine/arranging/relax';
import type { Home, LengthUnit } from '../home/home';
import { pieceShort } from './canvas';
import { lengthText } from './numbers';
import { listText } from './rules';

export const relaxationWords = {
  title: 'What finds no place',
  untried: 'What was left where it is',
  nothingHelps:
    'Less free floor, a narrower way or a desk across the room would not help: let a piece stand in other rooms, or take one away.',
  never: 'What keeps a cot safe, a window to escape by and the ways out are never given up.',
  show: 'show on the plan',
  shown: 'So it is shown.',
  noPlace: 'No place inside the rules',
  noPlaceLead: 'Everything stays: below is what keeps it out, and what would have to be given up.',
};

type Strip = Extract<Relaxation, { kind: 'strip' }>;

/** 'It fits if the strip at one side of bed A is 0.45 m instead of 0.75 m.'; of several pieces, 'All fit if …'. */
export function relaxedSentence(home: Home, changes: readonly Relaxation[], stuck: number): string {
  return `${stuck > 1 ? 'All fit' : 'It fits'} if ${listText(relaxationClauses(home, changes))}.`;
}

/** What is given up, one clause each: 'the strip at the foot of bed A is 0.60 m instead of 0.75 m'. */
export function relaxationClauses(home: Home, changes: readonly Relaxation[]): string[] {
  const unit = home.settings.lengthUnit;
  const strips = changes.filter((change) => change.kind === 'strip');
  const key = ({ piece, from, to }: Strip) => `${piece} ${from} ${to}`;
  const alike = [...new Set(strips.map(key))].map((one) => strips.filter((strip) => key(strip) === one));
  return [
    ...alike.map((group) => stripClause(home, group)),
    ...changes.flatMap((change) => (change.kind === 'strip' ? [] : [ruleClause(change, unit)])),
  ];
}

function stripClause(home: Home, group: readonly Strip[]): string {
  const { piece, from, to } = group[0]!;
  const kind = home.pieces[piece]?.kind ?? 'bed';
  const beside = group.filter(({ side }) => side !== 'foot').length;
  const ends = [
    ...(beside === 0 ? [] : [beside === 1 ? 'at one side' : 'at both sides']),
    ...(beside === group.length
      ? []
      : [kind === 'bed' || kind === 'cot' ? (beside ? 'the foot' : 'at the foot') : 'where one sits']),
  ];
  const many = group.length > 1;
  return `the ${many ? 'strips' : 'strip'} ${listText(ends)} of ${pieceShort(home, piece)} ${many ? 'are' : 'is'} ${instead(from, to, home.settings.lengthUnit)}`;
}

function ruleClause(change: Exclude<Relaxation, Strip>, unit: LengthUnit): string {
  switch (change.kind) {
    case 'landing':
      return `the floor kept free before doors is ${instead(change.from, change.to, unit)} deep`;
    case 'path':
      return `the way through is ${instead(change.from, change.to, unit)} wide`;
    case 'desk-sideways':
      return 'a desk stands with its side to the wall';
  }
}

const instead = (from: number, to: number, unit: LengthUnit): string =>
  `${lengthText(to, unit)} instead of ${lengthText(from, unit)}`;
