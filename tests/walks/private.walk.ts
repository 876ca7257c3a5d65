import { expect, test } from '@playwright/test';
import { arrive, goTo } from './steps';

test('nothing is asked of any other machine, and the page opens again without a network', async ({
  page,
  context,
  baseURL,
}) => {
  const foreign: string[] = [];
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(baseURL!) && !url.startsWith('data:') && !url.startsWith('blob:')) foreign.push(url);
  });
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });

  await arrive(page);
  for (const stage of ['survey', 'map', 'judge', 'arrange', 'report'] as const) await goTo(page, stage);
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await page.reload();
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);

  await context.setOffline(true);
  await page.reload();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('invented');
  await goTo(page, 'judge');
  await expect(page.getByRole('button', { name: /Front bedroom.*µT/ })).toBeVisible();
  expect(foreign).toEqual([]);
  expect(complaints).toEqual([]);
});

test('a home is there again after the page was closed', async ({ page }) => {
  await arrive(page);
  await page.getByRole('textbox', { name: 'Name of this home' }).fill('Saved as it is made');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/Saved on this device/)).toBeVisible();
  await page.reload();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Saved as it is made');
});

test('of two tabs one writes; the other reads, says so, and can take over', async ({ page, context }) => {
  await arrive(page);
  const second = await context.newPage();
  await second.goto('./');
  const takeOver = second.getByRole('button', { name: 'Write here instead' });
  await expect(takeOver).toBeVisible();
  await takeOver.click();
  await expect(takeOver).toBeHidden();
  await expect(page.getByRole('button', { name: 'Write here instead' })).toBeVisible();
});
