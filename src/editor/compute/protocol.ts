import type { ArrangeRequest } from '../../engine/arranging/request';
import type { Answer, Proposal } from '../../engine/arranging/arrange';
import type { GoodArea } from '../../engine/arranging/goodArea';
import type { RulePrice } from '../../engine/arranging/prices';
import type { Put } from '../../engine/arranging/place';
import type {
  AssessLevel,
  AssessPiece,
  PieceDose,
  AssessRequest,
  Assessment,
  LevelPicture,
} from '../../engine/assess';
import type { ComparedArrangement, CompareRequest } from '../../engine/whatIf/compareArrangements';
import type { Supposed, WhatIfRequest } from '../../engine/whatIf/assessWhatIf';
import type { FittedSurvey } from '../../engine/mapping/fitSurvey';
import type { NextReadings, NextRequest } from '../../engine/nextReadings/request';
import type { Sampled } from '../../engine/mapping/sourceSampling/sampleSurvey';
import type { SourceSamples } from '../../engine/mapping/sourceSampling/samples';
import type { Survey } from '../../engine/mapping/survey';
import type { Problem } from '../../home/problem';

/** What is sent to a worker. `key` comes back with every reply, so that late ones can be told. */
export type Ask =
  | { ask: 'assess'; key: number; request: AssessRequest; sampled: Sampled | null }
  /** Samples of the sources behind a survey, from those of nearly the same one where there are: seconds of work. */
  | { ask: 'sample'; key: number; survey: Survey; start?: SourceSamples }
  /** A picture of one level without uncertainty, for every frame of a gesture. */
  | {
      ask: 'picture';
      key: number;
      fitted: FittedSurvey;
      survey: Survey;
      level: AssessLevel;
    }
  /** The doses of pieces that are being carried. */
  | { ask: 'doses'; key: number; fitted: FittedSurvey; pieces: AssessPiece[] }
  | { ask: 'arrange'; key: number; request: ArrangeRequest }
  /** What each rule costs, at the same request. */
  | { ask: 'prices'; key: number; request: ArrangeRequest }
  /** What places chosen by hand are worth, and which rules they break. */
  | { ask: 'judge'; key: number; request: ArrangeRequest; puts: readonly Put[] }
  | { ask: 'next'; key: number; request: NextRequest }
  /** The home as it would be with some sources changed. */
  | { ask: 'whatIf'; key: number; request: WhatIfRequest }
  /** What the arrangements of a home are worth beside each other. */
  | { ask: 'compare'; key: number; request: CompareRequest }
  /** The dose of a piece at every place where it may stand, turned as it is. */
  | { ask: 'good'; key: number; request: ArrangeRequest; id: string; angle: number };

export interface Answers {
  assess: Assessment;
  sample: Sampled;
  picture: LevelPicture;
  doses: PieceDose[];
  arrange: Proposal;
  prices: RulePrice[];
  judge: Answer;
  good: GoodArea;
  next: NextReadings;
  whatIf: Supposed;
  compare: ComparedArrangement[];
}

export type Reply =
  /** `least`: the least dose met by a search. */
  | { reply: 'progress'; key: number; share: number; least?: number }
  | { reply: 'done'; key: number; answer: Answers[Ask['ask']] }
  | { reply: 'problem'; key: number; problem: Problem };
