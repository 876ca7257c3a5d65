import { answerSince } from './arranging/answer';
import { mapOver } from './arranging/mapOver';
import { drawLevel } from './drawLevel';
import { fieldsOf } from './dose/fieldAt';
import { fitSurvey } from './mapping/fitSurvey';
import { pieceDose } from './dose/pieceDose';
import { profileOf } from './judging/profile';
import { placesOfEach, roomFigures } from './judging/rooms';
import { pullsOf } from './pulls';
import { reachOn } from './reachOn';
import type { AssessRequest, Assessment } from './assess';
import type { Sampled } from './mapping/sourceSampling/sampleSurvey';

/** Why a home cannot be assessed. */
type AssessProblem = { kind: 'too-few-readings'; have: number; need: number };

export type AssessReply = { ok: true; assessment: Assessment } | { ok: false; problem: AssessProblem };

/**
 * Everything the engine has to say about one home in one round: the fitted survey with its evidence, a picture of each
 * level, figures of the rooms, doses of the pieces, profiles of the walks, the pull of the readings, and what moved
 * furniture is worth. Without `sampled` it is the answer that is there at once. `progress` is told the share done, 0…1.
 */
export function assessHome(
  request: AssessRequest,
  progress?: (share: number) => void,
  sampled: Sampled | null = null,
): AssessReply {
  const levels = request.levels.filter(({ outline }) => outline.some((ring) => ring.length > 0));
  const rooms = request.rooms.filter((room) => levels.some(({ id }) => id === room.level));
  const steps = 3 + levels.length + rooms.length + request.walks.length;
  let done = 0;
  const within = (share: number) => progress?.((done + share) / steps);
  const step = <T>(result: T): T => {
    progress?.(++done / steps);
    return result;
  };

  const fit = step(fitSurvey(request.survey, within, sampled));
  if (!fit.ok) return fit;
  const { fitted, evidence } = fit;
  const fieldAt = fieldsOf(fitted);
  const pictures = levels.map((level) =>
    step(
      drawLevel(
        fieldAt,
        level,
        { variance: true, target: request.target, reach: reachOn(request, level.id) },
        within,
      ),
    ),
  );
  const figures = rooms.map((room) => {
    const picture = pictures.find(({ level }) => level === room.level)!;
    return step(
      roomFigures(fieldAt, picture, room, heightOf(request, room.level), request, placesOfEach(rooms.length)),
    );
  });
  const pieces = step(request.pieces.flatMap((piece) => pieceDose(fieldAt, piece) ?? []));
  const profiles = request.walks.map((walk) =>
    step(profileOf(fieldAt(walk.level, heightOf(request, walk.level)), walk, request)),
  );
  const pulls = step(
    pullsOf({ survey: request.survey, fitted, evidence, rooms, pictures }, (level) =>
      heightOf(request, level),
    ),
  );
  const { moved } = request;
  const sinceFound = moved ? answerSince(moved, mapOver(moved, fieldAt, fitted), moved.found) : null;
  return {
    ok: true,
    assessment: { fitted, evidence, pulls, pictures, rooms: figures, pieces, profiles, sinceFound },
  };
}

// A walk may cross a level that is not drawn; readings of a room are taken at a metre.
const ROOM_HEIGHT = 1;

const heightOf = ({ levels }: AssessRequest, level: string): number =>
  levels.find(({ id }) => id === level)?.height ?? ROOM_HEIGHT;
