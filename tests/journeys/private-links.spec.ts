// Private links as those who get them use them: an engineer opens a packet and signs it with a code read
// out by phone; a customer reads a paper and says that it was seen.

import { beforeAll, expect, test } from '@jest/globals';
import type { JobView } from '#jobs/contract';
import { BARN } from '../../apps/cli/demonstration/barn.js';
import {
  ADMINISTRATOR,
  DEMONSTRATION,
  ENGINEER,
  MANAGER,
} from '../../apps/cli/demonstration/people.js';
import { SignInLinks } from '../../apps/api/people/sign-in-links.js';
import { signInByLink, type Client } from '../service.js';
import { axe, journey, settled, withOffice } from './browser.js';

journey('private links', () => {
  const office = withOffice();
  let manager: Client;
  let administrator: Client;

  beforeAll(async () => {
    const links = office.service.get(SignInLinks);
    const as = async ({ id }: { id: string }) =>
      signInByLink(office.address, await links.make(DEMONSTRATION.company, id));
    manager = await as(MANAGER);
    administrator = await as(ADMINISTRATOR);
    const job = await manager.get<JobView>(`/jobs/${BARN.id}`);
    const asked = await manager.send(
      'POST',
      `/jobs/${BARN.id}/commands`,
      {
        type: 'request-sign-off',
        request: 'again',
        surfaces: job.body.surfaces.map(({ id }) => id).slice(0, 1),
        engineer: { id: ENGINEER.id },
        scope: 'Roof panels and their screws.',
        expires: '2099-12-31',
      },
      { 'if-match': job.headers.get('etag') ?? '' },
    );
    expect(asked.status).toBe(200);
  }, 60_000);

  test('the manager makes a link; the engineer opens it once, reads, reviews and signs', async () => {
    const page = await office.as(MANAGER);
    await page.goto(`/jobs/${BARN.id}/requests/again`);
    await settled(page);
    await page.getByRole('button', { name: 'Make a private link' }).click();
    const link = await page.getByText(/\/packet\/[A-Za-z0-9_-]{43}/).innerText();
    const where = new URL(/https?:\S+/.exec(link)?.[0] ?? '').pathname;

    const engineer = await office.stranger();
    await engineer.goto(where);
    await settled(engineer);
    expect(await axe(engineer)).toEqual([]);
    await engineer.getByRole('button', { name: 'Open the packet' }).click();
    await engineer.getByText('Digest of the packet').waitFor();
    await engineer.reload();
    await engineer.getByText('Digest of the packet').waitFor();
    await engineer.getByLabel('Approve', { exact: true }).check();
    await engineer.getByLabel(/^Your statement/).fill('I reviewed this packet and approve it.');
    await engineer.getByLabel('Name on the license').fill('Edda (invented)');
    await engineer.getByLabel(/^License number/).fill('EX-00001');
    await engineer.getByLabel(/^State or territory/).fill('OH');
    await engineer.getByLabel(/^Expires/).fill('31 Dec 2098');
    await engineer.getByRole('button', { name: 'Review your answer' }).click();
    await engineer.getByRole('heading', { name: 'Review your answer' }).waitFor();
    expect(await axe(engineer)).toEqual([]);
    const told = await administrator.send<{ code: string }>(
      'POST',
      `/jobs/${BARN.id}/requests/again/codes`,
    );
    await engineer
      .getByLabel('Code for signing')
      .fill(told.body.code === '000000' ? '000001' : '000000');
    await engineer.getByLabel('Your name, typed by yourself').fill(ENGINEER.name);
    await engineer.getByRole('button', { name: 'Sign this answer' }).click();
    await engineer
      .getByText(/Not signed: the code/)
      .first()
      .waitFor();
    await engineer.getByLabel('Code for signing').fill(told.body.code);
    await engineer.getByRole('button', { name: 'Sign this answer' }).click();
    await engineer.getByRole('heading', { name: 'Your answer was recorded' }).waitFor();
    expect(await axe(engineer)).toEqual([]);
    const again = await office.stranger();
    await again.goto(where);
    await again.getByRole('button', { name: 'Open the packet' }).click();
    await again.getByText('was used before').waitFor();
  }, 300_000);

  test('the customer reads what was sent and says that it was seen', async () => {
    const made = await manager.send<{ token: string }>('POST', `/jobs/${BARN.id}/customer-links`, {
      papers: [{ paper: 'engineer-packet', about: 'again' }],
    });
    const customer = await office.stranger();
    await customer.goto(`/customer/${made.body.token}`);
    await customer.getByText('does not make a roof safe or lawful').waitFor();
    expect(await axe(customer)).toEqual([]);
    await customer.getByLabel('Your name, to say that you have seen it').fill('Robin Sample');
    await customer.getByRole('button', { name: /^I have seen it/ }).click();
    await customer.getByText(/^Acknowledged on/).waitFor();
    await customer.goto(`/customer/${made.body.token.slice(0, -1)}`);
    await customer.getByText('This link is not whole').waitFor();
    await customer.goto(`/packet/${made.body.token.slice(0, -1)}`);
    await customer.getByRole('button', { name: 'Open the packet' }).click();
    await customer.getByText('This link is not whole').waitFor();
  }, 120_000);
});
