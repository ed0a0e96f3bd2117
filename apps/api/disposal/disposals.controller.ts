// Erasures, legal holds and retention periods, for administrators.

import { Body, Controller, Param } from '@nestjs/common';
import { z } from 'zod';
import { Words } from '#jobs/contract';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { Names } from '../people/names.js';
import { Parties } from '../people/parties.js';
import { GROUNDS, KINDS, yearsInWords, type Act, type Ground, type Hold } from './disposal.js';
import { Disposals } from './disposals.js';

const Id = z.uuid('must be the id of a hold or of an erasure');
const Forever = Words.describe('stays in the record for ever: name the matter, not a person');
const On = z.strictObject({ kind: z.enum(['party', 'job']), id: z.uuid() });
const NewHold = z.strictObject({ on: On, why: Forever });
const Why = z.strictObject({ why: Forever });
const Grounds = z.enum(Object.keys(GROUNDS) as [Ground, ...Ground[]]);
const NewRequest = z.strictObject({
  party: z.uuid('must be the id of a person or a site'),
  ground: Grounds,
  reason: Words.describe('kept beside the details, not in the record'),
});
const Kind = z.enum(KINDS);
const Years = z.strictObject({ years: z.int().min(1).max(100).nullable() });
const Made = z.object({ id: z.string() });

const ActSchema = z.object({ by: z.string(), at: z.string(), why: z.string().optional() });
const DisposalSchema = z
  .object({
    administrators: z.int().describe('an erasure needs two'),
    retention: z.array(z.object({ kind: Kind, years: z.int().nullable(), words: z.string() })),
    holds: z.array(
      z.object({
        id: z.string(),
        on: On.extend({ name: z.string() }),
        placed: ActSchema,
        released: ActSchema.nullable(),
      }),
    ),
    erasures: z.array(
      z.object({
        id: z.string(),
        party: z.object({ id: z.string(), name: z.string() }),
        ground: Grounds,
        mine: z.boolean().describe('asked for by who reads this: another confirms it'),
        state: z.enum(['open', 'confirmed', 'withdrawn', 'done']),
        asked: ActSchema,
        confirmed: ActSchema.nullable(),
        withdrawn: ActSchema.nullable(),
      }),
    ),
  })
  .meta({ id: 'Disposal' });

const ADMINISTRATOR = ['administrator'] as const;

@Controller('api/disposal')
export class DisposalsController {
  constructor(
    private readonly disposals: Disposals,
    private readonly parties: Parties,
    private readonly names: Names,
  ) {}

  @Route('GET', '', {
    says: 'Erasures, legal holds and retention periods as they stand, newest first',
    who: ADMINISTRATOR,
    gives: DisposalSchema,
  })
  async list(
    @Asking() { company: { id: company }, person }: SignedIn,
  ): Promise<z.output<typeof DisposalSchema>> {
    const { holds, requests, years } = await this.disposals.standing(company);
    const all = [...requests.values()];
    const held = [...holds.values()].map(({ on }) => on.id);
    const names = await this.names.of(company, [
      ...held,
      ...all.map(({ party }) => party),
      ...[...all, ...holds.values()].flatMap(people),
    ]);
    const jobs = await this.disposals.numbers(company, held);
    const nameOf = (id: string) => names.get(id) ?? jobs.get(id) ?? id;
    const act = <A extends Act | null>(of: A) => of && { ...of, by: nameOf(of.by) };
    const there = await this.parties.thereOf(
      company,
      all.map(({ party }) => party),
    );
    return {
      administrators: await this.disposals.administrators(company),
      retention: KINDS.map((kind) => ({ kind, years: years[kind], words: period(years[kind]) })),
      holds: [...holds.values()].reverse().map(({ id, on, placed, released }) => ({
        id,
        on: { ...on, name: nameOf(on.id) },
        placed: act(placed),
        released: act(released),
      })),
      erasures: all.reverse().map(({ id, party, ground, asked, confirmed, withdrawn }) => ({
        id,
        party: { id: party, name: nameOf(party) },
        ground,
        mine: asked.by === person.id,
        state: confirmed
          ? there.has(party)
            ? 'confirmed'
            : 'done'
          : withdrawn
            ? 'withdrawn'
            : 'open',
        asked: act(asked),
        confirmed: act(confirmed),
        withdrawn: act(withdrawn),
      })),
    };
  }

  @Route('POST', 'erasures', {
    says: 'Ask for the details of a person or a site to be erased; another administrator confirms it',
    who: ADMINISTRATOR,
    answers: 'created',
    gives: Made,
    fails: ['conflict', 'not-found'],
  })
  async request(
    @Asking() asking: SignedIn,
    @Body({ schema: NewRequest }) { party, ground, reason }: z.output<typeof NewRequest>,
  ) {
    return { id: await this.disposals.request(asking, party, ground, reason) };
  }

  @Route('POST', 'erasures/:id/confirmation', {
    says:
      'Confirm an erasure that another administrator asked for: details and salts of every version ' +
      'go; the record keeps id and commitment',
    who: ADMINISTRATOR,
    answers: 'nothing',
    fails: ['conflict'],
  })
  async confirm(@Asking() asking: SignedIn, @Param('id', { schema: Id }) id: string) {
    await this.disposals.confirm(asking, id);
  }

  @Route('POST', 'erasures/:id/withdrawal', {
    says: 'Withdraw an erasure that is not yet confirmed',
    who: ADMINISTRATOR,
    answers: 'nothing',
    fails: ['conflict'],
  })
  async withdraw(
    @Asking() asking: SignedIn,
    @Param('id', { schema: Id }) id: string,
    @Body({ schema: Why }) { why }: z.output<typeof Why>,
  ) {
    await this.disposals.withdraw(asking, id, why);
  }

  @Route('POST', 'holds', {
    says: 'Place a legal hold on a person, a site or a job: nobody it covers is erased while it stands',
    who: ADMINISTRATOR,
    answers: 'created',
    gives: Made,
    fails: ['conflict', 'not-found'],
  })
  async place(
    @Asking() asking: SignedIn,
    @Body({ schema: NewHold }) { on, why }: z.output<typeof NewHold>,
  ) {
    return { id: await this.disposals.place(asking, on, why) };
  }

  @Route('POST', 'holds/:id/release', {
    says: 'Release a legal hold',
    who: ADMINISTRATOR,
    answers: 'nothing',
    fails: ['conflict'],
  })
  async release(
    @Asking() asking: SignedIn,
    @Param('id', { schema: Id }) id: string,
    @Body({ schema: Why }) { why }: z.output<typeof Why>,
  ) {
    await this.disposals.release(asking, id, why);
  }

  @Route('PUT', 'retention/:kind', {
    says: 'How many years details are kept after the last entry about them; null for no period',
    who: ADMINISTRATOR,
    answers: 'nothing',
  })
  async keepFor(
    @Asking() asking: SignedIn,
    @Param('kind', { schema: Kind }) kind: z.output<typeof Kind>,
    @Body({ schema: Years }) { years }: z.output<typeof Years>,
  ) {
    await this.disposals.keepFor(asking, kind, years);
  }
}

const period = (years: number | null): string =>
  years === null
    ? 'no period (the default; common practice differs, the office sets it)'
    : `${yearsInWords(years)} after the last entry about them (set by the office)`;

/** Who did what was done. */
const people = (
  of: Partial<Pick<Hold, 'placed' | 'released'>> & Partial<Acts>,
): readonly string[] =>
  [of.placed, of.released, of.asked, of.confirmed, of.withdrawn].flatMap((act) => act?.by ?? []);

interface Acts {
  readonly asked: Act;
  readonly confirmed: Act | null;
  readonly withdrawn: Act | null;
}
