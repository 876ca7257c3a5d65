import { expect, test } from '@playwright/test';
import { arrive, goTo, openHomes } from './steps';

test('a likely unmarked source is looked at, marked and taken back, by keys alone', async ({ page }) => {
  await arrive(page);
  await openHomes(page);
  await page
    .getByRole('dialog')
    .getByRole('button', { name: /^Single bedroom/ })
    .click();
  await goTo(page, 'map');
  const panel = page.getByRole('region', { name: 'map' });
  const rows = panel.getByRole('button', { name: /would explain \d+ readings?/ });
  await expect(rows.first()).toBeVisible({ timeout: 60_000 });
  const count = await rows.count();
  await expect(rows.first()).toHaveAccessibleName(/\d+ in 10/);

  await rows.first().focus();
  await page.keyboard.press('Enter');
  await expect(rows.first()).toHaveAttribute('aria-expanded', 'true');
  await page.keyboard.press('Tab');
  await expect(panel.getByRole('button', { name: 'Mark as a source' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByText(/^Suspected .* selected$/)).toHaveCount(1);
  await expect(rows).toHaveCount(count - 1);

  await page.keyboard.press('ControlOrMeta+z');
  await expect(rows).toHaveCount(count);
});
