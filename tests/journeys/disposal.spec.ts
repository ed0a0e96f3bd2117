// Erasing a person's details on the pages: one administrator asks, a hold keeps it back, another
// administrator confirms. Every state is said in words, and axe finds nothing in any of them.

import { expect, test } from '@jest/globals';
import type { Page } from 'playwright-core';
import { v7 as uuid } from 'uuid';
import { Companies } from '../../apps/api/data/companies.js';
import { BARN } from '../../apps/cli/demonstration/barn.js';
import { ADMINISTRATOR, DEMONSTRATION } from '../../apps/cli/demonstration/people.js';
import { axe, journey, settled, withOffice } from './browser.js';

const SHOTS = process.env['SHOTS'];

journey('erasure and holds', () => {
  const office = withOffice();
  const look = async (page: Page, name: string) => {
    expect(await axe(page)).toEqual([]);
    if (SHOTS) await page.screenshot({ path: `${SHOTS}/${name}.png`, fullPage: true });
  };
  const row = (page: Page, caption: string) =>
    page.getByRole('table', { name: caption }).getByRole('row').nth(1);

  test('asked by one, kept back by a hold, confirmed by another', async () => {
    const { prisma } = office.service.get(Companies).of(DEMONSTRATION.company);
    const { number } = await prisma.jobRow.findFirstOrThrow({ where: { id: BARN.id } });
    const page = await office.as(ADMINISTRATOR);
    await page.goto('/admin/disposal');
    await settled(page);
    await page.getByText('There is one administrator here.').waitFor();

    await page.getByRole('button', { name: 'Ask for the erasure' }).click();
    await page.getByRole('alert').waitFor();
    await look(page, 'faults');
    await page.getByLabel('Number of a job').fill(number);
    await page.getByRole('radio', { name: /^Customer.*: / }).check();
    await page.getByLabel('Why', { exact: true }).selectOption('asked-by-the-person');
    await page.getByLabel('Reason, in words').fill('A letter of 3 November');
    await look(page, 'asking');
    await page.getByRole('button', { name: 'Ask for the erasure' }).click();
    await row(page, 'Erasures').getByText('You asked; another administrator confirms').waitFor();

    await page.getByRole('radio', { name: 'Place a legal hold' }).check();
    await page.getByLabel('Number of a job').fill(number);
    await page.getByRole('radio', { name: /^The job/ }).check();
    await page.getByLabel('Matter of the hold').fill('Dispute over the valley');
    await page.getByRole('button', { name: 'Place the hold' }).click();
    await row(page, 'Legal holds').getByText('Stands').waitFor();
    await look(page, 'held');

    const second = { id: uuid(), name: 'Ada', email: 'ada@demonstration.example' };
    await prisma.person.create({
      data: { companyId: DEMONSTRATION.company, ...second, roles: ['administrator'] },
    });
    const other = await office.as(second as unknown as typeof ADMINISTRATOR);
    await other.goto('/admin/disposal');
    await settled(other);
    expect(await other.getByText('There is one administrator here.').count()).toBe(0);
    await row(other, 'Erasures')
      .getByRole('button', { name: /^Confirm/ })
      .click();
    const confirm = other.getByRole('dialog', { name: /^Erase / });
    await confirm.getByRole('button', { name: 'Erase for good' }).click();
    await confirm
      .getByText(/legal hold on a job that names them.*Dispute over the valley/)
      .waitFor();
    await look(other, 'refused');
    await confirm.getByRole('button', { name: 'Cancel' }).click();

    await row(other, 'Legal holds')
      .getByRole('button', { name: /^Release/ })
      .click();
    const release = other.getByRole('dialog', { name: /^Release the hold/ });
    await release.getByRole('button', { name: 'Release it' }).click();
    await release.getByRole('alert').getByText('Enter the reason').waitFor();
    await look(other, 'release');
    await release.getByLabel('Reason').fill('Settled');
    await release.getByRole('button', { name: 'Release it' }).click();
    await row(other, 'Legal holds').getByText('Released', { exact: true }).waitFor();

    await row(other, 'Erasures')
      .getByRole('button', { name: /^Confirm/ })
      .click();
    await confirm.getByRole('button', { name: 'Erase for good' }).click();
    await row(other, 'Erasures').getByText('Erased', { exact: true }).waitFor();
    expect(await row(other, 'Erasures').getByRole('rowheader').innerText()).toMatch(/^erased on /);
    await look(other, 'done');
  }, 90_000);

  test('a retention period is set in years, and said', async () => {
    const page = await office.as(ADMINISTRATOR);
    await page.goto('/admin/disposal');
    await settled(page);
    const years = page.getByLabel('Years for details of people');
    await years.fill('six');
    await page.getByRole('button', { name: 'Set the periods' }).click();
    await page.getByRole('alert').waitFor();
    await look(page, 'years');
    await years.fill('6');
    await page.getByRole('button', { name: 'Set the periods' }).click();
    await page.getByText('Now: 6 years after the last entry about them').waitFor();
  }, 60_000);
});
