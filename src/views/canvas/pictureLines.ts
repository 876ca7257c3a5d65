import { fieldContoursOf } from '../../engine/contours/bands';
import { BAND_EDGES } from '../../engine/contours/thresholds';
import type { LevelPicture } from '../../engine/assess';
import { contourLines, type ContourLine } from './drawing/contourLines';

type ContourKind = 'edge' | 'strong' | 'between';

/** One contour value with its lines. */
export interface DrawnContour {
  value: number;
  kind: ContourKind;
  lines: ContourLine[];
}

// At 0.5 and 1 µT, where the lines change side, they are a little heavier.
const STRONG_EDGES = [0.5, 1];

/** The lines of a picture, ascending; the target has its own line and is left out here unless it is an edge. */
export function pictureLines(picture: LevelPicture, target: number): DrawnContour[] {
  return picture.contours
    .filter(({ value }) => value !== target)
    .map((contour) => {
      const { value } = contour;
      const kind = STRONG_EDGES.includes(value) ? 'strong' : BAND_EDGES.includes(value) ? 'edge' : 'between';
      return { value, kind, lines: contourLines(contour, picture.grid) };
    });
}

/** The target's line. It follows the target at once, before the worker has answered. */
export function targetLines(picture: LevelPicture, target: number): ContourLine[] {
  const known = picture.contours.find(({ value }) => value === target);
  const contour = known ?? fieldContoursOf(picture.grid, picture.mean, [target])[0];
  return contour ? contourLines(contour, picture.grid) : [];
}
