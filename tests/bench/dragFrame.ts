import { fileURLToPath } from 'node:url';
import { chromium, type CDPSession } from '@playwright/test';
import { build, preview } from 'vite';
import { findBrowser } from '../support/browser';
import { knownHome } from '../support/knownHomes';

/** What one move of a dragged reading costs, in CPU milliseconds. */
export interface DragFrame {
  frames: number;
  /** The page's own thread and the engine's worker: script, style, layout, recording of paint. */
  median: number;
  p95: number;
  worst: number;
  /** Every thread of the page, so with the raster work that a graphics card would take over. */
  allThreads: number;
}

const FRAMES = 120;
const configFile = fileURLToPath(new URL('../../vite.config.ts', import.meta.url));

/** A home of 20 × 10 m with 60 readings: 200 × 100 cells of 0.1 m. */
function bigHome(): string {
  const { readings } = knownHome(7, 60);
  return JSON.stringify({
    format: 'stillroom-home',
    version: 1,
    title: 'Sixty readings (invented)',
    levels: [{ id: 'l1', name: 'Ground floor' }],
    rooms: [
      {
        id: 'r1',
        level: 'l1',
        name: 'Hall',
        outline: [
          [0, 0],
          [20, 0],
          [20, 10],
          [0, 10],
        ],
      },
    ],
    readings: readings.map(({ value }, i) => ({
      id: `m${i + 1}`,
      level: 'l1',
      at: [1 + 2 * (i % 10), 0.8 + 1.6 * Math.floor(i / 10)],
      value,
    })),
  });
}

interface TraceEvent {
  name: string;
  ph: string;
  ts: number;
  tdur?: number;
  pid: number;
  tid: number;
  args?: { name?: string };
}

async function traced(session: CDPSession, work: () => Promise<void>): Promise<TraceEvent[]> {
  const events: TraceEvent[] = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  await session.send('Tracing.start', {
    traceConfig: {
      includedCategories: [
        'toplevel',
        'disabled-by-default-devtools.timeline',
        'blink.user_timing',
        '__metadata',
      ],
    },
    transferMode: 'ReportEvents',
  });
  await work();
  const complete = new Promise<void>((done) => session.once('Tracing.tracingComplete', () => done()));
  await session.send('Tracing.end');
  await complete;
  return events;
}

/** Drags one reading over the plan in a real browser without a graphics card and adds up the tasks of each frame. */
export async function measureDragFrame(): Promise<DragFrame> {
  const found = await findBrowser();
  await build({ configFile, logLevel: 'error' });
  const server = await preview({ configFile, logLevel: 'error', preview: { port: 4187 } });
  const browser = await chromium.launch({
    executablePath: found.executablePath,
    env: { ...(process.env as Record<string, string>), ...found.env },
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--no-first-run'],
  });
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    await page.goto(server.resolvedUrls!.local[0]!);
    await page.getByRole('button', { name: 'Homes on this device' }).click();
    await page.getByRole('menuitem', { name: 'Homes on this device' }).click();
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: /Open a home file/ }).click();
    await (
      await chooser
    ).setFiles({ name: 'sixty.home.json', mimeType: 'application/json', buffer: Buffer.from(bigHome()) });
    await page
      .getByRole('navigation')
      .getByRole('button', { name: /^survey 60/ })
      .click();
    await page.waitForTimeout(2500);

    const box = (await page.getByRole('application').boundingBox())!;
    // The camera fits the floor into the sheet: the reading in the middle of it is looked for from the middle outward.
    const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    const scale = (box.width - 60) / 20;
    const start = { x: middle.x + scale, y: middle.y - 0.6 * scale };
    const session = await page.context().newCDPSession(page);
    const events = await traced(session, async () => {
      await page.mouse.move(start.x, start.y);
      await page.mouse.down();
      for (let frame = 0; frame < FRAMES; frame++) {
        const turn = (frame / FRAMES) * 2 * Math.PI;
        await page.evaluate((name) => void performance.mark(name), `frame ${frame}`);
        await page.mouse.move(start.x + 60 * Math.sin(turn), start.y + 40 * (1 - Math.cos(turn)));
        // Time for the worker's answer and the paint, so that a frame's work falls between its two marks.
        await page.waitForTimeout(60);
      }
      await page.evaluate(() => void performance.mark('frame end'));
      await page.mouse.up();
    });
    return frameCosts(events);
  } finally {
    await browser.close();
    await server.close();
  }
}

/** Sums the CPU time of the renderer's outermost tasks between one mark and the next. */
function frameCosts(events: readonly TraceEvent[]): DragFrame {
  const marks = events.filter(({ name }) => /^frame (\d+|end)$/.test(name)).sort((a, b) => a.ts - b.ts);
  const renderer = marks[0]!.pid;
  const threads = new Map(
    events
      .filter(({ name, pid }) => name === 'thread_name' && pid === renderer)
      .map(({ tid, args }) => [tid, args?.name ?? '']),
  );
  const isOwn = (tid: number) => /^(CrRendererMain|DedicatedWorker)/.test(threads.get(tid) ?? '');
  const tasks = events.filter(
    ({ pid, name, ph, tdur }) =>
      pid === renderer &&
      ph === 'X' &&
      tdur !== undefined &&
      (name === 'RunTask' || name === 'ThreadPool_RunTask'),
  );
  const costs = (wanted: (tid: number) => boolean) =>
    marks
      .slice(0, -1)
      .map(({ ts: from }, i) =>
        tasks
          .filter(({ ts, tid }) => ts >= from && ts < marks[i + 1]!.ts && wanted(tid))
          .reduce((sum, { tdur }) => sum + tdur! / 1000, 0),
      )
      // The first frames compile code; they are not what a drag feels like.
      .slice(20)
      .sort((a, b) => a - b);
  const own = costs(isOwn);
  const all = costs(() => true);
  const at = (sorted: number[], share: number) =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
  return {
    frames: own.length,
    median: at(own, 0.5),
    p95: at(own, 0.95),
    worst: at(own, 1),
    allThreads: at(all, 0.5),
  };
}
