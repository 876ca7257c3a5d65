import { expect, test } from '@playwright/test';
import { answersOf, onScreen } from './answers';
import { arrive, finger, goTo, keptHome, openSample } from './steps';

const WORKED_OUT = { timeout: 60_000 };
const FLAT = 'samples/one-bedroom-flat.home.json';

test.describe.configure({ timeout: 240_000 });
test.use({ actionTimeout: 60_000 });

test('on a phone another answer is dragged by a finger, put back, taken and undone', async ({ page }) => {
  const { home, alternatives } = answersOf(FLAT);
  const ghost = alternatives[0]!.pieces.find(({ id }) => id === 'p1')!;
  await arrive(page);
  await openSample(page, /^One-bedroom flat/);
  const found = await keptHome(page);
  await goTo(page, 'arrange');
  const panel = page.getByRole('region', { name: 'arrange' });
  const take = panel.getByRole('button', { name: 'Take this arrangement' });
  const byHand = panel.getByRole('heading', { name: 'As you put it' });
  await expect(take).toBeVisible(WORKED_OUT);

  await test.step('the sheet is opened, another answer shown, and the sheet half as high again', async () => {
    const grip = page.getByRole('slider', { name: 'Height of the sheet' });
    await grip.press('ArrowUp');
    await panel.getByRole('button', { name: /: show on the plan$/ }).tap();
    await expect(panel.getByText('Best answer')).toBeVisible();
    await grip.press('ArrowDown');
    await expect(grip).toHaveAttribute('aria-valuenow', '1');
  });

  await test.step('its ghost is dragged up the wall to the door by a finger', async () => {
    const plan = page.getByRole('application', { name: 'The plan' });
    await expect(async () => {
      const sheet = (await page.locator('section.sheet').boundingBox())!;
      const box = (await plan.boundingBox())!;
      expect(box.y + box.height).toBeLessThanOrEqual(sheet.y + 1);
    }).toPass(WORKED_OUT);
    const at = await onScreen(page, home);
    await finger(page, at(ghost.at), at([ghost.at[0], 3.5]));
    await expect(byHand).toBeVisible();
    await expect(panel.getByText('The door to the hall would strike it.').first()).toBeVisible();
  });

  await test.step('back to the planner’s places, and taken there', async () => {
    await expect(panel.getByText('Its dose is being worked out.')).toHaveCount(0, WORKED_OUT);
    // A tap straight after the drag is sometimes lost, why is not known: the finger presses again.
    const back = panel.getByRole('button', { name: 'Back to the planner’s places' });
    await expect(async () => {
      if ((await byHand.count()) > 0) await back.tap();
      await expect(byHand).toHaveCount(0, { timeout: 2000 });
    }).toPass(WORKED_OUT);
    await expect(panel.getByText('would strike it')).toHaveCount(0);
    await take.tap();
    await expect(panel.getByRole('heading', { name: 'Taken' })).toBeVisible();
    const taken = (await keptHome(page)).pieces.p1!;
    expect(taken.angle).toBe(ghost.angle);
    expect(Math.hypot(taken.at[0] - ghost.at[0], taken.at[1] - ghost.at[1])).toBeLessThan(0.001);
  });

  await test.step('one undo brings everything back', async () => {
    await page.getByRole('button', { name: 'undo' }).tap();
    expect(await keptHome(page)).toEqual(found);
  });
});
