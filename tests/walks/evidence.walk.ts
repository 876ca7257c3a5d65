import { expect, test } from '@playwright/test';
import { arrive, goTo } from './steps';

test('the evidence is walked through by keys and by pointer, and told in words and on the plan', async ({
  page,
}) => {
  await arrive(page);
  await goTo(page, 'map');
  const panel = page.getByRole('region', { name: 'map' });
  await expect(panel.getByText(/\d+ of \d+/).first()).toBeVisible({ timeout: 30_000 });
  const plot = panel.getByRole('slider', { name: /what the others predict/ });
  const said = panel.locator('[aria-live]');
  const plan = page.getByText(/^Readings? .*selected$/);

  await plot.focus();
  await page.keyboard.press('ArrowRight');
  await expect(said).toHaveText(/^Reading 1 .*µT predicted \(.*\), (in|out)side\. Without it the map would/);
  await expect(plan).toHaveText('Reading 1 selected');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await expect(said).toHaveText(/^Reading 3 /);
  await page.keyboard.press('ArrowLeft');
  await expect(plan).toHaveText('Reading 2 selected');
  await page.keyboard.press('End');
  await page.keyboard.press('ArrowRight');
  const last = await said.textContent();
  await page.keyboard.press('Home');
  await expect(said).toHaveText(/^Reading 1 /);
  expect(last).not.toMatch(/^Reading 1 /);

  const point = (await plot.locator('circle.in, rect').nth(20).boundingBox())!;
  await page.mouse.click(point.x + point.width / 2, point.y + point.height / 2);
  await expect(said).not.toHaveText(/^Reading 1 /);
  await expect(plot.locator('.ring')).toHaveCount(1);
});

test('a reading that deserves a second look is offered, opened, left out for a reason and taken back', async ({
  page,
}) => {
  await arrive(page);
  await goTo(page, 'map');
  const panel = page.getByRole('region', { name: 'map' });
  const looks = panel.getByRole('heading', { name: 'Worth a second look' }).locator('xpath=following::ul[1]');
  const first = looks.getByRole('button').first();
  await expect(first).toBeVisible({ timeout: 30_000 });
  const name = (await first.locator('.name').textContent())!;

  await first.click();
  await expect(page.getByText(`${name} selected`)).toHaveCount(1);
  await expect(looks.getByText(/The other readings expect .* here\./)).toBeVisible();

  await looks.getByRole('button', { name: 'Open the reading' }).click();
  await expect(page.getByRole('region', { name: 'survey' }).getByLabel('Leave out, because')).toBeVisible();

  await goTo(page, 'map');
  await looks.getByLabel('Leave it out, because').fill('kettle was on');
  await page.keyboard.press('Enter');
  await expect(looks.getByRole('button', { name })).toHaveCount(0);
  await goTo(page, 'survey');
  await expect(
    page.getByRole('region', { name: 'survey' }).getByText(/left out: kettle was on/),
  ).toBeVisible();
  await page.getByRole('button', { name: 'undo' }).click();
  await goTo(page, 'map');
  await expect(looks.getByRole('button', { name })).toBeVisible();
});
