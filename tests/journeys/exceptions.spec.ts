// What goes otherwise, by clicks alone: a job that grows and shrinks, an approval revoked and another
// engineer's design entered instead, an old roof that hid something else.

import { expect, test } from '@jest/globals';
import type { Page } from 'playwright-core';
import { play } from '../../apps/cli/demonstration.js';
import { BARN } from '../../apps/cli/demonstration/barn.js';
import { HOUSE } from '../../apps/cli/demonstration/house.js';
import { demonstrationId, type InventedJob } from '../../apps/cli/demonstration/steps.js';
import { CREW, ENGINEER, MANAGER, OFFICE } from '../../apps/cli/demonstration/people.js';
import { button, link, pick, tickCautions, type } from './acts.js';
import { axe, journey, PASSWORD, settled, withOffice, type Who } from './browser.js';

/** The house's roof before the old one is off. */
const REROOF: InventedJob = {
  ...HOUSE,
  id: demonstrationId(900),
  steps: HOUSE.steps
    .filter(([, { type }]) => type !== 'record-tear-off' && type !== 'record-take-off')
    .map(([who, command]) => [
      who,
      command.type === 'open-job'
        ? { ...command, number: '2026-0190', name: 'Reroof not begun' }
        : command,
    ]),
};

journey('what goes otherwise', () => {
  const office = withOffice();
  const at = async (who: Who, path: string): Promise<Page> => {
    const page = await office.as(who);
    await page.goto(path);
    await settled(page);
    return page;
  };

  test('a building and a surface are added; the surface is withdrawn, and its record stays', async () => {
    const page = await at(OFFICE, `/jobs/${BARN.id}`);
    await link(page, 'Change the job').click();
    await type(page, 'Name of the building', 'Lean-to');
    await button(page, 'Add the building').click();
    await page.getByText('Building added.').waitFor();
    await type(page, 'Name of the surface', 'Lean-to roof');
    await page.locator('#surface-building').selectOption({ label: 'Lean-to' });
    await button(page, 'Add the surface').click();
    await page.getByText('Surface added.').waitFor();
    await button(page, 'Withdraw the surface').click();
    const summary = page.getByRole('alert');
    await summary.getByText('Say why it is withdrawn').waitFor();
    await page.locator('#withdraw').selectOption({ label: 'Lean-to roof' });
    await page.locator('#withdraw-reason').fill('The owner builds no lean-to.');
    await button(page, 'Withdraw the surface').click();
    await page.getByText('Surface withdrawn.').waitFor();
    await page.goto(`/jobs/${BARN.id}`);
    await settled(page);
    const row = page.getByRole('row').filter({ hasText: 'Lean-to roof' });
    expect(await row.innerText()).toContain('The owner builds no lean-to.');
    await link(page, 'History').click();
    await page.getByText('The owner builds no lean-to.').first().waitFor();
  }, 90_000);

  /** The code is read out by the manager, the password typed once more. */
  const giveFactors = async (engineer: Page): Promise<Page> => {
    await button(engineer, 'Ask for the code').click();
    await engineer.getByText('Asked for. Somebody of the office').first().waitFor();
    const manager = await at(MANAGER, '/sign-offs');
    await manager.getByText('Read out a code for signing').click();
    await button(manager, /^Code for /).click();
    const told = await manager.getByRole('dialog').innerText();
    const [, first = '', last = ''] = /(\d{3}) (\d{3}): good for 10 minutes/.exec(told) ?? [];
    await engineer.getByLabel('Code for signing').fill(`${first}${last}`);
    await engineer.getByLabel('Your password, once more').fill(PASSWORD);
    return manager;
  };

  test('a spacing measured again reopens two stages and the approval; its engineer reaffirms it', async () => {
    const page = await at(OFFICE, `/jobs/${BARN.id}/surfaces/roof/substrate`);
    await link(page, 'Record or change facts').click();
    await type(page, /^Spacing of supports/, '24\n24');
    await pick(page, /^Measured$/);
    await type(page, 'From whom or what', 'Tape, by the crew');
    await type(page, /^Reason/, 'Measured again.');
    await button(page, 'Record these facts').click();
    await button(page, 'Record and reopen these stages').click();
    await page.getByRole('heading', { level: 1, name: 'Barn roof: Substrate' }).waitFor();
    for (const [stage, next] of [
      ['substrate', 'Gauge'],
      ['gauge', 'Engineer sign-off'],
    ] as const) {
      await page.goto(`/jobs/${BARN.id}/surfaces/roof/${stage}`);
      await settled(page);
      await tickCautions(page);
      await button(page, /^Save and/).click();
      await page.getByRole('heading', { level: 1, name: `Barn roof: ${next}` }).waitFor();
    }
    await page.getByText('Changed since the engineer saw it').first().waitFor();
    const engineer = await at(ENGINEER, `/jobs/${BARN.id}/requests/barn-1`);
    await type(engineer, /^Your statement/, 'The shorter spacing is within what I approved.');
    await button(engineer, 'Review your reaffirmation').click();
    await giveFactors(engineer);
    await button(engineer, 'Sign the reaffirmation').click();
    await engineer.getByText('Reaffirmed.').first().waitFor();
    await page.goto(`/jobs/${BARN.id}`);
    await settled(page);
    await page.getByText('All six stages done').waitFor({ timeout: 20_000 });
  }, 120_000);

  test("the engineer revokes an approval with both factors; another engineer's design is entered", async () => {
    const engineer = await at(ENGINEER, `/jobs/${BARN.id}/requests/barn-1`);
    await engineer.getByText('Revoke this sign-off').click();
    await engineer.locator('#revoke-reason').fill('The purlins are not what the packet says.');
    await button(engineer, 'Review the revocation').click();
    const manager = await giveFactors(engineer);
    await button(engineer, 'Revoke the sign-off').click();
    await engineer
      .getByText(/revoked/i)
      .first()
      .waitFor();

    await manager.goto(`/jobs/${BARN.id}/surfaces/roof/sign-off`);
    await settled(manager);
    await manager.getByRole('tab', { name: 'Enter a design received' }).click();
    await button(manager, 'Enter the design').click();
    await manager.getByRole('alert').getByText('Attach the letter or drawings').waitFor();
    expect(await axe(manager)).toEqual([]);
    await manager.getByLabel('Sealed letter or drawings').setInputFiles({
      name: 'letter.pdf',
      mimeType: 'application/pdf',
      buffer: Buffer.from('%PDF-1.4 invented'),
    });
    await manager.getByText('letter.pdf').waitFor();
    await type(manager, 'Date of the design', '20 Nov 2026');
    await type(manager, 'Name on the license', 'Otto (invented)');
    await type(manager, 'License number', 'EX-00077');
    await type(manager, 'State or territory', 'OH');
    await type(manager, 'Expires', '31 Dec 2028');
    await type(manager, 'What the design covers', 'Panels and screws on the purlins.');
    await type(manager, 'What the design settles', 'The 26 gauge panel at 24.25 in.');
    await button(manager, 'Enter the design').click();
    await manager.getByText('attached, not verified in this system').first().waitFor();
    await manager.getByText('Otto (invented), license EX-00077').waitFor();
  }, 120_000);

  test('with the old roof off it is different: laying stops, the substrate is measured again', async () => {
    await play(office.service, REROOF);
    const crew = await at(CREW, '/phone');
    await type(crew, /^Find/, '2026-0190');
    await crew.getByText('1 job', { exact: true }).waitFor();
    const job = crew.getByRole('group').filter({ hasText: 'Reroof not begun' });
    await job.getByText('Reroof not begun').click();
    await job.getByRole('link', { name: 'Main roof' }).click();
    await crew.getByRole('heading', { name: 'Tear-off checkpoint' }).waitFor();
    await pick(crew, /^Different/);
    await crew.locator('#off-words').fill('Spaced boards at 12 in, two rotten.');
    await button(crew, 'Save the checkpoint').click();
    await crew.getByText('Everything typed here has been sent.').waitFor();
    const page = await at(OFFICE, `/jobs/${REROOF.id}`);
    await page.getByText('panel laying on hold').first().waitFor();
    await link(page, 'Main roof').first().click();
    await settled(page);
    await page.getByText('Spaced boards at 12 in, two rotten.').first().waitFor();
  }, 120_000);

  test('a stage that somebody doubts is put up for re-check with the reason', async () => {
    const page = await at(OFFICE, `/jobs/${REROOF.id}/surfaces/main/style`);
    await page.getByText('Put style up for re-check').click();
    await button(page, 'Put it up for re-check').click();
    await page.getByRole('alert').getByText('Say why it is doubted').waitFor();
    expect(await axe(page)).toEqual([]);
    await type(page, 'Why it is doubted', 'The owner asks for ribs again.');
    await button(page, 'Put it up for re-check').click();
    await page
      .getByText(/style: confirmed → reopened .*: The owner asks for ribs again\./)
      .waitFor();
    await button(page, 'Save and continue').waitFor();
  }, 120_000);
});
