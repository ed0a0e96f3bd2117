// The owner's report: time in each stage, on whom jobs waited, how often rules were set aside.

import { Controller, Query } from '@nestjs/common';
import { z } from 'zod';
import { Day } from '#jobs/contract';
import { Companies } from '../data/companies.js';
import { Ledgers } from '../data/ledgers.js';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { OFFICE_LIST } from './keep-office-list.js';

const Span = z.strictObject({ from: Day.optional(), to: Day.optional() });
const Days = z.number().describe('days, to two decimals');
const StageTimes = z.object({
  stage: z.string(),
  jobs: z.int(),
  mean: Days,
  median: Days,
  longest: Days,
});
const Waits = z.object({ stage: z.string(), on: z.string(), times: z.int(), days: Days });
const Overrides = z.object({
  stage: z.string(),
  confirmations: z.int(),
  with_overrides: z.int(),
  rate: z.number(),
});

@Controller('api/reports')
export class OwnerReportController {
  constructor(
    private readonly companies: Companies,
    private readonly ledgers: Ledgers,
  ) {}

  @Route('GET', 'stages', {
    says: 'Time in each stage, on whom jobs waited, and how often rules were set aside; stages still open count until now',
    who: ['project-manager', 'administrator'],
    gives: z.object({
      stages: z.array(StageTimes),
      waits: z.array(Waits),
      overrides: z.array(Overrides),
      listsAt: z.int(),
    }),
  })
  async stages(
    @Asking() { company }: SignedIn,
    @Query({ schema: Span }) { from = '1900-01-01', to = '9999-12-31' }: z.output<typeof Span>,
  ) {
    const { pool } = this.companies.of(company.id);
    const { generation, pos } = await this.ledgers.liveList(company.id, OFFICE_LIST);
    const values = [company.id, generation, from, to];
    const [stages, waits, overrides] = await Promise.all([
      pool.query<z.output<typeof StageTimes>>(STAGES, values),
      pool.query<z.output<typeof Waits>>(WAITS, values),
      pool.query<{ stage: string; confirmations: number; with_overrides: number }>(
        OVERRIDES,
        values,
      ),
    ]);
    return {
      stages: stages.rows,
      waits: waits.rows,
      listsAt: pos,
      overrides: overrides.rows.map((row) => ({
        ...row,
        rate: row.with_overrides / row.confirmations,
      })),
    };
  }
}

const SPELLS = `
  WITH spell AS (
    SELECT job, stage, waits_on, began_at,
      extract(epoch FROM coalesce(lead(began_at) OVER (PARTITION BY job ORDER BY version), now()) - began_at) / 86400 AS days
    FROM stage_spell WHERE company_id = $1 AND generation = $2
  ), wanted AS (SELECT * FROM spell WHERE began_at >= $3::date AND began_at < $4::date + 1 AND waits_on <> 'nobody')`;

const STAGES = `${SPELLS}, job_stage AS (SELECT job, stage, sum(days) AS days FROM wanted GROUP BY job, stage)
  SELECT stage, count(*)::int AS jobs, round(avg(days), 2)::float8 AS mean,
    round(percentile_cont(0.5) WITHIN GROUP (ORDER BY days)::numeric, 2)::float8 AS median, round(max(days), 2)::float8 AS longest
  FROM job_stage GROUP BY stage ORDER BY stage`;

const WAITS = `${SPELLS}
  SELECT stage, waits_on AS on, count(*)::int AS times, round(sum(days), 2)::float8 AS days
  FROM wanted GROUP BY stage, waits_on ORDER BY sum(days) DESC`;

const OVERRIDES = `
  SELECT stage, count(*)::int AS confirmations, count(*) FILTER (WHERE overrides > 0)::int AS with_overrides
  FROM stage_confirmation WHERE company_id = $1 AND generation = $2
    AND confirmed_at >= $3::date AND confirmed_at < $4::date + 1
  GROUP BY stage ORDER BY stage`;
