import { describe, expect, it } from 'vitest';
import { BUILDS, type BuildName } from '../../support/generators/builds';
import { fitSurvey, type EvidenceRow } from '../../../src/engine/mapping/fitSurvey';
import { isInside, secondLooks } from '../../../src/engine/mapping/secondLook';
import { random } from '../../../src/engine/algebra/random';
import { UNMARKED } from '../../support/readings';

const HOMES = 20;

/** How many slips by `factor` are asked about, of one a home, and how many other readings with them. */
function asked(build: BuildName, count: number, factor: number) {
  let [slips, others] = [0, 0];
  for (let seed = 0; seed < HOMES; seed++) {
    const { readings } = BUILDS[build](seed, count);
    const wrong = random(99 + seed).below(count);
    const typed = readings.map((one, i) => (i === wrong ? { ...one, value: factor * one.value } : one));
    const fit = fitSurvey({ ...UNMARKED, readings: typed, method: 'auto' });
    if (!fit.ok) throw new Error(fit.problem.kind);
    for (const { ids } of secondLooks(fit.evidence.rows))
      if (factor !== 1 && ids.includes(readings[wrong].id)) slips++;
      else others++;
  }
  return { slips, others };
}

describe('readings that deserve a second look', () => {
  it.each([
    ['no current', 36, 0.95],
    ['no current', 12, 0.5],
    ['along walls', 36, 0.75],
  ] as const)('%s, %i readings: a slip of unit is found in most homes', (build, count, share) => {
    expect(asked(build, count, 10).slips).toBeGreaterThanOrEqual(share * HOMES);
  });

  it('nearly never in a smooth field that was read well', () => {
    for (const count of [12, 36]) expect(asked('no current', count, 1).others).toBeLessThanOrEqual(2);
  });

  const row = (i: number, read: number): EvidenceRow => ({
    ids: [`m${i}`],
    level: 'l1',
    at: [i, 0],
    read,
    predicted: 0.1,
    low: 0.05,
    high: 0.2,
  });
  // Errors of all signs and sizes, root mean square near half a standard deviation.
  const quiet = Array.from({ length: 20 }, (_, i) => row(i, 0.1 * 1.25 ** Math.sin(3 * i)));

  it('stand furthest off first', () => {
    const wide = [...quiet, ...quiet.map(({ read }, i) => row(30 + i, read))];
    const rows = [...wide, row(90, 0.4), row(91, 0.02), row(92, 0.21)];
    expect(secondLooks(rows).map(({ ids }) => ids[0])).toEqual(['m91', 'm90']);
  });

  it('accuse no neighbour of a wild reading, which spoils what they are predicted as', () => {
    expect(asked('no current', 36, 10).others).toBe(0);
  });

  it('are none of those that lie inside their interval, however quiet the rest', () => {
    const still = quiet.map((one, i) => ({ ...one, read: 0.1 + i * 1e-6 }));
    expect(secondLooks([...still, row(20, 0.19)])).toEqual([]);
    expect(isInside(row(20, 0.19))).toBe(true);
  });

  it('are none where too few were read to tell what is usual, or nothing is open', () => {
    expect(secondLooks([row(1, 0.1), row(2, 0.11), row(3, 5)])).toEqual([]);
    expect(secondLooks(quiet.map((one) => ({ ...one, low: 0.1, high: 0.1 })))).toEqual([]);
    expect(secondLooks([])).toEqual([]);
  });
});
