import { cpus } from 'node:os';
import { measureDrag } from './dragFrame';
import { firstLoad } from './firstLoad';
import { krigingPeer } from './krigingPeer';

/** Speed as a ratio to a peer of the same run. */
export async function printSpeedTable(): Promise<void> {
  const rows: [work: string, ours: string, peer: string, ratio: string][] = [];
  const ms = (value: number) => `${value < 1 ? value.toFixed(3) : value.toFixed(1)} ms`;

  const { timings, disagreement, absent } = krigingPeer();
  for (const { work, ms: own, peerMs, ratio } of timings) {
    rows.push([
      work,
      ms(own),
      peerMs === null ? '—' : `gstat ${ms(peerMs)}`,
      ratio === null ? '—' : `${ratio.toFixed(1)} ×`,
    ]);
  }

  for (const what of ['reading', 'bed'] as const) {
    const drag = await measureDrag(what);
    rows.push([
      `a move of a dragged ${what}, n=60, 200 × 100 cells${what === 'reading' ? ' (100 × 50 while it moves)' : ''}: page and worker, median; p95; worst of ${drag.frames}`,
      `${ms(drag.median)}; ${ms(drag.p95)}; ${ms(drag.worst)}`,
      `page thread ${ms(drag.page)}, with raster threads ${ms(drag.allThreads)}`,
      '—',
    ]);
  }

  const load = firstLoad();
  rows.push([
    'first load after gzip',
    `${load.reduce((sum, { kB }) => sum + kB, 0).toFixed(0)} kB`,
    load
      .map(({ file, kB }) => `${file.replace(/^assets\//, '').replace(/-[\w-]{8}\./, '.')} ${kB.toFixed(0)}`)
      .join(', '),
    '—',
  ]);

  const widths = [0, 1, 2, 3].map((column) => Math.max(...rows.map((row) => row[column].length)));
  console.log(`CPU time, ${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.versions.node}\n`);
  for (const row of rows) console.log(row.map((cell, i) => cell.padEnd(widths[i])).join('  '));
  console.log(absent ?? `\nLargest difference from gstat over all points: ${disagreement?.toExponential(1)}`);
}
