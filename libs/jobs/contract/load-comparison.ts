// The load charts of one profile beside the calculation from its outline, as pages and clients get it.

import { z } from 'zod';
import { METALS } from '#rules';
import { amountIn, Id, Name, Words } from './amounts.js';

/** One number of a chart, the calculated one, and the difference in percent of the chart's. */
export const ComparedLoad = z.strictObject({
  chart: amountIn('psf').nullable(),
  calculated: amountIn('psf').nullable(),
  difference: amountIn('%').nullable(),
  smaller: z.enum(['chart', 'calculated', 'neither']).nullable(),
  limit_state: Words.nullable().describe('what governs the calculation'),
});
export type ComparedLoad = z.infer<typeof ComparedLoad>;

export const ComparedSheet = z.strictObject({
  chart: Id.nullable().describe(
    'null: this sheet has no chart, and the numbers are only calculated',
  ),
  width: amountIn('in'),
  metal: z.enum(METALS),
  gauge: z.string().max(4).nullable(),
  thickness: amountIn('in'),
  grade: Name,
  spans: z.enum(['1', '2', '3+']),
  deflection_limit: z.string().max(20),
  attachment_included: z.boolean(),
  source: Words.nullable(),
  not_calculated: z.array(Words).describe('every reason; empty where it is calculated'),
  rows: z.array(
    z.strictObject({
      span: amountIn('in'),
      inward: ComparedLoad,
      outward: ComparedLoad,
      deflection: ComparedLoad,
    }),
  ),
});
export type ComparedSheet = z.infer<typeof ComparedSheet>;

export const LoadComparison = z.strictObject({
  profile: z.strictObject({ id: Id, name: Name }),
  sheets: z.array(ComparedSheet),
  notes: z.array(Words),
  cautions: z.array(Words),
});
export type LoadComparison = z.infer<typeof LoadComparison>;
