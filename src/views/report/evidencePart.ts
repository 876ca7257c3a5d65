import type { Assessment } from '../../engine/assess';
import type { Home } from '../../home/home';
import { shownValue } from '../../home/questions/shownValue';
import {
  defaultModelSentence,
  evidenceSentences,
  methodName,
  methodSentence,
  whyText,
} from '../../words/assessment';
import { basisWords } from '../../words/basis';
import { factorText, fieldText, intervalText, unitName } from '../../words/numbers';
import { reportWords } from '../../words/report';
import { shareSentence, silentSentences } from '../../words/sources';
import { correctedText } from '../../words/survey';
import { numberOf } from '../../words/things';
import type { Table } from './table';

/** Why the map may be believed: how it was made, and what each reading would have been predicted as without itself. */
export interface EvidencePart {
  method: string[];
  compared: Table;
  sentences: string[];
  rows: Table;
}

export function evidencePart(home: Home, { fitted, evidence }: Assessment): EvidencePart {
  const unit = home.settings.fieldUnit;
  const severalLevels = new Set(evidence.rows.map(({ level }) => level)).size > 1;
  const fallback = defaultModelSentence(fitted);
  const readOf = (ids: readonly string[], corrected: number) => {
    const shown = shownValue(home, ids);
    return shown === null ? fieldText(corrected, unit) : correctedText(shown, corrected, unit);
  };
  const rows = evidence.rows.map(({ ids, level, read, predicted, low, high }) => [
    ids.map(numberOf).join(', '),
    ...(severalLevels ? [home.levels[level]?.name ?? ''] : []),
    readOf(ids, read),
    fieldText(predicted, unit),
    intervalText(low, high, unit),
    read < low ? reportWords.below : read > high ? reportWords.above : '',
  ]);
  return {
    method: [
      `${methodSentence(fitted.method)} Why this one: ${whyText(fitted)}.`,
      ...(fallback ? [fallback] : []),
      ...(fitted.sources ? evidence.sources.map((share) => shareSentence(home, share)) : []),
      ...silentSentences(home, evidence.sources),
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
    rows: {
      heads: [
        { text: 'no.', right: true },
        ...(severalLevels ? [{ text: basisWords.level }] : []),
        { text: `read, ${unitName(unit)}`, right: true },
        { text: 'predicted', right: true, strong: true },
        { text: '90\u2009% interval', right: true },
        { text: reportWords.lies },
      ],
      rows,
    },
  };
}
