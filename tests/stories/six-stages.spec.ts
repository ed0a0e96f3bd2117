// One job from the first call through its six stages, over HTTP and PostgreSQL, by the people who
// would do it, with the refusals they would meet on the way.

import { beforeAll, describe, expect, test } from '@jest/globals';
import type { CommandInput, JobView, Rehearsal } from '#jobs/contract';
import { SignInLinks } from '../../apps/api/people/sign-in-links.js';
import { fillDemonstration } from '../../apps/cli/demonstration.js';
import {
  CREW,
  DEMONSTRATION,
  ENGINEER,
  MANAGER,
  OFFICE,
  REVIEWER,
} from '../../apps/cli/demonstration/people.js';
import { amount, facts, spaced, zone } from '../../apps/cli/demonstration/steps.js';
import { giveFactors } from '../signing.js';
import { signInByLink, withService, type Answer, type Client } from '../service.js';
import { erase } from './ordered.js';

const running = withService();
const people = {} as Record<'office' | 'manager' | 'crew' | 'engineer' | 'reviewer', Client>;
let job = '';
let version = 0;

interface ProblemBody {
  readonly status: number;
  readonly refusals?: readonly {
    readonly code: string;
    readonly kind: string;
    readonly words: string;
  }[];
  readonly since?: readonly { readonly words: string; readonly surfaces: readonly string[] }[];
  readonly faults?: readonly { readonly pointer: string }[];
}

beforeAll(async () => {
  await fillDemonstration(running.service);
  const links = running.service.get(SignInLinks);
  for (const [key, { id }] of Object.entries({
    office: OFFICE,
    manager: MANAGER,
    crew: CREW,
    engineer: ENGINEER,
    reviewer: REVIEWER,
  })) {
    people[key as keyof typeof people] = await signInByLink(
      running.address,
      await links.make(DEMONSTRATION.company, id),
    );
  }
}, 60_000);

async function says<T = JobView>(
  who: keyof typeof people,
  command: CommandInput,
  seen = version,
  key?: string,
): Promise<Answer<T>> {
  if (who === 'engineer') await giveFactors(people.engineer, people.manager);
  const answer = await people[who].send<T>('POST', `/jobs/${job}/commands`, command, {
    'if-match': `"${seen}"`,
    ...(key === undefined ? {} : { 'idempotency-key': key }),
  });
  if (answer.status === 200) version = (answer.body as JobView).version;
  return answer;
}

async function done(who: keyof typeof people, command: CommandInput): Promise<JobView> {
  const { status, body } = await says(who, command);
  if (status !== 200) throw new Error(`${command.type}: ${JSON.stringify(body)}`);
  return body;
}

const codes = ({ body }: Answer<ProblemBody>) => body.refusals?.map(({ code }) => code);
const surfaceOf = (view: JobView) => view.surfaces[0];

const hazards: Extract<CommandInput, { type: 'assess-hazards' }> = {
  type: 'assess-hazards',
  surface: 'roof',
  hazards: {
    wind: {
      method: 'entered',
      basis: 'strength',
      by_engineer: false,
      source: { document: 'County table (invented)', date: '2026-11-02' },
      zones: [
        zone('1', 'roof', '16', '-24'),
        zone('2', 'roof', '16', '-38'),
        zone('3', 'roof', '16', '-55'),
      ],
    },
    snow: {
      method: 'entered',
      basis: 'ASD',
      by_engineer: false,
      roof: amount(18, 'psf'),
      source: { document: 'County letter (invented)', date: '2026-11-02' },
    },
  },
};
const gauge: Extract<CommandInput, { type: 'select-gauge' }> = {
  type: 'select-gauge',
  surface: 'roof',
  option: 'steel-0.0179-ss-80',
  attachment: {
    fastener: 'screw-wood-10',
    zones: [spaced('1', '9'), spaced('2', '9'), spaced('3', '6')],
  },
};

describe('the first call', () => {
  test('the office opens the job; it stands in the list at once', async () => {
    const { office } = people;
    const party = async (kind: string, name: string) =>
      (await office.send<{ id: string }>('POST', '/parties', { kind, details: { name } })).body.id;
    const opened = await office.send<JobView>('POST', '/jobs', {
      name: 'Machine shed',
      jurisdiction: 'OH',
      priorities: ['value'],
      due: '2026-12-20',
      site: { id: await party('site', 'Shed at Long Lane') },
      parties: { customer: { id: await party('person', 'Long Lane Farm') } },
      buildings: [{ id: 'shed', name: 'Shed' }],
      surfaces: [{ id: 'roof', building: 'shed', name: 'Shed roof', kind: 'roof' }],
    });
    expect(opened.status).toBe(201);
    expect(opened.body.number).toMatch(/^2026-\d{4}$/);
    ({ id: job, version } = opened.body);
    const list = await office.get<{ rows: { id: string; stage_words: string }[] }>(
      '/jobs?find=long%20lane',
    );
    expect(list.body.rows).toMatchObject([{ id: job, stage_words: '1/6 Style' }]);
  });

  test('a number in use is refused', async () => {
    const answer = await people.office.send('POST', '/jobs', {
      number: '2026-0101',
      name: 'x',
      site: { id: '00000000-0000-7000-8000-000000000101' },
      parties: { customer: { id: '00000000-0000-7000-8000-000000000102' } },
    });
    expect(answer.status).toBe(409);
  });

  test('facts come in as they are told', async () => {
    await done('office', {
      type: 'record-facts',
      facts: [
        ...facts(
          null,
          'told',
          undefined,
          ['exposure', 'C'],
          ['water', 'none'],
          ['animals-or-fertilizer', false],
          ['corrosivity', 'C2'],
        ),
        ...facts(
          'shed',
          'told',
          undefined,
          ['enclosure', 'enclosed'],
          ['any-side-open', false],
          ['doors-open-in-storms', false],
          ['inside-air', 'unheated'],
          ['risk-category', 'I'],
        ),
        ...facts(
          'roof',
          'told',
          undefined,
          ['slope', amount(4, 'per-12')],
          ['reroof', false],
          ['substrate', 'purlins'],
          ['support-spacings', [{ v: '24' }]],
        ),
        ...facts(
          'roof',
          'document',
          'Proposal (invented)',
          ['copper-or-lead-above', false],
          ['masonry-after-panels', false],
          ['fastener-metal', 'stainless'],
        ),
      ],
    });
  });
});

describe('the stages', () => {
  test('come in order: the gauge first is refused with every missing stage', async () => {
    const answer = await says<ProblemBody>('office', gauge);
    expect(answer.status).toBe(409);
    expect(new Set(codes(answer))).toContain('MOVE-01');
  });

  test('a role that may not do it is told so', async () => {
    const answer = await says<ProblemBody>('crew', {
      type: 'choose-style',
      surface: 'roof',
      profile: 'rib-36',
      width: amount(36, 'in'),
    });
    expect(answer.status).toBe(403);
    expect(codes(answer)).toEqual(['MOVE-04']);
  });

  test('style, coating and hazards are confirmed', async () => {
    await done('office', {
      type: 'choose-style',
      surface: 'roof',
      profile: 'rib-36',
      width: amount(36, 'in'),
    });
    await done('office', {
      type: 'choose-coating',
      surface: 'roof',
      metal: 'steel',
      metallic_coating: 'AZ50',
      paint_system: 'SMP',
      color_group: 'earth-tone',
    });
    const view = await done('office', hazards);
    expect(surfaceOf(view)).toMatchObject({ stage: 'substrate' });
  });

  test('a substrate that was only told is refused by rule; measured it stands', async () => {
    const told = await says<ProblemBody>('office', { type: 'confirm-substrate', surface: 'roof' });
    expect(told.status).toBe(422);
    expect(codes(told)).toEqual(expect.arrayContaining(['SUB-01', 'SUB-03']));
    await done('crew', {
      type: 'record-facts',
      facts: facts(
        'roof',
        'measured',
        undefined,
        ['substrate', 'purlins'],
        ['support-spacings', [{ v: '24' }, { v: '24.25' }]],
        ['wood-specific-gravity', amount('0.42', 'G')],
        ['fastener-bite', amount('1.25', 'in')],
        ['condensation-control', 'absorbing-fleece'],
        ['underlayment', 'none'],
        ['longest-piece', amount(22, 'ft')],
        ['framing-sound', true],
        ['treated-lumber-contact', 'none'],
      ),
    });
    const view = await done('office', { type: 'confirm-substrate', surface: 'roof' });
    expect(surfaceOf(view)).toMatchObject({ stage: 'gauge' });
  });

  test('a rehearsal compares every option and records nothing', async () => {
    const { body } = await people.office.send<Rehearsal>('POST', `/jobs/${job}/rehearsals`, gauge);
    expect(body.evaluation?.options.map(({ gauge: label }) => label)).toEqual(['24', '26', '29']);
    for (const option of body.evaluation?.options ?? [])
      expect(option.zones.map((each) => each.zone)).toEqual(['1', '2', '3']);
    expect((await people.office.get(`/jobs/${job}`)).headers.get('etag')).toBe(`"${version}"`);
  });

  test('the gauge is selected, once, however often it is sent under its key', async () => {
    const seen = version;
    const first = await says('office', gauge, seen, 'gauge-1');
    expect(first.status).toBe(200);
    const again = await says('office', gauge, seen, 'gauge-1');
    expect({ status: again.status, version: again.body.version }).toEqual({
      status: 200,
      version: first.body.version,
    });
    const other = await says<ProblemBody>(
      'office',
      { ...gauge, option: 'steel-0.0239-ss-50-class-1' },
      seen,
      'gauge-1',
    );
    expect(other.status).toBe(409);
  });
});

describe('the engineer', () => {
  test('sees and touches no job that was not sent to them', async () => {
    for (const path of ['', '/history', '/decision-record', '/decision-record.pdf']) {
      expect((await people.engineer.get(`/jobs/${job}${path}`)).status).toBe(403);
    }
    expect((await says('engineer', { type: 'add-note', about: null, words: 'x' })).status).toBe(
      403,
    );
    expect((await people.engineer.get('/jobs')).status).toBe(403);
  });

  test('is asked by the project manager, and sees exactly the frozen packet', async () => {
    const view = await done('manager', {
      type: 'request-sign-off',
      request: 'r1',
      surfaces: ['roof'],
      engineer: { id: ENGINEER.id },
      scope: 'Panels and screws.',
      expires: '2027-06-30',
    });
    expect(surfaceOf(view)?.sign_off.status).toBe('waiting');
    const queue = await people.engineer.get<{
      requests: { job: string; request: string }[];
      spanning: unknown[];
    }>('/sign-offs');
    expect(queue.body.requests).toMatchObject([{ job, request: 'r1' }]);
    expect(queue.body.spanning).toEqual([]);
    const spanning = await people.manager.get<{ spanning: { job: string }[] }>('/sign-offs');
    expect(spanning.body.spanning.map((each) => each.job)).toContain(job);
  });

  test('cannot answer another packet, nor with an expired license', async () => {
    const answer = await says<ProblemBody>('engineer', {
      type: 'answer-sign-off',
      request: 'r1',
      answer: 'approve',
      statement: 'Approved.',
      packet: '0'.repeat(64),
      license: { name: 'Edda', number: 'EX-1', jurisdiction: 'MI', expires: '2025-01-01' },
    });
    expect(answer.status).toBe(412);
    expect(codes(answer)).toEqual(expect.arrayContaining(['MOVE-14', 'MOVE-16']));
  });

  test('approves; the job is ready to order', async () => {
    const packet = await people.engineer.get<{ digest: string }>(`/jobs/${job}/requests/r1/packet`);
    const view = await done('engineer', {
      type: 'answer-sign-off',
      request: 'r1',
      answer: 'approve',
      statement: 'Approved as listed.',
      packet: packet.body.digest,
      license: {
        name: 'Edda (invented)',
        number: 'EX-00001',
        jurisdiction: 'OH',
        expires: '2028-12-31',
      },
    });
    expect(view.stage).toBe('done');
    expect(surfaceOf(view)?.sign_off.status).toBe('confirmed');
  });
});

describe('afterwards', () => {
  let before = '';

  test('a change somebody did not see is not overwritten: 412 with who changed what', async () => {
    before = new Date().toISOString();
    const seen = version;
    await done('crew', {
      type: 'record-facts',
      reason: 'measured again',
      facts: facts('roof', 'measured', undefined, ['support-spacings', [{ v: '30' }]]),
    });
    const answer = await says<ProblemBody>('office', { ...gauge, reason: 'again' }, seen);
    expect(answer.status).toBe(412);
    expect(answer.body.since).toMatchObject([{ by: CREW.id, surfaces: ['roof'] }]);
    const stale = await says<ProblemBody>('office', gauge, version + 5);
    expect(stale.status).toBe(412);
  });

  test('what read the changed spacing needs a re-check, and the sign-off with it', async () => {
    const view = (await people.office.get<JobView>(`/jobs/${job}`)).body;
    expect(surfaceOf(view)?.stages).toMatchObject({
      style: { status: 'confirmed' },
      substrate: { status: 'needs-recheck' },
      gauge: { status: 'needs-recheck' },
    });
    expect(surfaceOf(view)?.sign_off.status).toBe('needs-recheck');
  });

  test('as of before, everything stands as it stood', async () => {
    const { body } = await people.reviewer.get<JobView>(`/jobs/${job}?asOf=${before}`);
    expect(body.stage).toBe('done');
  });

  test('the decision record says why, as JSON and on paper', async () => {
    const record = await people.reviewer.get<{ surfaces: { why: string[]; gauge: object }[] }>(
      `/jobs/${job}/decision-record?asOf=${before}`,
    );
    expect(record.body.surfaces[0]?.why.length).toBeGreaterThan(2);
    const paper = await fetch(
      `${running.address}/api/jobs/${job}/decision-record.pdf?asOf=${before}`,
      { headers: { cookie: people.reviewer.cookie } },
    );
    expect(paper.headers.get('content-type')).toBe('application/pdf');
    expect(
      Buffer.from(await paper.arrayBuffer())
        .subarray(0, 5)
        .toString(),
    ).toBe('%PDF-');
  }, 60_000);

  test('the history names every entry with person, role and words', async () => {
    const { body } = await people.reviewer.get<{
      entries: { version: number; by: object; words: string }[];
    }>(`/jobs/${job}/history`);
    expect(body.entries.map((each) => each.version)).toEqual(
      Array.from({ length: version }, (_, i) => i + 1),
    );
    expect(body.entries.at(-1)).toMatchObject({ by: { name: 'Cora', role: 'crew-lead' } });
  });

  test('erasing the customer leaves the record readable and says so', async () => {
    const view = (await people.office.get<JobView>(`/jobs/${job}`)).body;
    const adam = await signInByLink(
      running.address,
      await running.service
        .get(SignInLinks)
        .make(DEMONSTRATION.company, '00000000-0000-7000-8000-000000000007'),
    );
    const added = await adam.send<{ link: string }>('POST', '/users', {
      name: 'Second',
      email: 'second@demonstration.example',
      roles: ['administrator'],
    });
    const second = await signInByLink(running.address, added.body.link);
    expect(
      await erase({ people: { administrator: adam, second } }, view.parties['customer'] ?? ''),
    ).toBe(204);
    const list = await people.office.get<{ rows: { customer: string }[] }>(
      `/jobs?find=${view.number}`,
    );
    expect(list.body.rows).toMatchObject([{ customer: 'details erased' }]);
    expect((await people.office.get(`/jobs/${job}`)).status).toBe(200);
  });
});
