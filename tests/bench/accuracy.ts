import { fieldOf } from '../../src/engine/mapping/field';
import { fitSurvey } from '../../src/engine/mapping/fitSurvey';
import { HALF_90 } from '../../src/engine/mapping/interval';
import type { MethodChoice } from '../../src/engine/mapping/survey';
import { contains } from '../../src/engine/geometry/polygon';
import { knownHome, type KnownHome } from '../support/knownHomes';

/** How far maps lie from a known field. */
export interface Accuracy {
  homes: number;
  readings: number;
  /** Root mean square of log10 (estimate / truth) over a home's cells, over homes. */
  median: number;
  p90: number;
  worst: number;
  /** Share of truth inside the 90 % interval, mean over homes. */
  coverage: number;
  /** Mean width of that interval, log10 of high / low. */
  width: number;
  /** How often each method was taken. */
  methods: Record<string, number>;
}

const CELL = 0.4;
const HEIGHT = 1;

/** Map `homes` known homes (seeds 1, 2, …) from `readings` readings each and hold the maps against the true fields. */
export function measureAccuracy({
  homes = 40,
  readings = 36,
  method = 'auto',
}: { homes?: number; readings?: number; method?: MethodChoice } = {}): Accuracy {
  const methods: Record<string, number> = {};
  const each = Array.from({ length: homes }, (_, i) => {
    const { taken, ...measured } = measureHome(knownHome(i + 1, readings), method);
    methods[taken] = (methods[taken] ?? 0) + 1;
    return measured;
  });
  const errors = each.map(({ error }) => error).sort((a, b) => a - b);
  const at = (share: number) => {
    const place = share * (errors.length - 1);
    const below = Math.floor(place);
    const above = Math.min(below + 1, errors.length - 1);
    return errors[below] + (place - below) * (errors[above] - errors[below]);
  };
  return {
    homes,
    readings,
    median: at(0.5),
    p90: at(0.9),
    worst: at(1),
    coverage: mean(each.map(({ coverage }) => coverage)),
    width: mean(each.map(({ width }) => width)),
    methods,
  };
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

function measureHome(home: KnownHome, method: MethodChoice) {
  const result = fitSurvey({ readings: home.readings, method });
  if (!result.ok) throw new Error(`home ${home.seed}: ${result.problem.kind}`);
  const { xs, ys } = cells(home);
  const { mean: ln, variance } = fieldOf(result.fitted, 'l1', HEIGHT).predict(xs, ys, { variance: true });
  let square = 0;
  let inside = 0;
  let width = 0;
  xs.forEach((x, i) => {
    const off = ln[i] - Math.log(home.truth(x, ys[i], HEIGHT));
    const half = HALF_90 * Math.sqrt(variance![i]);
    square += (off / Math.LN10) ** 2;
    if (Math.abs(off) <= half) inside++;
    width += (2 * half) / Math.LN10;
  });
  return {
    error: Math.sqrt(square / xs.length),
    coverage: inside / xs.length,
    width: width / xs.length,
    taken: result.fitted.method,
  };
}

/** Middles of cells that lie in a room. */
function cells({ rooms }: KnownHome): { xs: number[]; ys: number[] } {
  const xs: number[] = [];
  const ys: number[] = [];
  const corners = rooms.flat();
  for (let x = CELL / 2; x < Math.max(...corners.map(([cx]) => cx)); x += CELL) {
    for (let y = CELL / 2; y < Math.max(...corners.map(([, cy]) => cy)); y += CELL) {
      if (!rooms.some((room) => contains(room, [x, y]))) continue;
      xs.push(x);
      ys.push(y);
    }
  }
  return { xs, ys };
}
