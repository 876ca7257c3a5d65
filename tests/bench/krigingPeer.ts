import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { krige, kriged, krigedMean } from '../../src/engine/mapping/kriging';
import { krigedWithout } from '../../src/engine/mapping/krigedWithout';
import { random } from '../../src/engine/algebra/random';
import type { Place } from '../../src/engine/mapping/observations';
import type { Variogram } from '../../src/engine/mapping/variogram';

const SCRIPT = fileURLToPath(new URL('kriging.R', import.meta.url));
const MODEL: Variogram = { model: 'exponential', nugget: 0.02, sill: 0.5, range: 3 };
const ROUNDS = 7;

/** Before time is taken, so that what is measured is the compiled code, as gstat's is. */
const WARM_UP = 12;

/** One piece of work, timed here and, where R is installed, in gstat, on the same data in the same run; milliseconds of CPU. */
interface PeerTiming {
  work: string;
  ms: number;
  peerMs: number | null;
  /** peer ÷ ours: how many times faster. */
  ratio: number | null;
}

export interface PeerReport {
  timings: PeerTiming[];
  /** Largest difference between our and gstat's estimates and variances; null without R. */
  disagreement: number | null;
  /** Why there is nothing to compare with. */
  absent: string | null;
}

/** Kriging mean and variance, mean alone, and leave-one-out, for each number of readings, at m points of a home. */
export function krigingPeer(readings: readonly number[] = [60, 200], m = 20_000): PeerReport {
  const absent = whyAbsent();
  const timings: PeerTiming[] = [];
  let disagreement: number | null = null;
  for (const n of readings) {
    const { data, points } = survey(n, m);
    const noise = new Float64Array(n);
    const both = () => kriged(krige({ ...data, noise }, MODEL), points);
    const places = placesOf(data);
    const ours = {
      both: medianMs(both),
      mean: medianMs(() => krigedMean(krige({ ...data, noise }, MODEL), points)),
      without: medianMs(() => krigedWithout(places, MODEL)),
    };
    const peer = absent === null ? gstat(data, points) : null;
    if (peer) {
      const { mean, variance } = both();
      const differences = peer.rows.flatMap(([estimate, error], i) => [
        Math.abs(estimate - mean[i]),
        Math.abs(error - variance[i]),
      ]);
      disagreement = differences.reduce((most, difference) => Math.max(most, difference), disagreement ?? 0);
    }
    const timing = (work: string, ms: number, peerMs: number | null): PeerTiming => ({
      work: `${work}, n=${n}${work.startsWith('leave') ? '' : `, m=${m}`}`,
      ms,
      peerMs,
      ratio: peerMs === null ? null : peerMs / ms,
    });
    timings.push(
      timing('kriging mean + variance', ours.both, peer?.kriging ?? null),
      // gstat has no way to leave the variance out.
      timing('kriging mean alone', ours.mean, peer?.kriging ?? null),
      timing('leave-one-out', ours.without, peer?.without ?? null),
    );
  }
  return { timings, disagreement, absent };
}

type Data = Record<'xs' | 'ys' | 'values', Float64Array>;
type Points = Record<'xs' | 'ys', Float64Array>;

/** Readings strewn over a home of 20 × 10 m, and the centres of its cells. */
function survey(n: number, m: number): { data: Data; points: Points } {
  const chance = random(n);
  const xs = Float64Array.from({ length: n }, () => chance.between(0, 20));
  const ys = Float64Array.from({ length: n }, () => chance.between(0, 10));
  const values = xs.map((x, i) => Math.sin(x / 3) + ys[i] / 5 + 0.1 * chance.normal());
  const columns = Math.round(Math.sqrt(2 * m));
  const step = 20 / columns;
  return {
    data: { xs, ys, values },
    points: {
      xs: Float64Array.from({ length: m }, (_, i) => ((i % columns) + 0.5) * step),
      ys: Float64Array.from({ length: m }, (_, i) => (Math.floor(i / columns) + 0.5) * step),
    },
  };
}

const placesOf = ({ xs, ys, values }: Data): Place[] =>
  Array.from(xs, (x, i) => ({
    level: 'l1',
    x,
    y: ys[i],
    height: 1,
    ln: values[i],
    variance: 0,
    limited: false,
    ids: [`m${i + 1}`],
  }));

function medianMs(work: () => unknown): number {
  for (let i = 0; i < WARM_UP; i++) work();
  const times = Array.from({ length: ROUNDS }, () => {
    const start = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1000;
  }).sort((a, b) => a - b);
  return times[ROUNDS >> 1];
}

function whyAbsent(): string | null {
  try {
    execFileSync('Rscript', ['-e', 'library(gstat); library(sp)'], { stdio: 'ignore' });
    return null;
  } catch {
    return 'R with its packages gstat and sp is not installed here, so there is nothing to compare with.';
  }
}

function gstat({ xs, ys, values }: Data, points: Points) {
  const folder = mkdtempSync(join(tmpdir(), 'stillroom-bench-'));
  try {
    const file = join(folder, 'data.txt');
    const lines = [
      [xs.length, points.xs.length, MODEL.nugget, MODEL.sill, MODEL.range, ROUNDS],
      ...Array.from(xs, (x, i) => [x, ys[i], values[i]]),
      ...Array.from(points.xs, (x, i) => [x, points.ys[i]]),
    ];
    writeFileSync(file, lines.map((line) => line.join(' ')).join('\n'));
    const [first, ...rest] = execFileSync('Rscript', [SCRIPT, file], { encoding: 'utf8', maxBuffer: 2 ** 26 })
      .trim()
      .split('\n')
      .map((line) => line.split(' ').map(Number));
    return { kriging: first[0], without: first[1], rows: rest };
  } finally {
    rmSync(folder, { recursive: true });
  }
}
