// A signed job by clicks alone from its order to its warranty document: what the sale settled, the order
// with its paper, the supplier's acknowledgment, delivery, what was built, completion, registration.

import { expect } from '@jest/globals';
import type { Page } from 'playwright-core';
import { BARN } from '../../apps/cli/demonstration/barn.js';
import { CREW, MANAGER, OFFICE } from '../../apps/cli/demonstration/people.js';
import { button, choose, link, pick, type } from './acts.js';
import { axe, journey, settled, withOffice } from './browser.js';
import { steps } from './steps.js';

const title = (page: Page, name: string | RegExp) =>
  page.getByRole('heading', { level: 1, name }).waitFor();

async function documented(page: Page): Promise<void> {
  await pick(page, /^Document$/);
  await type(page, 'From whom or what', 'Job file (invented)');
  await button(page, 'Record these facts').click();
  await title(page, /^Job 2026-0101/);
  await settled(page);
}

/** A form of one command, opened from the job's page, filled in, saved. */
async function form(page: Page, name: string | RegExp, fill: () => Promise<void>): Promise<void> {
  await link(page, name).first().click();
  await page.getByRole('heading', { level: 1, name }).waitFor();
  await settled(page);
  await fill();
}
async function saved(page: Page, save: string): Promise<void> {
  await button(page, save).click();
  const refused = page.getByRole('alert').waitFor();
  refused.catch(() => undefined);
  await Promise.race([title(page, /^Job 2026-0101/), refused]);
  expect(await page.getByRole('alert').allInnerTexts()).toEqual([]);
  await settled(page);
}
async function attach(page: Page, field: RegExp, name: string): Promise<void> {
  const buffer = Buffer.from(`${name}, invented`);
  await page.getByLabel(field).setInputFiles({ name, mimeType: 'text/plain', buffer });
  await page.getByText(name).waitFor();
}
/** What is issued is reviewed first. */
async function reviewed(page: Page, save: string): Promise<void> {
  const rules = page.getByRole('region', { name: 'What the rules say' });
  await rules.getByText(/stands? against it/).waitFor();
  for (const each of await rules.getByRole('checkbox', { name: /^I have read/ }).all())
    await each.check();
  await button(page, 'Review it').click();
  await page.getByText('How this can be corrected').waitFor();
  await saved(page, save);
}

async function asBuilt(page: Page, spacings: readonly string[]): Promise<void> {
  await form(page, /^Record the attachment as built/, async () => {
    await choose(page, 'Fastener', 'No. 10 wood screw with sealing washer, 1-1/2 in');
    for (const [i, spacing] of spacings.entries())
      await type(page, new RegExp(`^Zone ${i + 1}: spacing as built`), spacing);
  });
  await saved(page, 'Save as built');
}

journey('from the order to the warranty by clicks', () => {
  const office = withOffice();
  let page: Page;
  const step = steps(() => page);
  const order = () => page.getByRole('region', { name: 'Order 1', exact: true });

  step('the office records what the sale settled; a wrong date is named', async () => {
    page = await office.as(OFFICE);
    await page.goto(`/jobs/${BARN.id}`);
    await settled(page);
    await link(page, 'Record or change them').click();
    await title(page, 'Record facts');
    await choose(page, /^Has the customer accepted the proposal/, 'Yes');
    await type(page, /^Deposit agreed/, '0');
    await type(page, /^Last day of the quote/, 'soon');
    await choose(page, 'Permit', 'Granted');
    await choose(page, /^Approval of the owners/, 'Not asked');
    for (const limit of ['the truck brings', 'the site takes', 'the crew lifts'])
      await type(page, new RegExp(`^Longest piece ${limit}`), '40');
    const promised = page.getByRole('group', { name: /^Warranty documents promised/ });
    await promised.getByLabel('Paint').check();
    await promised.getByLabel('None').check();
    await page
      .getByRole('group', { name: /^Warranty documents whose/ })
      .getByLabel('Paint')
      .check();
    await choose(page, /^Was the term text given/, 'Yes');
    await choose(page, /^Is it a consumer product/, 'No');
    expect(await axe(page)).toEqual([]);
    await pick(page, /^Document$/);
    await type(page, 'From whom or what', 'Job file (invented)');
    await button(page, 'Record these facts').click();
    const summary = page.getByRole('alert');
    await summary.getByText('enter the date like 14 Feb 2026').waitFor();
    expect(await summary.innerText()).toContain('choose none, or which');
    await promised.getByLabel('None').uncheck();
    await type(page, /^Last day of the quote/, '31 Dec 2030');
    await documented(page);
    await page.getByText('12 recorded', { exact: false }).first().waitFor();
  });

  step('the color chip is recorded on the surface', async () => {
    await link(page, 'Record facts').click();
    await link(page, 'Surface: Barn roof').click();
    await choose(page, /^Has the customer accepted a physical color chip/, 'Yes');
    await documented(page);
  });

  step('the order is filled in, reviewed and issued; its paper is printed', async () => {
    await link(page, 'Issue an order').click();
    await title(page, 'Issue order 1');
    await type(page, 'Supplier', 'Sample Panels (invented)');
    await type(page, 'Landing place', 'Field by the north wall');
    await choose(page, 'They are', 'Measured, and signed by who measured');
    await type(page, 'Who measured', 'Cora, with a tape');
    await type(page, 'Length of a piece', '264');
    await type(page, 'How many', '48');
    await reviewed(page, 'Issue the order');
    await order().getByText('Revision 1 is in force').waitFor();
    await button(page, /^Issue Order 1\.1/).click();
    const print = link(page, /^PDF of Order 1\.1/);
    await print.waitFor();
    const answer = await page.request.get((await print.getAttribute('href')) ?? '');
    expect((await answer.body()).subarray(0, 5).toString()).toBe('%PDF-');
  });

  step("the supplier's acknowledgment is compared line by line", async () => {
    await form(page, /^Record the supplier/, async () => {
      await type(page, 'Dated', '30 Nov 2026');
      await type(page, /how many confirmed$/, '47');
    });
    await saved(page, 'Save the acknowledgment');
    expect(await order().innerText()).toMatch(/L1 changed: 48\b.* → 47\b/);
  });

  step('a change order needs the manager; the second revision says what it changed', async () => {
    const manager = await office.as(MANAGER);
    await manager.goto(`/jobs/${BARN.id}`);
    await settled(manager);
    await form(manager, /^Open a change order/, () =>
      type(manager, 'Reason', 'Two spare panels, asked by the owner.'),
    );
    await button(manager, 'Review it').click();
    await saved(manager, 'Open the change order');
    await page.reload();
    await link(page, 'Issue it again').click();
    await title(page, 'Issue order 1 again');
    await type(page, 'How many', '50');
    await reviewed(page, 'Issue the order');
    await order().getByText('Revision 2 is in force').waitFor();
    expect(await order().innerText()).toMatch(/What this revision changed/);
  });

  step('the crew lead counts at the truck; what is short stays named until settled', async () => {
    const crew = await office.as(CREW);
    await crew.goto(`/jobs/${BARN.id}`);
    await settled(crew);
    await form(crew, /^Record what was received/, async () => {
      await type(crew, /received of 50/, '49');
      await type(crew, /^Coil or lot numbers for Barn roof/, 'coil-12\ncoil-13');
      await pick(crew, /^Yes$/);
    });
    await saved(crew, 'Save the receipt');
    await page.reload();
    await order().getByText('49 of 50 came').waitFor();
    await form(page, /^Settle a line/, () =>
      type(page, /^How the shortage/, 'One spare less, credited.'),
    );
    await saved(page, 'Save how it is settled');
    await order().getByText('Nothing is short').waitFor();
  });

  step('as built differs in one zone, and the page says so', async () => {
    await asBuilt(page, ['9', '9', '9']);
    expect(await page.locator('main').innerText()).toMatch(/zone 3/i);
    await asBuilt(page, ['9', '9', '6']);
    await page.getByText('Barn roof: built as approved.').waitFor();
  });

  step('two lots on one plane: shown, accepted by the owner in writing', async () => {
    await form(page, /^Accept mixed lots/, async () => {
      await type(page, /^Who accepts them/, 'The owner, on both chips side by side.');
      await attach(page, /^The written acceptance/, 'mixed-lots.txt');
    });
    await saved(page, 'Save the acceptance');
    await page.getByRole('row').filter({ hasText: 'coil-12' }).getByText('accepted').waitFor();
  });

  step('inspected, the punch list closed, completed', async () => {
    await form(page, /^Record the final inspection/, async () => {
      await pick(page, /^Yes$/);
      await type(page, /^Punch list/, 'Touch up the rake trim');
    });
    await saved(page, 'Save the inspection');
    await form(page, /^Close an item/, () => type(page, 'What was done', 'Touched up.'));
    await saved(page, 'Close the item');
    await form(page, /^Record completion/, async () => undefined);
    await reviewed(page, 'Record completion');
    await page.getByText('Stands at: Warranty.').waitFor();
  });

  step("the warranty is registered and issued, with the warrantor's text unchanged", async () => {
    await form(page, /^Record a registration/, async () => {
      await choose(page, 'Kind of warranty', 'Paint');
      await type(page, /^Window after completion/, '60');
    });
    await saved(page, 'Save the registration');
    await form(page, /^Issue a warranty document/, async () => {
      await pick(page, /^Paint$/);
      await type(page, 'Warrantor', 'Sample Coil Coating (invented)');
      await type(page, /^Its mailing address/, '1 Mill Lane, Sampleton (invented)');
      await type(page, 'Years', '25');
      await attach(page, /^The warrantor’s text/, 'terms.txt');
      await type(page, /^Fade: color change/, '5');
      await choose(page, /^Fade: scale/, 'Hunter');
      await type(page, /^Fade: years/, '25');
      await pick(page, /^With notice$/);
      await type(page, /^Exclusions named/, 'Barn roof: more than one lot');
    });
    await reviewed(page, 'Issue the document');
    await button(page, /^Issue Warranty 1/).click();
    const print = link(page, /^PDF of Warranty 1/);
    await print.waitFor();
    const answer = await page.request.get((await print.getAttribute('href')) ?? '');
    expect((await answer.body()).subarray(0, 5).toString()).toBe('%PDF-');
    await page.goto('/jobs?find=2026-0101');
    await settled(page);
    expect(await page.locator('table.job-list tbody').innerText()).toContain('Complete');
  });

  step('the barn is sold: the warranty goes over with notice', async () => {
    await page.goto(`/jobs/${BARN.id}`);
    await settled(page);
    await form(page, /^Record a transfer/, async () => {
      await type(page, 'To whom', 'Valley Farm (invented)');
      await pick(page, /^Yes$/);
    });
    await saved(page, 'Save the transfer');
    await page.getByText('Valley Farm (invented)').waitFor();
  });

  step('a change order that came to nothing is withdrawn', async () => {
    const manager = await office.as(MANAGER);
    await manager.goto(`/jobs/${BARN.id}`);
    await settled(manager);
    await form(manager, /^Open a change order/, () => type(manager, 'Reason', 'One more trim.'));
    await button(manager, 'Review it').click();
    await saved(manager, 'Open the change order');
    await form(manager, /^Withdraw the change order/, () =>
      type(manager, 'Reason', 'The trim was found.'),
    );
    await button(manager, 'Review it').click();
    await saved(manager, 'Withdraw it');
    expect(await manager.getByText('Change order open').count()).toBe(0);
  });
});
