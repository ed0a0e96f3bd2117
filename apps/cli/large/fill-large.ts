// Fills a company of its own with some thousand invented jobs over nine simulated years. Interrupted,
// the next call goes on where it was; done once, it does nothing.

import { createHash } from 'node:crypto';
import { DEFAULT_POLICY, type Context } from '#jobs';
import type { FileRef } from '#jobs/contract';
import { RULE_BOOK } from '#rules';
import { Companies } from '../../api/data/companies.js';
import { digestOf, Ledgers, oneStream } from '../../api/data/ledgers.js';
import { Disposals } from '../../api/disposal/disposals.js';
import { numberStream } from '../../api/jobs/execute-on-job.js';
import { jobStream } from '../../api/jobs/job-stream.js';
import { CATALOGUE, RULEBOOK } from '../../api/rulebook/editions.js';
import type { Service } from '../../api/service.js';
import { Packets } from '../../api/sign-off/packets.js';
import { LAST_DAY } from './dice.js';
import { fillLicenses } from './licenses.js';
import { PAST_RULES, pastCatalogues } from './past-editions.js';
import { planned, type InventedDetails } from './plan.js';
import { RESTORED } from './restored.js';
import { isThere, LARGE, onDuty, STAFF } from './staff.js';
import { tell, type Said, type World } from './tell.js';

export interface LargeOptions {
  readonly jobs: number;
  readonly seed: number;
  /** One line now and then: how far it is. */
  readonly say: (line: string) => void;
}

const { company, name } = LARGE;
const DONE = 'demonstration-large';
const TOLD_AT_ONCE = 32;
const SAID_EVERY = 100;
const ERASED_EVERY = 60;
const ERASED_UP_TO = 900;

export async function fillLarge(
  service: Service,
  { jobs, seed, say }: LargeOptions,
): Promise<void> {
  const ledgers = service.get(Ledgers);
  await ledgers.ledger.createLog(company);
  if ((await ledgers.ledger.readStream(company, DONE)).length > 0) return;
  const world = await worldOf(service);
  await fillPeople(service);
  await fillLicenses(service);
  const paper = await keepPaper(service);
  let told = 0;
  for (let first = 0; first < jobs; first += TOLD_AT_ONCE) {
    const some = Array.from({ length: Math.min(TOLD_AT_ONCE, jobs - first) }, (_, i) =>
      planned(first + i, jobs, seed, paper),
    );
    await fillParties(
      service,
      some.flatMap(({ parties }) => parties),
    );
    await Promise.all(some.map(({ plan }) => tell(plan, world)));
    const before = told;
    told += some.length;
    if (Math.floor(told / SAID_EVERY) > Math.floor(before / SAID_EVERY) || told === jobs) {
      say(`${told} of ${jobs} invented jobs, ${(await ledgers.ledger.head(company)).pos} entries`);
    }
  }
  await eraseSome(service, { jobs, seed, paper });
  const by = { person: onDuty('standards', LAST_DAY, 0).id, role: 'administrator' };
  const data = {
    jobs,
    seed,
    invented: true,
    simulated: 'effectiveAt of every entry; recordedAt is when it was made',
    restored_backup: RESTORED.words,
  };
  await ledgers.append(
    oneStream({ company, by, commandId: DONE, asked: data }, DONE, 0, [
      { type: 'demonstration-filled/1', data },
    ]),
  );
  ledgers.lists.follow(company);
}

/** Of the oldest jobs' customers some asked to be forgotten; what stands in the log stays provable. */
async function eraseSome(
  service: Service,
  { jobs, seed, paper }: { readonly jobs: number; readonly seed: number; readonly paper: FileRef },
): Promise<void> {
  const acting = (post: 'standards' | 'reviewer') => {
    const { roles, ...person } = onDuty(post, LAST_DAY, 0);
    return { company: { id: company, name }, person, roles };
  };
  const disposals = service.get(Disposals);
  const { prisma } = service.get(Companies).of(company);
  for (let n = ERASED_EVERY - 1; n < Math.min(jobs, ERASED_UP_TO); n += ERASED_EVERY) {
    const { customer } = planned(n, jobs, seed, paper).plan;
    const where = { id: customer.id, erasedAt: null };
    if ((await prisma.party.count({ where })) === 0) continue;
    const before = [...(await disposals.standing(company)).requests.values()];
    const words = 'The customer asked for it (invented).';
    const request =
      before.find(({ party, withdrawn }) => party === customer.id && !withdrawn)?.id ??
      (await disposals.request(acting('standards'), customer.id, 'asked-by-the-person', words));
    await disposals.confirm(acting('reviewer'), request);
  }
}

async function fillPeople(service: Service): Promise<void> {
  const { prisma } = service.get(Companies).of(company);
  await prisma.company.createMany({ data: [{ id: company, name }], skipDuplicates: true });
  await prisma.person.createMany({
    data: STAFF.map((each) => ({
      companyId: company,
      id: each.id,
      name: each.name,
      email: each.email,
      roles: [...each.roles],
      active: isThere(each, LAST_DAY),
    })),
    skipDuplicates: true,
  });
}

async function fillParties(service: Service, parties: readonly InventedDetails[]): Promise<void> {
  await service
    .get(Companies)
    .of(company)
    .prisma.party.createMany({
      data: parties.map(({ id, kind, details, salt, commitment }) => ({
        companyId: company,
        id,
        version: 1,
        latest: true,
        kind,
        name: details.name,
        details,
        salt,
        commitment,
        createdBy: onDuty('office', LAST_DAY, 0).id,
      })),
      skipDuplicates: true,
    });
}

/** A text that stands for every photo, letter and supplier's term of these jobs. */
async function keepPaper(service: Service) {
  const bytes = new TextEncoder().encode(
    "Invented for the demonstration: stands for a photo, a letter or a supplier's text.\n",
  );
  const paper = { digest: createHash('sha256').update(bytes).digest('hex'), name: 'invented.txt' };
  await service
    .get(Companies)
    .of(company)
    .prisma.file.createMany({
      data: [
        {
          companyId: company,
          ...paper,
          type: 'text/plain',
          size: bytes.length,
          bytes,
          createdBy: onDuty('office', LAST_DAY, 0).id,
        },
      ],
      skipDuplicates: true,
    });
  return paper;
}

async function worldOf(service: Service): Promise<World> {
  const ledgers = service.get(Ledgers);
  const packets = service.get(Packets);
  const rules = PAST_RULES.map((edition) => ({ edition, digest: digestOf(edition) }));
  const catalogues = pastCatalogues().map((edition) => ({ edition, digest: digestOf(edition) }));
  await publish(ledgers, RULEBOOK, 'rules-edition-published/1', PAST_RULES);
  await publish(
    ledgers,
    CATALOGUE,
    'catalogue-edition-published/1',
    catalogues.map(({ edition }) => edition),
  );
  const context = (at: string): Omit<Context, 'by'> => {
    const rule = inForceOn(rules, at);
    const catalogue = inForceOn(catalogues, at);
    return {
      at,
      book: RULE_BOOK,
      policy: DEFAULT_POLICY,
      edition: rule.edition,
      editionDigest: rule.digest,
      catalogue: catalogue.edition,
      catalogueDigest: catalogue.digest,
    };
  };
  return {
    contextAt: (at, by) => ({ ...context(at), by: { person: by.id, roles: by.roles } }),
    append: (said) => append(ledgers, said),
    packet: async (job, request) => {
      const packet = await packets.find(company, job, request);
      if (!packet) throw new Error(`job ${job} has no request ${request}`);
      return packet.digest;
    },
  };
}

function inForceOn<T extends { readonly edition: { readonly in_force_from: string } }>(
  editions: readonly T[],
  at: string,
): T {
  const found = editions.filter(({ edition }) => edition.in_force_from <= at).at(-1);
  if (!found) throw new Error(`nothing is in force on ${at}`);
  return found;
}

async function publish(
  ledgers: Ledgers,
  stream: string,
  type: string,
  editions: readonly { readonly in_force_from: string }[],
): Promise<void> {
  const by = { person: onDuty('standards', LAST_DAY, 0).id, role: 'standards-manager' };
  const events = editions.map((edition) => ({
    type,
    data: { edition, reason: 'Part of the invented history.' },
    effectiveAt: `${edition.in_force_from}T08:00:00.000000Z`,
  }));
  const result = await ledgers.append(
    oneStream({ company, by, commandId: `large-${stream}`, asked: { stream } }, stream, 0, events),
  );
  if (result.kind !== 'appended' && result.kind !== 'repeated')
    throw new Error(`the ${stream} cannot be published: ${result.kind}`);
}

async function append(
  ledgers: Ledgers,
  { job, number, turn, command, by, role, at, events }: Said,
): Promise<void> {
  const opened = command.type === 'open-job';
  const taken = {
    stream: numberStream(number),
    expectedVersion: 0,
    events: [{ type: 'job-number-taken/1', data: { job: job.id }, effectiveAt: at }],
  };
  const result = await ledgers.append({
    log: company,
    by: { person: by.id, role },
    command: { id: `large-${job.id}-${turn}`, digest: digestOf(command) },
    streams: [
      {
        stream: jobStream(job.id),
        expectedVersion: job.version,
        events: events.map(({ type, data }) => ({ type, data, effectiveAt: at })),
      },
      ...(opened ? [taken] : []),
    ],
  });
  if (result.kind === 'appended' || result.kind === 'repeated') return;
  throw new Error(`${number} cannot be recorded at step ${turn}: ${result.kind}`);
}
