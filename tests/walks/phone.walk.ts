import { expect, test, type Page } from '@playwright/test';
import { arrive, goTo, newHome, sheet } from './steps';

/** Drags one finger over the sheet, as shares of it. */
async function swipe(
  page: Page,
  from: readonly [number, number],
  to: readonly [number, number],
): Promise<void> {
  const { at } = await sheet(page);
  const touches = await page.context().newCDPSession(page);
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: { x: number; y: number }[]) =>
    touches.send('Input.dispatchTouchEvent', { type, touchPoints: points });
  await send('touchStart', [at(...from)]);
  for (const share of [0.25, 0.5, 0.75, 1]) {
    await send('touchMove', [at(from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1]))]);
  }
  await send('touchEnd', []);
  await touches.detach();
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
    await page.getByRole('button', { name: 'Work it out' }).tap();
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
