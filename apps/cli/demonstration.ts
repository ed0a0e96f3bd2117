// Fills an empty installation with the demonstration, through the same commands that people give.
// Interrupted, the next start goes on where it was; done once, it does nothing.

import { CommandBus } from '@nestjs/cqrs';
import { randomBytes } from 'node:crypto';
import { Command, RulebookCommand, type Role } from '#jobs/contract';
import { Companies } from '../api/data/companies.js';
import { Ledgers, oneStream } from '../api/data/ledgers.js';
import { ExecuteOnJob } from '../api/jobs/execute-on-job.js';
import { commit } from '../api/people/parties.js';
import type { Service } from '../api/service.js';
import { Problem } from '../api/problems.js';
import { CATALOGUE } from '../api/rulebook/editions.js';
import { PublishRules } from '../api/rulebook/publish-rules.js';
import { Rulebooks } from '../api/rulebook/rulebooks.js';
import { Packets } from '../api/sign-off/packets.js';
import { BARN } from './demonstration/barn.js';
import { demonstrationCatalogue } from './demonstration/catalogue.js';
import { HOUSE } from './demonstration/house.js';
import { ADMINISTRATOR, DEMONSTRATION, OFFICE, PEOPLE, STANDARDS } from './demonstration/people.js';
import { rulesDraft } from './demonstration/rules-draft.js';
import { ACTORS, type InventedJob, type Step } from './demonstration/steps.js';
import { WORKSHOP } from './demonstration/workshop.js';

const { company, name, address, phone } = DEMONSTRATION;
const DONE = 'demonstration';

export async function fillDemonstration(service: Service): Promise<void> {
  const { ledger, lists } = service.get(Ledgers);
  await fillPeople(service);
  await service.get(PublishRules).ofTheProduct(company, ADMINISTRATOR.id);
  if ((await ledger.readStream(company, DONE)).length > 0) return;
  lists.follow(company);
  await publishCatalogue(service);
  for (const job of [BARN, HOUSE, WORKSHOP]) {
    await fillParties(service, job);
    await play(service, job);
  }
  await draftRules(service);
  const by = { person: ADMINISTRATOR.id, role: 'administrator' };
  const done = [{ type: 'demonstration-filled/1', data: {} }];
  await service
    .get(Ledgers)
    .append(oneStream({ company, by, commandId: DONE, asked: {} }, DONE, 0, done));
}

async function fillPeople(service: Service): Promise<void> {
  const { prisma } = service.get(Companies).of(company);
  await prisma.company.createMany({
    data: [{ id: company, name, address, phone }],
    skipDuplicates: true,
  });
  await prisma.person.createMany({
    data: PEOPLE.map(({ id, name: own, email, roles }) => ({
      companyId: company,
      id,
      name: own,
      email,
      roles: [...roles],
    })),
    skipDuplicates: true,
  });
}

async function publishCatalogue(service: Service): Promise<void> {
  const edition = demonstrationCatalogue();
  const by = { person: STANDARDS.id, role: 'standards-manager' };
  const data = { edition, reason: 'The catalogue of the demonstration.' };
  await service
    .get(Ledgers)
    .append(
      oneStream({ company, by, commandId: 'demonstration-catalogue', asked: data }, CATALOGUE, 0, [
        { type: 'catalogue-edition-published/1', data },
      ]),
    );
}

async function draftRules(service: Service): Promise<void> {
  const command = RulebookCommand.parse(rulesDraft(new Date().toISOString().slice(0, 10)));
  const asking = { company: { id: company, name }, person: STANDARDS, roles: STANDARDS.roles };
  await service.get(Rulebooks).execute(asking, command, 'demonstration-rules-draft', {});
}

async function fillParties(service: Service, { parties }: InventedJob): Promise<void> {
  await service
    .get(Companies)
    .of(company)
    .prisma.party.createMany({
      data: parties.map(({ id, kind, details }) => {
        const salt = randomBytes(16);
        return {
          companyId: company,
          id,
          version: 1,
          latest: true,
          kind,
          name: details.name,
          details,
          salt,
          commitment: commit(salt, details),
          createdBy: OFFICE.id,
        };
      }),
      skipDuplicates: true,
    });
}

/** Every step of an invented job, once. */
export async function play(service: Service, { id, steps }: InventedJob): Promise<void> {
  for (const [index, step] of steps.entries()) {
    const [actor] = step;
    const { roles, ...person } = ACTORS[actor];
    const command = await commandOf(service, id, step);
    await service
      .get(CommandBus)
      .execute(
        new ExecuteOnJob({
          asking: { company: { id: company, name }, person, roles: roles as readonly Role[] },
          job: id,
          command,
          seen: undefined,
          key: `demonstration-${id}-${index}`,
          asked: step[1],
        }),
      )
      .catch((error: unknown) => {
        const why = error instanceof Problem ? JSON.stringify(error.details) : String(error);
        throw new Error(
          `The demonstration stops at step ${index + 1} (${command.type}) of ${id}: ${why}`,
          { cause: error },
        );
      });
  }
}

async function commandOf(service: Service, job: string, [, given]: Step): Promise<Command> {
  if (given.type !== 'answer-sign-off') return Command.parse(given);
  const packet = await service.get(Packets).find(company, job, given.request);
  return Command.parse({ ...given, packet: packet?.digest });
}
