// Names as papers print them: the company's own, a site with its address, fasteners of the catalogue;
// and which of the ids are parties, whose words can be erased.

import { Injectable } from '@nestjs/common';
import { fastenerNames } from '#jobs';
import { Companies } from '../data/companies.js';
import { Editions } from '../rulebook/editions.js';

export interface PrintedNames {
  readonly names: Readonly<Record<string, string>>;
  readonly parties: readonly string[];
}

const UUIDS = /[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}/g;

@Injectable()
export class PaperNames {
  constructor(
    private readonly companies: Companies,
    private readonly editions: Editions,
  ) {}

  /** For every id that stands anywhere in this content. */
  async of(company: string, content: unknown): Promise<PrintedNames> {
    const wanted = { id: { in: [...new Set(JSON.stringify(content).match(UUIDS) ?? [])] } };
    const { prisma } = this.companies.of(company);
    const [own, people, parties, catalogue] = await Promise.all([
      prisma.company.findUnique({
        where: { id: company },
        select: { name: true, address: true, phone: true },
      }),
      prisma.person.findMany({ where: wanted, select: { id: true, name: true } }),
      prisma.party.findMany({
        where: { ...wanted, latest: true },
        select: { id: true, name: true, details: true, erasedAt: true },
      }),
      this.editions.catalogue(company),
    ]);
    const named = [
      ['company', own?.name ?? ''],
      ['company-address', [own?.address, own?.phone].filter((each) => each).join(', ')],
      ...people.map(({ id, name }) => [id, name]),
      ...parties.map((each) => [each.id, partyWords(each)]),
    ];
    return {
      names: {
        ...fastenerNames(catalogue.editions.map(({ edition }) => edition)),
        ...(Object.fromEntries(named) as Record<string, string>),
      },
      parties: parties.map(({ id }) => id),
    };
  }
}

function partyWords({
  name,
  details,
  erasedAt,
}: {
  name: string | null;
  details: unknown;
  erasedAt: Date | null;
}): string {
  if (erasedAt) return `erased on ${erasedAt.toISOString().slice(0, 10)}`;
  const { address } = (details ?? {}) as { address?: string };
  return [name, address].filter((each) => each).join(', ');
}
