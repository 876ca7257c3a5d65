import { isElsewhere } from '../../engine/arranging/place';
import { bounds } from '../../engine/geometry/polygon';
import { indoorsOf } from './arrangeQuestion';
import { firstOf, inOrder } from '../order';
import { asFound } from './asFound';
import { assessPiece } from './assessPiece';
import { guidelineOf } from './guidelineOf';
import { levelOutline } from './levelOutline';
import { nearestSource } from './nearestSource';
import { surveyOf } from './surveyOf';
import type { AssessLevel, AssessRequest, AssessRoom } from '../../engine/assess';
import type { Ring } from '../../engine/geometry/point';
import type { Home, Id, MethodChoice, Room } from '../home';

/** What is asked for; whatever is left out is as the home has it. */
export interface AssessOptions {
  /** Left out: the first. */
  round?: Id;
  /** Levels to draw; readings of all levels count all the same. */
  levels?: readonly Id[];
  method?: MethodChoice;
  /** Height of the map above each floor, metres. */
  height?: number;
  /** µT */
  target?: number;
  guideline?: Id;
}

/** Cells of a map, metres: all are multiples of the lattice's 0.1. */
const STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10];

/** Cells of one level, at most: a house with its garden in a tenth of a second. */
const CELLS = 20_000;

function stepFor(outline: readonly Ring[]): number {
  const { x0, y0, x1, y1 } = bounds(outline.flat());
  return STEPS.find((step) => ((x1 - x0) / step + 2) * ((y1 - y0) / step + 2) <= CELLS) ?? STEPS.at(-1)!;
}

/** Grounds leave out the rooms of their level that are drawn over them. */
function assessRoom(room: Room, all: readonly Room[]): AssessRoom {
  const over = room.use === 'grounds' ? all.filter((r) => r.level === room.level && r.use !== 'grounds') : [];
  return {
    id: room.id,
    level: room.level,
    use: room.use,
    outline: room.outline,
    without: over.map(({ outline }) => outline),
  };
}

/** Asked only where something has moved: a comparison is work. */
function movedFurniture(home: Home): Pick<AssessRequest, 'moved'> {
  const found = asFound(home)?.pieces.filter(({ level }) => home.levels[level]) ?? [];
  const pieces = inOrder(home.pieces);
  const moved = found.some((put) => {
    const piece = home.pieces[put.id];
    return piece && isElsewhere(put, piece);
  });
  return moved ? { moved: { rooms: indoorsOf(home), pieces, found } } : {};
}

/** The question a home puts to the engine: its map, rooms, doses and profiles in one round. */
export function assessQuestion(home: Home, options: AssessOptions = {}): AssessRequest {
  const { settings } = home;
  const wanted = (level: Id) => options.levels?.includes(level) ?? true;
  const height = options.height ?? settings.mapHeight;
  const levels = inOrder(home.levels)
    .filter(({ id }) => wanted(id))
    .map(({ id }) => ({ id, outline: levelOutline(home, id) }))
    .filter(({ outline }) => outline.length > 0)
    .map(({ id, outline }): AssessLevel => ({ id, height, outline, step: stepFor(outline) }));
  const rooms = inOrder(home.rooms);
  const round = options.round ?? firstOf(home.rounds)!.id;
  return {
    survey: surveyOf(home, round, options.method ?? settings.method),
    levels,
    rooms: rooms.filter(({ level }) => wanted(level)).map((room) => assessRoom(room, rooms)),
    pieces: inOrder(home.pieces)
      .filter(({ level, uses }) => wanted(level) && uses.length > 0)
      .map(assessPiece),
    walks: inOrder(home.walks)
      .filter(({ level }) => wanted(level))
      .map((walk) => ({ id: walk.id, level: walk.level, path: walk.path, from: nearestSource(home, walk) })),
    ...movedFurniture(home),
    target: options.target ?? settings.target,
    guideline:
      guidelineOf(home, options.guideline ?? settings.guideline) ?? guidelineOf(home, 'common-practice')!,
    supplyOff: home.rounds[round]?.kind === 'supplyOff',
  };
}
