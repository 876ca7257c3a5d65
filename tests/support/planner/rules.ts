import { before, footprint, holeOf, strips, TOL, type Place } from './places';
import { between, EMPTY, inside, moved, overlap, quad, toRing, triangles, turn, type P } from './shapes';
import { supported } from './doses';
import type { ArrangeRequest } from '../../../src/engine/arranging/request';

// Places refined to the tolerance itself lie on either side of it by rounding.
const CLEAR = TOL + EMPTY;

/** The rules of the room that a place breaks, by word. `hard` leaves out preferences. */
export function broken(request: ArrangeRequest, place: Place): { hard: string[]; preferred: string[] } {
  const { rules } = request;
  const { kind } = place.piece;
  const room = request.rooms.find(({ id }) => id === place.room)!;
  const hard: string[] = [];
  const preferred: string[] = [];
  const foot = footprint(place);
  const less = footprint(place, TOL);
  if (!inside(room.outline, less)) hard.push('outside');
  if (!inside(room.outline, strips(place, TOL))) hard.push('access');
  for (const { level, outline, kind: what, front } of request.fixtures) {
    if (level !== room.level) continue;
    const parts = triangles(outline);
    if (parts.some((part) => overlap(less, part))) hard.push('fixture');
    if (parts.some((part) => overlap(strips(place, TOL), part))) hard.push('access');
    const gap = parts.some((part) => overlap(foot, part)) ? 0 : between(foot, outline);
    if (what === 'radiator' && kind === 'cot' && gap < 0.6 - CLEAR) hard.push('heat');
    if (what === 'radiator' && kind === 'bed' && gap < rules.bedToRadiator - CLEAR)
      preferred.push('radiator');
    if (front === null || rules.wardrobe === 0) continue;
    const { a, b, inward } = holeOf(outline, { wall: front, offset: 0, width: lengthOf(outline, front) });
    const doors = [a, b, moved(b, inward, -rules.wardrobe), moved(a, inward, -rules.wardrobe)];
    if (overlap(less, doors)) preferred.push('wardrobe');
  }
  const behind = wallsBehind(room.outline, place);
  if ((kind === 'bed' || kind === 'desk') && behind.length === 0) hard.push('wall');
  for (const opening of request.openings) {
    if (opening.room !== room.id) continue;
    const hole = holeOf(room.outline, opening);
    const across = behind.some(
      ({ wall, from, to }) =>
        wall === opening.wall &&
        Math.min(to, opening.offset + opening.width) - Math.max(from, opening.offset) > TOL,
    );
    if (kind === 'bed' && across) {
      if (opening.kind !== 'window') hard.push('door');
      else if (rules.headClearOfWindow) preferred.push('window');
    }
    if (opening.kind === 'window') {
      const gap = Math.min(
        ...[hole.a, hole.b].map((p) => toRing(p, foot)),
        ...foot.map((p) => toSill(p, hole)),
      );
      if (kind === 'cot' && gap < 0.6 - CLEAR) hard.push('sill');
      continue;
    }
    if (overlap(less, before(hole, rules.landing))) hard.push('landing');
    if (opening.kind !== 'door' || opening.swing !== 'in') continue;
    const [hinge, far] = opening.hinge === 'start' ? [hole.a, hole.b] : [hole.b, hole.a];
    const shut: P = [(far[0] - hinge[0]) / opening.width, (far[1] - hinge[1]) / opening.width];
    // What is forgiven is forgiven once: of the sweep, not of the footprint too.
    const sweep = (along: number, across: number): P =>
      moved(moved(hinge, shut, Math.max(TOL, along)), hole.inward, Math.max(TOL, across));
    const arc = Array.from({ length: 181 }, (_, i): P => {
      const t = ((i / 180) * Math.PI) / 2;
      const r = opening.width - TOL;
      return sweep(r * Math.cos(t), r * Math.sin(t));
    });
    if (overlap(foot, [sweep(0, 0), ...arc])) hard.push('swing');
  }
  if (place.piece.uses.some(({ side }) => !supported(request, place, side))) hard.push('support');
  return { hard, preferred };
}

function lengthOf(outline: readonly P[], wall: number): number {
  const [a, b] = [outline[wall], outline[(wall + 1) % outline.length]];
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}

const toSill = (p: P, { a, b }: { a: P; b: P }): number => toRing(p, [a, b]);

/** Walls that the whole head or back stands at, facing it, and the stretch of them it covers. */
function wallsBehind(outline: readonly P[], place: Place): { wall: number; from: number; to: number }[] {
  const [w, l] = place.piece.size;
  const [h0, h1] = quad(place, [-w / 2, w / 2, l / 2, l / 2]);
  return outline.flatMap((a, wall) => {
    const b = outline[(wall + 1) % outline.length];
    const length = lengthOf(outline, wall);
    const along = (p: P) => ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / length;
    const off = (p: P) => Math.abs(turn(a, b, p)) / length;
    const [from, to] = [Math.min(along(h0), along(h1)), Math.max(along(h0), along(h1))];
    const faces = off([place.x, place.y]) >= l / 2 - TOL;
    return faces && off(h0) <= 0.1 && off(h1) <= 0.1 && from >= -TOL && to <= length + TOL
      ? [{ wall, from, to }]
      : [];
  });
}

/** Whether two places of one room take each other's floor, or may not be in one room. */
export function clash({ rules }: Pick<ArrangeRequest, 'rules'>, a: Place, b: Place): boolean {
  if (a.room !== b.room) return false;
  const people = ({ piece }: Place) => new Set(piece.uses.map(({ who }) => who)).size;
  const double = (place: Place) => place.piece.kind === 'bed' && people(place) > 1;
  if (rules.oneDouble && double(a) && double(b)) return true;
  const [footA, footB] = [footprint(a), footprint(b)];
  const taken =
    overlap(footprint(a, TOL / 2), strips(b, TOL / 2)) || overlap(strips(a, TOL / 2), footprint(b, TOL / 2));
  if (taken) return true;
  const withCot = a.piece.kind === 'cot' || b.piece.kind === 'cot';
  return withCot && between(footA, footB) < 0.3 - CLEAR;
}
