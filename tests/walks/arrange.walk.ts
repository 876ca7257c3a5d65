import { expect, test, type Locator, type Page } from '@playwright/test';
import { setSettings } from '../../src/home/edits/setSettings';
import type { Home } from '../../src/home/home';
import { tryEdit } from '../../src/editor/store';
import { doubtful, tight } from '../support/homes';
import { answersOf, onScreen } from './answers';
import { press, tabTo } from './byKeys';
import { arrive, goTo, keptHome, openHome, openSample } from './steps';

/** Whatever must be worked out first; a slow machine gets its time. */
const WORKED_OUT = { timeout: 60_000 };
const FLAT = 'samples/one-bedroom-flat.home.json';
/** The door of the flat's bedroom has its leaf at x 4.75–5.55, y 3.6–4.4: a bed so far up its wall stands in it. Metres. */
const BY_THE_DOOR = 3.5;
const STRUCK = 'The door to the hall would strike it.';

test.describe.configure({ timeout: 240_000 });
test.use({ actionTimeout: 60_000 });

const panelOf = (page: Page) => page.getByRole('region', { name: 'arrange' });
const take = (panel: Locator) => panel.getByRole('button', { name: 'Take this arrangement' });
/** The row of a piece among people and hours: where it stands, or is shown. */
const rowOf = (panel: Locator, id: string) => panel.locator(`li[data-thing=${id}]`);
/** What the panel says in numbers of a piece where it stands. */
const doseOf = (panel: Locator, id: string) => rowOf(panel, id).locator('.figure').innerText();

/** The places of pieces, by id. */
const placesOf = (home: Home) =>
  Object.fromEntries(Object.values(home.pieces).map(({ id, at, angle }) => [id, { at, angle }]));

test('by pointer: another answer is dragged to where a door strikes it, taken so, and undone', async ({
  page,
}) => {
  const { home, alternatives } = answersOf(FLAT);
  await arrive(page);
  await openSample(page, /^One-bedroom flat/);
  const found = await keptHome(page);
  await goTo(page, 'arrange');
  const panel = panelOf(page);

  await test.step('the answer is worked out, and another is shown', async () => {
    await expect(take(panel)).toBeVisible(WORKED_OUT);
    await expect(panel.getByRole('heading', { level: 2 })).toContainText('Double bed');
    await panel.getByRole('button', { name: /: show on the plan$/ }).click();
    await expect(panel.getByText('Best answer')).toBeVisible();
  });
  const dose = await doseOf(panel, 'p1');

  await test.step('its ghost is dragged; the rule is said while it is carried, and after', async () => {
    await page.getByRole('button', { name: 'whole home' }).click();
    const at = await onScreen(page, home);
    const ghost = alternatives[0]!.pieces.find(({ id }) => id === 'p1')!.at;
    const from = at(ghost);
    const to = at([ghost[0], BY_THE_DOOR]);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(from.x, (from.y + to.y) / 2, { steps: 5 });
    await page.mouse.move(to.x, to.y, { steps: 5 });
    await expect(panel.getByText(STRUCK).first()).toBeVisible();
    await page.mouse.up();
    await expect(panel.getByRole('heading', { name: 'As you put it' })).toBeVisible();
    await expect(panel.getByText(STRUCK).first()).toBeVisible();
    await expect(panel.getByText('it is your choice to leave it so')).toBeVisible();
    await expect(panel.getByText('Its dose is being worked out.')).toHaveCount(0, WORKED_OUT);
  });

  await test.step('the home is as it was until it is taken', async () => {
    expect(await doseOf(panel, 'p1')).toBe(dose);
    await take(panel).click();
    await expect(panel.getByRole('heading', { name: 'Taken' })).toBeVisible();
  });

  await test.step('it stands there, and stays marked', async () => {
    await expect(rowOf(panel, 'p1')).toContainText(/breaks \d+ rules?/);
    await expect(async () => expect(await doseOf(panel, 'p1')).not.toBe(dose)).toPass(WORKED_OUT);
    const taken = await keptHome(page);
    expect(taken.pieces.p1!.at[1]).toBeCloseTo(BY_THE_DOOR, 1);
    await goTo(page, 'arrange');
    await expect(rowOf(panel, 'p1')).toContainText(/breaks \d+ rules?/);
    // It is still selected, so that its row is open.
    await expect(rowOf(panel, 'p1').getByText(STRUCK)).toBeVisible();
  });

  await test.step('one undo brings everything back', async () => {
    await page.getByRole('button', { name: 'undo' }).click();
    await expect(async () => expect(await doseOf(panel, 'p1')).toBe(dose)).toPass(WORKED_OUT);
    await expect(rowOf(panel, 'p1')).not.toContainText(STRUCK);
    expect(await keptHome(page)).toEqual(found);
  });
});

test('by keyboard alone: another answer is shown, moved, turned, taken, undone and done again', async ({
  page,
}) => {
  await arrive(page);
  await press(page, /^Homes on this device/);
  await page.keyboard.press('Enter');
  await press(page, /^One-bedroom flat/);
  await press(page, /^arrange/);
  const panel = panelOf(page);
  await expect(take(panel)).toBeVisible(WORKED_OUT);
  const heard = page.locator('p[aria-live=polite]');

  await test.step('another answer, and its bed', async () => {
    await press(page, /: show on the plan$/);
    await expect(panel.getByText('Best answer')).toBeVisible();
    await press(page, /^A ?Double bed/);
    await expect(heard).toHaveText('Double bed selected');
  });

  await test.step('the ghost goes up the wall to the door; what it breaks is heard', async () => {
    await tabTo(page, /^The plan/);
    for (let i = 0; i < 5; i++) await page.keyboard.press('Shift+ArrowUp');
    for (let i = 0; i < 6; i++) await page.keyboard.press('ArrowUp');
    await expect(panel.getByRole('heading', { name: 'As you put it' })).toBeVisible();
    await expect(panel.getByText(STRUCK).first()).toBeVisible();
    await expect(heard).toContainText(/Double bed: \d.* mG·h \(\d.*\)\. /, WORKED_OUT);
    await expect(heard).toContainText(STRUCK);
    await page.keyboard.press('r');
    await page.keyboard.press('Shift+R');
    await page.keyboard.press('ControlOrMeta+z');
    await page.keyboard.press('ControlOrMeta+z');
    await expect(heard).toContainText(STRUCK, WORKED_OUT);
  });

  await test.step('taken, undone, and done again', async () => {
    const found = await doseOf(panel, 'p1');
    await press(page, /^Take this arrangement/);
    await expect(panel.getByRole('heading', { name: 'Taken' })).toBeVisible();
    await expect(rowOf(panel, 'p1')).toContainText(/breaks \d+ rules?/);
    await expect(panel.getByText(/ One undo brings it back\./)).toBeVisible(WORKED_OUT);
    await expect(async () => expect(await doseOf(panel, 'p1')).not.toBe(found)).toPass(WORKED_OUT);
    const taken = await doseOf(panel, 'p1');
    await page.keyboard.press('ControlOrMeta+z');
    await expect(panel.getByRole('heading', { name: 'Taken' })).toHaveCount(0);
    await expect(async () => expect(await doseOf(panel, 'p1')).toBe(found)).toPass(WORKED_OUT);
    await page.keyboard.press('ControlOrMeta+Shift+z');
    await expect(async () => expect(await doseOf(panel, 'p1')).toBe(taken)).toPass(WORKED_OUT);
    await expect(rowOf(panel, 'p1')).toContainText(/breaks \d+ rules?/);
  });
});

/** A home made for a test, drawn by kriging: it need not wait for samples. */
function plainly(home: Home): Home {
  const tried = tryEdit(home, setSettings({ method: 'kriging' }));
  if ('problem' in tried) throw new Error(tried.problem.kind);
  return tried.change.home;
}

test('where nothing fits, what would have to be given up is said, shown, taken and undone', async ({
  page,
}) => {
  await arrive(page);
  await openHome(page, plainly(tight()));
  const found = await keptHome(page);
  await goTo(page, 'arrange');
  const panel = panelOf(page);
  await expect(panel.getByRole('heading', { name: 'No place inside the rules' })).toBeVisible(WORKED_OUT);
  await expect(
    panel.getByText(/It fits if the strip at the foot of bed A is 0\.60 m instead of 0\.75 m\./),
  ).toBeVisible();
  await expect(take(panel)).toHaveCount(0);
  await panel.getByRole('button', { name: 'show on the plan' }).click();
  await expect(panel.getByText('So it is shown.')).toBeVisible();
  await take(panel).click();
  await expect(panel.getByRole('heading', { name: 'Taken' })).toBeVisible();
  const taken = await keptHome(page);
  expect(taken.pieces.p1!.access.foot).toBe(0.6);
  expect(placesOf(taken)).not.toEqual(placesOf(found));
  await page.getByRole('button', { name: 'undo' }).click();
  expect(await keptHome(page)).toEqual(found);
});

test('where both places are to be read first, the four places lead to the survey', async ({ page }) => {
  await arrive(page);
  await openHome(page, doubtful());
  await goTo(page, 'arrange');
  const panel = panelOf(page);
  await expect(panel.getByRole('heading', { name: 'Read both places of bed A first' })).toBeVisible(
    WORKED_OUT,
  );
  await expect(panel.getByRole('button', { name: /^\d: Read here$/ })).toHaveCount(4);
  await panel.getByRole('button', { name: '1: Read here' }).click();
  const survey = page.getByRole('region', { name: 'survey' });
  await expect(survey).toBeVisible();
  await survey.getByLabel('Value', { exact: true }).fill('0.09');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: /survey 11 readings/ })).toBeVisible();
  await goTo(page, 'map');
  const map = page.getByRole('region', { name: 'map' });
  await expect(map.getByRole('combobox').filter({ hasText: 'both places before deciding' })).toHaveValue(
    'given',
  );
  // One of the four has been read.
  await expect(map.locator('li[data-thing^=next-]')).toHaveCount(3);
});

test('a marked source is tried off: said to be unmeasured, kept, compared as found first, used and undone', async ({
  page,
}) => {
  await arrive(page);
  await openSample(page, /^Terraced house/);
  await goTo(page, 'arrange');
  const panel = panelOf(page);
  await expect(take(panel)).toBeVisible(WORKED_OUT);
  const unmeasured = 'The map as it would be without the street line. Nothing here was measured.';
  const dose = await doseOf(panel, 'p1');

  await test.step('off: panel and foot line say so, and the doses follow', async () => {
    await panel.getByText('What if a source were off?').click();
    await rowOf(panel, 's1').getByRole('button').first().click();
    await rowOf(panel, 's1').getByRole('radio', { name: 'off' }).check();
    await expect(panel.getByText(unmeasured)).toBeVisible();
    await expect(page.getByRole('contentinfo')).toContainText(unmeasured);
    await expect(async () => expect(await doseOf(panel, 'p1')).not.toBe(dose)).toPass(WORKED_OUT);
  });

  await test.step('kept under a name, beside how it was found, and said to be unmeasured', async () => {
    await panel.getByLabel('Keep under the name').fill('Quiet street');
    await panel.getByLabel('Keep under the name').press('Enter');
    await panel.getByRole('button', { name: 'Keep how it stands' }).click();
    const kept = panel.locator('button.row');
    await expect(panel.getByRole('button', { name: /^As found \d/ })).toBeVisible();
    await expect(kept.first()).toContainText('As found');
    const mine = kept.filter({ hasText: 'Quiet street' });
    await expect(mine).toContainText('not measured');
    await expect(mine).toContainText('Street line off');
    await expect(mine).toContainText(/µT·h \(/, WORKED_OUT);
  });

  await test.step('the map as it is comes back; used, its furniture is; one undo takes it back', async () => {
    await panel.getByRole('button', { name: 'The map as it is' }).click();
    await expect(panel.getByText(unmeasured)).toHaveCount(0);
    await expect(page.getByRole('contentinfo')).not.toContainText('Nothing here was measured');
    await expect(async () => expect(await doseOf(panel, 'p1')).toBe(dose)).toPass(WORKED_OUT);
    const found = await keptHome(page);
    await goTo(page, 'arrange');
    await panel
      .getByRole('button', { name: /: show on the plan$/ })
      .first()
      .click();
    await take(panel).click();
    await expect(panel.getByRole('heading', { name: 'Taken' })).toBeVisible();
    const mine = panel.locator('button.row').filter({ hasText: 'Quiet street' });
    await mine.click();
    await panel.getByRole('button', { name: 'Use', exact: true }).click();
    const used = await keptHome(page);
    expect(placesOf(used)).toEqual(placesOf(found));
    expect(used.sources).toEqual(found.sources);
    await goTo(page, 'arrange');
    await page.getByRole('button', { name: 'undo' }).click();
    expect(placesOf(await keptHome(page))).not.toEqual(placesOf(found));
  });
});
