import { expect, type Page } from '@playwright/test';

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
