// Requirements 30 to 38 of an engineer's sign-off, each by its number, over HTTP and PostgreSQL.

import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test } from '@jest/globals';
import type { CommandInput, JobView } from '#jobs/contract';
import { canonical, newClient } from '#ledger';
import { APPROVE, ASK, BARN } from '../../libs/jobs/job-files.js';
import { ORDER, PAPERS, v } from '../../libs/jobs/after-order/order-files.js';
import { pdfText, testByPoppler } from '../read-pdf.js';
import { call, clientOf, withService, type Answer, type Client } from '../service.js';
import { Companies } from '../../apps/api/data/companies.js';
import { codeFor, ENGINEERS_PASSWORD, giveFactors } from '../signing.js';
import { decide, openJob, type Problem, type Told } from '../stories/ordered.js';

const running = withService({ keys: true });
const LICENSE = {
  name: 'Avery Stone, PE (invented)',
  number: 'KS-00001',
  jurisdiction: 'KS',
  expires: '2099-06-30',
};
const FAR = '2099-12-31';
const BARN_ORDER = {
  ...ORDER,
  lines: [
    {
      id: 'p1',
      surface: 's1',
      what: 'panel',
      words: 'Ribbed 36, 26 gauge',
      length: v('240', 'in'),
      count: 20,
    },
  ],
} satisfies CommandInput;
let told: Told;
let requests = 0;

/** Asks anew; gives the request's id. */
async function ask(): Promise<string> {
  const request = `r${++requests}`;
  await told.play('manager', {
    ...ASK,
    request,
    expires: FAR,
    engineer: { id: told.people.engineer.person.id },
  } as CommandInput);
  return request;
}

interface Visit {
  readonly visit: string;
  readonly digest: string;
  readonly body: object;
}
async function link(request: string): Promise<string> {
  const made = await told.people.manager.send<{ token: string }>(
    'POST',
    `/jobs/${told.id}/requests/${request}/links`,
    {},
  );
  if (made.status !== 201) throw new Error(JSON.stringify(made.body));
  return made.body.token;
}
const open = (token: string) => call<Visit>(running.address, 'POST', '/packet/open', { token });
const codeFrom = async (who: 'administrator' | 'manager', request: string) =>
  told.people[who].send<{ code: string }>('POST', `/jobs/${told.id}/requests/${request}/codes`);

const answerOf = (code: string, rest: object = {}) => ({
  code,
  name: 'engineer',
  answer: 'approve',
  license: LICENSE,
  statement: 'I reviewed the packet.',
  ...rest,
});
const sign = (
  visit: string,
  body: object,
): Promise<Answer<Problem & { meaning: string; at: string; license: object }>> =>
  call(running.address, 'POST', '/packet/answers', body, { 'x-packet-visit': visit });

/** Link, visit, code by phone, signature. */
async function signed(request: string, rest: object = {}) {
  const { visit } = (await open(await link(request))).body;
  return sign(visit, answerOf((await codeFrom('administrator', request)).body.code, rest));
}
const spacing = (value: string): CommandInput => ({
  type: 'record-facts',
  reason: 'measured again',
  facts: [
    {
      on: 's1',
      fact: 'support-spacings',
      value: [{ v: value }, { zone: '3', v: '24' }],
      how: 'measured',
    },
  ],
});
async function signInByPassword(as: Client): Promise<Client> {
  const email = `engineer.${told.company}@example.example`;
  const answer = await call(running.address, 'POST', '/session', {
    email,
    password: ENGINEERS_PASSWORD,
  });
  const client = clientOf(running.address, answer);
  expect(client.person.id).toBe(as.person.id);
  return client;
}
const signOff = (view: JobView) => view.surfaces[0]!.sign_off;

beforeAll(async () => {
  told = await openJob(running, 'barn');
  await decide(told, 'barn');
  await told.play('office', PAPERS);
}, 120_000);

describe('sign-off', () => {
  test('requirement 30: one changed byte of the packet voids the match', async () => {
    const request = await ask();
    const packet = await told.people.engineer.get<{ digest: string; body: object }>(
      `/jobs/${told.id}/requests/${request}/packet`,
    );
    expect(createHash('sha256').update(canonical(packet.body.body)).digest('hex')).toBe(
      packet.body.digest,
    );
    const changed = canonical(packet.body.body).replace('South', 'Nouth');
    const wrong = createHash('sha256').update(changed).digest('hex');
    const refused = await told.ask('engineer', {
      ...APPROVE,
      request,
      license: LICENSE,
      packet: wrong,
    } as CommandInput);
    expect(refused.status).toBe(412);
    expect(refused.body.refusals?.map(({ code }) => code)).toEqual(['MOVE-16']);
  }, 60_000);

  test('requirement 31: an input in scope makes it stale, one out of scope does not, setting it back does not revive it; the order waits meanwhile', async () => {
    const request = await ask();
    expect((await signed(request)).status).toBe(201);
    const color = await told.play('office', {
      type: 'record-facts',
      reason: 'seen',
      facts: [{ on: 's1', fact: 'over-doors-or-walks', value: true, how: 'measured' }],
    });
    expect(signOff(color).differences).toEqual([]);
    const wider = await told.play('crew', spacing('50'));
    expect(signOff(wider)).toMatchObject({
      status: 'needs-recheck',
      differences: [{ path: 'surface/s1/support-spacings' }],
    });
    expect((await told.ask('office', BARN_ORDER)).body.refusals?.map(({ code }) => code)).toContain(
      'ORDER-02',
    );
    const { value } = (BARN.facts as Extract<CommandInput, { type: 'record-facts' }>).facts.find(
      ({ fact }) => fact === 'support-spacings',
    )!;
    const back = await told.play('crew', {
      type: 'record-facts',
      reason: 'as before',
      facts: [{ on: 's1', fact: 'support-spacings', value, how: 'measured' }],
    });
    expect(signOff(back).status).toBe('needs-recheck');
    for (const stage of ['style', 'coating', 'hazards', 'substrate', 'gauge'] as const) {
      if (back.surfaces[0]!.stages[stage].status !== 'confirmed')
        await told.play('manager', { ...BARN[stage], reason: 'measured again' } as CommandInput);
    }
    expect(signOff(await told.view()).status).toBe('needs-recheck');
  }, 90_000);

  test('requirement 32: name, license, jurisdiction, time and meaning stand in the answer, in the JSON and on paper', async () => {
    const request = await ask();
    const answer = await signed(request);
    expect(answer.body).toMatchObject({
      license: LICENSE,
      at: expect.stringMatching(/^\d{4}-\d\d-\d\dT/),
      meaning:
        'engineer approves what the packet says, in its scope and with the exclusions stated',
    });
    const record = await told.people.reviewer.get<{
      timeline: { words: string; at: string }[];
      surfaces: { sign_off: object }[];
    }>(`/jobs/${told.id}/decision-record`);
    expect(record.body.surfaces[0]?.sign_off).toMatchObject({
      status: 'confirmed',
      standing: 'approved',
      license: LICENSE,
    });
    expect(record.body.timeline.at(-1)).toMatchObject({
      words: `Engineer approved: ${LICENSE.name}, license ${LICENSE.number}`,
    });
  }, 60_000);

  test('requirement 33: by private link, two factors each time, a break asks for both again, and every failed attempt is in the log', async () => {
    const request = await ask();
    const token = await link(request);
    const { visit } = (await open(token)).body;
    const { code } = (await codeFrom('administrator', request)).body;
    const wrong = code === '000000' ? '000001' : '000000';
    expect((await sign(visit, answerOf(wrong))).status).toBe(401);
    expect((await sign(visit, answerOf(code, { name: 'somebody else' }))).status).toBe(401);
    for (let attempt = 3; attempt <= 5; attempt++)
      expect((await sign(visit, answerOf(wrong))).status).toBe(401);
    expect((await sign(visit, answerOf(code))).status).toBe(404);
    expect((await open(token)).status).toBe(404);
    const { body } = await told.people.administrator.get<{
      entries: { type: string; data: { attempt?: number } }[];
    }>(`/jobs/${told.id}/requests/${request}/trail`);
    expect(
      body.entries
        .filter(({ type }) => type === 'sign-off-attempt-failed/1')
        .map(({ data }) => data.attempt),
    ).toEqual([1, 2, 3, 4, 5]);
    expect((await signed(request)).status).toBe(201);
  }, 60_000);

  test('requirement 33: signed in, two factors for the first signing of a session; another session asks for both again; every failed attempt is in the log', async () => {
    const { engineer, administrator, manager } = told.people;
    const request = await ask();
    const packet = await engineer.get<{ digest: string }>(
      `/jobs/${told.id}/requests/${request}/packet`,
    );
    const act = async (client: Client, command: object) => {
      const { headers } = await engineer.get(`/jobs/${told.id}`);
      return client.send<Problem>('POST', `/jobs/${told.id}/commands`, command, {
        'if-match': headers.get('etag') ?? '',
      });
    };
    const approval = { ...APPROVE, request, license: LICENSE, packet: packet.body.digest };
    const give = (client: Client, given: object) =>
      client.send<Problem & { faults?: { pointer: string }[] }>('POST', '/session/signing', given);
    const password = ENGINEERS_PASSWORD;

    await giveFactors(engineer, administrator);
    const other = await signInByPassword(engineer);
    expect((await act(other, approval)).status).toBe(403);
    expect((await give(other, { password })).body.faults?.map(({ pointer }) => pointer)).toEqual([
      '/code',
    ]);
    expect((await manager.send('POST', `/people/${manager.person.id}/signing-codes`)).status).toBe(
      403,
    );
    const code = await codeFor(other, administrator);
    const wrong = await give(other, { password: 'a guess', code });
    expect([wrong.status, wrong.body.faults?.map(({ pointer }) => pointer)]).toEqual([
      401,
      ['/password'],
    ]);
    expect((await act(other, approval)).status).toBe(403);
    expect((await give(other, { password, code })).status).toBe(204);
    expect((await act(other, approval)).status).toBe(200);

    const next = { type: 'revoke-sign-off', request, reason: 'looked at again' };
    expect((await act(other, next)).status).toBe(403);
    expect((await other.get<object>('/session/signing')).body).toMatchObject({
      code_needed: false,
    });
    expect((await give(other, { password })).status).toBe(204);
    expect((await act(other, next)).status).toBe(200);

    const third = await signInByPassword(engineer);
    expect((await third.get<object>('/session/signing')).body).toMatchObject({ code_needed: true });
    expect((await give(third, { password })).status).toBe(401);
    const trail = await administrator.get<{
      entries: { type: string; data: { why?: string } }[];
    }>(`/people/${engineer.person.id}/signing-trail`);
    const failed = trail.body.entries.filter(({ type }) => type === 'sign-off-attempt-failed/1');
    expect(failed.map(({ data }) => data.why?.split(' ')[0])).toEqual(['code', 'password', 'code']);
  }, 90_000);

  test('requirement 33: the fifth failure voids the code, and a session silent for a quarter hour gives both again', async () => {
    const { engineer, administrator } = told.people;
    const client = await signInByPassword(engineer);
    const give = (given: object) => client.send('POST', '/session/signing', given);
    const code = await codeFor(client, administrator);
    for (let i = 0; i < 5; i++)
      expect((await give({ password: `guess ${i}`, code })).status).toBe(401);
    expect((await give({ password: ENGINEERS_PASSWORD, code })).status).toBe(401);
    const fresh = await codeFor(client, administrator);
    expect((await give({ password: ENGINEERS_PASSWORD, code: fresh })).status).toBe(204);
    const { prisma } = running.service.get(Companies).of(told.company);
    await prisma.signingSession.updateMany({ data: { provenUntil: new Date(Date.now() - 1000) } });
    expect((await client.get<object>('/session/signing')).body).toMatchObject({
      code_needed: true,
    });
    expect((await give({ password: ENGINEERS_PASSWORD })).status).toBe(401);
  }, 90_000);

  test('requirement 34: nobody signs as another: not an administrator, not who made the link; no key of an engineer is kept', async () => {
    const request = await ask();
    const packet = await told.people.engineer.get<{ digest: string }>(
      `/jobs/${told.id}/requests/${request}/packet`,
    );
    const asAdministrator = await told.ask('administrator', {
      ...APPROVE,
      request,
      license: LICENSE,
      packet: packet.body.digest,
    } as CommandInput);
    expect(asAdministrator.status).toBe(403);
    await open(await link(request));
    expect((await codeFrom('manager', request)).status).toBe(403);
    const owner = newClient({ connectionString: running.database.ownerUrl });
    await owner.connect();
    const { rows } = await owner.query<{ name: string }>(
      "SELECT table_name || '.' || column_name AS name FROM information_schema.columns WHERE table_schema IN ('public', 'ledger') AND column_name ~ '(private|secret|signing).*key|seed'",
    );
    const { rows: codes } = await owner.query<{ code_hash: string }>(
      'SELECT code_hash FROM packet_link WHERE code_hash IS NOT NULL',
    );
    await owner.end();
    expect(rows).toEqual([]);
    expect(codes.every(({ code_hash: hash }) => hash.startsWith('$argon2id$'))).toBe(true);
    expect(
      filesUnder('apps/api/sign-off').filter((file) =>
        /PRIVATE KEY|createSign|privateKey|generateKeyPair/.test(readFileSync(file, 'utf8')),
      ),
    ).toEqual([]);
  }, 60_000);

  test('requirement 35: a license expired, suspended, inactive or of another jurisdiction does not sign; a later lapse leaves the past alone', async () => {
    const request = await ask();
    const { visit } = (await open(await link(request))).body;
    const { code } = (await codeFrom('administrator', request)).body;
    const attempt = (license: object) =>
      sign(visit, answerOf(code, { license: { ...LICENSE, ...license } }));
    for (const license of [{ expires: '2020-01-01' }, { jurisdiction: 'MO' }]) {
      const refused = await attempt(license);
      expect([refused.status, refused.body.refusals?.[0]?.code]).toEqual([422, 'MOVE-14']);
    }
    const entered = await told.people.administrator.send<{ id: string }>('POST', '/licenses', {
      ...LICENSE,
      person: told.people.engineer.person.id,
      standing: 'suspended',
    });
    for (const standing of ['suspended', 'inactive'] as const) {
      await told.people.administrator.send('PUT', `/licenses/${entered.body.id}`, {
        ...LICENSE,
        person: told.people.engineer.person.id,
        standing,
      });
      const refused = await attempt({});
      expect(refused.body.refusals?.map(({ words }) => words)).toEqual([
        `License KS-00001 is ${standing} by the register of licenses.`,
      ]);
    }
    await told.people.administrator.send('PUT', `/licenses/${entered.body.id}`, {
      ...LICENSE,
      person: told.people.engineer.person.id,
      standing: 'active',
    });
    expect((await attempt({})).status).toBe(201);
    await told.people.administrator.send('PUT', `/licenses/${entered.body.id}`, {
      ...LICENSE,
      person: told.people.engineer.person.id,
      standing: 'suspended',
    });
    expect(signOff(await told.view())).toMatchObject({ status: 'confirmed', license: LICENSE });
    await told.people.administrator.send('PUT', `/licenses/${entered.body.id}`, {
      ...LICENSE,
      person: told.people.engineer.person.id,
      standing: 'active',
    });
  }, 90_000);

  test('requirement 36: a surface outside every scope counts as unsigned, whatever else is signed', async () => {
    const view = await told.play('office', {
      type: 'add-surface',
      id: 's2',
      building: 'b1',
      name: 'North',
      kind: 'roof',
    });
    expect(view.surfaces.map(({ id, sign_off }) => `${id} ${sign_off.status}`)).toEqual([
      's1 confirmed',
      's2 not-started',
    ]);
    const refused = await told.ask('office', BARN_ORDER);
    expect(refused.body.refusals?.some(({ words }) => words.includes('North'))).toBe(true);
    const { body } = await told.people.manager.get<{ spanning: { surface: { id: string } }[] }>(
      '/sign-offs',
    );
    expect(body.spanning.map(({ surface }) => surface.id)).not.toContain('s1');
    await told.play('office', {
      type: 'withdraw-surface',
      surface: 's2',
      reason: 'not to be roofed',
    });
  }, 60_000);

  test('requirement 37: revoked and superseded keep their history; a signature copied to another request does not hold', async () => {
    const before = (await told.view()).requests.length;
    const request = `r${requests}`;
    await told.play('engineer', { type: 'revoke-sign-off', request, reason: 'wrong chart' });
    const view = await told.view();
    expect(view.requests.find((each) => each.request === request)).toMatchObject({
      standing: 'revoked',
      words: 'wrong chart',
    });
    const { body } = await told.people.office.get<{ entries: { type: string }[] }>(
      `/jobs/${told.id}/history`,
    );
    expect(body.entries.map(({ type }) => type)).toEqual(
      expect.arrayContaining(['sign-off-approved/1', 'sign-off-revoked/1']),
    );
    const listed = await told.people.office.get<{
      papers: { paper: string; about: string; notices: { words: string }[] }[];
    }>(`/jobs/${told.id}/papers`);
    const packet = listed.body.papers.find(
      ({ paper, about }) => paper === 'engineer-packet' && about === request,
    );
    expect(packet?.notices.map(({ words }) => words)).toEqual([
      `The sign-off ${request} was revoked: wrong chart`,
    ]);
    const old = await told.people.engineer.get<{ digest: string }>(
      `/jobs/${told.id}/requests/${request}/packet`,
    );
    const next = await ask();
    const copied = await told.ask('engineer', {
      ...APPROVE,
      request: next,
      license: LICENSE,
      packet: old.body.digest,
    } as CommandInput);
    expect(copied.status).toBe(412);
    expect((await told.view()).requests.length).toBe(before + 1);
  }, 60_000);

  test('requirement 38: an engineer\'s sealed letter is "attached, not verified"; the packet on paper is preliminary and draws no seal', async () => {
    const view = await told.play('office', {
      type: 'record-engineer-design',
      design: 'd1',
      surfaces: ['s1'],
      license: LICENSE,
      documents: [await told.file('sealed-letter.pdf')],
      dated: '2026-03-01',
      scope: 'south roof',
      adopts: { words: 'as drawn' },
    });
    expect(signOff(view).standing).toBe('design received: attached, not verified in this system');
    const request = `r${requests}`;
    const { visit } = (await open(await link(request))).body;
    const response = await fetch(`${running.address}/api/packet/print.pdf`, {
      headers: { 'x-packet-visit': visit },
    });
    const bytes = Buffer.from(await response.arrayBuffer());
    expect(response.status).toBe(200);
    const kept = await told.people.office.get<{ data: { content: object } }>(
      `/jobs/${told.id}/papers/engineer-packet/${request}/record.json`,
    );
    expect(kept.body.data.content).toMatchObject({ document: 'engineer-packet', request });
    expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
  }, 60_000);

  testByPoppler('requirement 38: every page of that print says it is preliminary', async () => {
    const response = await fetch(
      `${running.address}/api/jobs/${told.id}/papers/engineer-packet/r1/print.pdf`,
      { headers: { cookie: told.people.office.cookie } },
    );
    const pages = pdfText(Buffer.from(await response.arrayBuffer()))
      .split('\f')
      .filter((page) => page.trim() !== '');
    expect(pages.length).toBeGreaterThan(1);
    expect(
      pages.filter(
        (page) =>
          !page.replace(/\s+/g, ' ').includes('preliminary: for review by a licensed engineer'),
      ),
    ).toEqual([]);
  });
});

function filesUnder(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((each) => each.isFile())
    .map((each) => path.join(each.parentPath, each.name));
}
