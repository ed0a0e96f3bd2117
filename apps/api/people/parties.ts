// Personal data apart from the record: events hold an id and a salted commitment, and erasing takes
// the words and the salt of every version away while every proof stays valid.

import { createHash, randomBytes } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { v7 as uuid } from 'uuid';
import { z } from 'zod';
import { Name } from '#jobs/contract';
import { canonical, type StreamAppend } from '#ledger';
import { Prisma } from '#prisma';
import { Companies } from '../data/companies.js';
import { Ledgers } from '../data/ledgers.js';
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

  /** Of every version, in order. @throws Problem not-found where nothing is left to erase */
  async commitments(company: string, id: string): Promise<readonly string[]> {
    const rows = await this.companies.of(company).prisma.party.findMany({
      where: { id },
      select: { commitment: true, erasedAt: true },
      orderBy: { version: 'asc' },
    });
    if (!rows.some(({ erasedAt }) => erasedAt === null))
      throw new Problem('not-found', 'There is no such person or site that is not yet erased.');
    return rows.map(({ commitment }) => commitment);
  }

  /** Those of whom details are there. */
  async thereOf(company: string, ids: readonly string[]): Promise<ReadonlySet<string>> {
    const rows = await this.companies.of(company).prisma.party.findMany({
      where: { id: { in: [...ids] }, erasedAt: null },
      select: { id: true },
    });
    return new Set(rows.map(({ id }) => id));
  }

  async isThere(company: string, id: string): Promise<boolean> {
    return (await this.thereOf(company, [id])).has(id);
  }

  async noteReason(company: string, id: string, reason: string): Promise<void> {
    const where = { id, erasedAt: null };
    await this.companies.of(company).prisma.party.updateMany({ where, data: { reason } });
  }

  /** What the record keeps of who is erased; nothing where it tells so already. */
  async erasureEntry(company: string, id: string): Promise<readonly StreamAppend[]> {
    const commitments = await this.commitments(company, id);
    const stream = `party/${id}`;
    const told = await this.ledgers.ledger.readStream(company, stream);
    if (told.length > 0) return [];
    const event = { type: DETAILS_ERASED, data: { party: id, commitments } };
    return [{ stream, expectedVersion: 0, events: [event] }];
  }

  /**
   * After the record has its entries: then a crash leaves an erasure to be completed, never one that
   * nothing tells of.
   */
  async erase(asking: Acting, id: string): Promise<void> {
    await this.companies.of(asking.company.id).prisma.party.updateMany({
      where: { id, erasedAt: null },
      data: {
        name: null,
        details: Prisma.DbNull,
        salt: null,
        erasedAt: new Date(),
        erasedBy: asking.person.id,
      },
    });
    await this.papers.eraseOf(asking.company.id, id);
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
