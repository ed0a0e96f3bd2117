// The reviewer's pages on a house that was ordered, built, warranted and claimed for: every test of the
// claim with its numbers, the decision and its letter, the proof in words, the evidence as a file.

import { beforeAll, expect, test } from '@jest/globals';
import type { BrowserContextOptions, Page } from 'playwright-core';
import type { CommandInput } from '#jobs/contract';
import { verifyBundle } from '#ledger';
import { v, WARRANTY } from '../../libs/jobs/after-order/order-files.js';
import { decide, openJob, order, type Told } from '../stories/ordered.js';
import { button, link, type } from './acts.js';
import { axe, journey, settled, withOffice } from './browser.js';

journey('a claim', () => {
  const office = withOffice();
  let told: Told;

  const as = async (who: keyof Told['people'], options: BrowserContextOptions = {}) => {
    const page = await office.stranger(options);
    const [name = '', value = ''] = told.people[who].cookie.split('=');
    await page.context().addCookies([{ name, value, url: office.address }]);
    return page;
  };
  const open = async (page: Page, path: string) => {
    await page.goto(`/jobs/${told.id}${path}`);
    await settled(page);
  };
  const shoot = async (page: Page, name: string) => {
    if (process.env['SHOTS']) await page.screenshot({ path: `.shots/${name}.png`, fullPage: true });
  };

  beforeAll(async () => {
    told = await openJob(office, 'house');
    await decide(told, 'house');
    await order(told);
    await built(told);
    await told.play('reviewer', {
      type: 'open-claim',
      claim: 'c1',
      surface: 's1',
      kind: 'fade',
      lot: 'coil-7',
      document: 'w1',
      notice: '2034-03-01',
      words: 'The south side has faded.',
      files: [await told.file('wide.jpg')],
    });
  }, 180_000);

  test('is reached from the job, a color reading recorded, every test read with its numbers', async () => {
    const page = await as('reviewer');
    await open(page, '');
    await link(page, /^Fade, /).click();
    await page.getByRole('heading', { level: 1, name: /^Claim c1: / }).waitFor();
    await link(page, /^Record a reading/).click();
    await type(page, 'Measured on', '20 Mar 2034');
    await page.getByLabel('What was measured').selectOption('color');
    await page.getByLabel('Scale').selectOption('Hunter');
    await page.getByLabel('Illuminant').selectOption('C');
    await page.getByLabel('Observer').selectOption('2');
    for (const [label, value] of [
      ['Retained sample: L', '30'],
      ['Retained sample: a', '1'],
      ['Retained sample: b', '-2'],
      ['Weathered panel: L', '34'],
      ['Weathered panel: a', '1'],
      ['Weathered panel: b', '-1'],
    ] as const)
      await type(page, label, value);
    await page.getByRole('radio', { name: 'Yes' }).check();
    await button(page, 'Save the reading').click();
    await page.getByRole('heading', { level: 1, name: /^Job/ }).waitFor();
    await open(page, '/claims/c1');
    const tests = await page.getByRole('table', { name: /^Tests/ }).innerText();
    for (const name of [/Term in force at the notice date\s+Met/, /Cover left/, /Exclusions/])
      expect(tests).toMatch(name);
    expect(tests).toMatch(/As built\s+Met/);
    expect(tests).toMatch(/Fade\s+(Open question|Met|Not met)/);
    expect(await page.getByRole('table', { name: /^Color/ }).innerText()).toMatch(
      /Hunter\s+C, 2 degrees\s+30, 1, −2/,
    );
    expect(await page.getByText(/^The gauge was chosen on/).count()).toBe(1);
    expect(await axe(page)).toEqual([]);
    await shoot(page, 'claim-wide-light');
    const narrow = await as('reviewer', {
      viewport: { width: 320, height: 700 },
      colorScheme: 'dark',
    });
    await open(narrow, '/claims/c1');
    expect(await axe(narrow)).toEqual([]);
    expect(await narrow.evaluate('document.documentElement.scrollWidth > innerWidth')).toBe(false);
    await shoot(narrow, 'claim-narrow-dark');
  }, 120_000);

  test('is decided by a person after a review, and the letter says so', async () => {
    const page = await as('reviewer');
    await open(page, '/claims/c1');
    await link(page, /^Decide a claim/).click();
    await page.getByRole('radio', { name: 'Accepted in part' }).check();
    await type(page, 'Reason', 'The term names no scale; goodwill.');
    await type(page, 'Clause of the document it rests on', '4');
    await button(page, 'Review it').click();
    await page.getByText('A decision stays.', { exact: false }).waitFor();
    await button(page, 'Record the decision').click();
    await page.getByRole('heading', { level: 1, name: /^Job/ }).waitFor();
    await open(page, '/claims/c1');
    await page.getByRole('heading', { name: 'The tests, as decided' }).waitFor();
    const letter = await link(page, 'Letter to the owner, PDF').getAttribute('href');
    const print = await page.request.get(letter ?? '');
    expect((await print.body()).subarray(0, 5).toString()).toBe('%PDF-');
    await shoot(page, 'claim-decided-wide-light');
  }, 120_000);

  test('its proof is told in words; the evidence is exported with a reason and verifies alone', async () => {
    const page = await as('reviewer');
    await open(page, '/proof');
    expect(await page.getByText(/^This job has \d+ entries in the record/).count()).toBe(1);
    expect(await page.getByText(/All entries of this job lie under it/).count()).toBe(1);
    expect(await page.getByText(/hash(es)? lead to the signed root/).count()).toBe(1);
    expect(await axe(page)).toEqual([]);
    await button(page, 'Export the evidence').click();
    await page.getByRole('alert').getByText('Enter the reason').waitFor();
    expect(await axe(page)).toEqual([]);
    await type(page, 'Reason for the export', 'The owner’s counsel asked for it.');
    const [file] = await Promise.all([
      page.waitForEvent('download', { timeout: 60_000 }),
      button(page, 'Export the evidence').click(),
    ]);
    const bytes = await bytesOf(await file.createReadStream());
    const key = (
      await page
        .getByRole('table', { name: /^Signing keys/ })
        .locator('td')
        .last()
        .innerText()
    ).trim();
    const report = verifyBundle(bytes, { key });
    expect(report.says.join('\n')).toContain('job/');
    expect(report.ok).toBe(true);
    await page
      .getByRole('table', { name: /^Exports/ })
      .getByText('The owner’s counsel')
      .waitFor();
    await shoot(page, 'proof-wide-light');
    const narrow = await as('reviewer', {
      viewport: { width: 320, height: 700 },
      colorScheme: 'dark',
    });
    await open(narrow, '/proof');
    expect(await axe(narrow)).toEqual([]);
    expect(await narrow.evaluate('document.documentElement.scrollWidth > innerWidth')).toBe(false);
    await shoot(narrow, 'proof-narrow-dark');
  }, 120_000);

  test('who may not export sees the proof and no export', async () => {
    const page = await as('office');
    await open(page, '/proof');
    expect(await button(page, 'Export the evidence').count()).toBe(0);
    expect(await page.getByText(/All entries of this job lie under it/).count()).toBe(1);
  }, 60_000);
});

/** Received, built as approved, inspected, complete, registered, warranted. */
async function built(told: Told): Promise<void> {
  await told.play('crew', {
    type: 'record-receipt',
    order: 'o1',
    on: '2026-03-20',
    stored_dry: true,
    lots: [{ surface: 's1', lot: 'coil-7' }],
    lines: [
      { line: 'p1', count: 40 },
      { line: 'c1', count: 600 },
    ],
  });
  await told.play('crew', {
    type: 'record-as-built',
    surface: 's1',
    fastener: 'clip-s',
    zones: [{ zone: 'all', spacing: v('24', 'in') }],
    files: [await told.file('deck.jpg')],
  });
  await told.play('office', {
    type: 'record-inspection',
    on: '2026-04-10',
    passed: true,
    punch: [],
  });
  await told.play('office', { type: 'record-completion', on: '2026-04-12' });
  await told.play('office', {
    type: 'file-registration',
    kind: 'paint',
    on: '2026-06-22',
    window_days: 60,
  });
  const terms = await told.file('terms.pdf');
  await told.play('office', { ...WARRANTY, terms } as CommandInput);
}

async function bytesOf(stream: AsyncIterable<Uint8Array>): Promise<Buffer> {
  const parts: Uint8Array[] = [];
  for await (const part of stream) parts.push(part);
  return Buffer.concat(parts);
}
