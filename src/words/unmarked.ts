import { distance, lerp, sub } from '../engine/geometry/point';
import { inOrder } from '../home/order';
import { distanceToPath } from '../engine/geometry/segment';
import { roomAt } from '../home/questions/roomAt';
import type { FittedSurvey } from '../engine/mapping/fitSurvey';
import type { Home, Point, Room } from '../home/home';
import type { UnmarkedSource } from '../engine/mapping/sourceSampling/unmarkedSources';
import { countText, fixedText, intervalText, unitName } from './numbers';
import { roomName } from './things';

export const unmarkedWords = {
  title: 'Unmarked sources',
  odds: 'how likely',
  how: 'What would explain readings and nobody has marked. How likely each is was held against homes whose sources are known; a suspect is no fault.',
  lead: 'Sources that nobody marked and that would explain readings; suspects, and no fault is known.',
  mark: 'Mark as a source',
  /** What a source is called once it is marked. */
  names: { current: 'Suspected current', street: 'Suspected line', appliance: 'Suspected appliance' },
};

type Sort = keyof typeof unmarkedWords.names;

export const sortOf = ({ origin, amperes }: Pick<UnmarkedSource, 'origin' | 'amperes'>): Sort =>
  origin === 'outside' ? 'street' : amperes ? 'current' : 'appliance';

/** 'A current along the wall between Kitchen and Hall' */
export function unmarkedName(home: Home, source: UnmarkedSource): string {
  const { kind, level, path } = source;
  const sort = sortOf(source);
  if (sort === 'street') {
    const near = nearestRoom(home, path);
    return near ? `A line outside, beyond ${roomName(home, near.id)}` : 'A line outside';
  }
  if (kind === 'point') {
    const room = roomAt(home, level, path[0]!);
    const where = room ? ` in ${roomName(home, room.id)}` : '';
    return sort === 'current' ? `A current that rises${where}` : `An appliance${where}`;
  }
  return `A current ${alongWhat(home, source)}`;
}

/** How far from a line the rooms at its sides are asked for, metres: past a wall and what lies beside it. */
const ASIDE = 0.5;

function alongWhat(home: Home, { level, path }: UnmarkedSource): string {
  const [a, b] = path as [Point, Point];
  const along = sub(b, a);
  const length = distance(a, b);
  const middle = lerp(a, b, 0.5);
  const [one, other] = [ASIDE, -ASIDE].map((off) =>
    roomAt(home, level, [middle[0] - (off * along[1]) / length, middle[1] + (off * along[0]) / length]),
  );
  const inside = (room: Room | null | undefined) => (room && room.use !== 'grounds' ? room : null);
  const rooms = [inside(one), inside(other)].filter((room) => room !== null);
  const [first, second] = rooms.map(({ id }) => roomName(home, id));
  if (first === undefined) return 'outside the rooms';
  if (second === undefined) return `along the outer wall of ${first}`;
  return first === second ? `through ${first}` : `along the wall between ${first} and ${second}`;
}

function nearestRoom(home: Home, path: readonly Point[]): Room | null {
  const gap = ({ outline }: Room) => Math.min(...outline.map((corner) => distanceToPath(corner, path)));
  return inOrder(home.rooms)
    .filter(({ use }) => use !== 'grounds')
    .reduce<Room | null>((best, room) => (best && gap(best) <= gap(room) ? best : room), null);
}

/** '0.6–1.4 A', or '0.03–0.09 µT at 1 m' of an appliance. */
export function strengthText(home: Home, { amperes, atOneMetre }: UnmarkedSource): string {
  if (amperes) return `${amperes.map(ampereText).join('–')} A`;
  const unit = home.settings.fieldUnit;
  return `${intervalText(atOneMetre![0], atOneMetre![1], unit)} ${unitName(unit)} at 1 m`;
}

/** Two figures under an ampere's tenth place: 0.6, 1.4, 12. */
const ampereText = (value: number): string => fixedText(value, value < 9.95 ? 1 : 0);

const tenths = (odds: number): number => Math.min(9, Math.round(odds * 10));

/** '7 in 10': no more digits than the check against known homes deserves, and never certain. */
export const tenthsText = (odds: number): string => `${tenths(odds)} in 10`;

export const oddsWord = (odds: number): string =>
  tenths(odds) >= 8 ? 'very likely' : tenths(odds) >= 7 ? 'likely' : 'as likely as not';

/** '0.6–1.4 A; would explain 5 readings' */
export function unmarkedNote(
  home: Home,
  { places }: Pick<FittedSurvey, 'places'>,
  source: UnmarkedSource,
): string {
  const count = source.explains.reduce((sum, i) => sum + (places[i]?.ids.length ?? 0), 0);
  return `${strengthText(home, source)}; would explain ${countText(count, 'reading')}`;
}

/** Who looks into it, by what it would be. */
const STEPS: Record<Sort, string> = {
  current:
    'A licensed electrician can check, under the local code. Open no panel and touch no wiring. A round with the supply off tells whether it is the house’s own.',
  street: 'If a line or a cable runs there, the network operator can be asked about it.',
  appliance: 'See what stands there, or behind that wall: a reading with it off tells.',
};

/** All of a home's, with what to do and what to leave alone; nothing where none is likely. */
export const unmarkedParagraph = (
  home: Home,
  fitted: Pick<FittedSurvey, 'places'>,
  unmarked: readonly UnmarkedSource[],
): string[] =>
  unmarked.length === 0
    ? []
    : [
        [unmarkedWords.lead, ...unmarked.map((source) => unmarkedSentence(home, fitted, source))].join(' '),
        stepSentences(unmarked).join(' '),
      ];

/** Each step once. */
export const stepSentences = (unmarked: readonly UnmarkedSource[]): string[] => [
  ...new Set(unmarked.map(stepSentence)),
];

export const stepSentence = (source: UnmarkedSource): string => STEPS[sortOf(source)];

/** 'A current along the wall between Kitchen and Hall: 0.6–1.4 A; would explain 5 readings; likely (7 in 10).' */
export const unmarkedSentence = (
  home: Home,
  fitted: Pick<FittedSurvey, 'places'>,
  source: UnmarkedSource,
): string =>
  `${unmarkedName(home, source)}: ${unmarkedNote(home, fitted, source)}; ${oddsWord(source.odds)} (${tenthsText(source.odds)}).`;
