import type { EvidenceRow } from '../../../engine/mapping/fitSurvey';
import type { FieldUnit, Home } from '../../../home/home';
import { firstOf } from '../../../home/order';
import { parseField } from '../../../words/quantities';
import { atEntry } from '../survey/atEntry';

/** The unit in which what was typed for a reading would be what the others say; null where none would, or for several. */
export function unitMeant(home: Home, { ids, low, high }: EvidenceRow): FieldUnit | null {
  const reading = ids.length === 1 ? home.readings[ids[0]!] : undefined;
  if (!reading) return null;
  const meter = reading.meter === null ? firstOf(home.meters) : home.meters[reading.meter];
  const usual = meter?.unit ?? home.settings.fieldUnit;
  const typed = parseField(reading.text, usual);
  const found = atEntry(reading.value, typed.ok ? typed.unit : usual, low, high);
  return found.kind === 'far' ? found.unit : null;
}
