import { isJudged } from '../../engine/judging/judged';
import { judgesBy, speaksOf } from '../../engine/judging/guidelines';
import { inOrder } from '../order';
import { assessPiece } from './assessPiece';
import type { Aim, NextRequest } from '../../engine/nextReadings/request';
import type { AssessRequest, Assessment, PieceDose } from '../../engine/assess';
import type { GuidelineSet } from '../../engine/judging/guidelines';
import type { Home, Id } from '../home';
import type { PlacedPiece } from '../../engine/arranging/answer';
import type { RoomFigures } from '../../engine/judging/rooms';

/** What further readings are to make surer: the whole map, a room, a piece where it stands, or whether to move pieces. */
export type NextAsk =
  { kind: 'map' } | { kind: 'room' | 'piece'; id: Id } | { kind: 'choice'; pieces: readonly PlacedPiece[] };

/** The question that a home which has been assessed puts to the rule of the next readings. */
export function nextQuestion(
  home: Home,
  request: AssessRequest,
  { fitted, rooms, pieces }: Pick<Assessment, 'fitted' | 'rooms' | 'pieces'>,
  ask: NextAsk,
  count: number,
): NextRequest {
  const { survey, levels } = request;
  const mapHeight = levels[0]?.height ?? home.settings.mapHeight;
  const asked = (id: Id) => (ask.kind === 'room' || ask.kind === 'piece' ? ask.id === id : true);
  const roomAims = () => rooms.filter(({ id }) => asked(id)).map((figures) => roomAim(figures, ask, request));
  const pieceAims = () => pieces.filter(({ id }) => asked(id)).flatMap((dose) => pieceAim(home, dose));
  const base = {
    fitted,
    rooms: request.rooms,
    fixtures: inOrder(home.fixtures),
    meter: survey.readings.at(-1)!.meter,
    height: mapHeight,
    floor: [],
    count,
  };
  switch (ask.kind) {
    case 'map':
      return { ...base, floor: request.rooms.map(({ id }) => id), aims: [...roomAims(), ...pieceAims()] };
    case 'room':
      return { ...base, floor: [ask.id], aims: roomAims() };
    case 'piece':
      return { ...base, height: home.pieces[ask.id]!.height, aims: pieceAims() };
    case 'choice': {
      const aims = ask.pieces.flatMap((placed) => choiceAim(home, placed));
      return { ...base, height: aims[0]?.now.height ?? mapHeight, aims };
    }
  }
}

/** Of a room that is asked by itself, what counts is its word and the target; of the map, how sure it is everywhere. */
function roomAim(
  figures: RoomFigures,
  ask: NextAsk,
  { target, guideline, supplyOff, rooms }: AssessRequest,
): Aim {
  const { id, median, low, high } = figures;
  const use = rooms.find((room) => room.id === id)!.use;
  const edges = [target, ...(supplyOff ? [] : edgesOf(guideline, use))];
  return {
    kind: 'room',
    id,
    said: { middle: median, low, high },
    edges: ask.kind === 'room' && isJudged(figures) ? edges : null,
  };
}

const edgesOf = (guideline: GuidelineSet, use: string): number[] =>
  judgesBy(guideline) === 'middle' && speaksOf(guideline, use)
    ? guideline.edges.map(({ value }) => value)
    : [];

/** In which nobody is, a piece has no dose to make surer. */
function pieceAim(home: Home, { id, mean, dose }: PieceDose): Aim[] {
  if (!(dose.dose > 0)) return [];
  const hours = dose.dose / mean;
  const said = { middle: mean, low: dose.low / hours, high: dose.high / hours };
  return [{ kind: 'piece', id, said, piece: assessPiece(home.pieces[id]!) }];
}

function choiceAim(home: Home, placed: PlacedPiece): Extract<Aim, { kind: 'choice' }>[] {
  const { id, level, at, angle, odds, moves } = placed;
  const piece = home.pieces[id];
  if (!piece || !moves || odds === null) return [];
  return [
    { kind: 'choice', id, odds, now: assessPiece(piece), then: assessPiece({ ...piece, level, at, angle }) },
  ];
}
