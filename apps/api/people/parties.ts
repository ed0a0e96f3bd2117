// Personal data apart from the record: events hold an id and a salted commitment, and erasing takes
// the words and the salt of every version away while every proof stays valid.

import { createHash, randomBytes } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { v7 as uuid } from 'uuid';
import { z } from 'zod';
import { Name } from '#jobs/contract';
import { canonical } from '#ledger';
import { Prisma } from '#prisma';
import { Companies } from '../data/companies.js';
import { Ledgers, oneStream } from '../data/ledgers.js';
import type { Acting } from '../http/signed-in.js';
import { Papers } from '../papers/papers.js';
import { Problem } from '../problems.js';

const Line = z.string().trim().max(300);
export const PartyDetails = z
  .strictObject({
    name: Name,
    address: Line.optional(),
    phone: Line.optional(),
    email: Line.optional(),
    contact: Line.optional(),
    notes: z.string().trim().max(2000).optional(),
  })
  .meta({ id: 'PartyDetails' });
export type PartyDetails = z.output<typeof PartyDetails>;

export interface PartyView {
  readonly id: string;
  readonly kind: 'person' | 'site';
  readonly details?: PartyDetails;
  readonly erased?: string;
}

export const DETAILS_ERASED = 'party-details-erased/1';

@Injectable()
export class Parties {
  constructor(
    private readonly companies: Companies,
    private readonly papers: Papers,
    private readonly ledgers: Ledgers,
  ) {}

  async add(asking: Acting, kind: 'person' | 'site', details: PartyDetails) {
    return this.write(asking, { id: uuid(), version: 1, kind }, details);
  }

  /** A new version; what events committed to earlier stays as it was. */
  async change(asking: Acting, id: string, details: PartyDetails) {
    const { prisma } = this.companies.of(asking.company.id);
    const before = await prisma.party.findFirst({ where: { id, latest: true } });
    if (!before) throw new Problem('not-found', 'There is no such person or site.');
    if (before.erasedAt) throw new Problem('erased', 'These details were erased.');
    await prisma.party.updateMany({
      where: { id, version: before.version },
      data: { latest: false },
    });
    return this.write(asking, { id, version: before.version + 1, kind: before.kind }, details);
  }

  async find(company: string, ids: readonly string[]): Promise<readonly PartyView[]> {
    const rows = await this.companies.of(company).prisma.party.findMany({
      where: { id: { in: [...ids] }, latest: true },
      select: { id: true, kind: true, details: true, erasedAt: true },
    });
    return rows.map((row) => ({
      id: row.id,
      kind: row.kind as PartyView['kind'],
      ...(row.erasedAt
        ? { erased: row.erasedAt.toISOString() }
        : { details: row.details as PartyDetails }),
    }));
  }

  /**
   * The record gets an entry with the commitments first: then a crash leaves an erasure to be asked for
   * again, never one that nothing tells of. The reason stays with the row, for it may hold words of the
   * person.
   */
  async erase(asking: Acting, id: string, reason: string): Promise<void> {
    const { prisma } = this.companies.of(asking.company.id);
    const rows = await prisma.party.findMany({
      where: { id },
      select: { commitment: true, erasedAt: true },
      orderBy: { version: 'asc' },
    });
    if (!rows.some(({ erasedAt }) => erasedAt === null))
      throw new Problem('not-found', 'There is no such person or site that is not yet erased.');
    await this.record(
      asking,
      id,
      rows.map(({ commitment }) => commitment),
    );
    await prisma.party.updateMany({
      where: { id, erasedAt: null },
      data: {
        name: null,
        details: Prisma.DbNull,
        salt: null,
        erasedAt: new Date(),
        erasedBy: asking.person.id,
        reason,
      },
    });
    await this.papers.eraseOf(asking.company.id, id);
  }

  private async record(
    { company, person }: Acting,
    id: string,
    commitments: readonly string[],
  ): Promise<void> {
    const event = { type: DETAILS_ERASED, data: { party: id, commitments } };
    const stream = `party/${id}`;
    const done = await this.ledgers.append(
      oneStream(
        {
          company: company.id,
          by: { person: person.id, role: 'administrator' },
          commandId: `${stream} erased`,
          asked: { erase: id },
        },
        stream,
        0,
        [event],
      ),
    );
    if (done.kind === 'command-reused') throw new Error(`the erasure of ${id} was asked otherwise`);
  }

  private async write(
    asking: Acting,
    row: { readonly id: string; readonly version: number; readonly kind: string },
    details: PartyDetails,
  ) {
    const salt = randomBytes(16);
    const commitment = commit(salt, details);
    await this.companies.of(asking.company.id).prisma.party.create({
      data: {
        companyId: asking.company.id,
        ...row,
        latest: true,
        name: details.name,
        details,
        salt,
        commitment,
        createdBy: asking.person.id,
      },
    });
    return { id: row.id, commitment };
  }
}

/** SHA-256 over salt and canonical JSON: binds an event to the details without holding them. */
export function commit(salt: Uint8Array, details: PartyDetails): string {
  const given = Object.fromEntries(
    Object.entries(details).filter(([, value]) => value !== undefined),
  );
  return createHash('sha256').update(salt).update(canonical(given)).digest('hex');
}
