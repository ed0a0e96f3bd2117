// The job list as a tool: import with every bad row named, views of one's own, the export of what is
// shown.

import { expect, test } from '@jest/globals';
import type { Page } from 'playwright-core';
import { MANAGER, OFFICE, REVIEWER } from '../../apps/cli/demonstration/people.js';
import { axe, journey, settled, withOffice } from './browser.js';

const csv = (name: string, lines: readonly string[]) => ({
  name,
  mimeType: 'text/csv',
  buffer: Buffer.from(lines.join('\r\n')),
});
const HEAD = 'number,name,customer,site,due,surfaces';
const BAD = csv('bad.csv', [
  HEAD,
  '2026-0101,Taken number,A farm,A barn,2026-12-01,North: roof',
  'I-2,,A shop,A hall,next week,North: roof',
  'I-3,Odd surface,A shop,A hall,,North: dome',
]);
const GOOD = csv('good.csv', [
  HEAD,
  'I-1,First imported,A farm,A barn,2026-12-01,North: roof; South: roof',
  'I-2,Second imported,A shop,A hall,,',
]);

journey('the job list', () => {
  const office = withOffice();
  const open = async (page: Page, path: string) => {
    await page.goto(path);
    await settled(page);
  };
  const total = async (page: Page): Promise<string> => {
    await open(page, '/jobs');
    return page.getByText(/jobs match/).innerText();
  };

  test('import: every bad row is named and nothing is written', async () => {
    const page = await office.as(OFFICE);
    const before = await total(page);
    await open(page, '/jobs/import');
    await page.getByLabel('Jobs, CSV').setInputFiles(BAD);
    const rows = page.getByRole('table', { name: /What to correct/ }).locator('tbody tr');
    await rows.first().waitFor();
    expect((await rows.allInnerTexts()).map((each) => each.split('\t').slice(0, 2))).toEqual([
      ['2', 'number'],
      ['3', 'name'],
      ['3', 'due'],
      ['4', 'surfaces'],
    ]);
    expect(await axe(page)).toEqual([]);
    expect(await page.getByRole('button', { name: /^Import/ }).count()).toBe(0);
    expect(await total(page)).toBe(before);
  }, 60_000);

  test('import: a double click imports once, all of the file', async () => {
    const page = await office.as(OFFICE);
    await open(page, '/jobs/import');
    await page.getByLabel('Jobs, CSV').setInputFiles(GOOD);
    const button = page.getByRole('button', { name: 'Import 2 jobs' });
    await button.waitFor();
    expect(await axe(page)).toEqual([]);
    await button.dblclick();
    await page.getByText('2 jobs imported. Go to the jobs').waitFor();
    await open(page, '/jobs?find=imported');
    expect(await page.getByText('2 jobs match').count()).toBe(1);
    await open(page, '/jobs/import');
    await page.getByLabel('Jobs, CSV').setInputFiles(GOOD);
    await page.getByText('there is a job I-1 already').waitFor();
  }, 60_000);

  test('import: a role that may not is told so', async () => {
    const page = await office.as(REVIEWER);
    await open(page, '/jobs/import');
    expect(await page.getByRole('heading', { name: 'Not for your role' }).count()).toBe(1);
    expect(await axe(page)).toEqual([]);
  }, 60_000);

  test('a view of one’s own is saved, chosen again, and removed', async () => {
    const page = await office.as(MANAGER);
    await open(page, '/jobs?state=Ready&due=week');
    await page.getByRole('button', { name: 'Save these filters as a view' }).click();
    expect(await axe(page)).toEqual([]);
    await page.getByLabel('Name of the view').fill('Ready this week');
    await page.getByRole('button', { name: 'Save the view' }).click();
    await open(page, '/jobs');
    await page.getByLabel('View').selectOption('Ready this week');
    await page.waitForURL(/state=Ready/);
    expect(new URL(page.url()).searchParams.get('due')).toBe('week');
    await page.getByRole('button', { name: 'Remove this view' }).click();
    expect(await page.getByLabel('View').locator('option').allInnerTexts()).not.toContain(
      'Ready this week',
    );
  }, 60_000);

  test('the export is what the filters show, and says so', async () => {
    const page = await office.as(MANAGER);
    await open(page, '/jobs?find=barn');
    const words = page.getByText(/^Export what these filters show, \d+ jobs?:/);
    const shown = Number(/\d+/.exec(await words.innerText())?.[0]);
    const link = await page.getByRole('link', { name: 'CSV' }).getAttribute('href');
    const answer = await page.request.get(link ?? '');
    expect((await answer.text()).trim().split(/\r?\n/).length).toBe(shown + 1);
    const book = await page.getByRole('link', { name: 'XLSX' }).getAttribute('href');
    expect((await page.request.get(book ?? '')).headers()['content-type']).toContain('spreadsheet');
    await open(page, '/jobs');
    expect(await page.getByText(/^Export all jobs, \d+ jobs:/).count()).toBe(1);
  }, 60_000);
});
