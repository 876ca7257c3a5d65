import { add, lerp, scale, sub } from '../../engine/geometry/point';
import { contains } from '../../engine/geometry/polygon';
import { rectangle } from '../../engine/geometry/pose';
import type { Pose } from '../../engine/geometry/pose';
import type { Home, Point, Room } from '../../home/home';
import { tidy, tidyAngle } from '../../home/kinds/tidy';
import type { View } from '../editor';
import { nearestWall } from './nearestWall';

/** Metres between a piece's head and a wall within which it goes up to it. */
const NEAR = 0.5;
/** Metres from a corner of the room within which a piece goes into it. */
const CORNER = 0.2;
/** Metres along a wall. */
const GRID = 0.05;

/** Metres from a wall at which a press on its drawn thickness still means the room behind it. */
const THICKNESS = 0.15;

/**
 * Where a thing set down at a point stands: its head or back against the wall nearest by, within the corners of the room.
 *
 * @param near metres between its head and a wall within which it goes up to it
 */
export function againstWall(
  home: Home,
  view: View,
  at: Point,
  size: readonly [number, number],
  near = NEAR,
): Pose | null {
  const [width, length] = size;
  const room = roomOver(home, view, at) ?? nearestWall(home, view, at, THICKNESS)?.room;
  const place = room && nearestWall(home, view, at, length / 2 + near, room);
  if (!place || place.length < width) return null;
  const way = scale(sub(place.b, place.a), 1 / place.length);
  // Into the room, whichever way round its outline runs.
  const left: Point = [-way[1], way[0]];
  const middle = lerp(place.a, place.b, 0.5);
  const inward: Point = contains(room.outline, add(middle, scale(left, 1e-3))) ? left : [-left[0], -left[1]];
  const kept = Math.min(place.length - width / 2, Math.max(width / 2, place.along));
  const flush = [width / 2, place.length - width / 2].find((end) => Math.abs(end - kept) < CORNER);
  const along = flush ?? width / 2 + Math.round((kept - width / 2) / GRID) * GRID;
  const foot = add(place.a, scale(way, along));
  const angle = (Math.atan2(-inward[1], -inward[0]) * 180) / Math.PI - 90;
  return {
    at: tidy(add(foot, scale(inward, length / 2))),
    angle: tidyAngle(angle),
  };
}

/** The outline a piece would have. */
export const footprint = (pose: Pose, size: readonly [number, number]): Point[] => [...rectangle(pose, size)];

function roomOver(home: Home, view: View, at: Point): Room | null {
  const over = Object.values(home.rooms).filter(
    (room) => room.level === view.level && contains(room.outline, at),
  );
  return over.find((room) => room.use !== 'grounds') ?? over[0] ?? null;
}
