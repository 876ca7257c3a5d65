import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, test, type Page } from '@playwright/test';
import { arrive, goTo, newHome, type StageWord } from './steps';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const STAGES: StageWord[] = ['sketch', 'survey', 'map', 'judge', 'arrange', 'report'];

interface AxeResult {
  violations: { id: string; impact: string; nodes: { target: string[]; failureSummary: string }[] }[];
}

/** What axe finds wrong, one line each. */
async function faults(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  const result = await page.evaluate(() =>
    (window as unknown as { axe: { run: () => Promise<AxeResult> } }).axe.run(),
  );
  return result.violations.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${id}: ${node.target.join(' ')} ${node.failureSummary}`),
  );
}

for (const colorScheme of ['light', 'dark'] as const) {
  test(`no stage of the sample home has an accessibility fault, ${colorScheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    await arrive(page);
    for (const stage of STAGES) {
      await goTo(page, stage);
      await expect(page.getByRole('region', { name: stage })).toBeVisible();
      expect(await faults(page), stage).toEqual([]);
    }
  });
}

test('an answer with the rules open and a rule refused has none', async ({ page }) => {
  await arrive(page);
  await goTo(page, 'arrange');
  const panel = page.getByRole('region', { name: 'arrange' });
  await expect(panel.getByRole('button', { name: 'Take this arrangement' })).toBeVisible({ timeout: 60_000 });
  await panel.getByText('Rules of a livable room').click();
  const landing = panel.getByLabel('Before a door or gap, both sides', { exact: true });
  await landing.fill('0,2');
  await landing.press('Enter');
  await expect(panel.getByText('leaves no way out')).toBeVisible();
  expect(await faults(page)).toEqual([]);
  await landing.fill('0,3');
  await landing.press('Enter');
  await expect(panel.getByText('Rules of a livable room, 1 changed')).toBeVisible();
  await panel.getByRole('button', { name: 'Before a door or gap, both sides: set it back' }).press('Enter');
  await expect(panel.getByText('Rules of a livable room, 1 changed')).toHaveCount(0);
});

test('an empty home has none either', async ({ page }) => {
  await arrive(page);
  await newHome(page);
  for (const stage of STAGES) {
    await goTo(page, stage);
    expect(await faults(page), stage).toEqual([]);
  }
});
