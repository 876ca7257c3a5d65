import { fileURLToPath } from 'node:url';
import { chromium, type CDPSession, type Page } from '@playwright/test';
import { build, preview } from 'vite';
import { findBrowser } from '../support/browser';
import { BUILDS } from '../support/generators/builds';

/** What one move of something dragged costs, in CPU milliseconds. */
export interface DragFrame {
  frames: number;
  /** The page's own thread and the engine's worker: script, style, layout, recording of paint. */
  median: number;
  p95: number;
  worst: number;
  /** The page's thread alone: its median, and what one frame in twenty exceeds. */
  page: number;
  pageP95: number;
  /** Every thread of the page, so with the raster work that a graphics card would take over, median. */
  allThreads: number;
}

const FRAMES = 120;
// The first frames compile code; they are not what a drag feels like.
const COLD = 20;
// A floor whose map has 200 × 100 cells of 0.1 m, the cells round it counted.
const FLOOR = [19.75, 9.75] as const;
const configFile = fileURLToPath(new URL('../../vite.config.ts', import.meta.url));

/** 60 readings of one known field, and a bed for two. */
function bigHome(): string {
  const { truth } = BUILDS.wandering(7, 36);
  const [x, y] = FLOOR;
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
        use: 'sleeping',
        outline: [
          [0, 0],
          [x, 0],
          [x, y],
          [0, y],
        ],
      },
    ],
    openings: [{ id: 'o1', room: 'r1', kind: 'door', wall: 0, offset: 1, width: 0.8 }],
    pieces: [
      {
        id: 'p1',
        kind: 'bed',
        level: 'l1',
        at: [x / 2, y / 2],
        size: [1.6, 2],
        uses: [
          { who: 'A', side: 'left', hours: 8 },
          { who: 'B', side: 'right', hours: 8 },
        ],
      },
    ],
    readings: Array.from({ length: 60 }, (_, i) => {
      const at = [x / 2 + 1.9 * ((i % 10) - 4), y / 2 + 1.5 * (Math.floor(i / 10) - 2.5)] as const;
      return { id: `m${i + 1}`, level: 'l1', at, value: Number(truth(at[0] / 2, at[1], 1).toFixed(3)) };
    }),
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

/** Drags the reading nearest to the middle, which redraws the map, or the bed there, which shows its dose, its rules and its area. */
export async function measureDrag(what: 'reading' | 'bed'): Promise<DragFrame> {
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
    await openHome(page);
    await page
      .getByRole('navigation')
      .getByRole('button', { name: what === 'reading' ? /^survey/ : /^arrange/ })
      .click();
    await page.waitForTimeout(2500);

    // The camera lays the middle of the floor into the middle of the sheet.
    const box = (await page.getByRole('application').boundingBox())!;
    const scale = (box.width - 60) / FLOOR[0];
    const start = {
      x: box.x + box.width / 2,
      y: box.y + box.height / 2 - (what === 'reading' ? 0.75 * scale : 0),
    };
    if (what === 'bed') await pickUp(page, start);
    const session = await page.context().newCDPSession(page);
    const events = await traced(session, async () => {
      await page.mouse.move(start.x, start.y);
      await page.mouse.down();
      for (let frame = 0; frame < FRAMES; frame++) {
        const turn = (frame / FRAMES) * 2 * Math.PI;
        await page.evaluate((name) => void performance.mark(name), `frame ${frame}`);
        await page.mouse.move(start.x + 60 * Math.sin(turn), start.y + 40 * (1 - Math.cos(turn)) + 2);
        // Time for the worker's answer and the paint, so that a frame's work falls between its two marks.
        await page.waitForTimeout(60);
      }
      await page.evaluate(() => void performance.mark('frame end'));
      await page.mouse.up();
    });
    if (await page.getByRole('button', { name: 'undo', exact: true }).isDisabled())
      throw new Error(`The ${what} was not dragged.`);
    return frameCosts(events);
  } finally {
    await browser.close();
    await server.close();
  }
}

/** The bed where it stands, with its area painted before it is dragged. */
async function pickUp(page: Page, at: { x: number; y: number }): Promise<void> {
  const leave = page.getByRole('button', { name: 'Leave as is' });
  if (await leave.isVisible()) await leave.click();
  await page.mouse.click(at.x, at.y);
  await page.getByText(/Ink in the dotted area/).waitFor();
}

async function openHome(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Homes on this device' }).click();
  await page.getByRole('menuitem', { name: 'Homes on this device' }).click();
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: /Open a home file/ }).click();
  await (
    await chooser
  ).setFiles({ name: 'sixty.home.json', mimeType: 'application/json', buffer: Buffer.from(bigHome()) });
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
  const tasks = events.filter(
    ({ pid, name, ph, tdur }) =>
      pid === renderer &&
      ph === 'X' &&
      tdur !== undefined &&
      (name === 'RunTask' || name === 'ThreadPool_RunTask'),
  );
  const costs = (wanted: RegExp) =>
    marks
      .slice(COLD, -1)
      .map(({ ts: from }, i) =>
        tasks
          .filter(
            ({ ts, tid }) =>
              ts >= from && ts < marks[COLD + i + 1]!.ts && wanted.test(threads.get(tid) ?? ''),
          )
          .reduce((sum, { tdur }) => sum + tdur! / 1000, 0),
      )
      .sort((a, b) => a - b);
  const at = (sorted: number[], share: number) =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
  const page = costs(/^CrRendererMain/);
  const own = costs(/^(CrRendererMain|DedicatedWorker)/);
  return {
    frames: own.length,
    median: at(own, 0.5),
    p95: at(own, 0.95),
    worst: at(own, 1),
    page: at(page, 0.5),
    pageP95: at(page, 0.95),
    allThreads: at(costs(/./), 0.5),
  };
}
