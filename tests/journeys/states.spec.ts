// Every page while it loads, when its reading fails, and for a role that may not see it: the state is
// said in words, and axe finds nothing. Pages that look the same in a state are looked at once. Each page
// takes one of the states in its turn; JOURNEYS=long takes each page in every state.

import { expect, test } from '@jest/globals';
import type { Page, Route } from 'playwright-core';
import { axe, journey, withOffice, type Who } from './browser.js';
import { PAGES } from './routes.js';

/** Jobs, surfaces and stages differ in their address and not in how they load. */
const shape = (path: string) =>
  path
    .split('?')[0]!
    .replace(/[0-9a-f]{8}-[0-9a-f-]{27}/g, 'job')
    .replace(/surfaces\/[^/]+\/[^/]+/, 'surfaces/one/stage')
    .replace(/after\/.*/, 'after/command')
    .replace(/\/\d+$/, '/edition');
const KINDS = [
  ...new Map(
    PAGES.filter(({ who }) => who !== null).map((each) => [
      `${shape(each.path)} ${each.who?.id}`,
      each,
    ]),
  ).values(),
];

const problem = (status: number, title: string) => (route: Route) =>
  route.fulfill({
    status,
    contentType: 'application/problem+json',
    body: JSON.stringify({ type: 'urn:gauge-ledger:problem:test', title, status }),
  });
const STATES = {
  loading: () => new Promise<void>(() => undefined),
  error: problem(500, 'Something went wrong here'),
  'no permission': problem(403, 'Not allowed'),
} as const;
const SAID = {
  loading: /Loading |Counting|Asking/,
  error: /Try again|went wrong|could not|cannot|not be/i,
  'no permission': /may not see|not for your role|not allowed/i,
} as const;

const LONG = process.env['JOURNEYS'] === 'long';

journey('every page in every state', () => {
  const office = withOffice();
  const tabs = new Map<string, Page>();
  const seen = new Set<string>();

  const tabOf = async (who: Who, state: keyof typeof STATES): Promise<Page> => {
    const key = `${who.id} ${state}`;
    const known = tabs.get(key);
    if (known) return known;
    // The phone's own copy of what it read would answer in place of the service.
    const page = await office.as(who, { serviceWorkers: 'block' });
    await page.route(/\/api\/(?!session)/, STATES[state]);
    tabs.set(key, page);
    return page;
  };

  test.each(
    (Object.keys(STATES) as (keyof typeof STATES)[]).flatMap((state, turn, states) =>
      KINDS.filter((_, i) => LONG || i % states.length === turn).map(
        (each) => [state, each.name, each] as const,
      ),
    ),
  )(
    'point 4: %s of %s',
    async (state, _, { path, who }) => {
      const page = await tabOf(who as Who, state);
      await page.goto(path);
      await page.locator('main h1').first().waitFor();
      await page.waitForFunction(
        (loading) => loading || !/\b(Loading|Counting|Asking)\b.*…/.test(document.body.innerText),
        state === 'loading',
      );
      const main = page.locator('main');
      // Pages that read nothing of a job, such as help, look the same in every state.
      const read = await page.evaluate(
        `performance.getEntriesByType('resource').some(({ name }) => /\\/api\\/(?!session|people|health)/.test(name))`,
      );
      if (read) expect(await main.innerText()).toMatch(SAID[state]);
      const look = (await main.innerHTML()).replace(/«[^»]*»|_r_\w+_|:r\w+:/g, '');
      if (seen.has(look)) return;
      seen.add(look);
      expect(await axe(page)).toEqual([]);
    },
    60_000,
  );
});
