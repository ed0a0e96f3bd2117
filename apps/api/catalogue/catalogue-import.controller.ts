// Importing catalogue parts: a CSV file of one part or a workbook of several is checked whole and
// comes back as the draft of the next edition. Publishing the draft, with a reason, records it.

import { Body, Controller, Query } from '@nestjs/common';
import { z } from 'zod';
import { catalogueDifference, importCatalogue, PART_NAMES, type SheetFault } from '#jobs';
import { Catalogue, Day, Words } from '#jobs/contract';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { Problem } from '../problems.js';
import { Editions, EMPTY_CATALOGUE } from '../rulebook/editions.js';
import { csvRows, type RowsRead } from './csv-rows.js';
import { xlsxRows } from './xlsx-rows.js';

export const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

const MOST_NAMED = 1_000;
const MOST_DIFFERENCES = 2_000;

const Draft = z.object({
  part: z
    .enum(PART_NAMES as readonly ['charts'])
    .optional()
    .describe('what a CSV file holds; a workbook names it by its sheets'),
  in_force_from: Day,
  summary: Words,
});
const CheckedSchema = z
  .object({
    draft: Catalogue.meta({ id: 'CatalogueDraft' }),
    changes: z.array(
      z.object({ part: z.string(), profile: z.string(), before: z.int(), after: z.int() }),
    ),
    notes: z.array(z.string()),
    newest: z.int().describe('the edition it differs from; 0 for none'),
    differences: z.int(),
    difference: z
      .array(
        z.object({
          part: z.string(),
          row: z.string(),
          column: z.string(),
          was: z.string().nullable(),
          becomes: z.string().nullable(),
        }),
      )
      .describe(`the first ${MOST_DIFFERENCES}`),
  })
  .meta({ id: 'CheckedCatalogueImport' });

@Controller('api/catalogue/import')
export class CatalogueImportController {
  constructor(private readonly editions: Editions) {}

  @Route('POST', 'check', {
    says: 'Read catalogue parts from CSV or XLSX into a draft of the next edition, or name every bad cell by sheet, row and column; nothing is recorded',
    who: ['standards-manager'],
    takes: ['text/csv', XLSX],
    gives: CheckedSchema,
  })
  async check(
    @Asking() { company }: SignedIn,
    @Query({ schema: Draft }) { part, ...about }: z.output<typeof Draft>,
    @Body() body: unknown,
  ) {
    const read = await rowsOf(body, part);
    if (!read.ok) throw bad(read.faults);
    const newest = (await this.editions.catalogue(company.id)).editions.at(-1);
    const current = newest?.edition ?? EMPTY_CATALOGUE;
    const checked = importCatalogue(read.sheets, current, {
      ...about,
      edition: (newest?.number ?? 0) + 1,
    });
    if (!checked.ok) throw bad(checked.faults);
    const { draft, changes, notes } = checked;
    const difference = catalogueDifference(current, draft);
    return {
      draft,
      changes,
      notes,
      newest: newest?.number ?? 0,
      differences: difference.length,
      difference: difference.slice(0, MOST_DIFFERENCES),
    };
  }
}

async function rowsOf(body: unknown, part: z.output<typeof Draft>['part']): Promise<RowsRead> {
  if (Buffer.isBuffer(body)) return xlsxRows(body);
  if (typeof body !== 'string' || body.trim() === '') {
    throw new Problem('malformed', {
      faults: [{ pointer: '', message: 'send the file as text/csv or as a workbook' }],
    });
  }
  if (part === undefined) {
    throw new Problem('malformed', {
      faults: [
        { pointer: '/part', message: `must say what the CSV file holds: ${PART_NAMES.join(', ')}` },
      ],
    });
  }
  return csvRows(part, body);
}

function bad(faults: readonly SheetFault[]): Problem {
  const more = faults.length > MOST_NAMED ? `; the first ${MOST_NAMED} are named` : '';
  return new Problem('malformed', {
    detail: `The file has ${faults.length} ${faults.length === 1 ? 'fault' : 'faults'}${more}.`,
    faults: faults.slice(0, MOST_NAMED).map(({ sheet, row, column, message }) => ({
      pointer: [sheet, row > 0 ? `row ${row}` : '', column]
        .filter(Boolean)
        .map((each) => `/${each}`)
        .join(''),
      message,
    })),
  });
}
