// A job opened and its first stage confirmed by keyboard alone: Tab, Shift+Tab, arrows, Space, Enter
// and letters; the mouse is never used.

import { expect, test } from '@jest/globals';
import type { Page } from 'playwright-core';
import { OFFICE } from '../../apps/cli/demonstration/people.js';
import { journey, settled, withOffice } from './browser.js';

interface Here {
  readonly name: string;
  readonly role: string;
}

/** The accessible name, near enough, of what has focus. */
const here = (page: Page): Promise<Here> =>
  page.evaluate(`(() => {
    const each = document.activeElement;
    const labels = [...(each.labels ?? [])].map((label) => label.textContent).join(' ');
    return { name: (each.getAttribute('aria-label') || labels || each.textContent || '').trim(), role: each.type || each.tagName.toLowerCase() };
  })()`);

/** Tabs on until something with this name has focus. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let i = 0; i < 80; i++) {
    await page.keyboard.press('Tab');
    if (name.test((await here(page)).name)) return;
  }
  throw new Error(`Tab never reached ${name}; it is on ${JSON.stringify(await here(page))}`);
}

async function write(page: Page, field: RegExp, text: string): Promise<void> {
  await tabTo(page, field);
  await page.keyboard.type(text);
}
async function press(page: Page, name: RegExp, key = 'Enter'): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press(key);
}

journey('a job by keyboard', () => {
  const office = withOffice();

  test('quick keys reach the find box, the rows and a new job', async () => {
    const page = await office.as(OFFICE);
    await page.goto('/jobs');
    await settled(page);
    await page.keyboard.press('j');
    expect((await here(page)).name).toBe('2026-0102');
    await page.keyboard.press('j');
    expect((await here(page)).name).toBe('2026-0101');
    await page.keyboard.press('k');
    expect((await here(page)).name).toBe('2026-0102');
    await page.keyboard.press('/');
    expect((await here(page)).name).toMatch(/^Find/);
    await page.keyboard.type('jn');
    expect(page.url()).not.toMatch(/new$/);
    await page.keyboard.press('Tab');
    await page.keyboard.press('n');
    await page.waitForURL('**/jobs/new');
  }, 60_000);

  test('open a job, record facts, confirm the style', async () => {
    const page = await office.as(OFFICE);
    await page.goto('/jobs/new');
    await settled(page);
    await write(page, /^Name of the job/, 'Shed by keyboard');
    await write(page, /^Customer/, 'North Meadow');
    await write(page, /^Site address/, '3 Example Road');
    await write(page, /^Name of building 1/, 'Shed');
    await write(page, /^Surface 1 of building 1/, 'Shed roof');
    await press(page, /^Value$/, 'Space');
    await press(page, /^Open the job$/);
    await page.getByRole('heading', { level: 1, name: /^Job 2/ }).waitFor();
    await press(page, /^Shed roof$/);
    await page.getByRole('heading', { level: 1, name: 'Shed roof: Style' }).waitFor();
    await press(page, /^Record or change facts$/);
    await page.getByRole('heading', { level: 1, name: /^Facts for style/ }).waitFor();
    await write(page, /^Slope/, '4');
    await tabTo(page, /^What the panels lie on/);
    await page.keyboard.type('Purlins');
    await tabTo(page, /^Assumed$/);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    expect((await here(page)).name).toBe('Measured');
    await write(page, /^From whom or what/, 'Tape');
    await press(page, /^Record these facts$/);
    await page.getByRole('heading', { level: 1, name: 'Shed roof: Style' }).waitFor();
    await tabTo(page, /^(Snap|Ribbed|Standing|Mechanical|Flush|Corrugated|Deep)/);
    for (let i = 0; i < 60 && !/^Ribbed/.test((await here(page)).name); i++)
      await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Space');
    await page
      .getByRole('region', { name: 'What the rules say' })
      .getByText(/rules? asked:/)
      .waitFor();
    await press(page, /^Save and continue$/);
    await page.getByRole('heading', { level: 1, name: 'Shed roof: Coating' }).waitFor();
    expect(await page.locator('ol.stage-list > li').first().innerText()).toMatch(/Style\s+done/);
  }, 90_000);
});
