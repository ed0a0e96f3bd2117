// The company's own settings.

import { Body, Controller } from '@nestjs/common';
import { z } from 'zod';
import { Name } from '#jobs/contract';
import { Companies } from '../data/companies.js';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';

const CompanySchema = z
  .object({
    name: z.string().describe('stands on papers and letters'),
    address: z.string().describe('stands on orders and letters; empty where none was given'),
    phone: z.string().describe('likewise'),
    since: z.string(),
  })
  .meta({ id: 'Company' });
const Line = z.string().trim().max(300);
const Changed = z.strictObject({ name: Name, address: Line, phone: Line.max(60) }).partial();

@Controller('api/company')
export class CompanyController {
  constructor(private readonly companies: Companies) {}

  @Route('GET', '', {
    says: 'Settings of the company',
    who: ['administrator'],
    gives: CompanySchema,
  })
  async read(@Asking() { company }: SignedIn) {
    const { prisma } = this.companies.of(company.id);
    return view(await prisma.company.findUniqueOrThrow({ where: { id: company.id } }));
  }

  @Route('PATCH', '', {
    says: 'Change the settings of the company; papers that were issued stay as they are',
    who: ['administrator'],
    gives: CompanySchema,
  })
  async change(
    @Asking() { company }: SignedIn,
    @Body({ schema: Changed }) changed: z.output<typeof Changed>,
  ) {
    const { prisma } = this.companies.of(company.id);
    return view(await prisma.company.update({ where: { id: company.id }, data: defined(changed) }));
  }
}

/** Only what was given changes. */
const defined = ({ name, address, phone }: z.output<typeof Changed>) => ({
  ...(name === undefined ? {} : { name }),
  ...(address === undefined ? {} : { address }),
  ...(phone === undefined ? {} : { phone }),
});

const view = ({ name, address, phone, createdAt }: Company) => ({
  name,
  address,
  phone,
  since: createdAt.toISOString(),
});

interface Company {
  readonly name: string;
  readonly address: string;
  readonly phone: string;
  readonly createdAt: Date;
}
