import { expect, test } from '@playwright/test';
import { arrive, goTo, openHomes } from './steps';

/** Sources are sampled before the places are looked for. */
const SAMPLED = { timeout: 60_000 };

test('the places that make a bed’s dose surer are listed and shown, and one is read from its row, by keyboard', async ({
  page,
}) => {
  await arrive(page);
  await openHomes(page);
  await page
    .getByRole('dialog')
    .getByRole('button', { name: /^One-bedroom flat/ })
    .click();
  await goTo(page, 'map');
  const panel = page.getByRole('region', { name: 'map' });
  await panel.getByLabel('to make surer').selectOption('Double bed');
  const first = panel
    .getByRole('listitem')
    .filter({ hasText: 'Double bed narrows' })
    .first()
    .getByRole('button')
    .first();
  await expect(first).toHaveText(
    /at 2 ft.*Double bed narrows from [\d.]+–[\d.]+ to [\d.]+–[\d.]+ mG/s,
    SAMPLED,
  );
  await first.focus();
  await page.keyboard.press('Enter');
  const read = panel.getByRole('button', { name: 'Read here' });
  await expect(read).toBeVisible();
  await read.focus();
  await page.keyboard.press('Enter');
  const value = page.getByLabel('Value', { exact: true });
  await expect(value).toBeFocused();
  await expect(page.getByRole('region', { name: 'survey' })).toContainText('at 2 ft');
  await value.fill('3.3');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('region', { name: 'survey' }).getByText(/· 2 ft/)).toHaveCount(1);
  await goTo(page, 'map');
  await expect(panel.getByText(/Double bed narrows from|Enough: /).first()).toBeVisible(SAMPLED);
});

test('a room whose word is certain needs no further reading', async ({ page }) => {
  await arrive(page);
  await goTo(page, 'map');
  const panel = page.getByRole('region', { name: 'map' });
  await panel.getByLabel('to make surer').selectOption('Front bedroom');
  await expect(panel.getByText(/^Enough: no further reading/)).toBeVisible(SAMPLED);
});
