import { expect, test, type Page } from '@playwright/test';
import { arrive, goTo, openHomes } from './steps';

/** What has the focus, by its element and its words. */
const focused = (page: Page) =>
  page.evaluate(() => {
    const at = document.activeElement!;
    return `${at.tagName} ${at.getAttribute('aria-label') ?? at.textContent!.trim()}`.slice(0, 60);
  });

test('what goes once it has been pressed leaves the focus beside it, or at the head of the panel', async ({
  page,
}) => {
  await arrive(page);
  await goTo(page, 'arrange');
  const panel = page.getByRole('region', { name: 'arrange' });
  const shows = panel.getByRole('button', { name: /: show on the plan$/ });
  await expect(shows.first()).toBeVisible({ timeout: 60_000 });

  await shows.first().focus();
  await page.keyboard.press('Enter');
  await expect(panel.getByText('Best answer')).toBeVisible();
  expect(await focused(page)).toMatch(/^BUTTON .*: show on the plan/);

  await panel.getByRole('button', { name: 'Take this arrangement' }).focus();
  await page.keyboard.press('Enter');
  await expect(panel.getByRole('heading', { name: 'Taken' })).toBeFocused();
});

test('a source that is marked leaves the focus in the panel', async ({ page }) => {
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
  await rows.first().press('Enter');
  const count = await rows.count();
  await panel.getByRole('button', { name: 'Mark as a source' }).press('Enter');
  await expect(rows).toHaveCount(count - 1);
  expect(await focused(page)).not.toMatch(/^BODY/);
});
