// What falls due is mailed by itself: at once to the engineer who is asked, once to each person for
// each thing by however many instances, again after a mail server failed, and not to who stopped it.

import { afterAll, beforeAll, expect, test } from '@jest/globals';
import type { CommandInput } from '#jobs/contract';
import { ASK } from '../../libs/jobs/job-files.js';
import { Companies } from '../../apps/api/data/companies.js';
import { ReminderMail } from '../../apps/api/reminders/reminder-mail.js';
import { Settings, startService, type Service } from '../../apps/api/service.js';
import { mailServer } from '../mail-server.js';
import { settingsFor, withService } from '../service.js';
import { decide, openJob, type Told } from './ordered.js';

const smtp = await mailServer();
const { mails } = smtp;
const running = withService({ mail: smtp.settings });
const dayAhead = (days: number) =>
  new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);
let told: Told;
let second: Service;

beforeAll(async () => {
  second = await startService(
    new Settings({ ...settingsFor(running.database.serviceUrl), mail: smtp.settings }),
  );
  told = await openJob(running, 'barn');
  await decide(told, 'barn');
}, 120_000);
afterAll(async () => {
  await second.stop();
  smtp.close();
});

const instances = () => [running.service, second].map((each) => each.get(ReminderMail));
const rounds = async () => {
  await Promise.all(instances().map((each) => each.all()));
};
const to = (who: keyof Told['people']) =>
  mails.filter((mail) => mail.to === `${who}.${told.company}@example.example`);
async function ask(request: string): Promise<void> {
  await told.play('manager', {
    ...ASK,
    request,
    expires: dayAhead(20),
    engineer: { id: told.people.engineer.person.id },
  } as CommandInput);
}
async function until(holds: () => boolean): Promise<void> {
  for (let i = 0; i < 200 && !holds(); i++) await new Promise((go) => setTimeout(go, 50));
  expect(holds()).toBe(true);
}
const license = (number: string) =>
  told.people.administrator.send('POST', '/licenses', {
    name: 'Avery Stone, PE (invented)',
    number,
    jurisdiction: 'KS',
    expires: dayAhead(10),
  });
/** As after half a day: the next mail may go. */
async function halfADayLater(): Promise<void> {
  const { pool } = running.service.get(Companies).of(told.company);
  await pool.query(`UPDATE mailed_reminder SET sent_at = sent_at - interval '13 hours'`);
}

test('the engineer who is asked gets mail at once, and once', async () => {
  await ask('r1');
  await until(() => to('engineer').length > 0);
  await rounds();
  await rounds();
  expect(to('engineer').map(({ text }) => text.includes('Sign in to see the packet'))).toEqual([
    true,
  ]);
  expect(to('manager')).toEqual([]);
}, 60_000);

test('a license near its end is mailed once, by two instances at the same time and after a restart', async () => {
  await license('KS-1');
  await rounds();
  await rounds();
  await second.stop();
  second = await startService(
    new Settings({ ...settingsFor(running.database.serviceUrl), mail: smtp.settings }),
  );
  await halfADayLater();
  await rounds();
  expect(to('manager').map(({ text }) => text.includes('License KS-1'))).toEqual([true]);
}, 60_000);

test('what comes up within half a day of a mail goes with the next one', async () => {
  mails.length = 0;
  await halfADayLater();
  await license('KS-2');
  await rounds();
  await license('KS-3');
  await rounds();
  expect(to('manager').map(({ text }) => /KS-\d/.exec(text)?.[0])).toEqual(['KS-2']);
  await halfADayLater();
  await rounds();
  expect(to('manager').map(({ text }) => /KS-\d/.exec(text)?.[0])).toEqual(['KS-2', 'KS-3']);
}, 60_000);

test('a mail server that fails holds up nothing, and the mail goes in a later round, once', async () => {
  mails.length = 0;
  smtp.refuses = true;
  await ask('r2');
  expect((await told.view()).requests.map(({ request }) => request)).toContain('r2');
  await rounds();
  expect(mails).toEqual([]);
  smtp.refuses = false;
  await rounds();
  await rounds();
  expect(to('engineer')).toHaveLength(1);
}, 60_000);

test('a claim whose instance died is free again after a quarter hour', async () => {
  mails.length = 0;
  const { pool } = running.service.get(Companies).of(told.company);
  await pool.query(`UPDATE mailed_reminder SET sent_at = NULL WHERE kind = 'sign-off-asked'`);
  await rounds();
  expect(to('engineer')).toEqual([]);
  await pool.query(
    `UPDATE mailed_reminder SET claimed_at = claimed_at - interval '16 minutes' WHERE kind = 'sign-off-asked'`,
  );
  await rounds();
  expect(to('engineer')).toHaveLength(1);
}, 60_000);

test('who stopped it gets none', async () => {
  mails.length = 0;
  const { engineer } = told.people;
  expect((await engineer.get<object>('/session/mail')).body).toEqual({
    reminders: true,
    sends: true,
  });
  expect((await engineer.send('PUT', '/session/mail', { reminders: false })).status).toBe(204);
  await ask('r3');
  await rounds();
  expect(mails).toEqual([]);
  await engineer.send('PUT', '/session/mail', { reminders: true });
  await rounds();
  expect(to('engineer')).toHaveLength(1);
}, 60_000);

test('a clock that jumps mails nothing in that round', async () => {
  mails.length = 0;
  await halfADayLater();
  await license('KS-9');
  const [mail] = instances();
  const year = 365 * 86_400_000;
  await mail?.all(Date.now() + year);
  expect(mails).toEqual([]);
  await mail?.all();
  expect(mails).toEqual([]);
  await mail?.all();
  expect(to('manager').map(({ text }) => /KS-\d/.exec(text)?.[0])).toEqual(['KS-9']);
}, 60_000);
