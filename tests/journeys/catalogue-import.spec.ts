// A file brought into the catalogue by clicks: every bad cell first, then what differs, then published.

import { expect, test } from '@jest/globals';
import type { Page } from 'playwright-core';
import { PARTS } from '#jobs/contract';
import { STANDARDS } from '../../apps/cli/demonstration/people.js';
import { button, choose, link, type } from './acts.js';
import { axe, journey, withOffice } from './browser.js';

const SCREW: Readonly<Record<string, string>> = {
  fastener: 'screw-try',
  name: 'Screw to try (invented)',
  kind: 'screw',
  metal: 'stainless',
  diameter_in: '0.25',
};
const csv = (row: Readonly<Record<string, string>>) => ({
  name: 'fasteners.csv',
  mimeType: 'text/csv',
  buffer: Buffer.from(
    [PARTS.fasteners, PARTS.fasteners.map((column) => row[column] ?? '')]
      .map((cells) => cells.join(','))
      .join('\r\n'),
  ),
});

journey('a file for the catalogue', () => {
  const office = withOffice();
  let page: Page;
  const step = (name: string, act: () => Promise<void>) => test(name, act, 90_000);

  step('nothing chosen says what is missing', async () => {
    page = await office.as(STANDARDS);
    await page.goto('/catalogue');
    await link(page, 'Bring a file').click();
    await button(page, 'Check the file').click();
    const alert = page.getByRole('alert');
    await alert.getByRole('heading', { name: 'There is a problem' }).waitFor();
    expect(await alert.getByRole('listitem').count()).toBe(3);
    expect(await axe(page)).toEqual([]);
  });

  step('every bad cell is named by sheet, row and column, and nothing is recorded', async () => {
    await page.locator('#file').setInputFiles(csv({ ...SCREW, metal: 'tin', diameter_in: 'wide' }));
    await choose(page, 'What the CSV file holds', 'Fasteners and clips');
    await type(page, 'In force from', new Date().toISOString().slice(0, 10));
    await type(page, /^What is new/, 'A screw to try (invented).');
    await button(page, 'Check the file').click();
    const table = page.getByRole('table', { name: 'Cells to correct' });
    await table.waitFor();
    const words = await table.innerText();
    expect(words).toMatch(/fasteners\s+2\s+metal/);
    expect(words).toMatch(/fasteners\s+2\s+diameter_in/);
    expect(await axe(page)).toEqual([]);
  });

  step('corrected, it shows what differs, and is published with a reason', async () => {
    await page.locator('#file').setInputFiles(csv(SCREW));
    await button(page, 'Check the file').click();
    await page.getByRole('heading', { name: 'Publish catalogue edition 2?' }).waitFor();
    await page.getByText('Against edition 1, one thing differs.').waitFor();
    expect(await page.getByRole('table', { name: 'What differs' }).innerText()).toContain(
      'screw-try',
    );
    await button(page, 'Publish edition 2').click();
    await page.getByRole('alert').getByText('Say why it is published').waitFor();
    expect(await axe(page)).toEqual([]);
    await type(page, 'Why it is published', 'Letter of the supplier (invented).');
    await button(page, 'Publish edition 2').click();
    await page.getByRole('heading', { level: 1, name: 'Catalogue edition 2' }).waitFor();
    await page.getByRole('tab', { name: 'Fasteners' }).click();
    await page.getByText('Screw to try (invented)').waitFor();
    await page.goto('/catalogue');
    await page
      .getByText(/^Retired on/)
      .first()
      .waitFor();
  });
});
