import { COMMON_METER } from '../../../src/engine/survey/meter';
import { RULE_DEFAULTS } from '../../../src/engine/arranging/ruleSettings';
import { fitSurvey, type FittedSurvey } from '../../../src/engine/mapping/fitSurvey';
import type {
  ArrangeOpening,
  ArrangePiece,
  ArrangeRequest,
  ArrangeRoom,
} from '../../../src/engine/arranging/request';
import type { Point, Ring } from '../../../src/engine/geometry/point';
import type { SurveyReading } from '../../../src/engine/mapping/survey';
import { UNMARKED } from '../../support/readings';

/** Readings of a known field, µT, on a lattice over a box of one level. */
export function readingsOf(
  field: (x: number, y: number) => number,
  [x0, y0, x1, y1]: readonly [number, number, number, number],
  spacing = 1,
  level = 'l1',
): SurveyReading[] {
  const readings: SurveyReading[] = [];
  for (let y = y0 + spacing / 2; y < y1; y += spacing) {
    for (let x = x0 + spacing / 2; x < x1; x += spacing) readings.push(readingAt([x, y], field(x, y), level));
  }
  return readings;
}

export const readingAt = (at: Point, value: number, level = 'l1'): SurveyReading => ({
  id: `m-${level}-${at[0].toFixed(3)}-${at[1].toFixed(3)}`,
  level,
  at,
  height: 1,
  value,
  meter: { ...COMMON_METER, percent: 3, absolute: 0, resolution: 0.0001, range: [0.0005, 200] },
  limit: null,
  min: null,
  max: null,
  peak: false,
});

export function fitted(readings: SurveyReading[]): FittedSurvey {
  const fit = fitSurvey({ ...UNMARKED, readings, method: 'auto' });
  if (!fit.ok) throw new Error(fit.problem.kind);
  return fit.fitted;
}

export const box = (x0: number, y0: number, x1: number, y1: number): Ring => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

export const room = (id: string, outline: Ring, use = 'sleeping', level = 'l1'): ArrangeRoom => ({
  id,
  level,
  use,
  outline,
});

export const door = (
  room: string,
  wall: number,
  offset: number,
  more: Partial<ArrangeOpening> = {},
): ArrangeOpening => ({
  id: `door-${room}-${wall}`,
  room,
  kind: 'door',
  wall,
  offset,
  width: 0.8,
  hinge: 'start',
  swing: 'in',
  ...more,
});

export const bed = (more: Partial<ArrangePiece> = {}): ArrangePiece => ({
  id: 'bed',
  kind: 'bed',
  level: 'l1',
  at: [1, 1.2],
  angle: 0,
  size: [0.9, 2],
  height: 0.6,
  uses: [{ who: 'A', side: 'middle', hours: 8 }],
  locked: false,
  mayStandIn: null,
  access: { left: 0.75, right: 0, foot: 0 },
  ...more,
});

export const desk = (more: Partial<ArrangePiece> = {}): ArrangePiece => ({
  ...bed(),
  id: 'desk',
  kind: 'desk',
  size: [1.2, 0.6],
  height: 1,
  uses: [{ who: 'A', side: 'middle', hours: 4 }],
  access: { left: 0, right: 0, foot: 0.9 },
  ...more,
});

export const request = (
  more: Partial<ArrangeRequest> & Pick<ArrangeRequest, 'fitted' | 'rooms'>,
): ArrangeRequest => ({
  openings: [],
  fixtures: [],
  pieces: [],
  rules: RULE_DEFAULTS,
  aim: 'mean',
  cautious: false,
  step: 0.1,
  budget: 2_000_000,
  ...more,
});
