// The company's own settings.

import { Body, Controller } from '@nestjs/common';
import { z } from 'zod';
import { Name } from '#jobs/contract';
import { Companies } from '../data/companies.js';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';

const CompanySchema = z
  .object({ name: z.string().describe('stands on papers and letters'), since: z.string() })
  .meta({ id: 'Company' });
const Changed = z.strictObject({ name: Name });

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
    @Body({ schema: Changed }) { name }: z.output<typeof Changed>,
  ) {
    const { prisma } = this.companies.of(company.id);
    return view(await prisma.company.update({ where: { id: company.id }, data: { name } }));
  }
}

const view = ({ name, createdAt }: { name: string; createdAt: Date }) => ({
  name,
  since: createdAt.toISOString(),
});
