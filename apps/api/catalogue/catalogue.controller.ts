// The catalogue editions of the company, the check of a chart file, and publishing.

import { Body, Controller, Param } from '@nestjs/common';
import { z } from 'zod';
import { compareLoads } from '#jobs';
import { Catalogue, Id, LoadChart, LoadComparison, Words } from '#jobs/contract';
import { Ledgers, oneStream } from '../data/ledgers.js';
import { Header } from '../http/header.js';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { Key, READERS } from '../jobs/jobs.controller.js';
import { Problem } from '../problems.js';
import { CATALOGUE, Editions, EMPTY_CATALOGUE, inForce } from '../rulebook/editions.js';
import {
  editionRow,
  EditionNumber,
  EditionRowSchema,
  today,
} from '../rulebook/rulebook.controller.js';
import { catalogueFaults } from './catalogue-faults.js';
import { readCharts } from './chart-csv.js';

const CatalogueSchema = Catalogue.extend({ edition: z.int() }).meta({ id: 'Catalogue' });
const Publish = z.strictObject({ catalogue: Catalogue, reason: Words });
const Csv = z.string('send the file as text/csv').min(1, 'is empty');

@Controller('api/catalogue')
export class CatalogueController {
  constructor(
    private readonly editions: Editions,
    private readonly ledgers: Ledgers,
  ) {}

  @Route('GET', 'editions', {
    says: 'The published catalogue editions',
    who: READERS,
    gives: z.object({ editions: z.array(EditionRowSchema) }),
  })
  async list(@Asking() { company }: SignedIn) {
    const shelf = await this.editions.catalogue(company.id);
    return { editions: shelf.editions.map((each) => editionRow(shelf, each)) };
  }

  @Route('GET', 'current', {
    says: 'The catalogue edition in force',
    who: READERS,
    gives: CatalogueSchema,
  })
  async current(@Asking() { company }: SignedIn) {
    return inForce(await this.editions.catalogue(company.id), today())?.edition ?? EMPTY_CATALOGUE;
  }

  @Route('GET', 'editions/:number', {
    says: 'One catalogue edition',
    who: READERS,
    gives: CatalogueSchema,
  })
  async one(
    @Asking() { company }: SignedIn,
    @Param('number', { schema: EditionNumber }) number: number,
  ) {
    const shelf = await this.editions.catalogue(company.id);
    const published = shelf.editions.find((each) => each.number === number);
    if (!published) throw new Problem('not-found', `There is no catalogue edition ${number}.`);
    return published.edition;
  }

  @Route('GET', 'editions/:number/profiles/:profile/loads', {
    says: "A profile's load charts beside the calculation from its outline, with the differences",
    who: READERS,
    gives: LoadComparison,
  })
  async loads(
    @Asking() asking: SignedIn,
    @Param('number', { schema: EditionNumber }) number: number,
    @Param('profile', { schema: Id }) profile: string,
  ) {
    const compared = compareLoads(await this.one(asking, number), profile);
    if (!compared) throw new Problem('not-found', `Edition ${number} has no profile ${profile}.`);
    return compared;
  }

  @Route('POST', 'charts/check', {
    says: 'Read load charts from CSV and name every fault with row and column; nothing is recorded',
    who: ['standards-manager', 'project-manager'],
    takes: ['text/csv'],
    gives: z.object({ charts: z.array(LoadChart) }),
  })
  check(@Body({ schema: Csv }) csv: string) {
    const read = readCharts(csv);
    if (read.ok) return { charts: read.charts };
    throw new Problem('malformed', {
      detail: `The file has ${read.faults.length} faults.`,
      faults: read.faults.map(({ row, column, message }) => ({
        pointer: `/row ${row}${column && `/${column}`}`,
        message,
      })),
    });
  }

  @Route('POST', 'editions', {
    says: 'Publish the next catalogue edition, whole',
    who: ['standards-manager'],
    answers: 'created',
    headers: { 'Idempotency-Key': 'the same key with the same request is done once' },
    gives: EditionRowSchema,
    fails: ['conflict'],
  })
  async publish(
    @Asking() asking: SignedIn,
    @Header('idempotency-key', Key) key: string | undefined,
    @Body({ schema: Publish }) body: z.output<typeof Publish>,
  ) {
    const company = asking.company.id;
    const shelf = await this.editions.catalogue(company);
    const newest = shelf.editions.at(-1)?.number ?? 0;
    const faults = catalogueFaults(body.catalogue, newest);
    if (faults.length > 0) throw new Problem('malformed', { faults });
    const commandId = `${asking.person.id}/${key ?? `catalogue ${body.catalogue.edition}`}`;
    const written = {
      company,
      by: { person: asking.person.id, role: 'standards-manager' },
      commandId,
      asked: body,
    };
    const data = { edition: body.catalogue, reason: body.reason };
    const result = await this.ledgers.append(
      oneStream(written, CATALOGUE, shelf.version, [
        { type: 'catalogue-edition-published/1', data },
      ]),
    );
    if (result.kind === 'command-reused' || result.kind === 'wrong-version') {
      throw new Problem('conflict', 'Somebody published an edition in the meantime.');
    }
    const after = await this.editions.catalogue(company);
    const published = after.editions.find(({ number }) => number === body.catalogue.edition);
    if (!published) throw new Error('an edition that was just published is not there');
    return editionRow(after, published);
  }
}
