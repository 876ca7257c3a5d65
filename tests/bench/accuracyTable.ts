import { BUILDS, type BuildName } from '../support/generators/builds';
import { FULL_EFFORT } from '../../src/engine/mapping/sourceSampling/question';
import { measureMethods, type Accuracy } from './accuracy';

const UNMARKED = ['inverse-distance', 'kriging', 'source-sampling', 'auto'] as const;
const MARKED = ['source-kriging', 'source-sampling', 'auto'] as const;

/**
 * Every method on every build, each line printed as it is done: with 36 readings, and of the first build by readings. `only`
 * names the builds asked for.
 */
export function printAccuracyTable(only: readonly string[] = [], homes = 60): void {
  const asked = (build: BuildName) => only.length === 0 || only.includes(build);
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
      'drawn',
      'cover',
      'bed, % median',
      'p90',
      'cover',
      'fit, ms',
      'drawn by',
    ),
  );
  for (const build of Object.keys(BUILDS) as BuildName[]) if (asked(build)) printBuild(build, 36, homes);
  if (asked('along walls')) for (const readings of [12, 24, 60]) printBuild('along walls', readings, homes);
}

function printBuild(build: BuildName, readings: number, homes: number): void {
  for (const [marked, methods] of [
    [false, UNMARKED],
    [true, MARKED],
  ] as const) {
    const measured = measureMethods({ build, homes, readings, marked, effort: FULL_EFFORT }, methods);
    methods.forEach((method, m) =>
      console.log(rowOf(build, readings, `${method}${marked ? ', marked' : ''}`, measured[m])),
    );
  }
}

const rowOf = (build: BuildName, readings: number, method: string, measured: Accuracy): string => {
  const { median, p90, worst, coverage, width, shown, shownCoverage, fitMs, chosen } = measured;
  return row(
    build,
    String(readings),
    method,
    median.toFixed(3),
    p90.toFixed(3),
    `${worst.error.toFixed(3)} (${worst.seed})`,
    coverage.toFixed(3),
    width.toFixed(2),
    shown.toFixed(3),
    shownCoverage.toFixed(3),
    (100 * measured.bedMedian).toFixed(1),
    (100 * measured.bedP90).toFixed(1),
    measured.bedCoverage.toFixed(3),
    fitMs.toFixed(0),
    Object.entries(chosen)
      .map(([name, count]) => `${name} ${count}`)
      .join(', '),
  );
};

const WIDTHS = [13, 9, 25, 7, 7, 13, 6, 6, 6, 6, 15, 7, 6, 8, 0];
const row = (...columns: string[]): string =>
  columns
    .map((text, i) => text.padEnd(WIDTHS[i]))
    .join('')
    .trimEnd();
