import type { GoodArea } from '../../engine/arranging/goodArea';
import { BAND_EDGES } from '../../engine/contours/thresholds';
import type { Point, Ring } from '../../engine/geometry/point';
import { contourInk, paper, tint } from './ink';
import { layRing } from './planLayer';
import type { GoodHere } from './scene';
import { inPlan, onSheet, strokePath, type Sheet } from './sheet';

/** The map's ink goes on beyond it: the casing keeps the two apart. */
const EDGE = { width: 1.2, casing: 2, dash: [1.2, 2.4] } as const;
const BAND_LINE = 0.9;
/** Broken, since what is selected has a whole line. */
const GOOD = { width: 2.2, casing: 1.4, dash: [7, 3] } as const;
const LEAST = { dot: 3, ring: 7, width: 2, casing: 1.5 } as const;

/**
 * Within the dotted line the ink is that of the piece at hand: the mean field it would have with its middle there, in the inks
 * of the map. What is within a twentieth of the least is outlined, and the least marked.
 */
export function paintGood(sheet: Sheet, { area, level }: GoodHere): void {
  const { ink } = sheet;
  for (const room of area.rooms) if (room.level === level) paintPlaces(sheet, room);
  const rings = area.good.flatMap((one) => (one.level === level ? one.rings : []));
  inPlan(sheet, (pixel) => {
    lay(sheet, rings);
    const dash = GOOD.dash.map((length) => length * pixel);
    strokePath(sheet, { colour: ink.accent, width: GOOD.width * pixel, dash }, GOOD.casing * pixel);
  });
  if (area.leastAt?.level === level) paintLeast(sheet, area.leastAt.at);
}

/** The places of one room, from the lowest band up. */
function paintPlaces(sheet: Sheet, { may, bands }: GoodArea['rooms'][number]): void {
  const { context, ink } = sheet;
  if (may.length === 0) return;
  inPlan(sheet, (pixel) => {
    context.save();
    lay(sheet, may);
    context.fillStyle = paper(ink);
    context.fill('evenodd');
    context.clip('evenodd');
    for (const { value, polygons } of bands) {
      lay(sheet, polygons.flat());
      context.fillStyle = tint(ink, BAND_EDGES.indexOf(value));
      context.fill('evenodd');
      strokePath(sheet, { colour: contourInk(ink, value), width: BAND_LINE * pixel });
    }
    context.restore();
    lay(sheet, may);
    const dash = EDGE.dash.map((length) => length * pixel);
    strokePath(sheet, { colour: ink.text, width: EDGE.width * pixel, dash }, EDGE.casing * pixel);
  });
}

function paintLeast(sheet: Sheet, at: Point): void {
  const { context, ink } = sheet;
  const [x, y] = onSheet(sheet, at);
  context.beginPath();
  context.arc(x, y, LEAST.ring, 0, 2 * Math.PI);
  strokePath(sheet, { colour: ink.accent, width: LEAST.width }, LEAST.casing);
  context.beginPath();
  context.arc(x, y, LEAST.dot, 0, 2 * Math.PI);
  context.fillStyle = ink.accent;
  context.fill();
}

function lay({ context }: Sheet, rings: readonly Ring[]): void {
  context.beginPath();
  for (const ring of rings) layRing(context, ring);
}
