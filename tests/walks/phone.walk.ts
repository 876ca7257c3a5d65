import { expect, test, type Page } from '@playwright/test';
import { arrive, finger, goTo, newHome, openHomes, sheet } from './steps';

/** Drags one finger over the sheet, as shares of it. */
async function swipe(
  page: Page,
  from: readonly [number, number],
  to: readonly [number, number],
): Promise<void> {
  const { at } = await sheet(page);
  await finger(page, at(...from), at(...to));
}

/** Types a value on the page's own keys. */
async function tapKeys(page: Page, text: string): Promise<void> {
  for (const key of text) await page.getByRole('button', { name: key, exact: true }).tap();
}

test('on a phone a bedroom is typed, read under the cross with the key pad, and its bed placed', async ({
  page,
}) => {
  await arrive(page);
  await newHome(page);

  await test.step('sketch: the room by its lengths, the bed from the key of signs', async () => {
    await page.getByRole('button', { name: 'Type its width and length' }).tap();
    await page.getByLabel('Width, left to right').fill('4,2');
    await page.getByLabel('Length, up the page').fill('3.6 m');
    await page.getByRole('button', { name: 'Draw this room' }).tap();
    await page.getByRole('group', { name: 'Furniture' }).getByRole('button', { name: 'bed for two' }).tap();
    const { at } = await sheet(page);
    const { x, y } = at(0.6, 0.5);
    await page.touchscreen.tap(x, y);
    await expect(page.getByRole('button', { name: /undo/ })).toBeEnabled();
  });

  await test.step('survey: the plan is moved under the cross, the value tapped', async () => {
    await goTo(page, 'survey');
    const moves: [number, number][] = [
      [-0.2, -0.15],
      [0.2, 0],
      [0.2, 0],
      [0, 0.15],
      [-0.2, 0],
      [-0.2, 0],
      [0, 0.15],
      [0.2, 0],
      [0.2, 0],
    ];
    for (const [index, [dx, dy]] of moves.entries()) {
      await swipe(page, [0.5, 0.5], [0.5 - dx, 0.5 + dy]);
      await tapKeys(page, ['0.08', '0.12', '0.3', '0.33', '0.11', '0.07', '0.06', '0.1', '0.28'][index]!);
      await page.getByRole('button', { name: /^Keep/ }).tap();
    }
    await expect(page.getByText('Reading 10')).toBeVisible();
    await page.getByRole('button', { name: /undo/ }).tap();
    await expect(page.getByText('Reading 9')).toBeVisible();
  });

  await test.step('arrange: worked out and taken', async () => {
    await goTo(page, 'arrange');
    await expect(page.getByText(/µT·h/).first()).toBeVisible({ timeout: 30_000 });
  });
});

test('every target on the phone is at least 44 px high or wide enough to hit', async ({ page }) => {
  await arrive(page);
  for (const stage of ['sketch', 'survey', 'map', 'judge', 'arrange', 'report'] as const) {
    await goTo(page, stage);
    const small = await page.evaluate(() =>
      [...document.querySelectorAll('button, select, [role=slider]')]
        .filter((element) => (element as HTMLElement).offsetParent !== null)
        .map((element) => ({
          box: element.getBoundingClientRect(),
          name: element.textContent?.trim().slice(0, 30),
        }))
        .filter(({ box }) => box.width > 0 && box.height < 43.5)
        .map(({ box, name }) => `${name} ${box.width.toFixed(0)}×${box.height.toFixed(0)}`),
    );
    expect(small, stage).toEqual([]);
  }
});

/** What stands on the pad: its value. */
const value = (page: Page) => page.getByRole('textbox', { name: 'Value' });
const keep = (page: Page) => page.getByRole('button', { name: /^Keep/ });

test('in survey: limits hold, nothing jumps, a far value is asked about, and a turn of the phone loses nothing', async ({
  page,
}) => {
  await arrive(page);
  await goTo(page, 'survey');

  await test.step('the words over the pad can be tapped', async () => {
    await page.getByRole('button', { name: 'more', exact: true }).tap();
    await expect(page.getByLabel('Height').first()).toBeVisible();
    await page.getByRole('button', { name: 'less', exact: true }).tap();
  });

  await test.step('the keys stay where they are, whatever is said or asked', async () => {
    const top = async () => (await keep(page).boundingBox())!.y;
    const before = await top();
    await keep(page).tap();
    await expect(page.getByRole('alert')).toContainText('Nothing was typed');
    expect(await top()).toBe(before);
    await tapKeys(page, '1');
    await expect(page.getByRole('alert')).toBeHidden();
    for (const word of ['low–high', 'x y z', 'note']) {
      await page.getByRole('button', { name: word }).tap();
      expect(await top(), word).toBe(before);
      for (const field of await page.locator('form.entry input:not([type=radio])').all())
        expect((await field.boundingBox())!.width, word).toBeGreaterThan(50);
      await page.getByRole('button', { name: word }).tap();
    }
    await page.getByRole('button', { name: 'take the last figure away' }).tap();
  });

  await test.step('below range is kept below range', async () => {
    await page.getByRole('button', { name: 'below range' }).tap();
    await tapKeys(page, '0.02');
    await expect(page.getByRole('button', { name: 'below range' })).toHaveAttribute('aria-pressed', 'true');
    await keep(page).tap();
    await expect(page.locator('[data-thing=m65]')).toContainText('< 0.02');
  });

  await test.step('782 µT is asked about once', async () => {
    await tapKeys(page, '782');
    await keep(page).tap();
    await expect(page.getByRole('alert')).toContainText('Was that nT?');
    await expect(page.locator('[data-thing=m66]')).toHaveCount(0);
    await page.getByRole('button', { name: 'It was nT' }).tap();
    await keep(page).tap();
    await expect(page.locator('[data-thing=m66]')).toContainText('0.78');
  });

  await test.step('turned and turned back, and after a look at the map, the typed value is there', async () => {
    await tapKeys(page, '14');
    await page.setViewportSize({ width: 844, height: 390 });
    await expect(value(page)).toHaveValue('14');
    await goTo(page, 'map');
    await page.setViewportSize({ width: 390, height: 844 });
    await goTo(page, 'survey');
    await expect(value(page)).toHaveValue('14');
  });

  await test.step('low, the sheet still shows the value and its key', async () => {
    await page.getByRole('slider', { name: 'Height of the sheet' }).press('ArrowDown');
    await expect(value(page)).toBeInViewport();
    await expect(keep(page)).toBeInViewport({ ratio: 0.9 });
  });
});

test('a phone on its side shows plan and panel at every stage, and the whole key pad', async ({ page }) => {
  await page.setViewportSize({ width: 844, height: 390 });
  await arrive(page);
  for (const stage of ['sketch', 'survey', 'map', 'judge', 'arrange', 'report'] as const) {
    await goTo(page, stage);
    const plan = (await page.getByRole('application', { name: 'The plan' }).boundingBox())!;
    const panel = (await page.locator('section.sheet').boundingBox())!;
    expect(plan.height, stage).toBeGreaterThan(250);
    expect(plan.x + plan.width, stage).toBeLessThanOrEqual(panel.x);
    expect(panel.height, stage).toBe(390);
    expect(panel.width, stage).toBeGreaterThan(320);
  }
  await goTo(page, 'survey');
  for (const key of ['1', '0', '.', 'above range', 'note', 'Keep'])
    await expect(page.getByRole('button', { name: key, exact: true })).toBeInViewport({ ratio: 1 });
});

test('a length that is refused draws no room, and a sample is opened once', async ({ page }) => {
  await arrive(page);
  await newHome(page);
  await page.getByRole('button', { name: 'Type its width and length' }).tap();
  await page.getByLabel('Width, left to right').fill('4.2.1');
  await page.getByRole('button', { name: 'Draw this room' }).tap();
  await expect(page.getByText('Not a length')).toBeVisible();
  await page.getByRole('button', { name: 'Draw this room' }).tap();
  await expect(page.getByLabel('Width, left to right')).toBeFocused();
  await expect(page.getByRole('button', { name: /undo/ })).toBeDisabled();

  for (const _ of [1, 2]) {
    await openHomes(page);
    await page
      .getByRole('dialog')
      .getByRole('button', { name: /^Single bedroom/ })
      .click();
    await expect(page.getByRole('dialog')).toBeHidden();
  }
  await openHomes(page);
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByRole('button', { name: /open now/ })).toHaveCount(1);
  await expect(dialog.getByRole('button', { name: /^remove:/ })).toHaveCount(3);
});

test('a reading of the evidence is tapped, told in words and selected', async ({ page }) => {
  await arrive(page);
  await goTo(page, 'map');
  const grip = page.getByRole('slider', { name: 'Height of the sheet' });
  await grip.press('ArrowUp');
  await grip.press('ArrowUp');
  const plot = page.getByRole('slider', { name: /what the others predict/ });
  await expect(plot).toBeVisible({ timeout: 30_000 });
  const wide = (await plot.boundingBox())!;
  expect(wide.x + wide.width).toBeLessThanOrEqual(390);
  const point = (await plot.locator('circle.in').nth(3).boundingBox())!;
  await page.touchscreen.tap(point.x + point.width / 2, point.y + point.height / 2);
  const said = page.getByRole('region', { name: 'map' }).locator('[aria-live]');
  await expect(said).toHaveText(/^Reading \d+ .*µT read, .*predicted/);
  await expect(plot.locator('.ring')).toHaveCount(1);
});
