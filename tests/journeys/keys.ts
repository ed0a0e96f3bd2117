// What people do with the keyboard alone: Tab, arrows, Space, Enter and letters; the mouse is never used.

import type { Page } from 'playwright-core';

export interface Here {
  readonly name: string;
  readonly role: string;
  /** Of a list, what is chosen now. */
  readonly chosen: string;
  readonly checked: boolean;
  /** The words of its row, where it stands in a table. */
  readonly row: string;
}

/** The accessible name, near enough, of what has focus, and what it holds. */
export const here = (page: Page): Promise<Here> =>
  page.evaluate(`(() => {
    const each = document.activeElement;
    const labels = [...(each.labels ?? [])].map((label) => label.textContent).join(' ');
    return {
      name: (each.getAttribute('aria-label') || labels || each.textContent || '').trim(),
      role: each.type || each.tagName.toLowerCase(),
      chosen: each.selectedOptions?.[0]?.text ?? '',
      checked: each.checked === true,
      row: each.closest('tr')?.innerText ?? '',
    };
  })()`);

type Where = RegExp | ((at: Here) => boolean);
const isAt = (at: Here, where: Where): boolean =>
  typeof where === 'function' ? where(at) : where.test(at.name);

/** More stops than any page of a job has. */
const STOPS = 250;

/** Tabs on until it is reached. */
export async function tabTo(page: Page, where: Where): Promise<void> {
  for (let i = 0; i < STOPS; i++) {
    await page.keyboard.press('Tab');
    if (isAt(await here(page), where)) return;
  }
  throw new Error(`Tab never reached ${where}; it is on ${JSON.stringify(await here(page))}`);
}

export async function write(page: Page, field: Where, text: string): Promise<void> {
  await tabTo(page, field);
  await page.keyboard.press('Control+A');
  await page.keyboard.type(text);
}

export async function press(page: Page, name: Where, key = 'Enter'): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press(key);
}

/** Of a list with one choice, by arrows. */
export async function select(page: Page, field: Where, option: RegExp): Promise<void> {
  await tabTo(page, field);
  await page.keyboard.press('Home');
  let before = '';
  for (let at = await here(page); !option.test(at.chosen); at = await here(page)) {
    if (at.chosen === before) throw new Error(`No ${option} in ${at.name}; its last is ${before}`);
    before = at.chosen;
    await page.keyboard.press('ArrowDown');
  }
}

/** One radio of the next group that begins with this: Tab into it, arrows within, Space to take it. */
export async function pick(page: Page, group: Where, wanted: Where = group): Promise<void> {
  await tabTo(page, (at) => at.role === 'radio' && isAt(at, group));
  for (let i = 0; i < STOPS; i++) {
    if (isAt(await here(page), wanted)) return page.keyboard.press('Space');
    await page.keyboard.press('ArrowDown');
  }
  throw new Error(`Arrows never reached ${wanted}; on ${JSON.stringify(await here(page))}`);
}
