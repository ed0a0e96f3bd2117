// The list of who read or exported what is sensitive.

import { Controller, Query } from '@nestjs/common';
import { z } from 'zod';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { Names } from '../people/names.js';
import { FeedTokens } from './feed-tokens.js';
import { KEPT_YEARS, readerOf, READINGS, Readings, type What } from './readings.js';

const Wanted = z.strictObject({
  reader: z.uuid('must be the id of a person or a token').optional(),
  what: z.enum(Object.keys(READINGS) as [What, ...What[]]).optional(),
  about: z.string().max(200).optional(),
  before: z.uuid('must be the id of a reading').optional(),
  limit: z.coerce.number().int().min(1).max(500).default(100),
});
const ReadingSchema = z
  .object({
    id: z.string(),
    at: z.string(),
    reader: z.object({ id: z.string(), kind: z.enum(['person', 'feed']), name: z.string() }),
    what: z.enum(Object.keys(READINGS) as [What, ...What[]]),
    words: z.string(),
    about: z.string().describe('id of a job, person or site, or a position; may be empty'),
    why: z.string().nullable(),
  })
  .meta({ id: 'Reading' });

@Controller('api/log')
export class ReadingsController {
  constructor(
    private readonly readings: Readings,
    private readonly names: Names,
    private readonly tokens: FeedTokens,
  ) {}

  @Route('GET', 'readings', {
    says: 'Who read or exported what is sensitive, newest first',
    who: ['administrator', 'warranty-reviewer'],
    gives: z.object({ kept_years: z.int(), readings: z.array(ReadingSchema) }),
  })
  async list(
    @Asking() asking: SignedIn,
    @Query({ schema: Wanted }) wanted: z.output<typeof Wanted>,
  ) {
    const { company } = asking;
    const found = await this.readings.list(company.id, wanted);
    await this.readings.read(readerOf(asking), 'readings', ['']);
    const people = await this.names.of(
      company.id,
      found.map((each) => each.reader),
    );
    const feeds = found.some(({ readerKind }) => readerKind === 'feed')
      ? await this.tokens.list(company.id)
      : [];
    const nameOf = (id: string) =>
      people.get(id) ?? feeds.find((token) => token.id === id)?.name ?? id;
    return {
      kept_years: KEPT_YEARS,
      readings: found.map(({ id, at, reader: who, readerKind: kind, what, about, why }) => ({
        id,
        at: at.toISOString(),
        reader: { id: who, kind, name: nameOf(who) },
        what,
        words: READINGS[what],
        about,
        why,
      })),
    };
  }
}
