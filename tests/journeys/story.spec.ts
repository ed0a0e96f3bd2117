// One job by clicks alone: opened in the office, one roof through its six stages, signed by the
// engineer, read years later. Then what happens when its facts change.

import { expect } from '@jest/globals';
import type { Page } from 'playwright-core';
import { ENGINEER, MANAGER, OFFICE, REVIEWER } from '../../apps/cli/demonstration/people.js';
import {
  button,
  link,
  type,
  choose,
  pick,
  recordFacts,
  stage,
  asked,
  save,
  recordFactsWithReason,
  tickCautions,
  screwFor,
} from './acts.js';
import { axe, journey, PASSWORD, settled, withOffice } from './browser.js';
import { steps } from './steps.js';

journey('a job by clicks', () => {
  const office = withOffice();
  let page: Page;
  let job = '';
  const step = steps(() => page);

  step('the office opens a job with one roof', async () => {
    page = await office.as(OFFICE);
    await page.goto('/jobs');
    await link(page, 'Open a new job').click();
    await type(page, 'Name of the job', 'Storage barn');
    await type(page, 'Due (optional)', '14 Feb 2027');
    await type(page, /^Customer/, 'Quiet Valley Farm');
    await type(page, 'Site address', '2 Example Road, Sampleton');
    await type(page, /^State or territory/, 'OH');
    await type(page, 'Name of building 1', 'Barn');
    await type(page, 'Surface 1 of building 1', 'Main roof');
    await page.getByRole('checkbox', { name: 'Value' }).check();
    await button(page, 'Open the job').click();
    await page.getByRole('heading', { level: 1, name: /^Job 2\d{3}-\d{4}$/ }).waitFor();
    job = /jobs\/([^/?]+)/.exec(page.url())?.[1] ?? '';
    expect(job).not.toBe('');
    await page.getByText('Quiet Valley Farm').first().waitFor();
  });

  step('style, with the rules heard before it is confirmed', async () => {
    await link(page, 'Main roof').first().click();
    await stage(page, 'Style');
    await recordFacts(page, 'Measured', 'Tape, by the crew', async () => {
      await type(page, /^Slope/, '4');
      await type(page, /^Area/, '31.5');
      await type(page, /^Longest panel/, '22');
      await choose(page, 'What the panels lie on', 'Purlins');
    });
    await pick(page, /^Ribbed/);
    await asked(page);
    await save(page);
    await stage(page, 'Coating');
  });

  step('coating, from what is made', async () => {
    await recordFacts(page, 'Told', 'The customer, by phone', async () => {
      await choose(page, 'Corrosivity', 'C2');
      await choose(page, 'Salt or brackish water', 'None');
      await choose(page, 'Animal confinement', 'No');
      await choose(page, 'Copper or lead above', 'No');
      await choose(page, 'Mortar, stucco', 'No');
    });
    await pick(page, /^Steel/);
    await pick(page, /^SMP/);
    await choose(page, 'Metallic coating', 'AZ50');
    await choose(page, 'Color group', 'Earth tone');
    await tickCautions(page);
    await save(page);
    await stage(page, 'Hazards');
  });

  step('hazards, entered with source and date', async () => {
    await recordFacts(page, 'Document', 'Letter of the county (invented)', async () => {
      await choose(page, 'Exposure category', 'C');
      await type(page, 'Basic wind speed', '105');
      await type(page, 'Ground snow load', '20');
      await choose(page, 'Basis of the ground snow load', 'Service level, 50 years');
      await type(page, 'Mean roof height', '19');
      await type(page, 'Least horizontal', '40');
      await type(page, 'Other horizontal', '72');
      await choose(page, 'Roof shape', 'Gable');
      await choose(page, 'Risk category', 'I');
      await choose(page, 'Enclosure', 'Enclosed');
      await choose(page, 'Is any side open?', 'No');
      await choose(page, 'May large doors', 'No');
      await choose(page, 'Does it drain or slide', 'No');
    });
    await page
      .getByRole('group', { name: 'Wind pressures' })
      .getByRole('radio', { name: 'Entered' })
      .check();
    for (const [zone, uplift] of [
      ['1', '−24'],
      ['2', '-38'],
      ['3', '-55'],
    ] as const) {
      const row = page.getByRole('group', { name: `Zone ${zone}`, exact: true });
      await row.getByLabel(/^Inward/).fill('16');
      await row.getByLabel(/^Uplift/).fill(uplift);
    }
    await page.locator('#wind-document').fill('County table for barns (invented)');
    await page.locator('#wind-date').fill('2 Nov 2026');
    await page
      .getByRole('group', { name: 'Snow on the roof' })
      .getByRole('radio', { name: 'Entered' })
      .check();
    await page.locator('#roof-snow').fill('18');
    await page.locator('#snow-basis-1').check();
    await page.locator('#snow-document').fill('Letter of the county (invented)');
    await page.locator('#snow-date').fill('2026-11-02');
    await asked(page);
    await save(page);
    await stage(page, 'Substrate');
  });

  step('an assumption is refused at the substrate, in the words of the rule', async () => {
    await recordFacts(page, 'Assumed', '', async () => {
      await page.getByLabel(/^Spacing of supports/).fill('24\n23.5\n24.25');
    });
    await page.getByText(/\d+ refused/).waitFor();
    await save(page);
    const alert = page.getByRole('alert');
    await alert.getByRole('heading', { name: 'There is a problem' }).waitFor();
    expect(await page.title()).toMatch(/^(Error: )?Main roof/);
    expect(await axe(page)).toEqual([]);
  });

  step('measured, it is confirmed', async () => {
    await recordFactsWithReason(page);
    await asked(page);
    await tickCautions(page);
    await save(page);
    await stage(page, 'Gauge');
  });

  step('gauge: every option compared, the recommended one taken', async () => {
    await choose(page, 'Fastener', await screwFor(page));
    for (const [i, spacing] of ['9', '9', '6'].entries())
      await page.locator(`#spacing-${i}`).fill(spacing);
    const table = page.getByRole('table', { name: /^Comparison of gauges/ });
    await table.waitFor();
    const words = await table.innerText();
    expect(words).toContain('Recommended');
    expect(words).toMatch(/0\.0179 in/);
    expect(words).toMatch(/Why not \d\d gauge/);
    await table.getByRole('row').filter({ hasText: 'Recommended' }).getByRole('radio').check();
    await tickCautions(page);
    await save(page);
    await stage(page, 'Engineer sign-off');
    expect(await page.getByText('An engineer is required because').count()).toBe(1);
  });

  step('the manager asks the engineer', async () => {
    const manager = await office.as(MANAGER);
    await manager.goto('/spanning');
    await manager
      .getByRole('row')
      .filter({ hasText: 'Storage barn' })
      .getByRole('link', { name: 'Main roof' })
      .click();
    await manager.getByLabel('Engineer', { exact: true }).selectOption({ label: ENGINEER.name });
    await type(
      manager,
      'What the engineer is asked to review',
      'Roof panels and their screws on the purlins.',
    );
    await button(manager, 'Ask the engineer').click();
    await manager.getByText('Waiting for the engineer').first().waitFor();
  });

  step(
    'the engineer reads the packet, reviews the answer, and signs with password and a code read out',
    async () => {
      const engineer = await office.as(ENGINEER);
      await engineer.goto('/');
      await engineer.getByRole('row').filter({ hasText: 'Storage barn' }).getByRole('link').click();
      await engineer.getByText('Digest of the packet').waitFor();
      await pick(engineer, /^Approve$/);
      await type(
        engineer,
        'Your statement',
        'I reviewed this packet and approve the panels and screws as listed.',
      );
      await type(engineer, 'License number', 'EX-00001');
      await type(engineer, /^State or territory/, 'OH');
      await type(engineer, 'Expires', '31 Dec 2028');
      await button(engineer, 'Review your answer').click();
      await engineer.getByRole('heading', { name: 'Review your answer' }).waitFor();
      expect(await engineer.getByText('How this can be corrected').count()).toBe(1);
      await button(engineer, 'Ask for the code').click();
      await engineer.getByText('Asked for. Somebody of the office').first().waitFor();
      const manager = await office.as(MANAGER);
      await manager.goto('/sign-offs');
      await manager.getByText('Read out a code for signing').click();
      await button(manager, /^Code for /).click();
      const told = await manager.getByRole('dialog').innerText();
      const [, first = '', last = ''] = /(\d{3}) (\d{3}): good for 10 minutes/.exec(told) ?? [];
      await engineer.getByLabel('Code for signing').fill(`${first}${last}`);
      await engineer.getByLabel('Your password, once more').fill('not the password');
      await button(engineer, 'Sign this answer').click();
      await engineer.getByText('The password is not right').first().waitFor();
      await engineer.getByLabel('Your password, once more').fill(PASSWORD);
      await button(engineer, 'Sign this answer').click();
      await engineer.getByText('Storage barn: approved').waitFor();
    },
  );

  step('the reviewer reads why this gauge, and what was not known before', async () => {
    const reviewer = await office.as(REVIEWER);
    await reviewer.goto(`/jobs/${job}/record`);
    await settled(reviewer);
    await reviewer.getByRole('heading', { name: 'Why this gauge' }).waitFor();
    await reviewer.getByLabel('Date').first().fill('1 Jan 2020');
    await button(reviewer, 'Show').click();
    await reviewer.getByText(/Showing what was known on 1 Jan 2020/).waitFor();
    expect(new URL(reviewer.url()).searchParams.get('asOf')).toMatch(/^2020-01-0[12]T/);
  });

  step('a change of a measured spacing says what it reopens before it is made', async () => {
    await page.goto(`/jobs/${job}/surfaces/s1/substrate`);
    await link(page, 'Record or change facts').click();
    await page.getByLabel(/^Spacing of supports/).fill('24\n26');
    await pick(page, 'Measured');
    await type(page, 'From whom or what', 'Tape, by the crew');
    await button(page, 'Record these facts').click();
    const warning = page.getByRole('status', { name: 'What this reopens' });
    await warning.waitFor();
    expect(await warning.innerText()).toMatch(/Gauge/);
    expect(await warning.innerText()).toMatch(/Engineer sign-off/);
    await type(page, 'Reason for the change', 'Measured again.');
    await button(page, 'Record and reopen these stages').click();
    await page.getByText('Needs re-check').first().waitFor();
  });
});
