// Names for ids, of staff and of parties; who was erased is said to be erased.

import { Injectable } from '@nestjs/common';
import { Companies } from '../data/companies.js';

@Injectable()
export class Names {
  constructor(private readonly companies: Companies) {}

  async of(company: string, ids: readonly string[]): Promise<ReadonlyMap<string, string>> {
    const wanted = { id: { in: [...new Set(ids)] } };
    const { prisma } = this.companies.of(company);
    const [people, parties] = await Promise.all([
      prisma.person.findMany({ where: wanted, select: { id: true, name: true } }),
      prisma.party.findMany({
        where: { ...wanted, latest: true },
        select: { id: true, name: true, erasedAt: true },
      }),
    ]);
    return new Map([
      ...parties.map(({ id, name, erasedAt }): [string, string] => [
        id,
        name ?? `erased on ${erasedAt?.toISOString().slice(0, 10) ?? 'an unknown day'}`,
      ]),
      ...people.map(({ id, name }): [string, string] => [id, name]),
    ]);
  }
}
