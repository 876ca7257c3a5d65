import type { Assessment } from '../../engine/assess';
import type { Home } from '../../home/home';
import {
  defaultModelSentence,
  evidenceSentences,
  methodName,
  methodSentence,
  whyText,
} from '../../words/assessment';
import { edgeText } from '../../words/canvas';
import { factorText, fieldText, fixedText, intervalText, lengthText, unitName } from '../../words/numbers';
import { accuracyText, bandText, correctionText, reportWords, variogramSentence } from '../../words/report';
import { numberOf } from '../../words/things';
import { blocksOf, type Block, type Table } from './table';
import { PAGE } from './paper';

/** Why the map may be believed: how it was made, and what each reading would have been predicted as without itself. */
export interface EvidencePart {
  method: string[];
  compared: Table;
  sentences: string[];
  rows: Block[];
}

// What stands above the table on its page: headings, method and comparison; pixels.
const ABOVE = 420;

export function evidencePart(home: Home, { fitted, evidence }: Assessment): EvidencePart {
  const unit = home.settings.fieldUnit;
  const fallback = defaultModelSentence(fitted);
  const rows = evidence.rows.map(({ ids, read, predicted, low, high }) => [
    ids.map(numberOf).join(', '),
    fieldText(read, unit),
    fieldText(predicted, unit),
    intervalText(low, high, unit),
    read < low ? reportWords.below : read > high ? reportWords.above : '',
  ]);
  return {
    method: [
      `${methodSentence(fitted.method)} Why this one: ${whyText(fitted)}.`,
      ...(fallback
        ? [fallback]
        : [variogramSentence(fitted, lengthText(fitted.variogram.range, home.settings.lengthUnit, 1))]),
      reportWords.intervals,
    ],
    compared: {
      heads: [{ text: 'method' }, { text: reportWords.miss, right: true }, { text: '' }],
      rows: evidence.compared.map(({ method, looRmseLn }) => [
        methodName(method),
        looRmseLn === null ? '—' : `a factor of ${factorText(looRmseLn)}`,
        method === fitted.method ? reportWords.used : '',
      ]),
    },
    sentences: evidenceSentences(evidence),
    rows: blocksOf(
      {
        heads: [
          { text: 'no.', right: true },
          { text: `read, ${unitName(unit)}`, right: true },
          { text: 'predicted', right: true, strong: true },
          { text: '90\u2009% interval', right: true },
          { text: '' },
        ],
        rows,
      },
      2,
      PAGE.height - ABOVE,
      PAGE.height - 40,
    ),
  };
}

/** Every meter of the home, with what it can and cannot show. */
export function metersTable(home: Home): Table {
  const unit = home.settings.fieldUnit;
  return {
    heads: [
      { text: 'meter' },
      { text: 'axes', right: true },
      { text: 'accuracy' },
      { text: `step, ${unitName(unit)}`, right: true },
      { text: `range, ${unitName(unit)}`, right: true },
      { text: 'band, Hz', right: true },
      { text: 'correction' },
      { text: 'calibrated' },
    ],
    rows: Object.values(home.meters).map((meter) => [
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
