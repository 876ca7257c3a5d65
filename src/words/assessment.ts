import type { FittedSurvey } from '../engine/mapping/fitSurvey';
import { judgesBy, type GuidelineSet } from '../engine/judging/guidelines';
import type { RoomFigures } from '../engine/judging/rooms';
import type { LengthUnit, MethodChoice } from '../home/home';
import { countText, lengthText, percentText } from './numbers';

export type SupportReason = 'wide' | 'far' | 'few' | 'outside';

const METHOD_NAMES: Record<MethodChoice, string> = {
  auto: 'chosen by the readings',
  'inverse-distance': 'inverse distance',
  kriging: 'kriging',
  'source-kriging': 'source kriging',
  'source-sampling': 'source sampling',
};

export function methodName(method: MethodChoice): string {
  return METHOD_NAMES[method];
}

/** What a method does, for whoever has not met it. */
export function methodSentence(method: MethodChoice): string {
  switch (method) {
    case 'inverse-distance':
      return 'Inverse distance: each place is a mean of the readings (in ln B), nearer ones weighing more; the power is the one that predicts the readings best.';
    case 'kriging':
      return 'Kriging: each place is a mean of the readings (in ln B), weighed by how readings here grow unlike with distance and by what the meter leaves open.';
    case 'source-kriging':
      return 'Source kriging: the marked sources explain what they can, and kriging draws the rest.';
    case 'source-sampling':
      return 'Source sampling: many sets of sources that explain the readings are drawn, and the map is what they agree on.';
    case 'auto':
      return 'The method that predicts the left-out readings best is taken.';
  }
}

/** Why this method and no other, as a part of a sentence. */
export function whyText({ why, notYet }: Pick<FittedSurvey, 'why' | 'notYet'>): string {
  const reason = reasonOf(why);
  return notYet ? `${reason} (${methodName(notYet)} was asked for; it takes 3 to 150 places)` : reason;
}

function reasonOf(why: FittedSurvey['why']): string {
  switch (why.kind) {
    case 'asked':
      return 'asked for';
    case 'least-error':
      return `smallest cross-validated error of ${countText(why.of, 'method')}`;
    case 'samples-hold':
      return 'a cross-validated error about as small as the smallest, found from fewer readings';
    case 'unclear':
      return `the smallest cross-validated error but that of ${methodName(why.other)}, which is not clearly smaller${why.other === 'inverse-distance' ? '' : ': the marks may mislead'}`;
    case 'not-compared':
      return 'no reading can be predicted from the others, so methods could not be compared';
  }
}

/** Why an estimate is not shown. `nearest`: metres to the nearest reading. */
export function supportSentence(reason: SupportReason, nearest: number | null, unit: LengthUnit): string {
  switch (reason) {
    case 'far':
      return nearest === null
        ? 'No reading near enough to speak for this place.'
        : `No reading near enough: the nearest is ${lengthText(nearest, unit, 1)} away.`;
    case 'wide':
      return 'The readings leave more than a factor of ten open here.';
    case 'few':
      return 'Too few readings on this level to speak for this place.';
    case 'outside':
      return 'Outside every room that is drawn.';
  }
}

/** Why a room is not judged: of its floor, 0…1, too little has a map that deserves to be shown. */
export const notJudgedText = (supported: number): string =>
  supported < 0.005
    ? 'nothing drawn here: not judged'
    : `${percentText(supported)} of it drawn: too little to judge`;

/** Said wherever a map rests on a model that its own readings did not choose; null where they did. */
export function defaultModelSentence(fitted: Pick<FittedSurvey, 'defaultModel'>): string | null {
  switch (fitted.defaultModel) {
    case 'few':
      return 'Fewer than eight places were read: how fast the field changes is taken from a default, not from this home.';
    case 'flat':
      return 'The readings hardly differ: how fast the field changes is taken from a default, not from this home.';
    case null:
      return null;
  }
}

/**
 * A guideline's word for a room: 'raised', or all that its interval leaves open: 'raised, or high for long stays'; a dash
 * where the set does not speak of such rooms.
 */
export function classText({
  class: word,
  classLow,
  classHigh,
}: Pick<RoomFigures, 'class' | 'classLow' | 'classHigh'>): string {
  const open = [...new Set([classLow, word, classHigh])];
  if (open.length === 1) return word ?? '—';
  const words = open.map((one) => one ?? 'no word');
  return words.length === 2 ? `${words[0]}, or ${words[1]}` : `${words[0]}, ${words[1]}, or ${words[2]}`;
}

/** Said of a round that was read with the house's supply off, wherever its rooms are. */
export const SUPPLY_OFF =
  'The house’s supply was off: what stays comes from outside, or from net currents on the services. Nobody lives so, and no room is given a word.';

/** Said where furniture is placed by such a round. */
export const SUPPLY_OFF_ARRANGE =
  'This plans on a round with the house’s supply off. Choose the round as found to plan for everyday life.';

const BASIS: Record<GuidelineSet['basis'], string> = {
  instant: 'an instantaneous value, which a reading compares with directly',
  dayMedian: 'a median over a day, so the comparison takes the readings to be typical of one',
  yearMean: 'a mean over a year, so the comparison takes the readings to be typical of one',
  spot: 'a value for readings at the place, taken as typical of the time people spend there',
  installation:
    'a reading shows all installations at the load of the moment, which does not compare with this value: no room is given a word',
};
const KIND: Record<GuidelineSet['kind'], string> = {
  limit: 'A limit',
  precaution: 'Precautionary, not a safety limit',
  study: 'A threshold in studies of many homes, neither a limit nor a precautionary value',
  practice: 'Not a limit',
};

/** What a set of values is, and what comparing readings with it assumes; with the supply off nothing is compared. */
export function guidelineSentence(set: GuidelineSet, supplyOff = false): string {
  const year = set.year === null && set.standing !== 'practice' ? ', year not stated' : '';
  const kind = `${KIND[set.kind]}${supplyOff ? '' : `; ${BASIS[set.basis]}`}.`;
  const judged =
    judgesBy(set) === 'highest' && set.basis !== 'installation' && !supplyOff
      ? ' Rooms are judged by their highest estimate.'
      : '';
  const memory =
    set.standing === 'memory' ? ' Its values here are from memory: check them before relying on them.' : '';
  return `${set.name}: ${set.source}${year}. ${kind}${judged}${memory}`;
}
