import { readFileSync } from 'node:fs';
import { expect, test, type Page } from '@playwright/test';
import { parseHome } from '../../src/home/file/parse';
import { serialiseHome } from '../../src/home/file/serialise';
import type { Home } from '../../src/home/home';
import { arrive, goTo, openHomes } from './steps';

const MM = 96 / 25.4;
const A4 = { width: 210, height: 297 };
const MARGINS = { left: 20, right: 15, top: 16, bottom: 14 };
const TYPE = {
  width: (A4.width - MARGINS.left - MARGINS.right) * MM,
  height: (A4.height - MARGINS.top - MARGINS.bottom) * MM,
};

const SAMPLES = ['terraced-house', 'one-bedroom-flat', 'single-bedroom'];

function sample(name: string): Home {
  const parsed = parseHome(readFileSync(`samples/${name}.home.json`, 'utf8'));
  if (!parsed.ok) throw new Error(`${name} does not parse`);
  return parsed.home;
}

/** What once broke the print: two meters, three heights, names and notes as long as a file takes, signs of markup. */
function crowded(): Home {
  const home = sample('terraced-house');
  const [meter] = Object.values(home.meters);
  const long = 'Supercalifragilistic<b>&amp;"'.repeat(60);
  const prose = 'The field falls off from the street to the fence & back again, <as found>. '.repeat(26);
  return {
    ...home,
    title: `Crowded <home> & garden ${'unbrokenname'.repeat(8)}`,
    meters: {
      [meter!.id]: { ...meter!, name: `Meter ${'of the long name '.repeat(12)}`, serial: long.slice(0, 300) },
      g8: { ...meter!, id: 'g8', name: 'Second meter', coverage: 'k2', gain: 1.07, offset: -0.002 },
    },
    readings: Object.fromEntries(
      Object.values(home.readings).map((reading, i) => [
        reading.id,
        {
          ...reading,
          meter: i % 2 ? 'g8' : meter!.id,
          height: [0.6, 1, 1.5][i % 3]!,
          note: i % 9 ? reading.note : long.slice(0, 200),
        },
      ]),
    ),
    rooms: Object.fromEntries(
      Object.values(home.rooms).map((room, i) => [
        room.id,
        i === 1 ? { ...room, name: long.slice(0, 400) } : room,
      ]),
    ),
    report: { ...home.report, purpose: prose, findings: long.slice(0, 1990), advice: prose },
  };
}

/** Opens a home from a file and goes to its report. */
async function report(page: Page, home: Home): Promise<void> {
  await arrive(page);
  await openHomes(page);
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page
      .getByRole('dialog')
      .getByRole('button', { name: /Open a home file/ })
      .click(),
  ]);
  await chooser.setFiles({
    name: 'walk.home.json',
    mimeType: 'application/json',
    buffer: Buffer.from(serialiseHome(home)),
  });
  await expect(page.getByRole('heading', { level: 1 }).first()).toContainText(home.title.slice(0, 12));
  await goTo(page, 'report');
  await expect(page.locator('.report .lead').first()).toContainText(/µT|mG|nT/, { timeout: 30_000 });
}

/** The report as the printer lays it out, on pages as wide as the type area. */
async function onPaper(page: Page): Promise<void> {
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: Math.floor(TYPE.width), height: Math.floor(TYPE.height) });
}

for (const [name, home] of [
  ...SAMPLES.map((name) => [name, () => sample(name)] as const),
  ['crowded', crowded] as const,
]) {
  test(`the printed scale is true, since nothing is wider than the page: ${name}`, async ({ page }) => {
    await report(page, home());
    await onPaper(page);

    const wider = await page.evaluate(() =>
      [...document.querySelectorAll('.report *')]
        .filter((one) => !one.closest('svg') || one.tagName === 'svg')
        .filter((one) => one.getBoundingClientRect().right > document.documentElement.clientWidth + 1)
        .map((one) => `${one.tagName}.${one.className} ${one.textContent.slice(0, 40)}`),
    );
    expect(wider).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(
      Math.ceil(TYPE.width),
    );

    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    const boxes = [...pdf.matchAll(/\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/g)];
    expect(boxes.length).toBeGreaterThan(2);
    for (const [, width, height] of boxes) {
      expect(Number(width)).toBeCloseTo((A4.width * 72) / 25.4, -0.3);
      expect(Number(height)).toBeCloseTo((A4.height * 72) / 25.4, -0.3);
    }
  });

  test(`a metre of the map is a metre by its scale, bands are areas and words are text: ${name}`, async ({
    page,
  }) => {
    await report(page, home());
    await onPaper(page);
    const maps = await page.locator('.report .whole-map').evaluateAll((all) =>
      all.map((map) => {
        const svg = map.querySelector('svg')!;
        const numerals = [...svg.querySelectorAll('text:not([aria-hidden])')]
          .filter((one) => /^−?\d+(\.\d)?( m)?$/.test(one.textContent.trim()))
          .filter(
            (one) => one.getAttribute('text-anchor') === 'middle' && one.getAttribute('font-size') === '9',
          )
          .map((one) => ({
            metres: Number(one.textContent.trim().replace('−', '-').replace(' m', '')),
            x: Number(one.getAttribute('x')),
          }));
        return {
          caption: map.querySelector('.title p')!.textContent,
          drawn: svg.getBoundingClientRect().width / svg.viewBox.baseVal.width,
          numerals,
          bands: svg.querySelectorAll('path[clip-path*="floor"]').length,
          pictures: svg.querySelectorAll('image, foreignObject').length,
        };
      }),
    );
    expect(maps.length).toBeGreaterThan(0);
    for (const { caption, drawn, numerals, bands, pictures } of maps) {
      const scale = Number(/^1 : (\d+)/.exec(caption)![1]);
      const [first, last] = [numerals[0]!, numerals.at(-1)!];
      const perMetre = ((last.x - first.x) / (last.metres - first.metres)) * drawn;
      expect(((MM * 1000) / perMetre / scale).toFixed(4)).toBe('1.0000');
      expect(bands).toBeGreaterThan(0);
      expect(pictures).toBe(0);
    }
  });

  test(`cautions stand on the first page, and every reading on its map: ${name}`, async ({ page }) => {
    const printed = home();
    await report(page, printed);
    await onPaper(page);
    const cautions = await page.locator('.report .front .beside').evaluate((one) => {
      const top = document.querySelector('.report')!.getBoundingClientRect().top;
      return one.getBoundingClientRect().bottom - top;
    });
    expect(cautions).toBeLessThanOrEqual(TYPE.height);

    const shown = await page
      .locator('.report .whole-map svg:first-child')
      .evaluateAll((all) =>
        all.flatMap((svg) =>
          [...svg.querySelectorAll('text:not([aria-hidden])')].map((one) => one.textContent.trim()),
        ),
      );
    const first = Object.keys(printed.rounds)[0];
    const readings = Object.values(printed.readings).filter(({ round }) => (round ?? first) === first);
    const numbers = new Set(readings.map(({ id }) => id.slice(1)));
    const values = shown.filter((text) => /^([<>]\s*)?\d*[.]?\d+$/.test(text) && !numbers.has(text));
    const numbered = shown.filter((text) => numbers.has(text));
    expect(values.length + numbered.length).toBeGreaterThanOrEqual(readings.length);
  });
}

test('long texts and signs of markup are printed as text', async ({ page }) => {
  const home = crowded();
  await report(page, home);
  await onPaper(page);
  const text = await page.locator('.report').innerText();
  expect(text).toContain(home.title);
  expect(text).toContain('<as found>');
  expect(text).toContain('Supercalifragilistic<b>&amp;"');
  expect(await page.locator('.report .front b').count()).toBe(0);
});
