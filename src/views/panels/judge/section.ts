import { segmentsCross } from '../../../engine/geometry/segment';
import type { Profile } from '../../../engine/judging/profile';
import type { Home, Point, Walk } from '../../../home/home';
import { roomAt } from '../../../home/questions/roomAt';

/** A wall the walk passes through, and the stretch of a room between two of them; metres along the walk. */
export interface SectionPlan {
  walls: number[];
  rooms: { id: string; from: number; to: number }[];
  length: number;
}

const legs = (path: readonly Point[]): [Point, Point][] =>
  path.slice(1).map((to, i): [Point, Point] => [path[i]!, to]);

/** Where a place at some metres along the path lies. */
export function placeAlong(path: readonly Point[], metres: number): Point {
  let left = metres;
  for (const [from, to] of legs(path)) {
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (left <= length && length > 0)
      return [from[0] + ((to[0] - from[0]) * left) / length, from[1] + ((to[1] - from[1]) * left) / length];
    left -= length;
  }
  return path.at(-1)!;
}

/** Walls closer than this are two faces of one. */
const ONE_WALL = 0.35;

/** What a walk passes through. */
export function sectionPlan(home: Home, walk: Walk): SectionPlan {
  const crossings: number[] = [];
  let before = 0;
  for (const [from, to] of legs(walk.path)) {
    for (const room of Object.values(home.rooms)) {
      if (room.level !== walk.level || room.use === 'grounds') continue;
      room.outline.forEach((corner, i) => {
        const at = segmentsCross(from, to, corner, room.outline[(i + 1) % room.outline.length]!);
        if (at) crossings.push(before + Math.hypot(at[0] - from[0], at[1] - from[1]));
      });
    }
    before += Math.hypot(to[0] - from[0], to[1] - from[1]);
  }
  crossings.sort((a, b) => a - b);
  const walls = crossings.filter((at, i) => i === 0 || at - crossings[i - 1]! > ONE_WALL);
  const edges = [0, ...walls, before];
  const rooms = edges.slice(1).flatMap((to, i) => {
    const from = edges[i]!;
    const room = to - from > 0.05 ? roomAt(home, walk.level, placeAlong(walk.path, (from + to) / 2)) : null;
    return room ? [{ id: room.id, from, to }] : [];
  });
  return { walls, rooms, length: before };
}

/** The profiles whose walk passes through a room. */
export function profilesThrough(home: Home, profiles: readonly Profile[], room: string): Profile[] {
  return profiles.filter((profile) => {
    const walk = home.walks[profile.walk];
    return walk !== undefined && sectionPlan(home, walk).rooms.some(({ id }) => id === room);
  });
}
