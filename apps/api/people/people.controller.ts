// The company's own people: names for everyone who works here, accounts and roles for the
// administrator.

import { Body, Controller, Param } from '@nestjs/common';
import { v7 as uuid } from 'uuid';
import { z } from 'zod';
import { Name, ROLES } from '#jobs/contract';
import { Companies } from '../data/companies.js';
import { readerOf, Readings } from '../log/readings.js';
import { Route, STAFF } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { Problem } from '../problems.js';
import { SignInLinks } from './sign-in-links.js';
import { Email } from './session.controller.js';
import { Sessions } from './sessions.js';

const Roles = z.array(z.enum(ROLES)).min(1, 'must name at least one role').max(ROLES.length);
const Person = z.object({ id: z.string(), name: z.string(), roles: z.array(z.string()) });
const User = Person.extend({
  email: z.string(),
  active: z.boolean(),
  has_password: z.boolean(),
}).meta({ id: 'User' });
const Invited = z.object({
  user: User,
  link: z.string().describe('the token of a link that is good once'),
});
const NewUser = z.strictObject({ name: Name, email: Email, roles: Roles });
const ChangedUser = z.strictObject({
  name: Name.optional(),
  roles: Roles.optional(),
  active: z.boolean().optional(),
});
export const PersonId = z.uuid('must be the id of a person');

@Controller('api')
export class PeopleController {
  constructor(
    private readonly companies: Companies,
    private readonly sessions: Sessions,
    private readonly links: SignInLinks,
    private readonly readings: Readings,
  ) {}

  @Route('GET', 'people', {
    says: 'Names and roles of the people of the company',
    who: [...STAFF, 'engineer'],
    gives: z.object({ people: z.array(Person) }),
  })
  async people(@Asking() asking: SignedIn) {
    const { prisma } = this.companies.of(asking.company.id);
    const select = { id: true, name: true, roles: true } as const;
    return { people: await prisma.person.findMany({ select, orderBy: { name: 'asc' } }) };
  }

  @Route('GET', 'users', {
    says: 'Accounts of the company',
    who: ['administrator'],
    gives: z.object({ users: z.array(User) }),
  })
  async users(@Asking() asking: SignedIn) {
    const people = await this.companies
      .of(asking.company.id)
      .prisma.person.findMany({ orderBy: { name: 'asc' } });
    await this.readings.read(readerOf(asking), 'accounts', ['']);
    return { users: people.map(user) };
  }

  @Route('POST', 'users', {
    says: 'Add a person; the answer holds a sign-in link to hand over',
    who: ['administrator'],
    answers: 'created',
    gives: Invited,
    fails: ['conflict'],
  })
  async add(@Asking() asking: SignedIn, @Body({ schema: NewUser }) body: z.output<typeof NewUser>) {
    const companyId = asking.company.id;
    const { prisma } = this.companies.of(companyId);
    const person = await prisma.person
      .create({ data: { companyId, id: uuid(), ...body } })
      .catch((error: unknown) => {
        throw isTaken(error)
          ? new Problem('conflict', 'This e-mail address is already in use.')
          : error;
      });
    return { user: user(person), link: await this.links.make(companyId, person.id) };
  }

  @Route('PATCH', 'users/:id', {
    says: "Change a person's name or roles, or close the account",
    who: ['administrator'],
    gives: User,
    fails: ['conflict'],
  })
  async change(
    @Asking() asking: SignedIn,
    @Param('id', { schema: PersonId }) id: string,
    @Body({ schema: ChangedUser }) body: z.output<typeof ChangedUser>,
  ) {
    const companyId = asking.company.id;
    const { prisma } = this.companies.of(companyId);
    const key = { companyId_id: { companyId, id } };
    const before = await prisma.person.findUnique({ where: key });
    if (!before) throw new Problem('not-found', 'There is no such person.');
    const resigns =
      before.roles.includes('administrator') &&
      (body.active === false || body.roles?.includes('administrator') === false);
    if (resigns && id === asking.person.id) {
      throw new Problem('conflict', 'Another administrator must take this role from you.');
    }
    const data = Object.fromEntries(
      Object.entries(body).filter(([, value]) => value !== undefined),
    );
    const after = await prisma.person.update({ where: key, data });
    if (body.roles || body.active === false) await this.sessions.endAllOf(companyId, id);
    return user(after);
  }
}

interface Row {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly roles: readonly string[];
  readonly active: boolean;
  readonly passwordHash: string | null;
}
const user = ({ id, name, email, roles, active, passwordHash }: Row) => ({
  id,
  name,
  email,
  roles,
  active,
  has_password: passwordHash !== null,
});

const isTaken = (error: unknown) => (error as { code?: unknown } | null)?.code === 'P2002';
