import { BUILDS, type BuildName } from '../support/generators/builds';
import { measureAccuracy, type Asked } from './accuracy';

const METHODS = [
  { method: 'inverse-distance', marked: false },
  { method: 'kriging', marked: false },
  { method: 'source-sampling', marked: false },
  { method: 'source-kriging', marked: true },
  { method: 'source-sampling', marked: true },
  { method: 'auto', marked: true },
] as const;

/** One line a measurement, printed as it is done: every method on every build, then the first build by readings. */
export function printAccuracyTable(homes = 40): void {
  console.log(
    `\nMaps of ${homes} known homes each: root mean square of log10(estimate / truth); cover and width of the 90 % interval`,
  );
  console.log(
    row('build', 'readings', 'method', 'median', 'p90', 'worst (home)', 'cover', 'width', 'fit, ms'),
  );
  for (const build of Object.keys(BUILDS) as BuildName[])
    for (const method of METHODS) printRow({ build, homes, readings: 36, ...method });
  for (const readings of [12, 24, 60])
    for (const method of METHODS) printRow({ build: 'along walls', homes, readings, ...method });
}

function printRow(asked: Required<Omit<Asked, 'effort'>>): void {
  const { median, p90, worst, coverage, width, fitMs } = measureAccuracy(asked);
  const method = `${asked.method}${asked.marked ? ', marked' : ''}`;
  const worstHome = `${worst.error.toFixed(3)} (${worst.seed})`;
  const [cover, wide] = [coverage.toFixed(3), width.toFixed(2)];
  console.log(
    row(
      asked.build,
      String(asked.readings),
      method,
      median.toFixed(3),
      p90.toFixed(3),
      worstHome,
      cover,
      wide,
      fitMs.toFixed(0),
    ),
  );
}

const WIDTHS = [13, 9, 25, 7, 7, 13, 6, 6, 8];
const row = (...columns: string[]): string => columns.map((text, i) => text.padEnd(WIDTHS[i])).join('');
