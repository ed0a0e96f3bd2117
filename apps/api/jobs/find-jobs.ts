// The job list: found, filtered, sorted and paged in the database, with names from where they can
// be erased.

import { QueryHandler, Query as Message, type IQueryHandler } from '@nestjs/cqrs';
import { z } from 'zod';
import { AFTER_STAGES, STAGES, type JobRow } from '#jobs/contract';
import { Prisma } from '#prisma';
import { Companies } from '../data/companies.js';
import { Ledgers } from '../data/ledgers.js';
import { JobTotals } from './job-totals.js';
import { JOB_LIST } from './job-list.js';

const SORTS = {
  due: Prisma.sql`r.due ASC NULLS LAST, r.number ASC`,
  '-due': Prisma.sql`r.due DESC NULLS LAST, r.number DESC`,
  number: Prisma.sql`r.number ASC`,
  '-number': Prisma.sql`r.number DESC`,
  stage: Prisma.sql`r.stage_order ASC, r.due ASC NULLS LAST, r.number ASC`,
  '-stage': Prisma.sql`r.stage_order DESC, r.due ASC NULLS LAST, r.number ASC`,
  updated: Prisma.sql`r.updated_at ASC, r.number ASC`,
  '-updated': Prisma.sql`r.updated_at DESC, r.number DESC`,
} as const;
export type Sort = keyof typeof SORTS;

const emptyIsNone = (value: unknown) => (value === '' ? undefined : value);
const filters = {
  find: z.string().trim().max(200).optional(),
  stage: z.preprocess(
    emptyIsNone,
    z.enum([...STAGES, 'done', ...AFTER_STAGES, 'no-surfaces']).optional(),
  ),
  state: z.preprocess(emptyIsNone, z.enum(['Ready', 'Blocked', 'Waiting', 'Done']).optional()),
  assigned: z.preprocess(emptyIsNone, z.uuid('must be the id of a person').optional()),
  due: z.preprocess(emptyIsNone, z.enum(['overdue', 'week', 'any']).optional()),
  sort: z.preprocess(emptyIsNone, z.enum(Object.keys(SORTS) as [Sort, ...Sort[]]).default('due')),
};
export const JobFilter = z.strictObject({
  ...filters,
  page: z.coerce.number().int().min(1).max(100_000).default(1),
  size: z.coerce.number().int().min(1).max(200).default(50),
});
export const ExportFilter = z.strictObject({
  ...filters,
  why: z.string().trim().max(500).optional().describe('noted with the export'),
  page: z.string().optional(),
  size: z.string().optional(),
});
type Filter = Omit<z.output<typeof JobFilter>, 'page' | 'size'>;

export interface JobPage {
  readonly rows: readonly JobRow[];
  readonly total: number;
  readonly page: number;
  readonly size: number;
  /** The position of the record that the list has reached. */
  readonly listsAt: number;
}

export class FindJobs extends Message<JobPage> {
  constructor(
    readonly company: string,
    readonly filter: Filter,
    readonly page: number,
    readonly size: number,
  ) {
    super();
  }
}

@QueryHandler(FindJobs)
export class FindJobsHandler implements IQueryHandler<FindJobs> {
  constructor(
    private readonly companies: Companies,
    private readonly ledgers: Ledgers,
    private readonly totals: JobTotals,
  ) {}

  async execute({ company, filter, page, size }: FindJobs): Promise<JobPage> {
    const { prisma } = this.companies.of(company);
    const { generation, pos } = await this.ledgers.liveList(company, JOB_LIST);
    const which = Prisma.sql`${source(filter, generation)} r
      WHERE r.company_id = ${company} AND r.generation = ${generation} AND ${conditions(filter)}`;
    // The page is cut from an index before rows and names are read, so that a far page is cheap too.
    // What words find is found once and counted on the way; other counts go beside the page.
    const counting = filter.find ? Prisma.sql`count(*) OVER ()` : Prisma.sql`NULL::bigint`;
    const count = async () => {
      const counted = await prisma.$queryRaw<Counted[]>`
        SELECT count(*) AS total FROM ${which}`;
      return Number(counted[0]?.total ?? 0);
    };
    const [rows, counted] = await Promise.all([
      prisma.$queryRaw<Row[]>`SELECT r.*, c.name AS customer_name, s.name AS site_name,
        a.name AS assigned_name, w.name AS waits_on_name, page.total
      FROM (SELECT r.id, ${counting} AS total FROM ${which}
        ORDER BY ${SORTS[filter.sort]} LIMIT ${size} OFFSET ${(page - 1) * size}) page
      JOIN job_row r ON r.company_id = ${company} AND r.generation = ${generation} AND r.id = page.id
      LEFT JOIN party c ON c.company_id = r.company_id AND c.id = r.customer AND c.latest
      LEFT JOIN party s ON s.company_id = r.company_id AND s.id = r.site AND s.latest
      LEFT JOIN person a ON a.company_id = r.company_id AND a.id = r.assigned
      LEFT JOIN person w ON w.company_id = r.company_id AND w.id = r.waits_on
      ORDER BY ${SORTS[filter.sort]}`,
      filter.find ? undefined : this.totals.of(keyOf(company, generation, filter), pos, count),
    ]);
    // Behind the last page no row says how many there are.
    const total =
      counted ?? (rows.length === 0 && page > 1 ? await count() : Number(rows[0]?.total ?? 0));
    return {
      rows: rows.map(jobRow),
      total,
      page,
      size,
      listsAt: pos,
    };
  }
}

/** Of what a total depends on; the order of rows is not of it. */
const keyOf = (company: string, generation: number, { sort: _, ...filter }: Filter): string =>
  JSON.stringify([company, generation, filter]);

/** Fewer than three letters say little: they find numbers and names that begin with them. */
const FEW = 3;
const isShort = (text: string): boolean => text.length < FEW;

const source = ({ find }: Filter, generation: number): Prisma.Sql =>
  find && !isShort(find)
    ? Prisma.sql`ledger.find_jobs(${generation}::integer, ${likeOf(find)})`
    : Prisma.sql`job_row`;

function conditions({ find, stage, state, assigned, due }: Filter): Prisma.Sql {
  const all = [
    Prisma.sql`true`,
    ...(find && isShort(find) ? [beginsWith(find)] : []),
    ...(stage ? [Prisma.sql`r.stage = ${stage}`] : []),
    ...(state ? [Prisma.sql`r.state = ${state}`] : []),
    ...(assigned ? [Prisma.sql`r.assigned = ${assigned}`] : []),
    ...(due === 'overdue' ? [Prisma.sql`r.due < current_date AND r.state <> 'Done'`] : []),
    ...(due === 'week' ? [Prisma.sql`r.due BETWEEN current_date AND current_date + 7`] : []),
    ...(due === 'any' ? [Prisma.sql`r.due IS NOT NULL`] : []),
  ];
  return Prisma.join(all, ' AND ');
}

const likeOf = (text: string) => `%${text.replace(/[\\%_]/g, (each) => `\\${each}`)}%`;

/** As typed, as a name begins, or in capitals; comparing without case would be slow on every row. */
const beginsWith = (text: string): Prisma.Sql => {
  const written = [
    ...new Set([text, text.charAt(0).toUpperCase() + text.slice(1), text.toUpperCase()]),
  ];
  const each = written.flatMap((start) => [
    Prisma.sql`starts_with(r.number, ${start})`,
    Prisma.sql`starts_with(r.name, ${start})`,
  ]);
  return Prisma.sql`(${Prisma.join(each, ' OR ')})`;
};

interface Counted {
  readonly total: bigint;
}

interface Row {
  readonly id: string;
  readonly number: string;
  readonly name: string;
  readonly customer: string;
  readonly site: string;
  readonly customer_name: string | null;
  readonly site_name: string | null;
  readonly stage: string;
  readonly stage_words: string;
  readonly state: JobRow['state'];
  readonly surfaces_done: number;
  readonly surfaces: number;
  readonly next_action: string;
  readonly waits_on: string;
  readonly waits_on_name: string | null;
  readonly due: Date | null;
  readonly assigned: string | null;
  readonly assigned_name: string | null;
  readonly updated_at: Date;
  /** Of all that was found, where words were looked for. */
  readonly total: bigint | null;
}

/** Who was erased is shown as that, never as an id. */
const ERASED = 'details erased';

const jobRow = (row: Row): JobRow => ({
  id: row.id,
  number: row.number,
  name: row.name,
  customer: row.customer_name ?? ERASED,
  site: row.site_name ?? ERASED,
  stage: row.stage,
  stage_words: row.stage_words,
  state: row.state,
  surfaces_done: row.surfaces_done,
  surfaces: row.surfaces,
  next_action: row.next_action,
  on: row.waits_on_name ?? row.waits_on,
  due: row.due?.toISOString().slice(0, 10) ?? null,
  assigned: row.assigned_name,
  updated_at: row.updated_at.toISOString(),
});
