import type { Assessment } from '../../engine/assess';
import type { GuidelineSet } from '../../engine/judging/guidelines';
import type { Home, Id, Reading } from '../../home/home';
import { inOrder } from '../../home/order';
import { defaultModelSentence } from '../../words/assessment';
import { evidenceSentences } from '../../words/evidence';
import { dateText, spanText } from '../../words/dates';
import type { FurnitureChange } from '../../words/furniture';
import { countText } from '../../words/numbers';
import { problemText } from '../../words/problems';
import { foundSentences } from '../../words/finding';
import {
  leadParts,
  meterOf,
  metersUsed,
  ONE_VISIT,
  planNote,
  reportWords,
  type Part,
} from '../../words/report';
import { textWidth, type Drawing } from './drawing';
import { houseBounds } from './planBounds';
import { MM, PAGE, pictureFor } from './paper';
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
  /** The surveyor's own findings and advice. */
  findings: string[];
  advice: string[];
  /** What the cautions follow: as far down the first page as they surely have room there. */
  cautionsAfter: 'lead' | 'plan' | 'rooms';
  rooms: Table | null;
  /** Many rooms are set smaller, so that they stay with the plan. */
  manyRooms: boolean;
  sure: string[];
}

const PLAN_WIDTH = 104 * MM;

/** The plan gives way to the table under it, so that the first page holds both where it can; millimetres. */
const planHeight = (rooms: number): number => MM * Math.min(88, Math.max(54, 130 - 6.4 * rooms));

export interface FrontRequest extends ReportRequest {
  change: FurnitureChange | null;
  guideline: GuidelineSet;
  target: number;
}

export function frontPart(asked: FrontRequest, mainLevel: Id | null): FrontPart {
  const { home, round, assessment, change, problem, target } = asked;
  const supplyOff = home.rounds[round]?.kind === 'supplyOff';
  const readings = inOrder(home.levels).flatMap(({ id }) => readingsOf(home, id, round));
  const times = readings.flatMap(({ time }) => time ?? []);
  const findings = paragraphs(home.report.findings);
  const own = assessment ? foundSentences(home, assessment, target) : [];
  const short = isShort(findings);
  const texts = {
    found: short ? [...findings, ...own] : own,
    findings: short ? [] : findings,
    advice: paragraphs(home.report.advice),
  };
  const trouble: Part = { text: problem ? problemText(problem) : reportWords.noMapYet, tone: 'plain' };
  return {
    title: home.title,
    facts: factsOf(home, round, times),
    purpose: home.report.purpose,
    lead: assessment ? leadParts(home, assessment, target, change, supplyOff) : [trouble],
    plan: mainLevel === null ? null : frontPlan(asked, mainLevel),
    ...texts,
    cautionsAfter: cautionsAfter(home, texts, assessment?.rooms.length ?? 0),
    rooms: assessment && assessment.rooms.length > 0 ? roomsTable(home, assessment.rooms, asked) : null,
    manyRooms: isMany(assessment?.rooms.length ?? 0),
    sure: assessment
      ? sureSentences(home, assessment, readings, supplyOff)
      : [`${countText(readings.length, 'reading')}${metersOf(home, readings)}.`],
  };
}

/** The level that the finding speaks of: where the proposed bed stands, or the home's first. */
function frontPlan(asked: FrontRequest, mainLevel: Id): FrontPart['plan'] {
  const { home, round, assessment, change, target } = asked;
  const proposal = change?.proposal;
  const level = proposal?.pieces.find(({ id }) => id === proposal.about)?.level ?? mainLevel;
  const picture = assessment?.pictures.find((one) => one.level === level) ?? null;
  const proposed = !proposal || proposal.decision === 'stay' ? [] : proposal.pieces;
  const box = { width: PLAN_WIDTH, height: planHeight(assessment?.rooms.length ?? 0) };
  const sheet = pictureFor(houseBounds(home, level, readingsOf(home, level, round)), box);
  const moved = proposed.some(({ moves }) => moves);
  return {
    drawing: planDrawing({ home, level, round, picture, target, sheet, detailed: false, proposed }),
    note: planNote(home.levels[level]!.name, target, home.settings.fieldUnit, picture !== null, moved),
  };
}

function sureSentences(
  home: Home,
  { evidence, fitted }: Assessment,
  readings: readonly Reading[],
  supplyOff: boolean,
): string[] {
  const fallback = defaultModelSentence(fitted);
  return [
    ...evidenceSentences(evidence, metersOf(home, readings)),
    ...(fallback ? [fallback] : []),
    ...(supplyOff ? [] : [ONE_VISIT]),
  ];
}

const metersOf = (home: Home, readings: readonly Reading[]): string =>
  metersUsed(home, [...new Set(readings.flatMap((reading) => meterOf(home, reading)?.id ?? []))]);

/** The surveyor's findings stand beside the plan where they are no longer than it is high. */
const BESIDE_PLAN = 450;
const isShort = (texts: readonly string[]): boolean => texts.join('').length < BESIDE_PLAN;

// Sizes of type, CSS pixels, as in report.css; what stands round the words of the first page: rules, headings, gaps.
const BODY = { size: 13.6, line: 18.8, gap: 7 };
const SMALL = { size: 12.5, line: 17.3, gap: 8 };
const TITLE = { size: 33, line: 38, gap: 0 };
const ROUND_WORDS = 420;
const ROOM_ROW = { few: 28, many: 20 };

const isMany = (rooms: number): boolean => rooms > 8;

/** By about how high the first page's words stand, CSS pixels, a little generously. */
function cautionsAfter(
  home: Home,
  texts: Pick<FrontPart, 'found' | 'findings' | 'advice'>,
  rooms: number,
): FrontPart['cautionsAfter'] {
  const high = (paragraph: string, { size, line, gap }: typeof BODY, width: number) =>
    Math.ceil(textWidth(paragraph, { size }) / (0.92 * width)) * line + gap;
  const all = (paragraphs: readonly string[], width: number) =>
    paragraphs.reduce((total, paragraph) => total + high(paragraph, BODY, width), 0);
  const beside = all(texts.found, PAGE.width - PLAN_WIDTH - 28);
  const toPlan =
    ROUND_WORDS +
    high(home.title, TITLE, PAGE.width / 2) +
    (home.report.purpose ? high(home.report.purpose, SMALL, PAGE.width) : 0) +
    Math.max(planHeight(rooms), beside);
  if (toPlan > PAGE.height) return 'lead';
  const toRooms =
    toPlan +
    all([...texts.findings, ...texts.advice], PAGE.width) +
    rooms * ROOM_ROW[isMany(rooms) ? 'many' : 'few'];
  return toRooms > PAGE.height ? 'plan' : 'rooms';
}

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
