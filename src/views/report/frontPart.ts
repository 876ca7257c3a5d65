import type { GuidelineSet } from '../../engine/judging/guidelines';
import type { RoomFigures } from '../../engine/judging/rooms';
import type { Home, Id } from '../../home/home';
import { inOrder } from '../../home/order';
import { classText, defaultModelSentence, evidenceSentences } from '../../words/assessment';
import { dateText, spanText } from '../../words/dates';
import { edgeText } from '../../words/canvas';
import { fieldText, intervalText, percentText, unitName } from '../../words/numbers';
import { problemText } from '../../words/problems';
import {
  foundSentences,
  isJudged,
  leadParts,
  meterOf,
  metersUsed,
  ONE_VISIT,
  planNote,
  reportWords,
  type Part,
} from '../../words/report';
import { ROOM_USES } from '../../words/things';
import type { Drawing } from './drawing';
import { houseBounds } from './planBounds';
import { MM, pictureFor } from './paper';
import { planDrawing, readingsOf } from './planDrawing';
import type { ReportRequest } from './reportModel';
import type { Table } from './table';

/** The first page: the finding in one sentence, the plan, what was found, the rooms, how sure. */
export interface FrontPart {
  title: string;
  /** Where, when, for whom and by whom. */
  facts: string[];
  purpose: string;
  lead: Part[];
  plan: Drawing;
  planNote: string;
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

export function frontPart(asked: FrontRequest, mainLevel: Id): FrontPart {
  const { home, round, assessment, proposal, target } = asked;
  const about = proposal?.pieces.find(({ id }) => id === proposal.about);
  const level = about?.level ?? mainLevel;
  const readings = inOrder(home.levels).flatMap(({ id }) => readingsOf(home, id, round));
  const picture = assessment?.pictures.find((one) => one.level === level) ?? null;
  const proposed = proposal?.decision === 'stay' ? [] : (proposal?.pieces ?? []);
  const problem = problemText({
    kind: 'too-few-readings',
    have: readings.filter(({ excluded }) => !excluded).length,
    need: 3,
  });
  const shownReadings = readings.filter((reading) => reading.level === level);
  return {
    title: home.title,
    facts: factsOf(
      home,
      round,
      readings.flatMap(({ time }) => time ?? []),
    ),
    purpose: home.report.purpose,
    lead: assessment ? leadParts(home, assessment, target, proposal) : [{ text: problem, tone: 'plain' }],
    plan: planDrawing({
      home,
      level,
      round,
      picture,
      target,
      sheet: pictureFor(houseBounds(home, level, shownReadings), {
        width: PLAN_WIDTH,
        height: planHeight(assessment?.rooms.length ?? 0),
      }),
      detailed: false,
      proposed,
    }),
    planNote: planNote(
      home.levels[level]!.name,
      target,
      home.settings.fieldUnit,
      picture !== null,
      proposed.some(({ moves }) => moves),
    ),
    found: [
      ...paragraphs(home.report.findings),
      ...(assessment ? foundSentences(home, assessment, target) : []),
    ],
    advice: paragraphs(home.report.advice),
    rooms: assessment && assessment.rooms.length > 0 ? roomsTable(home, assessment.rooms, asked) : null,
    sure: [
      ...(assessment
        ? evidenceSentences(
            assessment.evidence,
            metersUsed(home, [...new Set(readings.flatMap((reading) => meterOf(home, reading)?.id ?? []))]),
          )
        : []),
      ...[assessment && defaultModelSentence(assessment.fitted)].filter((sentence) => sentence !== null),
      ONE_VISIT,
    ],
  };
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

/** Sleeping rooms first, then high to low; grounds last. */
function roomsTable(home: Home, figures: readonly RoomFigures[], { guideline, target }: FrontRequest): Table {
  const unit = home.settings.fieldUnit;
  const rank = (room: RoomFigures) => ({ sleeping: 0, grounds: 2 })[home.rooms[room.id]!.use as string] ?? 1;
  const right = true as const;
  return {
    heads: [
      { text: 'room', strong: true },
      { text: 'use' },
      { text: `middle, ${unitName(unit)}`, right },
      { text: '90\u2009% interval', right },
      { text: '95\u2009% below', right },
      { text: `over ${edgeText(target, unit)}`, right },
      { text: guideline.name },
    ],
    rows: figures
      .toSorted((a, b) => rank(a) - rank(b) || b.median - a.median)
      .map((room) => {
        const { name, use } = home.rooms[room.id]!;
        if (!isJudged(room))
          return [name || room.id, ROOM_USES[use], '—', '—', '—', '—', reportWords.notJudged];
        return [
          name || room.id,
          ROOM_USES[use],
          fieldText(room.median, unit),
          intervalText(room.low, room.high, unit),
          fieldText(room.p95, unit),
          percentText(room.overTarget),
          classText(room.class),
        ];
      }),
  };
}
