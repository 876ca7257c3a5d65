import {
  answersPass,
  equalToEverything,
  goodAreaTiming,
  othersEqualEverything,
  relaxTiming,
} from './arrangeTruth';
import { arrangeTimings, pairTiming, type Spread } from './arrangePeer';
import { knownFields } from './arrangeKnown';

const ms = (value: number) => `${value < 10 ? value.toFixed(1) : value.toFixed(0)} ms`;
const three = ({ median, p95, worst }: Spread) => `${ms(median)} / ${ms(p95)} / ${ms(worst)}`;
const share = (value: number) => `${(100 * value).toFixed(1)} %`;

/** Arranging: how long, how right, and how well on fields that are known. CPU time; median / p95 / worst. */
export function printArrangeTable(homes = 100): void {
  const pairs = pairTiming();
  console.log(
    `\nSearch for bed + desk, ${pairs.homes} homes, ${pairs.pairs} pairs at the median: ${pairs.searchMs.toFixed(2)} ms, every pair ${ms(pairs.enumerationMs)} (${pairs.ratio.toFixed(0)} ×), equal in ${pairs.equal}`,
  );
  for (const { what, homes: n, best, more, proven, infeasible } of arrangeTimings(homes))
    console.log(
      `${what}, ${n} homes: best ${three(best)}; odds, rooms, others, second look ${three(more)} more; proven ${proven}, of them nothing fits in ${infeasible}`,
    );
  const relax = relaxTiming();
  console.log(
    `What to give up, ${relax.homes} homes too small, helped ${relax.helped}: all of it ${three(relax.ms)}`,
  );
  const area = goodAreaTiming();
  console.log(`Good area of a bed, ${area.homes} homes: ${three(area.ms)}`);
  const known = knownFields(Math.max(60, homes));
  console.log(
    `\nA bed put by 36 readings of known fields, ${known[0].homes} homes: regret median, p90; moves that made it worse`,
  );
  for (const row of known)
    console.log(
      `  ${row.method.padEnd(20)} ${share(row.regret)}, ${share(row.regretP90)}; advised ${row.advised}, worse ${share(row.advisedWorse)}, gain ${share(row.gain)}; always ${row.always}, worse ${share(row.alwaysWorse)}`,
    );
}

/** Against the planner that tries everything, and the second look: minutes of work. */
export function printArrangeTruth(): void {
  const exact = equalToEverything();
  console.log(
    `Equal to trying everything: ${exact.equal} of ${exact.homes} small homes, ${exact.fitting} of them with room for all`,
  );
  const others = othersEqualEverything();
  console.log(`Other answers equal to trying everything: ${others.equal} of ${others.homes}`);
  const pass = answersPass();
  console.log(`Second look: ${pass.passed} of ${pass.answers} answers of ${pass.homes} homes pass`);
}
