import { BAND_EDGES } from '../../engine/contours/thresholds';
import { layLines } from './estimateLayer';
import { contourLines } from './drawing/contourLines';
import { layRing } from './planLayer';
import type { Scene } from './scene';
import { inPlan, strokePath, type Sheet } from './sheet';

const LINE = 2.4;
const CASING = 1.3;

/** The band lit from the ruler: both its edges cased in accent, on the floor only. */
export function paintLitBand(sheet: Sheet, { litBand, picture, plan }: Scene): void {
  if (litBand === null || !picture) return;
  const edges = [BAND_EDGES[litBand], BAND_EDGES[litBand + 1]];
  inPlan(sheet, (pixel) => {
    const { context, ink } = sheet;
    context.beginPath();
    for (const ring of plan.floor) layRing(context, ring);
    context.clip('evenodd');
    for (const contour of picture.contours) {
      if (!edges.includes(contour.value)) continue;
      layLines(context, contourLines(contour, picture.grid));
      strokePath(sheet, { colour: ink.accent, width: LINE * pixel }, CASING * pixel);
    }
  });
}
