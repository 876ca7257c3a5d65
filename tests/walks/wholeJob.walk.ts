import { execFileSync } from 'node:child_process';
import { expect, test } from '@playwright/test';
import { arrive, goTo, newHome, sheet } from './steps';

/** Twelve places in a room of 4.2 × 3.6 m drawn over the middle of the sheet, and a field that is high at its right wall. µT. */
const READINGS: [number, number, string][] = [0.9, 0.65, 0.4, 0.12].flatMap((across) =>
  [0.15, 0.5, 0.85].map((up): [number, number, string] => [
    across,
    up,
    (0.05 + 0.5 * across ** 4).toFixed(3),
  ]),
);

test('a bedroom is drawn, read, judged, its bed placed and taken, and the report printed', async ({
  page,
}, testInfo) => {
  await arrive(page);
  await newHome(page);
  const plan = await sheet(page);
  const signs = page.getByRole('group').filter({ has: page.getByRole('button', { pressed: false }) });

  await test.step('sketch: drag the room, set a door and a window, put the bed', async () => {
    await plan.drag([0.25, 0.3], [0.65, 0.7]);
    await signs.getByRole('button', { name: 'door', exact: true }).click();
    await plan.click(0.35, 0.7);
    await signs.getByRole('button', { name: 'window', exact: true }).click();
    await plan.click(0.45, 0.3);
    await signs.getByRole('button', { name: 'bed for two' }).click();
    await plan.click(0.58, 0.48);
    await expect(page.getByRole('button', { name: /^(Door|Window) in/ })).toHaveCount(2);
    await expect(page.getByRole('button', { name: /bed ·/i })).toHaveCount(1);
  });

  await test.step('survey: twelve readings, each at its place', async () => {
    await goTo(page, 'survey');
    for (const [across, up, text] of READINGS) {
      await plan.click(0.25 + 0.4 * across, 0.7 - 0.4 * up);
      await page.getByLabel('Value', { exact: true }).fill(text);
      await page.keyboard.press('Enter');
    }
    await expect(page.getByRole('button', { name: /survey 12 readings/ })).toBeVisible();
  });

  await test.step('map: drawn, and its evidence said', async () => {
    await goTo(page, 'map');
    await expect(page.getByRole('heading', { name: 'Why believe this map' })).toBeVisible();
    await expect(page.getByText(/of 12 lie inside their 90.% interval \(about 11 expected\)/)).toBeVisible();
  });

  await test.step('judge: the room has its figure with an interval', async () => {
    await goTo(page, 'judge');
    await expect(page.getByRole('button', { name: /Room 1.*µT \(\d/ })).toBeVisible();
  });

  await test.step('arrange: a better place is found, and taken', async () => {
    await goTo(page, 'arrange');
    const take = page.getByRole('button', { name: 'Take this arrangement' });
    await expect(take).toBeVisible({ timeout: 30_000 });
    await expect(page.getByText(/µT·h/).first()).toBeVisible();
    await take.click();
    await expect(page.getByRole('button', { name: 'undo' })).toBeEnabled();
    await expect(page.getByRole('heading', { name: 'Taken' })).toBeVisible();
    await expect(page.getByText(/ fell from .* One undo brings it back\./)).toBeVisible();
  });

  const kept = testInfo.outputPath('bedroom.home.json');
  await test.step('the file of it gives the same numbers in the terminal', async () => {
    await goTo(page, 'judge');
    const shown = await page.getByRole('button', { name: /Room 1/ }).textContent();
    await goTo(page, 'report');
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: /Keep a file/ }).click();
    await (await download).saveAs(kept);
    const table = execFileSync('npm', ['run', '--silent', 'assess', '--', kept, '--table'], {
      encoding: 'utf8',
    });
    const figure = /(\d[\d.]*) µT/.exec(shown ?? '')![1]!;
    expect(
      table.split('\n').find((line) => line.includes('Room 1')),
      table,
    ).toContain(figure);
  });

  await test.step('report: printed, with its plan, readings and cautions as text', async () => {
    await goTo(page, 'report');
    await expect(page.getByRole('button', { name: /Print/ })).toBeVisible();
    await expect(page.getByText('As found.')).toBeVisible();
    const pdf = await page.pdf({ path: testInfo.outputPath('report.pdf'), preferCSSPageSize: true });
    expect(pdf.length).toBeGreaterThan(20_000);
  });
});

test('printing before the report has come says so on the paper', async ({ page }) => {
  await page.route(/\/later-[^/]*\.js$/, () => undefined);
  await arrive(page);
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByText(/report is still being fetched/)).toBeVisible();
});
