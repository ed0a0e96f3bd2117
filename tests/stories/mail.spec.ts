// Where a mail server is set up: the engineer's code goes to their own mailbox and is shown to nobody;
// reminders go to the project managers. The server is a small one of the test's own, on loopback.

import { createServer, type Server, type Socket } from 'node:net';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, expect, test } from '@jest/globals';
import type { CommandInput } from '#jobs/contract';
import { ASK, LICENSE } from '../../libs/jobs/job-files.js';
import { call, withService } from '../service.js';
import { decide, openJob, type Told } from './ordered.js';

const mails: { readonly to: string; readonly text: string }[] = [];
let told: Told;

/** As much of RFC 5321 as a sender needs. */
function receive(socket: Socket): void {
  let to = '';
  let text: string[] | undefined;
  let rest = '';
  socket.write('220 mail.example\r\n');
  socket.on('error', () => undefined);
  socket.on('data', (bytes) => {
    const lines = (rest + bytes.toString()).split('\r\n');
    rest = lines.pop() ?? '';
    for (const line of lines) {
      if (text) {
        if (line !== '.') {
          text.push(line);
          continue;
        }
        mails.push({ to, text: text.join('\n') });
        text = undefined;
        socket.write('250 kept\r\n');
      } else if (line.startsWith('EHLO')) socket.write('250 mail.example\r\n');
      else if (line.startsWith('RCPT')) {
        to = /<(.*)>/.exec(line)?.[1] ?? '';
        socket.write('250 fine\r\n');
      } else if (line === 'DATA') {
        text = [];
        socket.write('354 go on\r\n');
      } else if (line === 'QUIT') socket.end('221 bye\r\n');
      else socket.write('250 fine\r\n');
    }
  });
}

const smtp: Server = createServer(receive);
await new Promise<void>((ready) => smtp.listen(0, '127.0.0.1', ready));
const running = withService({
  mail: {
    smtpUrl: `smtp://127.0.0.1:${(smtp.address() as AddressInfo).port}?ignoreTLS=true`,
    from: 'office@ridge.example',
  },
});
afterAll(() => {
  smtp.close();
});

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
  const [mail] = mails;
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
