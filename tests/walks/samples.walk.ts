import { execFileSync } from 'node:child_process';
import { expect, test, type Page } from '@playwright/test';
import { arrive, goTo, openHomes } from './steps';

const SAMPLES = [
  { sample: /^Terraced house/, file: 'samples/terraced-house.home.json' },
  { sample: /^One-bedroom flat/, file: 'samples/one-bedroom-flat.home.json' },
  { sample: /^Single bedroom/, file: 'samples/single-bedroom.home.json' },
];

const spaces = (text: string) => text.replace(/\s+/g, ' ').trim();

/** “0.10 µT (0.088–0.12)” of each row, by name. */
async function rows(page: Page): Promise<Map<string, string[]>> {
  const texts = await page
    .getByRole('region', { name: /judge|arrange/ })
    .getByRole('listitem')
    .allInnerTexts();
  return new Map(
    texts
      .map(spaces)
      .filter((text) => /\(.*–.*\)/.test(text))
      .map((text) => [text, text.match(/\d[\d.]*/g) ?? []]),
  );
}

for (const { sample, file } of SAMPLES) {
  test(`the page shows the numbers of the terminal, to the printed digit: ${file}`, async ({ page }) => {
    await arrive(page);
    await openHomes(page);
    await page.getByRole('dialog').getByRole('button', { name: sample }).click();
    await goTo(page, 'judge');
    const table = execFileSync('npm', ['run', '--silent', 'assess', '--', file, '--table'], {
      encoding: 'utf8',
    });
    const printed = table.split('\n').map(spaces);

    await expect(
      page
        .getByRole('region', { name: 'judge' })
        .getByRole('button', { name: /\(.*–.*\)/ })
        .first(),
    ).toBeVisible();
    await expect(page.getByText(/sampling sources/i)).toHaveCount(0, { timeout: 60_000 });
    const rooms = await rows(page);
    expect(rooms.size).toBeGreaterThan(0);
    for (const [text, figures] of rooms) {
      const [value, low, high] = figures.slice(-3);
      const line = printed.find(
        (row) =>
          text.startsWith(row.split(/ (sleeping|living|work|passage|wet|store|grounds)/)[0]!) &&
          row.includes(`${low}–${high}`),
      );
      expect(line, text).toContain(value!);
    }
  });
}
