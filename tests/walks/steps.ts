import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import type { Home } from '../../src/home/home';
import { parseHome } from '../../src/home/file/parse';
import { serialiseHome } from '../../src/home/file/serialise';

interface Place {
  x: number;
  y: number;
}

export type StageWord = 'sketch' | 'survey' | 'map' | 'judge' | 'arrange' | 'report';

/** Opens the page and waits until the sample home of the first visit is drawn. */
export async function arrive(page: Page): Promise<void> {
  await page.goto('./');
  await expect(page.getByRole('heading', { level: 1 })).toContainText('invented');
}

/** Goes to a stage: on a wide page by its word in the top line, on a phone through the stage menu. */
export async function goTo(page: Page, stage: StageWord): Promise<void> {
  const menu = page.getByRole('button', { name: /^Stages of the job/ });
  if (await menu.isVisible()) {
    await menu.click();
    await page.getByRole('menuitemradio', { name: new RegExp(`^${stage}`) }).click();
  } else {
    const stages = page.getByRole('navigation', { name: 'Stages of the job' });
    await stages.getByRole('button', { name: new RegExp(`^${stage}`) }).click();
  }
}

/** The list of homes, from the word in the top line. */
export async function openHomes(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Homes on this device' }).click();
  await page.getByRole('menuitem', { name: 'Homes on this device' }).click();
  await expect(page.getByRole('dialog')).toBeVisible();
}

export async function newHome(page: Page): Promise<void> {
  await openHomes(page);
  await page
    .getByRole('dialog')
    .getByRole('button', { name: /new home/i })
    .click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/home$/);
}

/** The sheet's box on the screen; gestures are given as shares of it, from its upper left corner. */
export async function sheet(page: Page) {
  const plan = page.getByRole('application', { name: 'The plan' });
  const box = (await plan.boundingBox())!;
  const at = (x: number, y: number) => ({ x: box.x + x * box.width, y: box.y + y * box.height });
  return {
    at,
    async click(x: number, y: number) {
      const { x: px, y: py } = at(x, y);
      await page.mouse.click(px, py);
    },
    async drag(from: readonly [number, number], to: readonly [number, number]) {
      const [a, b] = [at(...from), at(...to)];
      await page.mouse.move(a.x, a.y);
      await page.mouse.down();
      await page.mouse.move((a.x + b.x) / 2, (a.y + b.y) / 2, { steps: 4 });
      await page.mouse.move(b.x, b.y, { steps: 4 });
      await page.mouse.up();
    },
  };
}

/** One finger goes from one place of the screen to another. */
export async function finger(page: Page, from: Place, to: Place): Promise<void> {
  const touches = await page.context().newCDPSession(page);
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', touchPoints: Place[]) =>
    touches.send('Input.dispatchTouchEvent', { type, touchPoints });
  await send('touchStart', [from]);
  for (const share of [0.25, 0.5, 0.75, 1])
    await send('touchMove', [{ x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) }]);
  await send('touchEnd', []);
  await touches.detach();
}

/** Opens one of the sample homes of the list. */
export async function openSample(page: Page, name: RegExp): Promise<void> {
  await openHomes(page);
  await page.getByRole('dialog').getByRole('button', { name }).click();
  await expect(page.getByRole('dialog')).toBeHidden();
}

/** Opens a home by its file. */
export async function openHome(page: Page, home: Home): Promise<void> {
  await openHomes(page);
  const chooser = page.waitForEvent('filechooser');
  await page
    .getByRole('dialog')
    .getByRole('button', { name: /Open a home file/ })
    .click();
  const buffer = Buffer.from(serialiseHome(home));
  await (await chooser).setFiles({ name: 'made.home.json', mimeType: 'application/json', buffer });
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(home.title);
}

/** The home as its file has it, kept from the report. */
export async function keptHome(page: Page): Promise<Home> {
  await goTo(page, 'report');
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Keep a file of this home' }).click();
  const kept = parseHome(readFileSync(await (await download).path(), 'utf8'));
  if (!kept.ok) throw new Error(JSON.stringify(kept.problems));
  return kept.home;
}
