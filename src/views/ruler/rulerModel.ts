import { GUIDELINES, type GuidelineSet } from '../../engine/judging/guidelines';
import { guidelineOf } from '../../home/questions/guidelineOf';
import type { Home, Id } from '../../home/home';
import { firstOf } from '../../home/order';
import { pieceLetters } from '../../words/canvas';
import type { Editor } from '../../editor/editor';
import { shownAnswer } from '../../editor/shownAnswer';

/** A disc beside the ruler: a piece's letter at its mean field, µT; where a proposal moves it also at the new one. */
export interface RulerDisc {
  id: Id;
  letter: string;
  value: number;
  /** `old`: the place a piece would leave; `new`: where it would stand. */
  is: 'now' | 'old' | 'new';
}

/** What was read in the round shown and is used, µT. */
export function rulerReadings(home: Home, round: Id): number[] {
  const first = firstOf(home.rounds)?.id;
  return Object.values(home.readings)
    .filter(
      (reading) => (reading.round ?? first) === round && reading.excluded === '' && reading.limit === null,
    )
    .map((reading) => reading.value);
}

/** The discs of all pieces with a field of their own; in the arrange stage old and new places apart. */
export function rulerDiscs(
  home: Home,
  results: Editor['results'],
  proposal: Editor['arranging']['state'],
  isArranging: boolean,
): RulerDisc[] {
  const letters = pieceLetters(home);
  const answer = isArranging ? shownAnswer(proposal) : null;
  const moved = new Map(answer?.pieces.filter(({ moves }) => moves).map((piece) => [piece.id, piece]));
  return (results.assessment?.pieces ?? []).flatMap((piece): RulerDisc[] => {
    const { id } = piece;
    const letter = letters[id];
    const value = (results.live[id] ?? piece).mean;
    if (!letter || !(value > 0)) return [];
    const after = moved.get(id)?.after;
    if (!after) return [{ id, letter, value, is: 'now' }];
    return [
      { id, letter, value, is: 'old' },
      { id, letter, value: after.mean, is: 'new' },
    ];
  });
}

/** The guideline the home has chosen: its own, or a published one. */
export function chosenGuideline(home: Home): Pick<GuidelineSet, 'name' | 'year' | 'edges'> {
  return guidelineOf(home, home.settings.guideline) ?? GUIDELINES[0]!;
}

/** Reference values above the torn break: what everyone else means by a limit, µT, highest first. */
export function tornValues(mains: 50 | 60): { id: string; value: number }[] {
  return [
    { id: 'icnirp-2010', value: 200 },
    // The older reference level is 5000/f µT, f in Hz (ICNIRP 1998).
    { id: 'eu-1999', value: Number((5000 / mains).toFixed(1)) },
  ];
}
