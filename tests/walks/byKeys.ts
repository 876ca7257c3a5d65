import type { Page } from '@playwright/test';

/** The name by which a screen reader would call what has the focus. */
const focused = (page: Page) =>
  page.evaluate(() => {
    const here = document.activeElement as HTMLElement | null;
    if (!here || here === document.body) return '';
    const label =
      here.getAttribute('aria-label') ??
      (here as HTMLInputElement).labels?.[0]?.textContent ??
      here.textContent;
    return (label ?? '').replace(/\s+/g, ' ').trim();
  });

/** Presses Tab until what has the focus is called by the name. */
export async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let presses = 0; presses < 250; presses++) {
    if (name.test(await focused(page))) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never came to ${name}; it stands at “${await focused(page)}”.`);
}

/** Goes to what is called so, and presses it. */
export async function press(page: Page, name: RegExp): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press('Enter');
}

/** Types over what stands in the field called so. */
export async function type(page: Page, name: RegExp, text: string): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(text);
}
