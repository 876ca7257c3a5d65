import { BUILDS, type BuildName } from '../support/generators/builds';
import { measureAccuracy, type Asked } from './accuracy';

const METHODS = [
  { method: 'inverse-distance', marked: false },
  { method: 'kriging', marked: false },
  { method: 'source-sampling', marked: false },
  { method: 'source-kriging', marked: true },
  { method: 'source-sampling', marked: true },
  { method: 'auto', marked: false },
  { method: 'auto', marked: true },
] as const;

/** One line a measurement, printed as it is done: every method on every build, then the first build by readings. */
export function printAccuracyTable(homes = 40): void {
  console.log(
    `\nMaps of ${homes} known homes each: root mean square of log10(estimate / truth); cover and width of the 90 % interval`,
  );
  console.log(
    row(
      'build',
      'readings',
      'method',
      'median',
      'p90',
      'worst (home)',
      'cover',
      'width',
      'bed, % median',
      'p90',
      'cover',
      'fit, ms',
    ),
  );
  for (const build of Object.keys(BUILDS) as BuildName[])
    for (const method of METHODS) printRow({ build, homes, readings: 36, ...method });
  for (const readings of [12, 24, 60])
    for (const method of METHODS) printRow({ build: 'along walls', homes, readings, ...method });
}

function printRow(asked: Required<Omit<Asked, 'effort'>>): void {
  const measured = measureAccuracy(asked);
  const { median, p90, worst, coverage, width, fitMs } = measured;
  console.log(
    row(
      asked.build,
      String(asked.readings),
      `${asked.method}${asked.marked ? ', marked' : ''}`,
      median.toFixed(3),
      p90.toFixed(3),
      `${worst.error.toFixed(3)} (${worst.seed})`,
      coverage.toFixed(3),
      width.toFixed(2),
      (100 * measured.bedMedian).toFixed(1),
      (100 * measured.bedP90).toFixed(1),
      measured.bedCoverage.toFixed(3),
      fitMs.toFixed(0),
    ),
  );
}

const WIDTHS = [13, 9, 25, 7, 7, 13, 6, 6, 15, 7, 6, 8];
const row = (...columns: string[]): string => columns.map((text, i) => text.padEnd(WIDTHS[i])).join('');
