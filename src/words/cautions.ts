import type { FieldUnit } from '../home/home';
import { unitName, fieldText } from './numbers';

/** Stands beside every result. */
export const SHORT_CAUTION = 'A planning figure, not a health measure. Open no panel and touch no wiring.';

/** Stands beside every arrangement (no cot beside a window, cord or radiator: AAP News 2006). */
export const ARRANGE_CAUTION =
  'Whatever is lower: exits, heaters, smoke alarms and a window to escape by stay clear, and no cot stands beside a window, a cord or a radiator.';

export interface Caution {
  about: string;
  text: string;
}

/** Published caution for people with implanted devices, µT. */
const IMPLANT_CAUTION = 100;

/** What everybody who is handed a result must be told with it. */
export function cautions(unit: FieldUnit): Caution[] {
  return [
    {
      about: 'What to leave alone',
      text: 'This work needs readings and furniture, nothing else. Open no panel, touch no wiring, and never disconnect an earth or a bond.',
    },
    {
      about: 'Suspected faults',
      text: 'A licensed electrician looks into them, under the local code. A contact between neutral and earth is a matter of shock and fire first, and of fields second.',
    },
    {
      about: 'Lines, cables, transformers',
      text: 'They are the network operator’s: ask there. Keep yourself and anything you carry 3 m away from them.',
    },
    {
      about: 'Health',
      text: 'This is not medical advice, and the dose is a planning figure, not a measure of health. Precautionary values are not safety limits.',
    },
    {
      about: 'Implanted devices',
      text: `Ask the maker and the clinician. The caution published for such devices is ${fieldText(IMPLANT_CAUTION, unit)} ${unitName(unit)}.`,
    },
    {
      about: 'What is covered',
      text: 'Only the magnetic field at the frequency of the mains: no electric field, no radio.',
    },
    { about: 'The map', text: 'Between the readings it is an estimate.' },
  ];
}

/** What the method cannot tell, for whoever relies on a report. */
export const LIMITS: readonly Caution[] = [
  {
    about: 'One visit',
    text: 'Readings are a snapshot. The field follows the current people draw, hour by hour; one evening may lie above the long-term level by a fifth and more.',
  },
  {
    about: 'The interval',
    text: 'It speaks of what this survey leaves open between its places. It says nothing of other days, nor of a meter that reads wrong everywhere alike.',
  },
  {
    about: 'Published values',
    text: 'Most of them are means over a day or a year, or hold for one installation alone. The words beside a room take the readings to be typical of that time.',
  },
  {
    about: 'Height',
    text: 'The map lies at one height. Where a piece of furniture is used at another, its interval is wider by a share of the distance (0.6 in ln B per metre: this tool’s own choice).',
  },
  {
    about: 'Close to appliances',
    text: 'Within half a metre the field changes faster than any map drawn from hand-held readings, and a meter’s coil reads a little low.',
  },
  {
    about: 'Walls',
    text: 'Ordinary walls do not hold this field back, so the map passes through them.',
  },
];
