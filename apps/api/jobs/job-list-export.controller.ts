// The current filter of the job list as CSV and XLSX, every page of it.

import { Controller, Query, Res } from '@nestjs/common';
import { QueryBus } from '@nestjs/cqrs';
import { stringify } from 'csv-stringify/sync';
import type { Response } from 'express';
import type { z } from 'zod';
import type { JobRow } from '#jobs/contract';
import { Route, STAFF } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { readerOf, Readings } from '../log/readings.js';
import { ExportFilter, FindJobs } from './find-jobs.js';

const COLUMNS = [
  ['number', 'Job', 14],
  ['name', 'Name', 34],
  ['customer', 'Customer', 26],
  ['site', 'Site', 26],
  ['stage_words', 'Stage', 22],
  ['state', 'State', 10],
  ['surfaces_done', 'Surfaces done', 14],
  ['surfaces', 'Surfaces', 10],
  ['next_action', 'Next action', 44],
  ['on', 'On', 20],
  ['due', 'Due', 12],
  ['assigned', 'Assigned', 20],
  ['updated_at', 'Updated', 26],
] as const satisfies readonly (readonly [keyof JobRow, string, number])[];

const MOST_ROWS = 50_000;
const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

@Controller('api')
export class JobListExportController {
  constructor(
    private readonly queries: QueryBus,
    private readonly readings: Readings,
  ) {}

  @Route('GET', 'jobs.csv', { says: 'The filtered job list as CSV', who: STAFF, gives: 'text/csv' })
  async csv(
    @Asking() asking: SignedIn,
    @Query({ schema: ExportFilter }) filter: z.output<typeof ExportFilter>,
    @Res() response: Response,
  ): Promise<void> {
    const rows = await this.rows(asking, filter);
    const lines = [COLUMNS.map(([, title]) => title), ...rows.map(cells)];
    send(
      response,
      'text/csv; charset=utf-8',
      'jobs.csv',
      stringify(lines, { bom: true, escape_formulas: true }),
    );
  }

  @Route('GET', 'jobs.xlsx', { says: 'The filtered job list as XLSX', who: STAFF, gives: XLSX })
  async xlsx(
    @Asking() asking: SignedIn,
    @Query({ schema: ExportFilter }) filter: z.output<typeof ExportFilter>,
    @Res() response: Response,
  ): Promise<void> {
    const rows = await this.rows(asking, filter);
    // Read in when it is needed: it would make every start slower.
    const { default: ExcelJS } = await import('exceljs');
    const book = new ExcelJS.Workbook();
    const sheet = book.addWorksheet('Jobs', { views: [{ state: 'frozen', ySplit: 1 }] });
    sheet.columns = COLUMNS.map(([key, header, width]) => ({ key, header, width }));
    sheet.addRows(rows.map(cells));
    sheet.getRow(1).font = { bold: true };
    send(response, XLSX, 'jobs.xlsx', Buffer.from(await book.xlsx.writeBuffer()));
  }

  private async rows(asking: SignedIn, filter: z.output<typeof ExportFilter>) {
    const { why, ...wanted } = filter;
    const found = await this.queries.execute(new FindJobs(asking.company.id, wanted, 1, MOST_ROWS));
    await this.readings.exported(readerOf(asking), 'job-list-export', '', why);
    return found.rows;
  }
}

const cells = (row: JobRow) => COLUMNS.map(([key]) => row[key] ?? '');

function send(response: Response, type: string, name: string, body: string | Buffer): void {
  response.setHeader('Content-Type', type);
  response.setHeader('Content-Disposition', `attachment; filename="${name}"`);
  response.setHeader('Cache-Control', 'no-store');
  response.end(body);
}
