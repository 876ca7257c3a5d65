import type { Assessment } from '../../engine/assess';
import type { EvidenceRow } from '../../engine/mapping/fitSurvey';
import { secondLooks } from '../../engine/mapping/secondLook';
import type { FieldUnit, Home } from '../../home/home';
import { shownValue } from '../../home/questions/shownValue';
import { defaultModelSentence, methodName, methodSentence, whyText } from '../../words/assessment';
import { basisWords } from '../../words/basis';
import {
  evidenceSentences,
  evidenceWords,
  leansSentence,
  looksSentence,
  pullText,
} from '../../words/evidence';
import { factorText, fieldText, intervalText, unitName } from '../../words/numbers';
import { reportWords } from '../../words/report';
import { originsSentence, shareSentence, silentSentences } from '../../words/sources';
import { correctedText } from '../../words/survey';
import { numberOf } from '../../words/things';
import { unmarkedParagraph } from '../../words/unmarked';
import type { Table } from './table';

/** Why the map may be believed: how it was made, and what each reading would have been predicted as without itself. */
export interface EvidencePart {
  method: string[];
  compared: Table;
  sentences: string[];
  plot: Plot;
  rows: Table;
}

/** What is drawn of the evidence. */
interface Plot {
  rows: readonly EvidenceRow[];
  unit: FieldUnit;
  looks: readonly EvidenceRow[];
}

export function evidencePart(home: Home, { fitted, evidence, pulls }: Assessment): EvidencePart {
  const unit = home.settings.fieldUnit;
  const severalLevels = new Set(evidence.rows.map(({ level }) => level)).size > 1;
  const fallback = defaultModelSentence(fitted);
  const readOf = (ids: readonly string[], corrected: number) => {
    const shown = shownValue(home, ids);
    return shown === null ? fieldText(corrected, unit) : correctedText(shown, corrected, unit);
  };
  const looks = secondLooks(evidence.rows);
  const told = pulls.some((pull) => pull !== null);
  const by = pulls.find((pull) => pull !== null)?.by ?? null;
  const rows = evidence.rows.map(({ ids, level, read, predicted, low, high }, i) => [
    ids.map(numberOf).join(', '),
    ...(severalLevels ? [home.levels[level]?.name ?? ''] : []),
    readOf(ids, read),
    `${fieldText(predicted, unit)} (${intervalText(low, high, unit)})`,
    read < low ? reportWords.below : read > high ? reportWords.above : '',
    ...(told ? [pulls[i] ? pullText(pulls[i].change) : '—'] : []),
  ]);
  return {
    method: [
      `${methodSentence(fitted.method)} Why this one: ${whyText(fitted)}.`,
      ...(fallback ? [fallback] : []),
      ...(fitted.sources || fitted.sampled
        ? evidence.sources.map((share) => shareSentence(home, share))
        : []),
      ...silentSentences(home, evidence.sources),
      ...(evidence.origins ? [originsSentence(evidence)] : []),
      ...unmarkedParagraph(home, fitted, evidence.unmarked ?? []),
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
    sentences: [
      ...evidenceSentences(evidence),
      looksSentence(looks, home),
      leansSentence(evidence.rows, pulls, home),
      told ? evidenceWords.pullColumn : '',
      by ? evidenceWords.pullOther(by) : '',
    ].filter(Boolean),
    plot: {
      rows: evidence.rows,
      unit,
      looks,
    },
    rows: {
      heads: [
        { text: 'no.', right: true },
        ...(severalLevels ? [{ text: basisWords.level }] : []),
        { text: `read, ${unitName(unit)}`, right: true },
        { text: evidenceWords.predicted, right: true },
        { text: reportWords.lies },
        ...(told ? [{ text: evidenceWords.pull, right: true as const }] : []),
      ],
      rows,
    },
  };
}
