// The rulebook by clicks: a draft, its difference, what it would change, publishing it, and the next
// decision, which names the new edition.

import { expect, test } from '@jest/globals';
import type { Page } from 'playwright-core';
import { HOUSE } from '../../apps/cli/demonstration/house.js';
import { OFFICE, REVIEWER, STANDARDS } from '../../apps/cli/demonstration/people.js';
import { asked, button, choose, link, save, tickCautions, type } from './acts.js';
import { axe, journey, settled, withOffice } from './browser.js';

journey('the rulebook by clicks', () => {
  const office = withOffice();
  let page: Page;
  const heading = (name: string | RegExp, level = 1) =>
    page.getByRole('heading', { level, name }).waitFor();
  const step = (name: string, act: () => Promise<void>) => test(name, act, 90_000);
  const today = new Date().toISOString().slice(0, 10);

  step('a draft with nothing in it says all that is missing, and keeps what is typed', async () => {
    page = await office.as(STANDARDS);
    await page.goto('/rules');
    await link(page, 'Draft the next edition').click();
    await type(page, 'In force from', 'soon');
    await button(page, 'Save the draft').click();
    const alert = page.getByRole('alert');
    await alert.getByRole('heading', { name: 'There is a problem' }).waitFor();
    expect(await alert.getByRole('listitem').count()).toBe(4);
    expect(await page.title()).toMatch(/^Error: Draft the next edition/);
    expect(await page.getByLabel('In force from').inputValue()).toBe('soon');
    expect(await axe(page)).toEqual([]);
  });

  step('what may not be changed is said before anybody tries', async () => {
    await page.locator('#edit-0-rule').selectOption('GAUGE-01');
    await page.getByText('is not the office’s to change').waitFor();
    expect(await page.getByLabel('Severity').count()).toBe(0);
  });

  step('two changes with their sources are saved, and shown as was and becomes', async () => {
    await type(page, 'In force from', today);
    await type(page, /^What it changes/, 'Sign-off from a tenth of capacity (invented).');
    await page.locator('#edit-0-rule').selectOption('SIGN-01');
    await page.locator('#edit-0-setting-utilization_limit').fill('0.1');
    await page.locator('#edit-0-source').fill('Office meeting (invented)');
    await button(page, 'Add another change').click();
    await page.locator('#edit-1-rule').selectOption('GAUGE-06');
    await page.getByRole('radio', { name: 'It is left out' }).last().check();
    await page.locator('#edit-1-source').fill('Nobody read it (invented)');
    await button(page, 'Save the draft').click();
    await heading('Draft of edition 3');
    const table = page.getByRole('table', { name: /^What it changes/ });
    const words = await table.innerText();
    expect(words).toMatch(/SIGN-01[\s\S]*0\.95\s+0\.1\s+Office meeting \(invented\)/);
    expect(words).toMatch(/GAUGE-06[\s\S]*left out/);
    expect(await axe(page)).toEqual([]);
  });

  step('the preview says what differs, in a sentence and a table that is filtered', async () => {
    await link(page, 'What would it change?').click();
    await page.getByRole('radio', { name: 'Open surfaces' }).check();
    await button(page, 'Work it out').click();
    await page
      .getByRole('heading', { name: 'What differs', level: 2 })
      .waitFor({ timeout: 60_000 });
    await page.getByText(/^4 open surfaces checked: 3 same, 1 now blocked\.$/).waitFor();
    const table = page.getByRole('table', { name: 'What differs under the draft' });
    expect(await table.innerText()).toContain('in the way: SIGN-01');
    await choose(page, 'Answer', 'Now blocked');
    await page.waitForURL(/answer=now-blocked/);
    await type(page, /^Rule/, 'GAUGE-99');
    await page.getByText('No row matches').waitFor();
    await type(page, /^Rule/, '');
    await table.waitFor();
    const download = page.waitForEvent('download');
    await link(page, 'Download these rows (CSV)').click();
    expect((await download).suggestedFilename()).toBe('edition-3-open.csv');
    expect(await axe(page)).toEqual([]);
  });

  step('it is published after a review that names the running jobs', async () => {
    await link(page, 'Publish…').click();
    await page.getByText('The preview found: 4 open surfaces checked').waitFor();
    await button(page, 'Review before publishing').click();
    await page.getByRole('alert').getByText('Say what becomes of jobs under way').waitFor();
    await page.getByRole('radio', { name: /^Decisions already confirmed stand under/ }).check();
    await type(page, 'Why it is published', 'Agreed in the office meeting (invented).');
    await button(page, 'Review before publishing').click();
    await page.getByText('How this can be corrected').waitFor();
    expect(await axe(page)).toEqual([]);
    await button(page, 'Publish edition 3').click();
    await heading('Rules edition 3');
    await page.getByText('Agreed in the office meeting (invented).').waitFor();
    await page.getByText(/^In force since/).waitFor();
    await page.goto('/rules');
    await page.getByText('Draft, out of date').waitFor();
    await page
      .getByText(/^Retired on/)
      .first()
      .waitFor();
  });

  step('the next decision names the new edition; the others keep theirs', async () => {
    page = await office.as(OFFICE);
    await page.goto(`/jobs/${HOUSE.id}/surfaces/main/style`);
    await settled(page);
    await page.getByText(/rules edition 2, catalogue edition 1/).waitFor();
    await button(page, /^Change/).click();
    await asked(page);
    await tickCautions(page);
    await type(page, 'Reason for the change', 'Looked at again under the new edition.');
    await save(page);
    await page.goto(`/jobs/${HOUSE.id}/surfaces/main/style`);
    await page.getByText(/rules edition 3, catalogue edition 1/).waitFor();
    await page.goto(`/jobs/${HOUSE.id}/surfaces/main/coating`);
    await page.getByText(/rules edition 2, catalogue edition 1/).waitFor();
  });

  step('the reviewer asks today’s edition, which answers apart from the record', async () => {
    page = await office.as(REVIEWER);
    await page.goto(`/jobs/${HOUSE.id}/record`);
    await settled(page);
    await button(page, 'Ask today’s edition').click();
    const table = page.getByRole('table', { name: 'The same decisions under edition 3' });
    expect(await table.innerText()).toMatch(/Edition 2\s+Now blocked[\s\S]*SIGN-01/);
    await page.getByText(/^Under edition 3, in force today\./).waitFor();
  });
});
