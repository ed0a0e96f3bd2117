// People and sites of jobs, outside the record.

import { Body, Controller, Param, Query } from '@nestjs/common';
import { z } from 'zod';
import { Route, STAFF } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { readerOf, Readings } from '../log/readings.js';
import { Parties, PartyDetails, type PartyView } from './parties.js';

const NewParty = z.strictObject({ kind: z.enum(['person', 'site']), details: PartyDetails });
const PartyId = z.uuid('must be the id of a person or a site');
const Ids = z.strictObject({
  ids: z
    .string()
    .max(8000)
    .transform((text) => text.split(',').filter(Boolean))
    .pipe(z.array(PartyId).max(200)),
  only: z.enum(['names']).optional(),
});
const Written = z.object({ id: z.string(), commitment: z.string() });
const Party = z.object({
  id: z.string(),
  kind: z.enum(['person', 'site']),
  details: PartyDetails.optional(),
  erased: z.string().optional(),
});
const WRITERS = ['office', 'project-manager', 'warranty-reviewer'] as const;

@Controller('api/parties')
export class PartiesController {
  constructor(
    private readonly parties: Parties,
    private readonly readings: Readings,
  ) {}

  @Route('POST', '', {
    says: 'Add a person or a site',
    who: WRITERS,
    answers: 'created',
    gives: Written,
  })
  add(@Asking() asking: SignedIn, @Body({ schema: NewParty }) body: z.output<typeof NewParty>) {
    return this.parties.add(asking, body.kind, body.details);
  }

  @Route('GET', '', {
    says: 'Details of people and sites by id, which is noted; or their names alone, which is not',
    who: [...STAFF, 'engineer'],
    gives: z.object({ parties: z.array(Party) }),
  })
  async find(@Asking() asking: SignedIn, @Query({ schema: Ids }) query: z.output<typeof Ids>) {
    const parties = await this.parties.find(asking.company.id, query.ids);
    if (query.only === 'names') return { parties: parties.map(nameAlone) };
    const read = parties.filter(({ details }) => details !== undefined).map(({ id }) => id);
    await this.readings.read(readerOf(asking), 'party-details', read);
    return { parties };
  }

  @Route('PUT', ':id/details', {
    says: 'Give a person or a site new details',
    who: WRITERS,
    gives: Written,
    fails: ['erased'],
  })
  change(
    @Asking() asking: SignedIn,
    @Param('id', { schema: PartyId }) id: string,
    @Body({ schema: PartyDetails }) body: PartyDetails,
  ) {
    return this.parties.change(asking, id, body);
  }
}

const nameAlone = ({ details, ...rest }: PartyView): PartyView =>
  details === undefined ? rest : { ...rest, details: { name: details.name } };
