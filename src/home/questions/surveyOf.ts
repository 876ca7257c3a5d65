import { COMMON_METER, type MeterSpec } from '../../engine/survey/meter';
import { firstOf, inOrder } from '../order';
import { wallStretches } from './wallStretches';
import type { MarkedSource, Survey } from '../../engine/mapping/survey';
import type { Home, Id, MethodChoice, Reading, Source } from '../home';

/** The readings a map of one round is made of; one without a round belongs to the first. Those left out stay out. */
function readingsOf(home: Home, round: Id): Reading[] {
  const first = firstOf(home.rounds)?.id;
  return inOrder(home.readings).filter(
    (reading) => (reading.round ?? first) === round && reading.excluded === '',
  );
}

/** A reading without a meter was taken with the first, and in a home without meters with one of common accuracy. */
function meterOf(home: Home, reading: Reading): MeterSpec {
  const meter = reading.meter === null ? firstOf(home.meters) : home.meters[reading.meter]!;
  if (!meter) return COMMON_METER;
  const { percent, absolute, coverage, resolution, range, gain, offset } = meter;
  return { percent, absolute, coverage, resolution, range, gain, offset };
}

const markedSource = ({ id, kind, level, path, height, falloff, origin }: Source): MarkedSource => ({
  id,
  kind,
  level,
  path,
  height,
  falloff,
  origin,
});

export function surveyOf(home: Home, round: Id, method: MethodChoice): Survey {
  return {
    method,
    sources: inOrder(home.sources)
      // With the supply off the house's own sources give nothing, and no reading can say more of them.
      .filter(({ origin }) => origin !== 'house' || home.rounds[round]?.kind !== 'supplyOff')
      .map(markedSource),
    elevations: Object.fromEntries(inOrder(home.levels).map(({ id, elevation }) => [id, elevation])),
    walls: wallStretches(home),
    readings: readingsOf(home, round).map((reading) => ({
      id: reading.id,
      level: reading.level,
      at: reading.at,
      height: reading.height,
      value: reading.value,
      meter: meterOf(home, reading),
      limit: reading.limit,
      min: reading.min,
      max: reading.max,
      peak: reading.taken === 'peak',
    })),
  };
}
