import type { Answer, Proposal } from '../engine/arranging/arrange';
import type { AssessRequest, Assessment } from '../engine/assess';
import type { FittedSurvey } from '../engine/mapping/fitSurvey';
import type { UnmarkedSource } from '../engine/mapping/sourceSampling/unmarkedSources';
import type { Profile } from '../engine/judging/profile';
import type { Home } from '../home/home';
import { whyText } from '../words/assessment';
import type { AskedPoint, Options } from './options';
import type { NextReadings } from '../engine/nextReadings/request';
import { whyReadText } from '../words/nextReadings';
import { arrangementsOf } from './arrangements';
import { gridEstimates, pointEstimates } from './estimates';

/** What the command line has worked out, before it is written as JSON or as tables. */
export interface Worked {
  home: Home;
  options: Options;
  points: AskedPoint[];
  request: AssessRequest;
  assessment: Assessment;
  proposal: Proposal | null;
  next: NextReadings | null;
}

/** The object printed: µT, metres, hours. Null: not asked for, or not to be had from this method. */
export function answerOf({ home, options, points, request, assessment, proposal, next }: Worked) {
  const { fitted, evidence } = assessment;
  const level = request.levels[0]!;
  return {
    title: home.title,
    method: fitted.method,
    why: whyText(fitted),
    evidence: {
      readings: evidence.readings,
      looRmseLn: evidence.looRmseLn,
      coverage90: evidence.coverage90,
      compared: evidence.compared.map(({ method, looRmseLn }) => ({ method, looRmseLn })),
    },
    points: pointEstimates(fitted, points, request),
    sources:
      (fitted.sources ?? fitted.sampled) &&
      evidence.sources.map(({ id, falloff, share }) => ({ id, falloff, share })),
    unmarked: evidence.unmarked?.map((source) => unmarkedOf(fitted, source)) ?? null,
    rooms: assessment.rooms.map((room) => ({
      id: room.id,
      name: home.rooms[room.id]!.name,
      mean: room.mean,
      median: room.median,
      low: room.low,
      high: room.high,
      p95: room.p95,
      p95Low: room.p95Low,
      p95High: room.p95High,
      max: room.max,
      maxLow: room.maxLow,
      maxHigh: room.maxHigh,
      overTarget: room.overTarget,
      overTargetLow: room.overTargetLow,
      overTargetHigh: room.overTargetHigh,
      supported: room.supported,
      class: room.class,
      classLow: room.classLow,
      classHigh: room.classHigh,
    })),
    pieces: assessment.pieces.map(({ id, mean, dose, uses }) => ({
      id,
      mean,
      dose: dose.dose,
      low: dose.low,
      high: dose.high,
      uses: uses.map((use) => ({ who: use.who, dose: use.dose.dose })),
    })),
    arrangement: proposal && arrangementOf(proposal),
    arrangements: arrangementsOf(home, fitted),
    next:
      next &&
      next.readings.map((reading) => ({
        at: reading.at,
        level: reading.level,
        height: reading.height,
        why: whyReadText(home, reading),
      })),
    enough: next && next.enough,
    profile: options.along === null ? null : profileOf(assessment.profiles, options.along),
    grid: options.grid === null ? null : gridEstimates(fitted, level, options.grid),
  };
}

/** `atOneMetre`: µT, of an appliance, which has no amperes; `explains`: readings of which it makes a quarter or more of B². */
function unmarkedOf({ places }: FittedSurvey, { explains, ...source }: UnmarkedSource) {
  return { ...source, explains: explains.flatMap((i) => places[i]!.ids) };
}

function placesOf({ before, after, low, high, odds, decision, people, readAt, pieces }: Answer) {
  return {
    before,
    after,
    low,
    high,
    odds,
    decision,
    people: people.map((person) => ({
      who: person.who,
      before: person.before?.dose ?? null,
      after: person.after?.dose ?? null,
      odds: person.odds,
    })),
    readAt: readAt.map(({ level, at, height }) => ({ level, at, height })),
    pieces: pieces.map((piece) => ({
      id: piece.id,
      room: piece.room,
      level: piece.level,
      at: piece.at,
      angle: piece.angle,
      dose: piece.after?.dose ?? null,
    })),
  };
}

function arrangementOf(proposal: Proposal) {
  return {
    proven: proposal.proven,
    gap: proposal.gap,
    ...placesOf(proposal),
    alternatives: proposal.alternatives.map((other) => ({
      piece: other.piece,
      differs: other.differs,
      ...placesOf(other),
    })),
    rooms: proposal.rooms.map((offer) =>
      'dose' in offer
        ? { id: offer.id, dose: offer.dose, low: offer.low, high: offer.high }
        : { id: offer.id, dose: null, blocked: offer.blocked.kind },
    ),
    blocked: proposal.blocked.map(({ id, rule }) => ({ id, rule: rule.kind })),
    relaxed: proposal.relaxed && {
      changes: proposal.relaxed.changes,
      ...placesOf(proposal.relaxed.answer),
    },
  };
}

/** `targetAt`: metres along the walk between which the field comes down to the target to stay; `targetBest`: the estimate of it. */
function profileOf(profiles: readonly Profile[], walk: string) {
  const profile = profiles.find((one) => one.walk === walk);
  if (!profile) return null;
  const { falloff, falloffSd, targetAt, rows } = profile;
  return {
    walk,
    falloff,
    falloffSd,
    targetAt: targetAt && ([targetAt[0], targetAt[2]] as [number, number | null]),
    targetBest: targetAt && targetAt[1],
    rows,
  };
}
