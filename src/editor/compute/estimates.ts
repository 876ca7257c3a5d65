import type { FieldAt } from '../../engine/dose/fieldAt';
import type { FittedSurvey } from '../../engine/mapping/fitSurvey';
import type { Home, Point } from '../../home/home';
import type { Probe, Results, View } from '../editor';
import { thingsShown } from '../things';
import type { Here } from './loadHere';
import { probeField, probePicture } from './probe';

export interface Estimates {
  /** From the drawn picture: what the eye sees under the pointer. */
  probe(home: Home, view: View, at: Point): Probe;
  /** From the model, at any height and place. */
  at(home: Home, view: View, at: Point, height?: number): Probe;
}

/** Estimates that are worked out here and now, from the last survey that was fitted. */
export function createEstimates(results: () => Results, here: () => Here | null): Estimates {
  let made: { fitted: FittedSurvey; fieldAt: FieldAt } | null = null;

  const fieldAt = (): FieldAt | null => {
    const fitted = results().assessment?.fitted;
    const engine = here();
    if (!fitted || !engine) return null;
    if (made?.fitted !== fitted) made = { fitted, fieldAt: engine.fieldsOf(fitted) };
    return made.fieldAt;
  };

  const estimates: Estimates = {
    probe(home, view, at) {
      const { assessment, request } = results();
      const readings: Point[] = [];
      for (const { ref } of thingsShown(home, view, ['reading'])) {
        const reading = home.readings[ref.id]!;
        if (reading.excluded === '') readings.push(reading.at);
      }
      const picture = assessment?.pictures.find(({ level }) => level === view.level);
      return probePicture(picture, request, readings, at);
    },
    at(home, view, at, height) {
      const field = fieldAt();
      if (!field) return estimates.probe(home, view, at);
      const drawn = results().request?.levels.find(({ id }) => id === view.level)?.height;
      return probeField(field, view.level, height ?? drawn ?? home.settings.mapHeight, at);
    },
  };
  return estimates;
}
