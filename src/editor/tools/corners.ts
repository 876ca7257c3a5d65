import { closestOnSegment } from '../../engine/geometry/segment';
import { distance } from '../../engine/geometry/point';
import { insertCorner } from '../../home/edits/insertCorner';
import { removeCorner } from '../../home/edits/removeCorner';
import type { Edit } from '../../home/edits/edit';
import type { Point, Ref } from '../../home/home';
import { MOVES } from '../stages';
import type { Aim, Bench } from './tool';

/** What a double press on the outline of the one selected room or fixture does: its corner goes, or its wall gets one. */
export function cornerEdit({ home, selection, view }: Bench, { at, reach }: Aim): Edit | null {
  const ref = selection.length === 1 ? selection[0] : undefined;
  if (!ref || !MOVES[view.stage].includes(ref.kind)) return null;
  const outline = outlineOf(home, ref);
  const corner = outline.findIndex((point) => distance(point, at) <= reach);
  if (corner >= 0) return removeCorner(ref, corner);
  const walls = outline.map((from, i) => closestOnSegment(at, from, outline[(i + 1) % outline.length]!));
  const near = walls.map((wall) => wall.distance);
  const wall = near.indexOf(Math.min(...near));
  return wall >= 0 && near[wall]! <= reach ? insertCorner(ref, wall, walls[wall]!.at) : null;
}

function outlineOf(home: Bench['home'], { kind, id }: Ref): readonly Point[] {
  if (kind === 'room') return home.rooms[id]?.outline ?? [];
  return kind === 'fixture' ? (home.fixtures[id]?.outline ?? []) : [];
}
