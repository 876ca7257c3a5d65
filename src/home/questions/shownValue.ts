import { firstOf } from '../order';
import type { Home, Id } from '../home';

/** What the display showed, µT, at a place of the survey, where its meter's correction makes it another; else null. */
export function shownValue(home: Home, ids: readonly Id[]): number | null {
  const reading = ids.length === 1 ? home.readings[ids[0]!] : undefined;
  if (!reading || reading.limit !== null) return null;
  const meter = reading.meter === null ? firstOf(home.meters) : home.meters[reading.meter];
  return meter && (meter.gain !== 1 || meter.offset !== 0) ? reading.value : null;
}
