import { leadOf } from '../../words/arranging';
import type { AssessRequest, Assessment } from '../../engine/assess';
import type { ComparedArrangement } from '../../engine/whatIf/compareArrangements';
import type { Proposal } from '../../engine/arranging/arrange';
import { GUIDELINES } from '../../engine/judging/guidelines';
import type { Profile } from '../../engine/judging/profile';
import type { Home, Id } from '../../home/home';
import type { Problem } from '../../home/problem';
import { inOrder } from '../../home/order';
import type { ArrangeWishes } from '../../home/questions/arrangeQuestion';
import { guidelineOf } from '../../home/questions/guidelineOf';
import { guidelineSentence } from '../../words/assessment';
import { cautions, LIMITS, type Caution } from '../../words/cautions';
import { arrangementsTable } from './arrangementsTable';
import { arrangementPart, type ArrangementPart } from './arrangementPart';
import { basisPart, dosesTable, drawnProfiles, edgesTable, type BasisPart, type Titled } from './basisPart';
import { evidencePart, type EvidencePart } from './evidencePart';
import { frontPart, type FrontPart } from './frontPart';
import { furnitureChange } from './furnitureChange';
import { mapPart, type MapPart } from './mapPart';
import { metersTable } from './metersTable';
import { readingsOf } from './planDrawing';
import type { Table } from './table';

/** What the report is made from: the home, and what has been worked out for it. */
export interface ReportRequest {
  home: Home;
  round: Id;
  assessment: Assessment | null;
  request: AssessRequest | null;
  proposal: Proposal | null;
  /** How the proposal's places were looked for. */
  wishes: ArrangeWishes;
  /** The kept arrangements beside each other; null while they are worked out. */
  compared?: readonly ComparedArrangement[] | null;
  /** Why there is no assessment; null while one is being worked out. */
  problem: Problem | null;
}

/** Everything that is printed, as data. */
export interface ReportModel {
  front: FrontPart;
  maps: MapPart[];
  arrangement: ArrangementPart | null;
  arrangements: Titled | null;
  doses: Table | null;
  profiles: Profile[];
  evidence: EvidencePart | null;
  meters: Table | null;
  guideline: string;
  edges: Titled;
  basis: BasisPart;
  limits: readonly Caution[];
  cautions: Caution[];
}

/** The whole report of one round. Where nothing could be assessed, what is known is printed all the same. */
export function reportModel(asked: ReportRequest): ReportModel {
  const { home, round, assessment, request, proposal } = asked;
  const guideline = request?.guideline ?? guidelineOf(home, home.settings.guideline) ?? GUIDELINES[0]!;
  const target = request?.target ?? home.settings.target;
  const change = furnitureChange(home, assessment, proposal, asked.wishes.aim);
  const levels = inOrder(home.levels)
    .map(({ id }) => id)
    .filter(
      (level) =>
        inOrder(home.rooms).some((room) => room.level === level) || readingsOf(home, level, round).length > 0,
    );
  const lead = change && leadOf(change.answer, change.about);
  // The first page shows the floor that it speaks of.
  const frontLevel = levels.find((level) => level === lead?.level) ?? levels[0] ?? null;
  return {
    front: frontPart({ ...asked, change, guideline, target }, frontLevel),
    maps: levels.map((level) => mapPart({ home, round, assessment, request, guideline, target }, level)),
    arrangement: assessment && change && arrangementPart(change, round, assessment, target, asked.wishes),
    arrangements: arrangementsTable(home, asked.compared ?? null),
    doses: assessment && dosesTable(home, assessment),
    profiles: drawnProfiles(home, assessment),
    evidence: assessment && evidencePart(home, assessment),
    meters: Object.keys(home.meters).length > 0 ? metersTable(home) : null,
    guideline: guidelineSentence(guideline, request?.supplyOff),
    edges: edgesTable(guideline, home),
    basis: basisPart(home, round, assessment, request, proposal && asked.wishes.cautious),
    limits: LIMITS,
    cautions: cautions(home.settings.fieldUnit),
  };
}
