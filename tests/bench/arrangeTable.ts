import { loadavg } from 'node:os';
import { answersPass, equalToEverything, othersEqualEverything } from './arrangeTruth';
import { asBuilt } from './asBuilt';
import { knownFields } from './arrangeKnown';
import type { ArrangeTiming, goodAreaTiming, PairTiming, relaxTiming, Spread } from './arrangePeer';

interface Speed {
  pairs: PairTiming;
  timings: ArrangeTiming[];
  relax: ReturnType<typeof relaxTiming>;
  area: ReturnType<typeof goodAreaTiming>;
}

const ms = (value: number) => `${value < 10 ? value.toFixed(1) : value.toFixed(0)} ms`;
const three = ({ median, p95, worst }: Spread) => `${ms(median)} / ${ms(p95)} / ${ms(worst)}`;
const share = (value: number) => `${(100 * value).toFixed(1)} %`;

/** Arranging: how long, as built, and how well on fields that are known. Time of the thread; median / p95 / worst. */
export async function printArrangeTable(homes = 100): Promise<void> {
  await printArrangeSpeed(homes);
  printKnownFields(homes);
}

async function printArrangeSpeed(homes = 100): Promise<void> {
  const { pairs, timings, relax, area } = await asBuilt<Speed>('arrangeSpeed.ts', homes);
  console.log(
    `\nSearch for bed + desk, ${pairs.homes} homes, ${pairs.pairs} pairs at the median: ${pairs.searchMs.toFixed(2)} ms, every pair ${ms(pairs.enumerationMs)} (${pairs.ratio.toFixed(0)} ×), equal in ${pairs.equal}`,
  );
  console.log(
    'Questions about a map that was asked about before, quickest of three; its ground is made once:',
  );
  for (const { what, homes: n, ground, best, more, proven, infeasible } of timings)
    console.log(
      `${what}, ${n} homes: best ${three(best)}; odds, rooms, others, second look ${three(more)} more; once a map ${three(ground)}; proven ${proven}, of them nothing fits in ${infeasible}`,
    );
  console.log(
    `What to give up, ${relax.homes} homes too small, helped ${relax.helped}: all of it ${three(relax.ms)}`,
  );
  console.log(`Good area of a bed, ${area.homes} homes: ${three(area.ms)}`);
  console.log(
    `Load: ${loadavg()
      .map((load) => load.toFixed(1))
      .join(', ')}`,
  );
}

/** How a bed fares that is put by a map of readings. */
function printKnownFields(homes: number): void {
  const known = knownFields(homes);
  console.log(
    `\nA bed put by 36 readings of known fields, three places a home: regret median, p90; moves that made it worse:`,
  );
  for (const row of known)
    console.log(
      `  ${row.method.padEnd(24)} ${row.homes} homes: ${share(row.regret)}, ${share(row.regretP90)}; moves advised: ${row.advised}, worse: ${row.advisedWorse}, gain ${share(row.gain)}; always moving: ${row.alwaysWorse} worse of ${row.always}`,
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
  console.log(
    `Second look: ${pass.answers} answers of ${pass.homes} homes, ${pass.faults.length} with faults`,
  );
  for (const fault of pass.faults) console.log(`  ${fault}`);
}
