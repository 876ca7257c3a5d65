import { expect, test, type Page } from '@playwright/test';
import { press, tabTo, type } from './byKeys';
import { arrive } from './steps';

async function stage(page: Page, word: string): Promise<void> {
  await press(page, new RegExp(`^${word}`));
}

const READINGS: [string, string, string][] = [
  ['0.5', '0.5', '0.07'],
  ['2', '0.5', '0.1'],
  ['3.7', '0.5', '0.32'],
  ['0.5', '1.8', '0.06'],
  ['2', '1.8', '0,11'],
  ['3.7', '1.8', '350 nT'],
  ['0.5', '3', '0.6 mG'],
  ['2', '3', '0.09'],
  ['3.7', '3', '0.3'],
];

test('the whole job by keyboard alone', async ({ page }) => {
  await arrive(page);

  await test.step('a new home', async () => {
    await press(page, /^Homes on this device/);
    await page.keyboard.press('Enter');
    await press(page, /^A new home/);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('New home');
  });

  await test.step('sketch: a room by its lengths, a door, a bed moved by arrow keys', async () => {
    await press(page, /^Type its width and length/);
    await type(page, /^Width/, '4.2');
    await type(page, /^Length, up/, '3.6');
    await press(page, /^Draw this room/);
    await press(page, /^bed for two/);
    await expect(page.getByRole('button', { name: /bed ·/i })).toHaveCount(1);
    await tabTo(page, /^The plan/);
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Shift+ArrowUp');
    await expect(page.getByText(/Double bed/).first()).toBeVisible();
  });

  await test.step('survey: nine readings, each with its place typed', async () => {
    await stage(page, 'survey');
    await press(page, /^more/);
    for (const [x, y, value] of READINGS) {
      await type(page, /^Across/, x);
      await type(page, /^Up the page/, y);
      await type(page, /^Value/, value);
      await page.keyboard.press('Enter');
    }
    await expect(page.getByRole('button', { name: /survey 9 readings/ })).toBeVisible();
  });

  await test.step('judge, arrange, take, undo', async () => {
    await stage(page, 'judge');
    await press(page, /^Room 1/);
    await stage(page, 'arrange');
    await expect(page.getByRole('button', { name: /Take this arrangement|Leave as is/ }).first()).toBeVisible(
      { timeout: 30_000 },
    );
    await press(page, /^Take this arrangement/);
    await page.keyboard.press('ControlOrMeta+z');
    await expect(page.getByRole('button', { name: 'redo' })).toBeEnabled();
  });

  await test.step('the target on the ruler by arrow keys', async () => {
    await tabTo(page, /^Target/);
    const before = await page.getByRole('slider', { name: 'Target' }).getAttribute('aria-valuetext');
    await page.keyboard.press('ArrowUp');
    await expect(page.getByRole('slider', { name: 'Target' })).not.toHaveAttribute('aria-valuetext', before!);
  });
});
