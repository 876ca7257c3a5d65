import { readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { arrive, openHomes } from './steps';

const sample = readFileSync(new URL('../../samples/single-bedroom.home.json', import.meta.url), 'utf8');

const FILES: { name: string; text: string; says: RegExp }[] = [
  {
    name: 'cut in half',
    text: sample.slice(0, sample.length / 2),
    says: /not.*(JSON|home file)|cut|damaged/i,
  },
  { name: 'of another program', text: '{"type":"FeatureCollection","features":[]}', says: /not a .*home/i },
  { name: 'of a newer version', text: sample.replace('"version": 1', '"version": 9'), says: /newer/i },
  {
    name: 'with a word for a number',
    text: sample.replace(/"value": [\d.]+/, '"value": "high"'),
    says: /readings.*value/i,
  },
  {
    name: 'with a field nobody knows',
    text: sample.replace('"title"', '"colour": 3, "title"'),
    says: /colour/,
  },
];

for (const { name, text, says } of FILES) {
  test(`a file ${name} is refused in words, and the home stays`, async ({ page }) => {
    await arrive(page);
    const title = await page.getByRole('heading', { level: 1 }).textContent();
    await openHomes(page);
    const chooser = page.waitForEvent('filechooser');
    await page
      .getByRole('dialog')
      .getByRole('button', { name: /Open a home file/ })
      .click();
    await (
      await chooser
    ).setFiles({ name: 'other.home.json', mimeType: 'application/json', buffer: Buffer.from(text) });
    await expect(page.getByText(says).first()).toBeVisible();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(title!);
  });
}
