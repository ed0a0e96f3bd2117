// Requirement 20: retention and legal hold are enforced; disposal is an entry and needs two people.

import { beforeAll, beforeEach, describe, expect, test } from '@jest/globals';
import { newClient } from '#ledger';
import { Ledgers } from '../../apps/api/data/ledgers.js';
import { company, signInByLink, withService, type Client } from '../service.js';
import { erase, openJob, type Told } from '../stories/ordered.js';

const running = withService();
let told: Told;
let third: Client;
let alone: Client;

interface Standing {
  readonly administrators: number;
  readonly holds: readonly { id: string; on: { name: string }; released: object | null }[];
  readonly erasures: readonly { id: string; state: string; party: { name: string } }[];
  readonly retention: readonly { kind: string; years: number | null; words: string }[];
}
interface Problem {
  readonly detail: string;
}

beforeAll(async () => {
  told = await openJob(running, 'house');
  const added = await told.people.administrator.send<{ link: string }>('POST', '/users', {
    name: 'Third',
    email: 'third@disposal.example',
    roles: ['administrator'],
  });
  third = await signInByLink(running.address, added.body.link);
  alone = (await company(running, 'One of us', { one: ['administrator', 'office'] })).one;
}, 60_000);

const someone = async (by: Client = told.people.office, kind = 'person') =>
  (await by.send<{ id: string }>('POST', '/parties', { kind, details: { name: 'Sam Sample' } }))
    .body.id;
const ask = (
  party: string,
  by: Client = told.people.administrator,
  ground = 'asked-by-the-person',
) =>
  by.send<{ id: string } & Problem>('POST', '/disposal/erasures', {
    party,
    ground,
    reason: 'a letter',
  });
const confirm = (id: string, by: Client) =>
  by.send<Problem>('POST', `/disposal/erasures/${id}/confirmation`);
const hold = (on: object, why = 'dispute over the valley') =>
  told.people.second.send<{ id: string } & Problem>('POST', '/disposal/holds', { on, why });
const release = (id: string) =>
  told.people.administrator.send('POST', `/disposal/holds/${id}/release`, { why: 'settled' });
const keep = (kind: string, years: number | null) =>
  told.people.administrator.send('PUT', `/disposal/retention/${kind}`, { years });
const standing = async (by: Client = told.people.administrator) =>
  (await by.get<Standing>('/disposal')).body;
const isThere = async (id: string, by: Client = told.people.office) =>
  (await by.get<{ parties: { details?: object }[] }>(`/parties?ids=${id}`)).body.parties[0]
    ?.details !== undefined;
const entries = async (stream = 'office/disposal') =>
  running.service.get(Ledgers).ledger.readStream(told.company, stream);

describe('requirement 20: disposal needs two people, and each act is an entry', () => {
  let party: string;
  beforeEach(async () => {
    party = await someone();
  });

  test('asked by one, confirmed by another; both are named by entries', async () => {
    const { status, body } = await ask(party);
    expect(status).toBe(201);
    expect(await isThere(party)).toBe(true);
    expect((await confirm(body.id, told.people.second)).status).toBe(204);
    expect(await isThere(party)).toBe(false);
    expect((await entries()).slice(-2)).toMatchObject([
      {
        type: 'erasure-requested/1',
        by: { person: told.people.administrator.person.id, role: 'administrator' },
        data: { request: body.id, party, ground: 'asked-by-the-person' },
      },
      {
        type: 'erasure-confirmed/1',
        by: { person: told.people.second.person.id, role: 'administrator' },
        data: { request: body.id, party },
      },
    ]);
    expect(JSON.stringify(await entries())).not.toContain('a letter');
    expect((await standing()).erasures[0]).toMatchObject({ id: body.id, state: 'done' });
    expect((await confirm(body.id, third)).status).toBe(409);
    expect((await ask(party)).status).toBe(404);
  });

  test('who asked does not confirm, however often; others than administrators do neither', async () => {
    const { body } = await ask(party);
    for (let time = 0; time < 2; time++) {
      const own = await confirm(body.id, told.people.administrator);
      expect([own.status, own.body.detail]).toEqual([
        403,
        expect.stringMatching(/another administrator/),
      ]);
    }
    expect((await confirm(body.id, told.people.office)).status).toBe(403);
    expect((await ask(party, told.people.reviewer)).status).toBe(403);
    expect(await isThere(party)).toBe(true);
  });

  test('asked twice is one request; withdrawn, it cannot be confirmed, and can be asked anew', async () => {
    const [one, two] = await Promise.all([ask(party), ask(party, told.people.second)]);
    expect([one.status, two.status].sort()).toEqual([201, 409]);
    const { id } = one.status === 201 ? one.body : two.body;
    const withdrawn = await told.people.second.send('POST', `/disposal/erasures/${id}/withdrawal`, {
      why: 'asked in error',
    });
    expect(withdrawn.status).toBe(204);
    expect((await confirm(id, third)).status).toBe(409);
    expect(await isThere(party)).toBe(true);
    expect((await entries()).at(-1)).toMatchObject({
      type: 'erasure-withdrawn/1',
      data: { request: id, why: 'asked in error' },
    });
    expect((await ask(party)).status).toBe(201);
  });

  test('two confirmations at once do it once', async () => {
    const { body } = await ask(party);
    const both = await Promise.all([confirm(body.id, told.people.second), confirm(body.id, third)]);
    const statuses = both.map(({ status }) => status);
    expect(statuses).toContain(204);
    for (const status of statuses) expect([204, 409]).toContain(status);
    const confirmed = (await entries()).filter(
      ({ type, data }) =>
        type === 'erasure-confirmed/1' && (data as { party: string }).party === party,
    );
    expect(confirmed).toHaveLength(1);
    expect(await entries(`party/${party}`)).toHaveLength(1);
    expect(await isThere(party)).toBe(false);
  });

  test('what was confirmed and not carried out, because the service died, is completed', async () => {
    const { body } = await ask(party);
    const { ledger } = running.service.get(Ledgers);
    await ledger.append({
      log: told.company,
      by: { person: told.people.second.person.id, role: 'administrator' },
      command: { id: `died ${party}`, digest: '00'.repeat(32) },
      streams: [
        {
          stream: 'office/disposal',
          expectedVersion: (await entries()).length,
          events: [{ type: 'erasure-confirmed/1', data: { request: body.id, party } }],
        },
      ],
    });
    expect((await standing()).erasures[0]).toMatchObject({ id: body.id, state: 'confirmed' });
    expect((await confirm(body.id, third)).status).toBe(204);
    expect(await isThere(party)).toBe(false);
    expect((await standing()).erasures[0]).toMatchObject({ id: body.id, state: 'done' });
  });

  test('an office with one administrator is told so', async () => {
    const mine = await someone(alone);
    expect((await standing(alone)).administrators).toBe(1);
    const asked = await ask(mine, alone);
    const own = await confirm(asked.body.id, alone);
    expect([own.status, own.body.detail]).toEqual([
      403,
      expect.stringMatching(/there is no other administrator: add one under People/),
    ]);
    expect(await isThere(mine, alone)).toBe(true);
  });
});

describe('requirement 20: a legal hold keeps from erasure whom it covers', () => {
  test('on a person: asking and confirming are refused by its words, until it is released', async () => {
    const party = await someone();
    const before = (await ask(party)).body.id;
    const { body } = await hold({ kind: 'party', id: party });
    const refusal = expect.stringContaining('dispute over the valley');
    expect(await confirm(before, told.people.second)).toMatchObject({
      status: 409,
      body: { detail: refusal },
    });
    expect(await isThere(party)).toBe(true);
    expect((await hold({ kind: 'party', id: party })).status).toBe(409);
    expect((await release(body.id)).status).toBe(204);
    expect((await release(body.id)).status).toBe(409);
    expect((await entries()).slice(-2).map(({ type }) => type)).toEqual([
      'hold-placed/1',
      'hold-released/1',
    ]);
    expect((await confirm(before, told.people.second)).status).toBe(204);
  });

  test('on a job: nobody whom its record names is erased, the law asking or not', async () => {
    const { body } = await hold({ kind: 'job', id: told.id });
    for (const party of [told.customer, told.site]) {
      for (const ground of ['asked-by-the-person', 'asked-by-law', 'no-longer-needed']) {
        const asked = await ask(party, told.people.administrator, ground);
        expect([asked.status, asked.body.detail]).toEqual([
          409,
          expect.stringContaining(`on a job that names them`),
        ]);
        expect(asked.body.detail).toContain(body.id);
      }
    }
    const { number } = await told.view();
    expect((await standing()).holds[0]).toMatchObject({ on: { name: number }, released: null });
    const other = await someone();
    expect(await erase(told, other)).toBe(204);
    await release(body.id);
    expect(await erase(told, told.site)).toBe(204);
  });

  test('placed at the same moment as a confirmation, one of the two is first and stands', async () => {
    for (let round = 0; round < 5; round++) {
      const party = await someone();
      const asked = await ask(party);
      const [confirmed, placed] = await Promise.all([
        confirm(asked.body.id, told.people.second),
        hold({ kind: 'party', id: party }, `round ${round}`),
      ]);
      const last = (await entries()).slice(-2).map(({ type }) => type);
      const erased = confirmed.status === 204;
      expect(await isThere(party)).toBe(!erased);
      if (!erased) expect([placed.status, last.at(-1)]).toEqual([201, 'hold-placed/1']);
      else if (placed.status === 201)
        expect(last).toEqual(['erasure-confirmed/1', 'hold-placed/1']);
    }
  });

  test('only on what is there', async () => {
    const nowhere = '00000000-0000-7000-8000-00000000dead';
    expect((await hold({ kind: 'job', id: nowhere })).status).toBe(404);
    expect((await hold({ kind: 'party', id: nowhere })).status).toBe(404);
    expect((await release(nowhere)).status).toBe(404);
  });
});

describe('requirement 20: a retention period', () => {
  test('is none unless the office sets one, and is an entry once set', async () => {
    expect((await standing()).retention).toMatchObject([
      { kind: 'person', years: null, words: expect.stringContaining('the default') },
      { kind: 'site', years: null },
    ]);
    expect((await keep('person', 6)).status).toBe(204);
    expect((await entries()).at(-1)).toMatchObject({
      type: 'retention-set/1',
      data: { kind: 'person', years: 6 },
    });
    expect((await keep('person', 0)).status).toBe(422);
    expect((await keep('person', 1.5)).status).toBe(422);
  });

  test('keeps from erasure until it has ended, unless the law asks for it', async () => {
    const party = await someone();
    const refused = await ask(party);
    const end = new Date().getUTCFullYear() + 6;
    expect([refused.status, refused.body.detail]).toEqual([
      409,
      expect.stringMatching(new RegExp(`for 6 years after the last entry .* until ${end}-`)),
    ]);
    const site = await someone(told.people.office, 'site');
    expect(await erase(told, site)).toBe(204);
    const byLaw = await ask(party, told.people.administrator, 'asked-by-law');
    expect(byLaw.status).toBe(201);
    expect((await confirm(byLaw.body.id, told.people.second)).status).toBe(204);
    expect((await keep('person', null)).status).toBe(204);
  });

  test('has ended where the last entry about them is older', async () => {
    const party = await someone();
    await keep('person', 1);
    const owner = newClient({ connectionString: running.database.ownerUrl });
    await owner.connect();
    const aged = (days: number) =>
      owner.query(
        `UPDATE party SET created_at = now() - interval '1 year' - make_interval(days => $2)
         WHERE id = $1`,
        [party, days],
      );
    await aged(-2);
    expect((await ask(party)).status).toBe(409);
    await aged(2);
    const asked = await ask(party);
    await owner.end();
    expect(asked.status).toBe(201);
    expect((await confirm(asked.body.id, told.people.second)).status).toBe(204);
    await keep('person', null);
  });

  test('set after an erasure was asked, keeps from its confirmation', async () => {
    const party = await someone();
    const { body } = await ask(party);
    await keep('person', 1);
    expect((await confirm(body.id, told.people.second)).status).toBe(409);
    await keep('person', null);
    expect((await confirm(body.id, told.people.second)).status).toBe(204);
  });
});
