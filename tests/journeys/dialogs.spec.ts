// Every dialog: with it open axe finds nothing (points 3 and 4); it is labelled, holds the focus, does not
// begin on what destroys something, Esc cancels it, and the focus goes back to its opener (point 27).

import { expect, test } from '@jest/globals';
import type { Page } from 'playwright-core';
import { BARN } from '../../apps/cli/demonstration/barn.js';
import {
  ADMINISTRATOR,
  ENGINEER,
  MANAGER,
  OFFICE,
  STANDARDS,
} from '../../apps/cli/demonstration/people.js';
import { DRAFT } from '../../apps/cli/demonstration/rules-draft.js';
import { axe, journey, settled, withOffice, type Who } from './browser.js';

const WAITING = {
  job: BARN.id,
  request: 'barn-2',
  number: '2026-0101',
  name: 'Hay barn roof',
  surfaces: [{ id: 'roof', name: 'Barn roof' }],
  engineer: { id: ENGINEER.id, name: ENGINEER.name },
  asked_at: '2026-11-02T10:00:00.000Z',
  asked_by: MANAGER.id,
  expires: '2027-06-30',
  due: null,
};

interface DialogOf {
  readonly title: string | RegExp;
  readonly who: Who;
  readonly path: string;
  readonly opener: string | RegExp;
  /** What is done before the opener is there. */
  readonly before?: (page: Page) => Promise<void>;
}

const DIALOGS: readonly DialogOf[] = [
  { title: 'Quick keys', who: OFFICE, path: '/jobs', opener: 'Quick keys' },
  {
    title: 'Save these filters as a view',
    who: OFFICE,
    path: '/jobs?state=Ready',
    opener: 'Save these filters as a view',
  },
  { title: 'Change Cora', who: ADMINISTRATOR, path: '/admin', opener: 'Change Cora' },
  {
    title: 'Withdraw the draft',
    who: STANDARDS,
    path: `/rules/drafts/${DRAFT}`,
    opener: /^Withdraw the draft/,
  },
  {
    title: 'Code for Edda',
    who: MANAGER,
    path: '/sign-offs',
    opener: 'Code for Edda',
    before: async (page) => {
      // One request waits, as the page sees it; the code itself is the service's.
      await page.route('**/api/sign-offs', (route) =>
        route.fulfill({ json: { requests: [WAITING], spanning: [] } }),
      );
      await page.reload();
      await settled(page);
      await page.getByText('Read out a code for signing').click();
    },
  },
];

journey('dialogs', () => {
  const office = withOffice();
  const at = async (who: Who, path: string) => {
    const page = await office.as(who);
    await page.goto(path);
    await settled(page);
    return page;
  };
  const inside = (page: Page) =>
    page.evaluate(`document.activeElement.closest('[role=dialog], [role=alertdialog]') !== null`);

  test.each(DIALOGS.map((each) => [String(each.title), each] as const))(
    'points 3, 4 and 27: %s',
    async (_, { title, who, path, opener, before }) => {
      const page = await at(who, path);
      await before?.(page);
      const button = page.getByRole('button', { name: opener });
      await button.click();
      const dialog = page.getByRole('dialog', { name: title });
      await dialog.waitFor();
      expect(await axe(page)).toEqual([]);
      expect(await inside(page)).toBe(true);
      expect(await page.evaluate(`document.activeElement.classList.contains('danger')`)).toBe(
        false,
      );
      for (let i = 0; i < 12; i++) {
        await page.keyboard.press('Tab');
        expect(await inside(page)).toBe(true);
      }
      await page.keyboard.press('Escape');
      await dialog.waitFor({ state: 'detached' });
      expect(await button.evaluate((each) => each === each.ownerDocument.activeElement)).toBe(true);
    },
    60_000,
  );

  test('points 3, 4 and 27: signing out with unsaved work asks first, and begins on staying', async () => {
    const page = await at(OFFICE, '/jobs/new');
    await page.getByLabel('Name of the job').fill('Not saved');
    await page.getByRole('button', { name: 'Olive' }).click();
    await page.getByRole('menuitem', { name: 'Sign out' }).click();
    const dialog = page.getByRole('dialog', { name: 'Sign out with unsaved work?' });
    await dialog.waitFor();
    expect(await axe(page)).toEqual([]);
    expect(await page.evaluate(`document.activeElement.classList.contains('danger')`)).toBe(false);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    expect(await page.getByLabel('Name of the job').inputValue()).toBe('Not saved');
  }, 60_000);

  test('points 4 and 30: before the session ends one is warned, and can stay', async () => {
    const page = await office.as(OFFICE);
    let soon = true;
    await page.route('**/api/session', async (route) => {
      if (route.request().method() !== 'GET' || !soon) return route.continue();
      const answer = await route.fetch();
      const body = (await answer.json()) as object;
      const expiresAt = new Date(Date.now() + 100_000).toISOString();
      return route.fulfill({ response: answer, json: { ...body, expiresAt } });
    });
    await page.goto('/jobs/new');
    await settled(page);
    const dialog = page.getByRole('alertdialog', { name: 'Your session ends in two minutes' });
    await dialog.waitFor();
    expect(await axe(page)).toEqual([]);
    expect(await inside(page)).toBe(true);
    soon = false;
    await dialog.getByRole('button', { name: 'Stay signed in' }).click();
    await dialog.waitFor({ state: 'detached' });
  }, 60_000);
});
