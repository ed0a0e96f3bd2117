// Erasures by two people, legal holds, retention periods: every act is an entry of one stream, decided
// on the state that the append then compares, so that two acts at once cannot both stand.

import { Injectable } from '@nestjs/common';
import { v7 as uuid } from 'uuid';
import type { StreamAppend } from '#ledger';
import { Companies } from '../data/companies.js';
import { digestOf, Ledgers } from '../data/ledgers.js';
import type { Acting } from '../http/signed-in.js';
import { JOB_LIST } from '../jobs/job-list.js';
import { jobStream } from '../jobs/job-stream.js';
import { Parties } from '../people/parties.js';
import { Problem } from '../problems.js';
import {
  DISPOSAL_STREAM,
  disposalOf,
  isOpen,
  standing,
  type Disposal,
  type DoneEvent,
  type ErasureRequest,
  type Ground,
  type Held,
  type PartyKind,
} from './disposal.js';
import { KeepsFromErasure } from './keeps-from-erasure.js';

interface Decided {
  readonly event: DoneEvent;
  readonly with?: readonly StreamAppend[];
}

@Injectable()
export class Disposals {
  constructor(
    private readonly companies: Companies,
    private readonly ledgers: Ledgers,
    private readonly parties: Parties,
    private readonly keeps: KeepsFromErasure,
  ) {}

  async standing(company: string): Promise<Disposal> {
    return disposalOf(await this.ledgers.ledger.readStream(company, DISPOSAL_STREAM));
  }

  /** Who could ask or confirm. */
  administrators(company: string): Promise<number> {
    const where = { active: true, roles: { has: 'administrator' } };
    return this.companies.of(company).prisma.person.count({ where });
  }

  /** Numbers of jobs, as the list has them. */
  async numbers(company: string, jobs: readonly string[]): Promise<ReadonlyMap<string, string>> {
    const { generation } = await this.ledgers.liveList(company, JOB_LIST);
    const rows = await this.companies.of(company).prisma.jobRow.findMany({
      where: { generation, id: { in: [...jobs] } },
      select: { id: true, number: true },
    });
    return new Map(rows.map(({ id, number }) => [id, number]));
  }

  async place(asking: Acting, on: Held, why: string): Promise<string> {
    await this.mustBeThere(asking.company.id, on);
    const hold = uuid();
    await this.act(asking, (now) => {
      const same = standing(now).find(
        (each) => each.on.id === on.id && each.on.kind === on.kind && each.placed.why === why,
      );
      if (same) throw new Problem('conflict', 'This hold stands already, with the same words.');
      return { event: { type: 'hold-placed/1', data: { hold, on, why } } };
    });
    return hold;
  }

  async release(asking: Acting, hold: string, why: string): Promise<void> {
    await this.act(asking, ({ holds }) => {
      const found = holds.get(hold);
      if (!found) throw new Problem('not-found', 'There is no such hold.');
      if (found.released) throw new Problem('conflict', 'This hold was released already.');
      return { event: { type: 'hold-released/1', data: { hold, why } } };
    });
  }

  async keepFor(asking: Acting, kind: PartyKind, years: number | null): Promise<void> {
    await this.act(asking, (now) => {
      if (now.years[kind] === years) return undefined;
      return { event: { type: 'retention-set/1', data: { kind, years } } };
    });
  }

  /** The words of the reason stay with the details, for they may hold words of the person. */
  async request(asking: Acting, party: string, ground: Ground, reason: string): Promise<string> {
    const { id: company } = asking.company;
    const request = uuid();
    await this.parties.commitments(company, party);
    await this.act(asking, async (now) => {
      if ([...now.requests.values()].some((each) => each.party === party && isOpen(each)))
        throw new Problem(
          'conflict',
          'This erasure is asked for already and waits for confirmation.',
        );
      await this.nothingKeeps(company, now, { party, ground });
      return { event: { type: 'erasure-requested/1', data: { request, party, ground } } };
    });
    await this.parties.noteReason(company, party, reason);
    return request;
  }

  /** The entries first: what a crash then left undone, anybody who confirms once more completes. */
  async confirm(asking: Acting, id: string): Promise<void> {
    const { id: company } = asking.company;
    const now = await this.standing(company);
    const { party, confirmed } = found(now, id);
    if (confirmed) {
      if (!(await this.parties.isThere(company, party)))
        throw new Problem('conflict', 'This erasure was confirmed already, and is done.');
    } else await this.act(asking, (latest) => this.confirmation(asking, latest, id));
    await this.parties.erase(asking, party);
  }

  async withdraw(asking: Acting, request: string, why: string): Promise<void> {
    await this.act(asking, (now) => {
      mustBeOpen(found(now, request));
      return { event: { type: 'erasure-withdrawn/1', data: { request, why } } };
    });
  }

  private async confirmation(asking: Acting, now: Disposal, id: string): Promise<Decided> {
    const { id: company } = asking.company;
    const request = found(now, id);
    mustBeOpen(request);
    if (request.asked.by === asking.person.id)
      throw new Problem('forbidden', await this.alone(company));
    await this.nothingKeeps(company, now, request);
    return {
      event: { type: 'erasure-confirmed/1', data: { request: id, party: request.party } },
      with: await this.parties.erasureEntry(company, request.party),
    };
  }

  private async alone(company: string): Promise<string> {
    const others = (await this.administrators(company)) - 1;
    return others > 0
      ? 'Who asked for an erasure does not confirm it: another administrator does.'
      : 'Who asked for an erasure does not confirm it, and there is no other administrator: ' +
          'add one under People.';
  }

  private async nothingKeeps(
    company: string,
    now: Disposal,
    asked: Pick<ErasureRequest, 'party' | 'ground'>,
  ): Promise<void> {
    const words = await this.keeps.of(company, now, asked);
    if (words.length > 0) throw new Problem('conflict', words.join(' '));
  }

  private async mustBeThere(company: string, { kind, id }: Held): Promise<void> {
    if (kind === 'party') {
      await this.parties.commitments(company, id);
      return;
    }
    const [first] = await this.ledgers.ledger.readStream(company, jobStream(id), { upTo: 1 });
    if (!first) throw new Problem('not-found', 'There is no such job.');
  }

  /** Decides anew for as long as somebody else was faster. */
  private async act(
    { company, person }: Acting,
    decide: (now: Disposal) => Decided | undefined | Promise<Decided | undefined>,
  ): Promise<void> {
    for (;;) {
      const entries = await this.ledgers.ledger.readStream(company.id, DISPOSAL_STREAM);
      const decided = await decide(disposalOf(entries));
      if (!decided) return;
      const own = {
        stream: DISPOSAL_STREAM,
        expectedVersion: entries.length,
        events: [decided.event],
      };
      const done = await this.ledgers.append({
        log: company.id,
        by: { person: person.id, role: 'administrator' },
        command: { id: `disposal/${uuid()}`, digest: digestOf(decided.event) },
        streams: [own, ...(decided.with ?? [])],
      });
      if (done.kind !== 'wrong-version') return;
    }
  }
}

function found({ requests }: Disposal, id: string): ErasureRequest {
  const request = requests.get(id);
  if (!request) throw new Problem('not-found', 'No such erasure was asked for.');
  return request;
}

function mustBeOpen({ confirmed, withdrawn }: ErasureRequest): void {
  if (confirmed) throw new Problem('conflict', 'This erasure was confirmed already.');
  if (withdrawn) throw new Problem('conflict', 'This erasure was withdrawn.');
}
