// Point 15: with text at 200 %, and with the raised spacing of WCAG 1.4.12, nothing is cut off, no text
// lies over another, and no page moves sideways. Each page takes one of the two in its turn; JOURNEYS=long
// takes each page in both.

import { expect, test } from '@jest/globals';
import type { Page } from 'playwright-core';
import { axe, journey, settled, withOffice, type Who } from './browser.js';
import { PAGES } from './routes.js';

const LARGE = { text: ':root { font-size: 200% !important }' } as const;
const SPACED =
  '* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }';
const STYLES = { 'text at 200 %': LARGE.text, 'raised spacing': SPACED } as const;
const NAMES = [
  'jobs',
  'job',
  'open-job',
  'import',
  'facts',
  'stage-hazards',
  'stage-gauge',
  'record',
  'proof',
  'request',
  'rules',
  'catalogue',
  'people',
  'backups',
  'phone',
];

const LONG = process.env['JOURNEYS'] === 'long';

journey('large and spaced text', () => {
  const office = withOffice();
  const tabs = new Map<string, Promise<Page>>();
  const tabOf = (who: Who): Promise<Page> => {
    const tab = tabs.get(who.id) ?? office.as(who, { viewport: { width: 1280, height: 900 } });
    tabs.set(who.id, tab);
    return tab;
  };
  const pages = PAGES.filter(({ name, who }) => who !== null && NAMES.includes(name));

  test('the pages named here are there', () => {
    expect(pages.map(({ name }) => name).sort()).toEqual([...NAMES].sort());
  });

  test.each(
    pages.flatMap((each, i) =>
      Object.keys(STYLES)
        .filter((_, turn, all) => LONG || i % all.length === turn)
        .map((style) => [style, each.name, each] as const),
    ),
  )(
    'point 15: with %s, %s',
    async (style, _, { path, who }) => {
      const page = await tabOf(who as Who);
      await page.goto(path);
      await settled(page);
      await page.addStyleTag({ content: STYLES[style as keyof typeof STYLES] });
      expect(await troubles(page)).toEqual([]);
    },
    60_000,
  );

  test('the check itself finds text that is cut off and text over text', async () => {
    const page = await tabOf(pages.find(({ name }) => name === 'jobs')?.who as Who);
    for (const [style, found] of [
      ['main h1 { overflow: hidden; width: 1ch; white-space: nowrap }', /^cut off: H1/],
      ['main p[role=status] { position: relative; top: -2rem }', /^one over another/],
      ['main { width: 120vw }', /sideways/],
    ] as const) {
      await page.goto('/jobs');
      await settled(page);
      await page.addStyleTag({ content: style });
      expect((await troubles(page)).join('\n')).toMatch(new RegExp(found.source, 'm'));
    }
  }, 60_000);

  test('axe agrees at 200 %', async () => {
    const page = await tabOf(pages.find(({ name }) => name === 'stage-gauge')?.who as Who);
    await page.goto(pages.find(({ name }) => name === 'stage-gauge')?.path ?? '');
    await settled(page);
    await page.addStyleTag({ content: LARGE.text });
    expect(await axe(page)).toEqual([]);
  }, 60_000);
});

/** What is cut off, what lies over what, and whether the page moves sideways. */
const troubles = (page: Page): Promise<readonly string[]> =>
  page.evaluate(`(() => {
    const found = [];
    if (document.documentElement.scrollWidth > innerWidth) found.push('the page moves sideways');
    const hidden = (each) => each.closest('.visually-hidden, svg, details:not([open]) > :not(summary), .skip');
    for (const each of document.querySelectorAll('body *')) {
      if (hidden(each) || each.clientWidth === 0) continue;
      const { overflowX, overflowY } = getComputedStyle(each);
      const cut = (overflowX === 'hidden' && each.scrollWidth > each.clientWidth + 1) ||
        (overflowY === 'hidden' && each.scrollHeight > each.clientHeight + 1);
      if (cut) found.push('cut off: ' + each.tagName + ' ' + each.textContent.slice(0, 40));
    }
    const lines = [];
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walk.nextNode(); node; node = walk.nextNode()) {
      if (!node.data.trim() || hidden(node.parentElement) || !node.parentElement.checkVisibility()) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      for (const box of range.getClientRects()) if (box.width > 1) lines.push([node, box]);
    }
    for (const [i, [node, a]] of lines.entries()) for (const [other, b] of lines.slice(i + 1)) {
      if (node === other) continue;
      const x = Math.min(a.right, b.right) - Math.max(a.left, b.left);
      const y = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
      if (x > 3 && y > Math.min(a.height, b.height) * 0.6)
        found.push('one over another: ' + node.data.trim().slice(0, 30) + ' | ' + other.data.trim().slice(0, 30));
    }
    return found.slice(0, 8);
  })()`);
