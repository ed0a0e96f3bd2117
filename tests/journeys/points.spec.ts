// The thirty points of the pages, each by its number, that are about doing something; what holds on
// every page without doing anything is in every-page.spec.ts, dialogs in dialogs.spec.ts, states in
// states.spec.ts, large text (15) in large-text.spec.ts, colors (5) in contrast.spec.ts.

import { expect, test } from '@jest/globals';
import type { Page } from 'playwright-core';
import { BARN } from '../../apps/cli/demonstration/barn.js';
import { HOUSE } from '../../apps/cli/demonstration/house.js';
import { ENGINEER, MANAGER, OFFICE, REVIEWER } from '../../apps/cli/demonstration/people.js';
import { AFTER_FORMS } from '../../apps/office/after/forms.js';
import { axe, journey, PASSWORD, settled, withOffice } from './browser.js';

const focused = (page: Page): Promise<string> =>
  page.evaluate(`(document.activeElement?.id || document.activeElement?.textContent || '').trim()`);

journey('the thirty points', () => {
  const office = withOffice();
  const barn = `/jobs/${BARN.id}`;
  const stage = (name: string) => `${barn}/surfaces/roof/${name}`;
  let page: Page;
  const at = async (path: string) => {
    page ??= await office.as(MANAGER);
    await page.goto(path);
    await settled(page);
  };

  test('1: the title is thing, section, product; after a failed try it starts with Error', async () => {
    await at(barn);
    expect(await page.title()).toBe('Job 2026-0101 - Jobs - Gauge Ledger');
    await at('/jobs/new');
    await page.getByRole('button', { name: 'Open the job' }).click();
    expect(await page.title()).toBe('Error: Open a new job - Jobs - Gauge Ledger');
  });

  test('2: the first Tab stop skips to the main part', async () => {
    await at('/jobs');
    await page.keyboard.press('Tab');
    expect(await focused(page)).toBe('Skip to the page');
    await page.keyboard.press('Enter');
    expect(await focused(page)).toBe('main');
  });

  test('6: states stand in words', async () => {
    await at('/jobs');
    const rows = await page.getByRole('table').locator('tbody tr').allInnerTexts();
    expect(rows).toHaveLength(3);
    for (const row of rows) expect(row).toMatch(/\t(Ready|Blocked|Waiting|Done)\t/);
  });

  test('8: the focus ring is 3 px and never removed, and what has focus is in view', async () => {
    await at('/jobs');
    for (let i = 0; i < 25; i++) {
      await page.keyboard.press('Tab');
      const ring = await page.evaluate(`(() => {
        const each = document.activeElement;
        if (!each || each === document.body) return null;
        const look = getComputedStyle(each), box = each.getBoundingClientRect();
        return { width: look.outlineWidth, style: look.outlineStyle, seen: box.bottom > 0 && box.top < innerHeight };
      })()`);
      if (ring !== null) expect(ring).toEqual({ width: '3px', style: 'solid', seen: true });
    }
  });

  test('10 and 11: sorting is a button, aria-sort stands on one head, the address keeps it', async () => {
    await at('/jobs');
    await page.getByRole('columnheader', { name: 'Job' }).getByRole('button').click();
    await page.waitForURL(/sort=number/);
    expect(await page.locator('[aria-sort]').count()).toBe(1);
    expect(await page.getByRole('columnheader', { name: 'Job' }).getAttribute('aria-sort')).toBe(
      'ascending',
    );
    await page.reload();
    await settled(page);
    expect(await page.locator('[aria-sort="ascending"]').innerText()).toMatch(/^Job/);
    await page.goBack();
    await page.waitForFunction(`!location.search.includes('sort')`);
    expect(await page.locator('[aria-sort]').innerText()).toMatch(/^Due/);
  });

  test('12: after a filter the count is said and the focus stays', async () => {
    await at('/jobs');
    await page.getByLabel('Stage', { exact: true }).focus();
    await page.getByLabel('Stage', { exact: true }).selectOption('done');
    await page.getByRole('status').filter({ hasText: '2 jobs match' }).waitFor();
    expect(await focused(page)).toBe('stage');
  });

  test('13: paging says range and total', async () => {
    await at('/jobs');
    expect(await page.getByText('1 to 3 of 3').count()).toBe(1);
  });

  test('16: rows are selected by keyboard; the action row counts them and can be canceled', async () => {
    await at('/jobs');
    const boxes = page.getByRole('checkbox', { name: /^Select 2026/ });
    await boxes.nth(0).focus();
    await page.keyboard.press('Space');
    await boxes.nth(1).focus();
    await page.keyboard.press('Space');
    await page.getByText('2 jobs selected').waitFor();
    await page.getByLabel('Assign to').selectOption({ label: OFFICE.name });
    await page.getByRole('button', { name: 'Assign', exact: true }).click();
    await page.getByText('2 jobs selected').waitFor({ state: 'detached' });
    await boxes.nth(0).check();
    await page.getByRole('button', { name: 'Cancel' }).click();
    expect(await page.getByText('selected').count()).toBe(0);
  }, 30_000);

  test('19: a number with another unit is refused, never converted', async () => {
    await at(`${barn}/facts?on=roof`);
    await page.getByLabel(/^Deck thickness/).fill('12 mm');
    await page.getByRole('radio', { name: 'Measured' }).check();
    await page.getByLabel('From whom or what').fill('Tape');
    await page.getByRole('button', { name: 'Record these facts' }).click();
    await page
      .getByRole('alert')
      .getByText(/Deck thickness: enter a number in in/)
      .waitFor();
    expect(await page.getByLabel(/^Deck thickness/).inputValue()).toBe('12 mm');
  });

  test('21 and 22: the error summary takes focus, links to the field, keeps what was typed', async () => {
    await at('/jobs/new');
    await page.getByLabel('Name of the job').fill('A name that stays');
    await page.getByRole('button', { name: 'Open the job' }).click();
    const summary = page.getByRole('alert');
    expect(await summary.evaluate((each) => each === each.ownerDocument.activeElement)).toBe(true);
    const words = 'Enter the name of the customer';
    expect(await page.locator('#customer-error').innerText()).toBe(words);
    expect(await page.locator('#customer').getAttribute('aria-invalid')).toBe('true');
    expect(await axe(page)).toEqual([]);
    await summary.getByRole('link', { name: words }).click();
    expect(await focused(page)).toBe('customer');
    expect(await page.getByLabel('Name of the job').inputValue()).toBe('A name that stays');
  }, 30_000);

  test('23: a reload brings back what was typed, and says so', async () => {
    await at('/jobs/new');
    await page.reload();
    await settled(page);
    expect(await page.getByLabel('Name of the job').inputValue()).toBe('A name that stays');
    await page.getByRole('button', { name: 'Throw it away' }).click();
    expect(await page.getByLabel('Name of the job').inputValue()).toBe('');
  });

  test('24: stages are an ordered list with their states in words and the step marked', async () => {
    await at(stage('hazards'));
    const items = page.locator('ol.stage-list > li');
    expect(await items.count()).toBe(6);
    expect(await items.first().innerText()).toMatch(/Style\s+done/);
    expect(await page.locator('[aria-current="step"]').innerText()).toMatch(/^Hazards/);
    expect(await page.getByText(/^Stage 3 of 6/).count()).toBe(1);
  });

  test('25: tabs move by arrow keys and Tab leaves them', async () => {
    await at('/catalogue');
    await page.getByRole('tab', { name: 'Profiles' }).focus();
    await page.keyboard.press('ArrowRight');
    expect(
      await page.getByRole('tab', { name: 'What is made' }).getAttribute('aria-selected'),
    ).toBe('true');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(`document.activeElement.getAttribute('role')`)).not.toBe('tab');
  });

  test('26: what is issued, signed or decided is reviewed, confirmed, and says how it is corrected', async () => {
    for (const name of ['issue-warranty', 'decide-claim'])
      expect(AFTER_FORMS[name]?.correct).toMatch(/both stay in the history/);
    await at(`${barn}/order`);
    await page.getByLabel('Supplier').fill('Example Supply');
    expect(await page.getByRole('button', { name: 'Review it' }).count()).toBe(1);
    expect(await page.getByRole('button', { name: /^Issue/ }).count()).toBe(0);
    await at('/jobs');
  }, 30_000);

  test('27: a dialog is labelled, holds the focus, Esc cancels, focus goes back', async () => {
    await at('/jobs');
    const opener = page.getByRole('button', { name: 'Quick keys' });
    await opener.click();
    const dialog = page.getByRole('dialog', { name: 'Quick keys' });
    await dialog.waitFor();
    expect(await axe(page)).toEqual([]);
    for (let i = 0; i < 5; i++) {
      await page.keyboard.press('Tab');
      expect(await page.evaluate(`document.activeElement.closest('[role=dialog]') !== null`)).toBe(
        true,
      );
    }
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    expect(await focused(page)).toBe('Quick keys');
  }, 30_000);

  test('28: each diagram has title, finding and a table of its numbers', async () => {
    await at(stage('gauge'));
    const figures = page.locator('figure.drawing');
    await figures.nth(1).waitFor();
    for (const each of await figures.all()) {
      expect((await each.locator('h2').innerText()).length).toBeGreaterThan(3);
      expect(await each.locator('figcaption p').innerText()).toMatch(/\.$/);
      expect(await each.locator('svg > title').count()).toBe(1);
      expect(await each.locator('table').count()).toBe(1);
    }
  });

  test('29: with reduced motion nothing moves', async () => {
    const still = await office.as(OFFICE, { reducedMotion: 'reduce' });
    await still.goto('/jobs');
    await settled(still);
    expect(await still.evaluate(`getComputedStyle(document.documentElement).scrollBehavior`)).toBe(
      'auto',
    );
    expect(await still.evaluate(`document.getAnimations().length`)).toBe(0);
  });

  test('30: passwords can be pasted and managed; help is on each page', async () => {
    const stranger = await office.stranger();
    await stranger.goto(`/sign-in?next=${encodeURIComponent(`/jobs/${HOUSE.id}`)}`);
    expect(await stranger.getByLabel('Password').getAttribute('autocomplete')).toBe(
      'current-password',
    );
    expect(await stranger.getByLabel('Email address').getAttribute('autocomplete')).toBe(
      'username',
    );
    await stranger.getByLabel('Email address').fill(REVIEWER.email);
    await stranger.getByLabel('Password').fill('wrong');
    await stranger.getByRole('button', { name: 'Sign in' }).click();
    await stranger.getByRole('alert').waitFor();
    expect(await axe(stranger)).toEqual([]);
    await stranger.getByLabel('Password').fill(PASSWORD);
    await stranger.getByRole('button', { name: 'Sign in' }).click();
    await stranger.getByRole('heading', { level: 1, name: 'Job 2026-0102' }).waitFor();
    expect(
      await stranger.getByRole('contentinfo').getByRole('link', { name: 'Help' }).count(),
    ).toBe(1);
  }, 30_000);

  test('printed: the same headings, no controls, dates in words', async () => {
    const reader = await office.as(REVIEWER);
    await reader.goto(`${barn}/record`);
    await settled(reader);
    await reader.emulateMedia({ media: 'print' });
    expect(
      await reader.getByRole('heading', { level: 1, name: 'Decision record' }).isVisible(),
    ).toBe(true);
    expect(await reader.locator('button:visible, nav:visible').count()).toBe(0);
    expect(await reader.locator('main').innerText()).not.toMatch(/\b\d{1,2}\/\d{1,2}\/\d{2,4}\b/);
  }, 30_000);

  test('an engineer alone sees no job that was not asked of them, and is told so', async () => {
    const engineer = await office.as(ENGINEER);
    await engineer.goto(`/jobs/${HOUSE.id}`);
    await engineer.getByRole('heading', { name: 'You may not see this page' }).waitFor();
    expect(await axe(engineer)).toEqual([]);
  }, 30_000);
});
