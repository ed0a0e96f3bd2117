// What holds on every page, empty, full and with errors: no finding of axe, one heading, a title of
// three parts, targets large enough, nothing scrolling sideways at 320 px. Narrow and dark, axe asks what
// width and colors change, on every other page; JOURNEYS=long asks everything of every page.

import { expect, test } from '@jest/globals';
import type { Page } from 'playwright-core';
import { axe, journey, LOOKS, settled, withOffice, type Who } from './browser.js';
import { PAGES } from './routes.js';

const LONG = process.env['JOURNEYS'] === 'long';

journey('every page', () => {
  const office = withOffice();
  const tabs = new Map<string, Promise<Page>>();
  /** What the browser reported, but for answers that the page shows itself. */
  const reported: string[] = [];
  const listen = (page: Page): Page =>
    page
      .on('pageerror', (error) => reported.push(error.message))
      .on('console', (message) => {
        const text = message.text();
        if (message.type() === 'error' && !text.startsWith('Failed to load resource'))
          reported.push(text);
      });
  const tabOf = (who: Who | null, narrow = false, dark = false): Promise<Page> => {
    const key = `${who?.id} ${narrow} ${dark}`;
    const viewport = narrow ? { width: 320, height: 700 } : { width: 1280, height: 900 };
    const options = { viewport, colorScheme: dark ? ('dark' as const) : ('light' as const) };
    const tab =
      tabs.get(key) ?? (who ? office.as(who, options) : office.stranger(options)).then(listen);
    tabs.set(key, tab);
    return tab;
  };
  const pages = PAGES.map((each) => [each.name, each] as const);
  /** Contrast takes axe longest: every other page is asked light, the others narrow and dark. */
  const SLOW = ['color-contrast'];
  const light = (each: (typeof PAGES)[number]) => LONG || PAGES.indexOf(each) % 2 === 0;
  const dark = (each: (typeof PAGES)[number]) => LONG || !light(each);

  test.each(pages)(
    'point 4: axe finds nothing on %s, wide and light, and the browser has nothing to report',
    async (_, each) => {
      const { path, who } = each;
      const page = await tabOf(who);
      reported.length = 0;
      await page.goto(path);
      await settled(page);
      expect(reported).toEqual([]);
      expect(await axe(page, undefined, light(each) ? [] : SLOW)).toEqual([]);
    },
    60_000,
  );

  test.each(pages)(
    'points 1, 3, 4, 5, 7, 9, 14, 17, 18 and 20 hold on %s, narrow and dark',
    async (_, each) => {
      const { path, who } = each;
      const page = await tabOf(who, true, true);
      await page.goto(path);
      await settled(page);
      if (dark(each)) expect(await axe(page, LONG ? undefined : LOOKS)).toEqual([]);
      expect(await page.title()).toMatch(/^(Error: )?.+ - Gauge Ledger$/);
      const counts = await page.evaluate(`({
      h1: document.querySelectorAll('h1').length,
      main: document.querySelectorAll('main').length,
      banner: document.querySelectorAll('body header').length,
      unnamed: document.querySelectorAll('nav:not([aria-label]):not([aria-labelledby])').length,
      tablesWithoutCaption: document.querySelectorAll('table:not(:has(caption))').length,
      headsWithoutScope: document.querySelectorAll('th:not([scope])').length,
      focusableCells: document.querySelectorAll('td[tabindex], th[tabindex]').length,
      placeholders: document.querySelectorAll('[placeholder]').length,
      editedCells: document.querySelectorAll('td :is(select, textarea, [contenteditable], input:not([type=checkbox]))').length,
      looseChoices: [...document.querySelectorAll('input[type=radio], input[type=checkbox]')]
        .filter((each) => !each.closest('td') && !each.closest('fieldset:has(> legend)'))
        .map((each) => each.id),
      sideways: document.documentElement.scrollWidth > innerWidth,
    })`);
      expect(counts).toEqual({
        h1: 1,
        main: 1,
        banner: path === '/nowhere' ? 0 : 1,
        unnamed: 0,
        tablesWithoutCaption: 0,
        headsWithoutScope: 0,
        focusableCells: 0,
        placeholders: 0,
        editedCells: 0,
        looseChoices: [],
        sideways: false,
      });
      expect(await smallTargets(page)).toEqual([]);
    },
    60_000,
  );
});

/** Controls under 24 by 24 CSS px; a link inside a sentence is exempt (WCAG 2.5.8). */
async function smallTargets(page: Page): Promise<string[]> {
  return page.evaluate(`[...document.querySelectorAll('main a, main button, main input, main select, main summary, header a, header button')]
    .filter((each) => each.getClientRects().length > 0 && each.type !== 'hidden')
    .filter((each) => each.tagName !== 'A' || !/^(P|LI|DD|TD)$/.test(each.parentElement.tagName) || each.parentElement.textContent.trim() === each.textContent.trim())
    .map((each) => ({ text: (each.textContent || each.id || each.getAttribute('aria-label') || '').slice(0, 40), box: each.getBoundingClientRect() }))
    .filter(({ box }) => box.width < 23.5 && box.height < 24 || box.height < 23.5)
    .map(({ text, box }) => text + ' ' + Math.round(box.width) + 'x' + Math.round(box.height))`);
}
