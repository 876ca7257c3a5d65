import type { RuleShapes } from '../../engine/arranging/ruleShapes';
import type { Leaf } from '../../engine/arranging/box';
import type { Point, Ring } from '../../engine/geometry/point';
import { paper } from './ink';
import { onSheet, strokePath, trace, type Sheet, type Stroke } from './sheet';

/** A rule that is kept is drawn lightly; a broken one in short heavy strokes. */
const KEPT = { width: 1, dash: [5, 3.5] } as const;
const BROKEN = { width: 2, dash: [2, 3] } as const;
const CASING = 1;
const WAY = { width: 1.4, dash: [1.4, 3.6] } as const;

/** What the piece at hand and its room are asked, on the plan: strips, doors with their floor, a cot's distances, the ways. */
export function paintRules(sheet: Sheet, shapes: RuleShapes): void {
  const { ink } = sheet;
  const stroke = (broken: boolean): Stroke =>
    broken ? { colour: ink.text, ...BROKEN } : { colour: ink.text2, ...KEPT };
  for (const { ring, broken } of [...shapes.landings, ...shapes.strips]) {
    layRings(sheet, ring);
    strokePath(sheet, stroke(broken), CASING);
  }
  for (const { leaf, broken } of shapes.leaves) {
    layLeaf(sheet, leaf);
    strokePath(sheet, stroke(broken), CASING);
  }
  const { context } = sheet;
  context.save();
  layRings(sheet, shapes.room);
  context.clip();
  for (const { ring, closed, metres, broken } of shapes.cotKeepsFrom) {
    layRound(sheet, ring, closed, metres);
    strokePath(sheet, stroke(broken), CASING);
  }
  context.restore();
  context.lineCap = 'round';
  for (const route of shapes.routes) {
    trace(
      context,
      route.map((p) => onSheet(sheet, p)),
    );
    strokePath(sheet, { colour: paper(ink), width: WAY.width + 2 * CASING, dash: WAY.dash });
    strokePath(sheet, { colour: ink.text2, ...WAY });
  }
  context.lineCap = 'butt';
}

function layRings(sheet: Sheet, ring: Ring): void {
  trace(
    sheet.context,
    ring.map((p) => onSheet(sheet, p)),
    true,
  );
}

/** The quarter disc a door sweeps. */
function layLeaf(sheet: Sheet, { hinge, shut, open, radius }: Leaf): void {
  const at = (x: number, y: number): Point => [
    hinge[0] + radius * (shut[0] * x + open[0] * y),
    hinge[1] + radius * (shut[1] * x + open[1] * y),
  ];
  const arc = Array.from({ length: 13 }, (_, i) =>
    at(Math.cos((i * Math.PI) / 24), Math.sin((i * Math.PI) / 24)),
  );
  layRings(sheet, [hinge, ...arc]);
}

/** All that is nearer to an outline, or to a line, than some metres: its edge. */
function layRound(sheet: Sheet, ring: Ring, closed: boolean, metres: number): void {
  const { context, camera } = sheet;
  const radius = metres * camera.scale;
  const places = (closed ? ring : [...ring, ...ring.slice(1, -1).toReversed()]).map((p) => onSheet(sheet, p));
  // On the sheet y runs down: a ring that turns left on the plan turns right there.
  const turn = closed && area(places) < 0 ? places.toReversed() : places;
  context.beginPath();
  turn.forEach((place, i) => {
    const before = turn[(i + turn.length - 1) % turn.length]!;
    const after = turn[(i + 1) % turn.length]!;
    const normal = (a: readonly number[], b: readonly number[]) =>
      Math.atan2(b[1]! - a[1]!, b[0]! - a[0]!) - Math.PI / 2;
    context.arc(place[0], place[1], radius, normal(before, place), normal(place, after));
  });
  context.closePath();
}

const area = (places: readonly (readonly [number, number])[]): number =>
  places.reduce((sum, [x, y], i) => {
    const [u, v] = places[(i + 1) % places.length]!;
    return sum + x * v - u * y;
  }, 0);
