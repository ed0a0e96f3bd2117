// Where a mail server is set up: the engineer's code goes to their own mailbox and is shown to nobody;
// reminders go to the project managers. The server is a small one of the test's own, on loopback.

import { afterAll, beforeAll, expect, test } from '@jest/globals';
import type { CommandInput } from '#jobs/contract';
import { ASK, LICENSE } from '../../libs/jobs/job-files.js';
import { mailServer } from '../mail-server.js';
import { call, withService } from '../service.js';
import { decide, openJob, type Told } from './ordered.js';

let told: Told;

const smtp = await mailServer();
const { mails } = smtp;
const running = withService({ mail: smtp.settings });
afterAll(() => smtp.close());

beforeAll(async () => {
  told = await openJob(running, 'barn');
  await decide(told, 'barn');
  await told.play('manager', {
    ...ASK,
    expires: '2099-12-31',
    engineer: { id: told.people.engineer.person.id },
  } as CommandInput);
}, 120_000);

test('the code goes to the engineer alone, and signs', async () => {
  const made = await told.people.manager.send<{ token: string }>(
    'POST',
    `/jobs/${told.id}/requests/r1/links`,
    {},
  );
  const { visit } = (
    await call<{ visit: string }>(running.address, 'POST', '/packet/open', {
      token: made.body.token,
    })
  ).body;
  expect(
    (await told.people.administrator.send('POST', `/jobs/${told.id}/requests/r1/codes`)).status,
  ).toBe(409);
  const header = { 'x-packet-visit': visit };
  expect((await call(running.address, 'POST', '/packet/code', undefined, header)).status).toBe(204);
  const mail = mails.find(({ text }) => text.includes('code for signing'));
  expect(mail?.to).toBe(`engineer.${told.company}@example.example`);
  const code = /code for signing is (\d{6})/.exec(mail?.text ?? '')?.[1] ?? '';
  const body = {
    code,
    name: 'Engineer',
    answer: 'approve',
    license: { ...LICENSE, expires: '2099-06-30' },
    statement: 'I reviewed the packet.',
  };
  expect((await call(running.address, 'POST', '/packet/answers', body, header)).status).toBe(201);
  expect((await call(running.address, 'POST', '/packet/answers', body, header)).status).toBe(404);
}, 60_000);

test('reminders go to the project managers', async () => {
  mails.length = 0;
  const sent = await told.people.administrator.send<{ sent_to: number }>(
    'POST',
    '/reminders/mail?days=2000',
  );
  expect(sent.body).toEqual({ sent_to: 1 });
  expect(mails.map(({ to }) => to)).toEqual([`manager.${told.company}@example.example`]);
});
