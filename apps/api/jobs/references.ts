// What a command names outside the job: parties, engineers and files must be the company's own, and
// the packet an engineer answers must be the one that was frozen. Commitments are filled in.

import { Injectable } from '@nestjs/common';
import type { Command, Job, RefusalView } from '#jobs';
import { Companies } from '../data/companies.js';
import type { Acting } from '../http/signed-in.js';
import { Licenses } from '../sign-off/licenses.js';
import { Packets } from '../sign-off/packets.js';

export interface Completed {
  readonly command: Command;
  readonly refusals: readonly RefusalView[];
}

interface Reference {
  readonly id: string;
  readonly pointer: string;
}

@Injectable()
export class References {
  constructor(
    private readonly companies: Companies,
    private readonly packets: Packets,
    private readonly licenses: Licenses,
  ) {}

  async complete(asking: Acting, command: Command, job: Job): Promise<Completed> {
    const company = asking.company.id;
    const found = collect(command, '');
    const [commitments, files, packet, license] = await Promise.all([
      this.commitments(company, found.parties),
      this.files(company, found.files),
      this.packet(company, command, job),
      this.licenses.refusals(asking, command),
    ]);
    const refusals = [
      ...found.parties
        .filter(({ id }) => !commitments.has(id))
        .map(({ id, pointer }) =>
          unknown('There is no such person or site of this company.', id, pointer),
        ),
      ...found.files
        .filter(({ id }) => !files.has(id))
        .map(({ id, pointer }) => unknown('There is no such file: store it first.', id, pointer)),
      ...packet,
      ...license,
    ];
    return { command: withCommitments(command, commitments) as Command, refusals };
  }

  /** Party → its newest commitment; a person of the staff has none. */
  private async commitments(
    company: string,
    parties: readonly Reference[],
  ): Promise<Map<string, string | null>> {
    if (parties.length === 0) return new Map();
    const { prisma } = this.companies.of(company);
    const ids = [...new Set(parties.map(({ id }) => id))];
    const [rows, people] = await Promise.all([
      prisma.party.findMany({
        where: { id: { in: ids }, latest: true },
        select: { id: true, commitment: true },
      }),
      prisma.person.findMany({ where: { id: { in: ids }, active: true }, select: { id: true } }),
    ]);
    return new Map<string, string | null>([
      ...people.map(({ id }): [string, null] => [id, null]),
      ...rows.map(({ id, commitment }): [string, string] => [id, commitment]),
    ]);
  }

  private async files(company: string, files: readonly Reference[]): Promise<Set<string>> {
    if (files.length === 0) return new Set();
    const rows = await this.companies.of(company).prisma.file.findMany({
      where: { digest: { in: files.map(({ id }) => id) } },
      select: { digest: true },
    });
    return new Set(rows.map(({ digest }) => digest));
  }

  private async packet(
    company: string,
    command: Command,
    job: Job,
  ): Promise<readonly RefusalView[]> {
    if (command.type !== 'answer-sign-off') return [];
    const packet = await this.packets.find(company, job.id, command.request);
    if (!packet || packet.digest === command.packet) return [];
    const words = 'The packet answered is not the one that was sent: open the request again.';
    return [{ kind: 'stale', code: 'MOVE-16', words, cites: [], figures: [], pointer: '/packet' }];
  }
}

const unknown = (words: string, id: string, pointer: string): RefusalView => ({
  kind: 'not-found',
  code: 'MOVE-03',
  words: `${words} (${id})`,
  cites: [],
  figures: [],
  pointer,
});

const isFile = (value: object): value is { digest: string } => 'digest' in value && 'name' in value;
const PARTY_KEYS = new Set([
  'site',
  'customer',
  'owner',
  'general_contractor',
  'engineer',
  'installer',
]);
const isParty = (key: string, value: object): value is { id: string } =>
  PARTY_KEYS.has(key) && 'id' in value;

function collect(
  value: unknown,
  pointer: string,
): { parties: readonly Reference[]; files: readonly Reference[] } {
  if (typeof value !== 'object' || value === null) return { parties: [], files: [] };
  if (isFile(value)) return { parties: [], files: [{ id: value.digest, pointer }] };
  const inside = Object.entries(value).map(([key, each]) => {
    const at = `${pointer}/${key}`;
    const party = typeof each === 'object' && each !== null && isParty(key, each);
    return party ? { parties: [{ id: each.id, pointer: at }], files: [] } : collect(each, at);
  });
  return {
    parties: inside.flatMap((each) => each.parties),
    files: inside.flatMap((each) => each.files),
  };
}

function withCommitments(value: unknown, commitments: ReadonlyMap<string, string | null>): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map((each) => withCommitments(each, commitments));
  return Object.fromEntries(
    Object.entries(value).map(([key, each]: [string, unknown]) => {
      if (typeof each !== 'object' || each === null || !isParty(key, each)) {
        return [key, withCommitments(each, commitments)];
      }
      const commitment = commitments.get(each.id);
      return [key, { id: each.id, ...(commitment ? { commitment } : {}) }];
    }),
  );
}
