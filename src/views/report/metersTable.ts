import type { Home, Meter } from '../../home/home';
import { edgeText } from '../../words/canvas';
import { fixedText, unitName } from '../../words/numbers';
import { accuracyText, bandText } from '../../words/report';
import { correctionText } from '../../words/survey';
import type { Table } from './table';

/** A meter's number in the tables of the report, from 1. */
export const meterNumber = (home: Home, meter: Meter | null): string =>
  meter === null ? '—' : String(Object.keys(home.meters).indexOf(meter.id) + 1);

/** Every meter of the home, with what it can and cannot show. */
export function metersTable(home: Home): Table {
  const unit = home.settings.fieldUnit;
  const right = true as const;
  return {
    heads: [
      { text: 'no.', right },
      { text: 'meter' },
      { text: 'axes', right },
      { text: 'accuracy' },
      { text: `step, ${unitName(unit)}`, right },
      { text: `range, ${unitName(unit)}`, right },
      { text: 'band, Hz', right },
      { text: 'correction' },
      { text: 'calibrated' },
    ],
    rows: Object.values(home.meters).map((meter) => [
      meterNumber(home, meter),
      [meter.name || meter.id, meter.serial].filter(Boolean).join(', '),
      fixedText(meter.axes, 0),
      accuracyText(meter, unit),
      edgeText(meter.resolution, unit),
      `${edgeText(meter.range[0], unit)}–${edgeText(meter.range[1], unit)}`,
      bandText(meter),
      correctionText(meter, unit),
      meter.calibrated ?? '—',
    ]),
  };
}
