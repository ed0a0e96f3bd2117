// The job list's first showing: session, jobs and code are asked for side by side, each once.

import { expect, test } from '@jest/globals';
import type { Page } from 'playwright-core';
import { ENGINEER, OFFICE } from '../../apps/cli/demonstration/people.js';
import { journey, PASSWORD, withOffice } from './browser.js';

/** Paths of what the page asks the service for, with their queries, as they are asked. */
const asked = (page: Page): string[] => {
  const paths: string[] = [];
  page.on('request', (request) => {
    const { pathname, search } = new URL(request.url());
    if (pathname.startsWith('/api/')) paths.push(pathname + search);
  });
  return paths;
};

journey('the first reads', () => {
  const office = withOffice();

  for (const [address, query] of [
    ['/jobs', 'sort=due'],
    ['/jobs?state=Blocked&sort=-due', 'state=Blocked&sort=-due'],
    ['/', 'sort=due'],
  ] as const) {
    test(`at ${address} session and jobs are asked for before the code has come`, async () => {
      const page = await office.as(OFFICE);
      const paths = asked(page);
      const list = page.waitForRequest((request) => request.url().includes('/api/jobs?'));
      await page.route('**/assets/index-*.js', async (route) => {
        await list;
        await route.continue();
      });
      await page.goto(address);
      await page.getByText(/^\d+ jobs? match/).waitFor();
      expect(paths.filter((each) => /^\/api\/(session|jobs)/.test(each))).toEqual([
        '/api/session',
        `/api/jobs?${query}`,
      ]);
    }, 60_000);
  }

  test('who has no job list is asked for none', async () => {
    const page = await office.as(ENGINEER);
    const paths = asked(page);
    await page.goto('/');
    await page.waitForURL('**/sign-offs');
    await page.getByRole('heading', { level: 1 }).waitFor();
    expect(paths.filter((each) => each.startsWith('/api/jobs'))).toEqual([]);
    expect(paths.filter((each) => each === '/api/session')).toHaveLength(1);
  }, 60_000);

  test('signed out: sign-in comes, and then the jobs, not what was refused before', async () => {
    const page = await office.stranger();
    await page.goto('/jobs');
    await page.waitForURL(/\/sign-in\?next=/);
    await page.getByLabel('Email address').fill(OFFICE.email);
    await page.getByLabel('Password').fill(PASSWORD);
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.locator('table.job-list tbody tr').first().waitFor();
    expect(await page.getByRole('dialog').count()).toBe(0);
  }, 60_000);
});
