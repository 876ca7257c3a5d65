import type { Assessment } from '../engine/assess';
import { againstTarget } from '../engine/judging/againstTarget';
import { isJudged } from '../engine/judging/judged';
import type { RoomFigures } from '../engine/judging/rooms';
import type { Home } from '../home/home';
import { edgeText } from './canvas';
import { countText, estimateText, intervalText, percentText, shareText, unitName, withUnit } from './numbers';
import type { Part } from './report';
import { lowerFirst, roomName } from './things';

const plain = (text: string): Part => ({ text, tone: 'plain' });

/** The finding of the map in one sentence: of the sleeping room that lies worst, or of any room where nobody sleeps. */
export function foundLead(home: Home, { rooms }: Pick<Assessment, 'rooms'>, target: number): Part[] {
  const unit = home.settings.fieldUnit;
  const aim = `${edgeText(target, unit)} ${unitName(unit)}`;
  const judged = rooms.filter(isJudged).filter(({ id }) => home.rooms[id]?.use !== 'grounds');
  if (judged.length === 0) return [plain('No room has enough of its floor drawn to be judged.')];
  const sleeping = judged.filter(({ id }) => home.rooms[id]?.use === 'sleeping');
  const asked = sleeping.length > 0 ? sleeping : judged;
  const worst = asked.reduce((a, b) => (b.median > a.median ? b : a));
  const name = roomInSentence(home, worst.id);
  const share = shareText(worst.overTarget, worst.overTargetLow, worst.overTargetHigh);
  const interval: Part = { text: ` (${intervalText(worst.low, worst.high, unit)})`, tone: 'soft' };
  const kinds = new Set(asked.map((room) => againstTarget(room, target)));
  if (kinds.has('over'))
    return [
      plain(
        `${share} of the ${name} lies over the target of ${aim}; half of it lies below ${withUnit(worst.median, unit)}`,
      ),
      interval,
      plain('.'),
    ];
  if (kinds.has('untold'))
    return [
      plain(
        `Whether the ${name} lies over or under the target of ${aim} cannot be told: half of it lies below ${withUnit(worst.median, unit)}`,
      ),
      interval,
      plain(`, and ${share} of it lies over the target.`),
    ];
  const which = sleeping.length > 0 ? 'sleeping room' : 'room';
  return [
    plain(
      asked.length === 1
        ? `The middle of the ${name} lies under the target of ${aim}.`
        : `The middle of every ${which} that was judged lies under the target of ${aim}.`,
    ),
  ];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const roomInSentence = (home: Home, id: string): string => lowerFirst(roomName(home, id));

// A share that rounds to nothing is not worth a sentence.
const WORTH_SAYING = 0.005;

/** What was found, room by room, where it matters; and what could not be judged. */
export function foundSentences(home: Home, { rooms }: Pick<Assessment, 'rooms'>, target: number): string[] {
  const unit = home.settings.fieldUnit;
  const over = rooms
    .filter(
      (room) => isJudged(room) && room.overTarget >= WORTH_SAYING && home.rooms[room.id]?.use !== 'grounds',
    )
    .sort((a, b) => b.overTarget - a.overTarget || b.median - a.median);
  const told = over
    .slice(0, 4)
    .map(
      (room) =>
        `${capital(roomInSentence(home, room.id))}: ${shareText(room.overTarget, room.overTargetLow, room.overTargetHigh)} of the floor lies over the target; the highest estimate is ${estimateText(room.max, room.maxLow, room.maxHigh, unit)}.`,
    );
  const none =
    over.length === 0
      ? [`No room that was judged lies over the target of ${edgeText(target, unit)} ${unitName(unit)}.`]
      : [];
  const more =
    over.length > 4 ? [`${countText(over.length - 4, 'more room')} in part; the table has them all.`] : [];
  return [...told, ...none, ...more, ...hatchedSentences(home, rooms)];
}

function hatchedSentences(home: Home, rooms: readonly RoomFigures[]): string[] {
  const unjudged = rooms
    .filter((room) => !isJudged(room))
    .map(({ id, supported }) => `${roomInSentence(home, id)} (${percentText(supported)} of it drawn)`);
  const part = rooms
    .filter((room) => isJudged(room) && room.supported < 0.9)
    .map(({ id }) => roomInSentence(home, id));
  return [
    ...(unjudged.length > 0 ? [`Too little drawn to judge: ${unjudged.join(', ')}.`] : []),
    ...(part.length > 0 ? [`Hatched in part: ${part.join(', ')}.`] : []),
  ];
}
