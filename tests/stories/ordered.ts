// A house roof decided and ordered over HTTP, for the stories that go on from there; all data invented.

import type { Command, CommandInput, FactEntry, JobView } from '#jobs/contract';
import { file as fileNamed, ORDER, PAPERS } from '../../libs/jobs/after-order/order-files.js';
import { BARN, HOUSE } from '../../libs/jobs/job-files.js';
import { SAMPLE_CATALOGUE } from '../../libs/jobs/sample.table.js';
import { giveFactors } from '../signing.js';
import { company, type Answer, type Client, type Running } from '../service.js';

const ROLES = {
  office: ['office'],
  manager: ['project-manager'],
  administrator: ['administrator'],
  second: ['administrator'],
  standards: ['standards-manager'],
  crew: ['crew-lead'],
  engineer: ['engineer'],
  reviewer: ['warranty-reviewer'],
} as const;
type Who = keyof typeof ROLES;
/** As the service takes it: ids in lower case, and sources say where they come from. */
export const CATALOGUE = {
  ...SAMPLE_CATALOGUE,
  charts: SAMPLE_CATALOGUE.charts.map((each) => ({ ...each, id: each.id.toLowerCase() })),
};

export interface Told {
  readonly id: string;
  readonly company: string;
  readonly people: Readonly<Record<Who, Client>>;
  readonly customer: string;
  readonly site: string;
  /** At the newest version; cautions that it meets are acknowledged. Throws with every refusal. */
  play(who: Who, command: CommandInput): Promise<JobView>;
  /** As it is answered, refusals too. */
  ask(who: Who, command: CommandInput): Promise<Answer<Problem>>;
  view(): Promise<JobView>;
  /** Stores a file and gives its reference. */
  file(name: string, bytes?: string): Promise<{ digest: string; name: string }>;
}
export interface Problem {
  readonly status: number;
  readonly detail?: string;
  readonly refusals?: readonly { readonly code: string; readonly words: string }[];
}

/** A company of its own with the sample catalogue, and a job of one of the two files, its facts recorded. */
export async function openJob(running: Running, which: 'barn' | 'house'): Promise<Told> {
  const { id: companyId, ...people } = await company(
    running,
    'Ridge and Valley Roofing (invented)',
    ROLES,
  );
  const published = await people.standards.send('POST', '/catalogue/editions', {
    catalogue: CATALOGUE,
    reason: 'first',
  });
  if (published.status !== 201) throw new Error(JSON.stringify(published.body));
  const party = async (kind: string, details: object) =>
    (await people.office.send<{ id: string }>('POST', '/parties', { kind, details })).body.id;
  const customer = await party('person', { name: 'Robin Sample', email: 'robin@owner.example' });
  const site = await party('site', {
    name: 'House on the ridge',
    address: '12 County Road, Anytown KS',
  });
  const { type: _, ...open } = (which === 'barn' ? BARN : HOUSE).open as Extract<
    Command,
    { type: 'open-job' }
  >;
  const opened = await people.office.send<JobView>('POST', '/jobs', {
    ...open,
    site: { id: site },
    parties: { customer: { id: customer } },
  });
  if (opened.status !== 201) throw new Error(JSON.stringify(opened.body));
  const { id } = opened.body;
  const send = async (who: Who, command: CommandInput) => {
    const { headers } = await people.office.get(`/jobs/${id}`);
    if (who === 'engineer') await giveFactors(people.engineer, people.administrator);
    return people[who].send<JobView & Problem>('POST', `/jobs/${id}/commands`, command, {
      'if-match': headers.get('etag') ?? '',
    });
  };
  const play: Told['play'] = async (who, command) => {
    const first = await send(who, command);
    const cautions = (first.body.refusals ?? [])
      .filter(({ code }) => code === 'MOVE-05')
      .map(({ words }) => words.split(' ')[0] ?? '');
    const answer =
      first.status === 200 || cautions.length === 0
        ? first
        : await send(who, { ...command, acknowledges: cautions } as CommandInput);
    if (answer.status !== 200)
      throw new Error(`${command.type}: ${answer.body.detail ?? JSON.stringify(answer.body)}`);
    return answer.body;
  };
  const told: Told = {
    id,
    company: companyId,
    people,
    customer,
    site,
    play,
    ask: send,
    view: async () => (await people.office.get<JobView>(`/jobs/${id}`)).body,
    file: async (name, bytes = `${name}, invented`) => {
      const stored = await people.office.send<{ digest: string }>('POST', '/files', bytes, {
        'content-type': 'application/octet-stream',
        'x-file-name': name,
      });
      return { ...fileNamed(name), digest: stored.body.digest };
    },
  };
  await told.play('office', (which === 'barn' ? BARN : HOUSE).facts);
  await told.play(
    'crew',
    which === 'barn'
      ? { ...LOOKED_AT, facts: [...LOOKED_AT.facts, seen('s1', 'reroof', false)] }
      : LOOKED_AT,
  );
  return told;
}

const seen = (
  on: string | null,
  fact: FactEntry['fact'],
  value: FactEntry['value'],
): FactEntry => ({ on, fact, value, how: 'measured' });
/** What the full rulebook asks besides the job files. */
const LOOKED_AT = {
  type: 'record-facts',
  facts: [
    seen('s1', 'copper-or-lead-above', false),
    seen('s1', 'masonry-after-panels', false),
    seen('s1', 'reglet-bare-in-wet-mortar', false),
    seen('s1', 'treated-lumber-contact', 'none'),
    seen(null, 'animals-or-fertilizer', false),
    seen(null, 'exposure', 'C'),
  ],
} satisfies CommandInput;

const STAGES = ['style', 'coating', 'hazards', 'substrate', 'gauge'] as const;

/** Through the five stages; a barn then needs an engineer. */
export async function decide(told: Told, which: 'barn' | 'house'): Promise<void> {
  for (const stage of STAGES) await told.play('manager', (which === 'barn' ? BARN : HOUSE)[stage]);
}

export async function order(told: Told): Promise<JobView> {
  await told.play('office', PAPERS);
  return told.play('office', ORDER);
}

/** Asked by one administrator, confirmed by another. Gives the status of the confirmation. */
export async function erase(
  { people }: { readonly people: Pick<Told['people'], 'administrator' | 'second'> },
  party: string,
): Promise<number> {
  const asked = await people.administrator.send<{ id: string }>('POST', '/disposal/erasures', {
    party,
    ground: 'asked-by-the-person',
    reason: 'asked by the owner',
  });
  if (asked.status !== 201) return asked.status;
  return (await people.second.send('POST', `/disposal/erasures/${asked.body.id}/confirmation`))
    .status;
}
