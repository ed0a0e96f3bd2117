// The register of licenses over HTTP.

import { Body, Controller, Param } from '@nestjs/common';
import { v7 as uuid } from 'uuid';
import { z } from 'zod';
import { Day, Name } from '#jobs/contract';
import { Companies } from '../data/companies.js';
import { Route, STAFF } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { Problem } from '../problems.js';

const KEEPERS = ['administrator', 'project-manager'] as const;
const LicenseId = z.uuid('must be the id of a license');
const Given = z
  .strictObject({
    person: z.uuid().nullable().default(null),
    name: Name,
    number: Name,
    jurisdiction: z.string().regex(/^[A-Z]{2}$/, 'must be a two-letter state or territory'),
    expires: Day,
    standing: z.enum(['active', 'inactive', 'suspended']).default('active'),
    checked: z.strictObject({ on: Day, how: Name }).nullable().default(null),
  })
  .meta({ id: 'GivenLicense' });
type Given = z.output<typeof Given>;
const Kept = z
  .object({
    id: z.string(),
    person: z.string().nullable(),
    name: z.string(),
    number: z.string(),
    jurisdiction: z.string(),
    expires: z.string(),
    standing: z.string(),
    checked: z.string().describe('"stated by its holder" or when and how it was looked up'),
  })
  .meta({ id: 'RegisteredLicense' });

@Controller('api/licenses')
export class LicensesController {
  constructor(private readonly companies: Companies) {}

  @Route('GET', '', {
    says: 'The register of licenses, those that expire first on top',
    who: STAFF,
    gives: z.object({ licenses: z.array(Kept) }),
  })
  async list(@Asking() { company }: SignedIn) {
    const rows = await this.companies
      .of(company.id)
      .prisma.license.findMany({ orderBy: { expires: 'asc' }, take: 1000 });
    return { licenses: rows.map(kept) };
  }

  @Route('POST', '', {
    says: 'Enter a license',
    who: KEEPERS,
    answers: 'created',
    gives: Kept,
    fails: ['conflict'],
  })
  async add(@Asking() asking: SignedIn, @Body({ schema: Given }) body: Given) {
    const companyId = asking.company.id;
    const { prisma } = this.companies.of(companyId);
    const row = await prisma.license
      .create({ data: { companyId, id: uuid(), ...columns(body, asking) } })
      .catch(taken);
    return kept(row);
  }

  @Route('PUT', ':id', {
    says: 'Change what the register says of a license',
    who: KEEPERS,
    gives: Kept,
    fails: ['conflict'],
  })
  async change(
    @Asking() asking: SignedIn,
    @Param('id', { schema: LicenseId }) id: string,
    @Body({ schema: Given }) body: Given,
  ) {
    const companyId = asking.company.id;
    const { prisma } = this.companies.of(companyId);
    const key = { companyId_id: { companyId, id } };
    if (!(await prisma.license.findUnique({ where: key })))
      throw new Problem('not-found', 'There is no such license.');
    return kept(
      await prisma.license.update({ where: key, data: columns(body, asking) }).catch(taken),
    );
  }
}

const columns = ({ checked, expires, ...rest }: Given, { person }: SignedIn) => ({
  ...rest,
  expires: new Date(expires),
  changedAt: new Date(),
  changedBy: person.id,
  checkedOn: checked ? new Date(checked.on) : null,
  checkedHow: checked?.how ?? null,
});

const taken = (error: unknown): never => {
  throw (error as { code?: unknown }).code === 'P2002'
    ? new Problem('conflict', 'This license is in the register already.')
    : error;
};

interface Row {
  readonly id: string;
  readonly person: string | null;
  readonly name: string;
  readonly number: string;
  readonly jurisdiction: string;
  readonly expires: Date;
  readonly standing: string;
  readonly checkedOn: Date | null;
  readonly checkedHow: string | null;
}
const kept = ({
  id,
  person,
  name,
  number,
  jurisdiction,
  expires,
  standing,
  checkedOn,
  checkedHow,
}: Row) => ({
  id,
  person,
  name,
  number,
  jurisdiction,
  standing,
  expires: expires.toISOString().slice(0, 10),
  checked: checkedOn
    ? `checked on ${checkedOn.toISOString().slice(0, 10)}: ${checkedHow ?? ''}`
    : 'stated by its holder',
});
