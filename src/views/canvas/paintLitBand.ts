import { BAND_EDGES } from '../../engine/contours/thresholds';
import { layLines } from './estimateLayer';
import { contourLines } from './drawing/contourLines';
import { layRing } from './planLayer';
import type { Scene } from './scene';
import { inPlan, strokePath, type Sheet } from './sheet';

/** A double line, since what is selected has a single one. */
const LINES = [
  { width: 5, of: 'accent' },
  { width: 2, of: 'lift' },
] as const;
const CASING = 1.3;

/** The band lit from the ruler: both its edges in a double line, on the floor only, and under all lettering. */
export function paintLitBand(
  sheet: Sheet,
  { litBand, picture, plan }: Pick<Scene, 'litBand' | 'picture' | 'plan'>,
): void {
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
      LINES.forEach(({ width, of }, i) =>
        strokePath(sheet, { colour: ink[of], width: width * pixel }, i === 0 ? CASING * pixel : undefined),
      );
    }
  });
}
