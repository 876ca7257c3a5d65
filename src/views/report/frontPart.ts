import type { Assessment } from '../../engine/assess';
import type { GuidelineSet } from '../../engine/judging/guidelines';
import type { Home, Id, Reading } from '../../home/home';
import { inOrder } from '../../home/order';
import { defaultModelSentence, evidenceSentences } from '../../words/assessment';
import { dateText, spanText } from '../../words/dates';
import { countText } from '../../words/numbers';
import { problemText } from '../../words/problems';
import {
  foundSentences,
  leadParts,
  meterOf,
  metersUsed,
  ONE_VISIT,
  planNote,
  reportWords,
  type Part,
} from '../../words/report';
import type { Drawing } from './drawing';
import { houseBounds } from './planBounds';
import { MM, pictureFor } from './paper';
import { planDrawing, readingsOf } from './planDrawing';
import type { ReportRequest } from './reportModel';
import { roomsTable } from './roomsTable';
import type { Table } from './table';

/** The first page: the finding in one sentence, the plan, what was found, the rooms, how sure. */
export interface FrontPart {
  title: string;
  /** Where, when, for whom and by whom. */
  facts: string[];
  purpose: string;
  lead: Part[];
  plan: { drawing: Drawing; note: string } | null;
  found: string[];
  advice: string[];
  rooms: Table | null;
  sure: string[];
}

const PLAN_WIDTH = 104 * MM;

/** The plan gives way to the table under it, so that the first page holds both where it can; millimetres. */
const planHeight = (rooms: number): number => MM * Math.min(88, Math.max(54, 130 - 6.4 * rooms));

export interface FrontRequest extends ReportRequest {
  guideline: GuidelineSet;
  target: number;
}

export function frontPart(asked: FrontRequest, mainLevel: Id | null): FrontPart {
  const { home, round, assessment, proposal, problem, target } = asked;
  const readings = inOrder(home.levels).flatMap(({ id }) => readingsOf(home, id, round));
  const times = readings.flatMap(({ time }) => time ?? []);
  const trouble: Part = { text: problem ? problemText(problem) : reportWords.noMapYet, tone: 'plain' };
  return {
    title: home.title,
    facts: factsOf(home, round, times),
    purpose: home.report.purpose,
    lead: assessment ? leadParts(home, assessment, target, proposal) : [trouble],
    plan: mainLevel === null ? null : frontPlan(asked, mainLevel),
    found: [
      ...paragraphs(home.report.findings),
      ...(assessment ? foundSentences(home, assessment, target) : []),
    ],
    advice: paragraphs(home.report.advice),
    rooms: assessment && assessment.rooms.length > 0 ? roomsTable(home, assessment.rooms, asked) : null,
    sure: assessment
      ? sureSentences(home, assessment, readings)
      : [`${countText(readings.length, 'reading')}${metersOf(home, readings)}.`],
  };
}

/** The level that the finding speaks of: where the proposed bed stands, or the home's first. */
function frontPlan(asked: FrontRequest, mainLevel: Id): FrontPart['plan'] {
  const { home, round, assessment, proposal, target } = asked;
  const level = proposal?.pieces.find(({ id }) => id === proposal.about)?.level ?? mainLevel;
  const picture = assessment?.pictures.find((one) => one.level === level) ?? null;
  const proposed = proposal?.decision === 'stay' ? [] : (proposal?.pieces ?? []);
  const box = { width: PLAN_WIDTH, height: planHeight(assessment?.rooms.length ?? 0) };
  const sheet = pictureFor(houseBounds(home, level, readingsOf(home, level, round)), box);
  const moved = proposed.some(({ moves }) => moves);
  return {
    drawing: planDrawing({ home, level, round, picture, target, sheet, detailed: false, proposed }),
    note: planNote(home.levels[level]!.name, target, home.settings.fieldUnit, picture !== null, moved),
  };
}

function sureSentences(home: Home, { evidence, fitted }: Assessment, readings: readonly Reading[]): string[] {
  const fallback = defaultModelSentence(fitted);
  return [
    ...evidenceSentences(evidence, metersOf(home, readings)),
    ...(fallback ? [fallback] : []),
    ONE_VISIT,
  ];
}

const metersOf = (home: Home, readings: readonly Reading[]): string =>
  metersUsed(home, [...new Set(readings.flatMap((reading) => meterOf(home, reading)?.id ?? []))]);

const paragraphs = (text: string): string[] =>
  text
    .split(/\n+/)
    .map((line) => line.trim())
    .filter((line) => line !== '');

function factsOf(home: Home, round: Id, times: readonly string[]): string[] {
  const { address, preparedFor, by, date } = home.report;
  const when = spanText(times) ?? (home.rounds[round]?.date ? dateText(home.rounds[round].date) : null);
  return [
    address,
    when ?? '',
    preparedFor && `for ${preparedFor}`,
    by && `by ${by}`,
    date ? `report of ${dateText(date)}` : '',
  ].filter((fact) => fact !== '');
}
