import { answerOf } from '../../src/engine/arranging/answer';
import { bed, door, request, room } from '../engine/arranging/homes';
import { BUILDS } from '../support/generators/builds';
import { fieldsOf, type FieldAt } from '../../src/engine/dose/fieldAt';
import { fitSurvey } from '../../src/engine/mapping/fitSurvey';
import { groundsOf, planOf } from '../../src/engine/arranging/plan';
import { random } from '../../src/engine/algebra/random';
import { sampleSurvey } from '../../src/engine/mapping/sourceSampling/sampleSurvey';
import { solve } from '../../src/engine/arranging/solve';
import { spread } from './arrangePeer';
import { surveyOf, type GeneratedHome } from '../support/generators/generatedHome';
import { mapOver } from '../../src/engine/arranging/mapOver';
import { zoneOf } from '../../src/engine/dose/zones';
import type { ArrangePiece, ArrangeRequest } from '../../src/engine/arranging/request';
import type { Candidate } from '../../src/engine/arranging/candidates';
import type { Decision } from '../../src/engine/arranging/decide';
import type { FittedSurvey } from '../../src/engine/mapping/fitSurvey';
import type { MethodChoice } from '../../src/engine/mapping/survey';
import type { Place } from '../../src/engine/arranging/place';

/** How a bed fares on fields that are known, where it is put by a map of their readings. */
export interface KnownFields {
  method: string;
  homes: number;
  /** True dose at the place over the least true dose of all places, less one: median and p90. */
  regret: number;
  regretP90: number;
  /** Moves, and those of them that made it worse: those advised, and all where the best place is another. */
  advised: number;
  advisedWorse: number;
  always: number;
  alwaysWorse: number;
  /** True gain of the moves advised, median. */
  gain: number;
}

interface Mapped {
  name: string;
  method: MethodChoice;
  marked: boolean;
  /** Its sources are sampled first, as the page does. */
  sampled?: true;
}

const METHODS: Mapped[] = [
  { name: 'inverse distance', method: 'inverse-distance', marked: false },
  { name: 'kriging', method: 'kriging', marked: false },
  { name: 'at once, marked', method: 'auto', marked: true },
  { name: 'sampled', method: 'auto', marked: false, sampled: true },
  { name: 'sampled, marked', method: 'auto', marked: true, sampled: true },
];

/** Sampling takes seconds a home. */
const SAMPLED_HOMES = 20;

interface Put {
  home: number;
  regret: number;
  decision: Decision;
  moves: boolean;
  worse: boolean;
  gain: number;
}

/** Three beds a home, each found at a place drawn from all there are. */
const BEDS = 3;

export function knownFields(homes: number, readings = 36): KnownFields[] {
  const known = Array.from({ length: homes }, (_, i) => BUILDS['along walls'](i + 1, readings));
  const rows = METHODS.map((mapped) => {
    const some = mapped.sampled ? known.slice(0, SAMPLED_HOMES) : known;
    const puts = some.flatMap((home, i) => putBeds(home, i, mapped));
    const moved = puts.filter(({ moves }) => moves);
    const advised = moved.filter(({ decision }) => decision === 'move');
    const worse = (moves: Put[]) => moves.filter((put) => put.worse).length;
    const regrets = puts.map(({ regret }) => regret).sort((a, b) => a - b);
    return {
      method: mapped.name,
      homes: some.length,
      regret: regrets[Math.floor(0.5 * regrets.length)],
      regretP90: regrets[Math.floor(0.9 * regrets.length)],
      advised: advised.length,
      advisedWorse: worse(advised),
      always: moved.length,
      alwaysWorse: worse(moved),
      gain: spread(advised.map(({ gain }) => gain)).median,
    };
  });
  const random = known.flatMap((home, i) => randomRegrets(home, i)).sort((a, b) => a - b);
  return [
    ...rows,
    {
      method: 'a random place at a wall',
      homes,
      regret: random[Math.floor(0.5 * random.length)],
      regretP90: random[Math.floor(0.9 * random.length)],
      advised: 0,
      advisedWorse: 0,
      always: 0,
      alwaysWorse: 0,
      gain: 0,
    },
  ];
}

const HEIGHT = 0.6;

function requestOf(home: GeneratedHome, fitted: FittedSurvey, piece: ArrangePiece): ArrangeRequest {
  const rooms = home.rooms.map((outline, i) => room(`r${i}`, outline));
  return request({ fitted, rooms, openings: rooms.map(({ id }) => door(id, 0, 0.3)), pieces: [piece] });
}

function fitOf(home: GeneratedHome, { method, marked, sampled }: Omit<Mapped, 'name'>): FittedSurvey {
  const survey = surveyOf(home, method, marked);
  const fit = fitSurvey(survey, undefined, sampled ? sampleSurvey(survey) : null);
  if (!fit.ok) throw new Error(`home ${home.seed}: ${fit.problem.kind}`);
  return fit.fitted;
}

/** True mean field over the sleeper, µT. */
function truth(home: GeneratedHome, { at, angle }: Pick<Place, 'at' | 'angle'>): number {
  const { cells } = zoneOf('bed', { at, angle }, [0.9, 2], 'middle');
  return cells.reduce((sum, [x, y]) => sum + home.truth(x, y, HEIGHT), 0) / cells.length;
}

function placesOf(home: GeneratedHome, fitted: FittedSurvey, fieldAt: FieldAt): Candidate[] {
  const asked = requestOf(
    home,
    fitted,
    bed({ at: [-50, -50], mayStandIn: home.rooms.map((_, i) => `r${i}`) }),
  );
  return planOf(asked, groundsOf(asked, fieldAt)).hands[0]?.rooms.flat() ?? [];
}

function putBeds(home: GeneratedHome, index: number, mapped: Mapped): Put[] {
  const fitted = fitOf(home, mapped);
  const fieldAt = fieldsOf(fitted);
  const places = placesOf(home, fitted, fieldAt);
  if (places.length === 0) return [];
  const least = Math.min(...places.map(({ stand }) => truth(home, stand.pose)));
  const chance = random(700_000 + index);
  return Array.from({ length: BEDS }, () => {
    const { pose } = places[chance.below(places.length)].stand;
    const asked = requestOf(home, fitted, bed({ ...pose, mayStandIn: home.rooms.map((_, i) => `r${i}`) }));
    const { chosen } = solve(planOf(asked, groundsOf(asked, fieldAt)), asked.step, { budget: 1e6 });
    const [now, then] = [truth(home, pose), truth(home, chosen![0].stand.pose)];
    const { decision, pieces } = answerOf(asked, mapOver(asked, fieldAt, fitted), chosen!);
    return {
      home: index,
      regret: then / least - 1,
      decision,
      moves: pieces[0].moves,
      worse: then > now,
      gain: 1 - then / now,
    };
  });
}

function randomRegrets(home: GeneratedHome, index: number): number[] {
  const fitted = fitOf(home, { method: 'kriging', marked: false });
  const places = placesOf(home, fitted, fieldsOf(fitted));
  if (places.length === 0) return [];
  const least = Math.min(...places.map(({ stand }) => truth(home, stand.pose)));
  const chance = random(710_000 + index);
  return Array.from(
    { length: BEDS },
    () => truth(home, places[chance.below(places.length)].stand.pose) / least - 1,
  );
}
