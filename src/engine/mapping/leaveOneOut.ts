import { planeOf } from './plane';
import type { Place } from './observations';
import type { Plane } from './plane';

/** What a reading would have been predicted as without its place: ln B, and the variance of reading less prediction. */
export interface Prediction {
  predicted: number;
  variance: number;
}

/** Null for a place whose level has no other. */
export type Predictions = readonly (Prediction | null)[];

/** Readings this close in plan are left out together, whatever their heights. */
const SAME = 1e-3;

/** Errors of ln B closer than this are alike: rounding, not readings, would choose between them. */
export const ALIKE = 1e-9;

/** Which of the places stand at the same point of the plan as place i, itself among them. */
export function samePoint(places: readonly Place[], i: number): number[] {
  const { x, y } = places[i];
  const same: number[] = [];
  for (let j = 0; j < places.length; j++)
    if ((places[j].x - x) ** 2 + (places[j].y - y) ** 2 < SAME * SAME) same.push(j);
  return same;
}

/** Answers plane by plane: `predict` is asked for the members of a level that have the plane's height. */
export function byPlane<Answer>(
  places: readonly Place[],
  predict: (plane: Plane, members: readonly number[]) => readonly (Answer | null)[],
): (Answer | null)[] {
  const answers = new Map<Place, Answer | null>();
  for (const place of places) {
    if (answers.has(place)) continue;
    const plane = planeOf(places, place.level, place.height);
    const members = plane.places.flatMap(({ height }, i) => (height === place.height ? [i] : []));
    predict(plane, members).forEach((answer, k) => answers.set(plane.places[members[k]], answer));
  }
  return places.map((place) => answers.get(place) ?? null);
}

/** A place that can be compared with its prediction: ln B read less predicted, and the variance of that. */
interface Residual {
  error: number;
  variance: number;
}

/** Root of the mean square of reading less prediction in ln B; null where no place can be predicted from others. */
export function rootMeanSquare(places: readonly Place[], predictions: Predictions): number | null {
  const all = residuals(places, predictions);
  return all.length > 0 ? Math.sqrt(mean(all.map(({ error }) => error ** 2))) : null;
}

/** Mean of squared error ÷ its variance: 1 where the variances are right; 1, too, where it cannot be told. */
export function meanSquareRatio(places: readonly Place[], predictions: Predictions): number {
  const sure = residuals(places, predictions).filter(({ variance }) => variance > 0);
  return sure.length > 0 ? mean(sure.map(({ error, variance }) => error ** 2 / variance)) : 1;
}

function residuals(places: readonly Place[], predictions: Predictions): Residual[] {
  return predictions.flatMap((prediction, i) =>
    prediction && !places[i].limited
      ? [{ error: places[i].ln - prediction.predicted, variance: prediction.variance }]
      : [],
  );
}

const mean = (numbers: readonly number[]): number =>
  numbers.reduce((sum, number) => sum + number, 0) / numbers.length;
