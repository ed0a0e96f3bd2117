// What a verification found, in words and figures for pages, the health answer and mail.

import { z } from 'zod';
import type { Run } from './verification-runs.js';

const RunSchema = z
  .object({
    run: z.string(),
    asked_by: z.string().nullable().describe('id of a person; null: nightly'),
    started_at: z.string(),
    finished_at: z.string().nullable(),
    result: z.enum(['sound', 'damaged']).nullable(),
    positions: z.int().describe('entries found good, from the first on'),
    of: z.int(),
    checkpoint: z
      .int()
      .nullable()
      .describe('size of the checkpoint kept outside the database; null: none is kept'),
    checkpoints_met: z.int(),
    first_bad: z.object({ position: z.int().nullable(), says: z.string() }).nullable(),
    trouble: z.string().nullable().describe('why an unfinished run stands still'),
  })
  .meta({ id: 'VerificationRun' });
export const VerificationSchema = z
  .object({
    state: z.enum(['sound', 'damaged', 'never']),
    words: z.string(),
    overdue: z.boolean().describe('the last finished run is older than 36 hours'),
    last: RunSchema.nullable(),
    running: RunSchema.nullable(),
  })
  .meta({ id: 'Verification' });
export type VerificationView = z.output<typeof VerificationSchema>;
export const RunsSchema = z.object({ runs: z.array(RunSchema) });

const OVERDUE_MS = 36 * 3_600_000;

export function verificationView(
  { last, open }: { last: Run | undefined; open: Run | undefined },
  now: number,
): VerificationView {
  const finished = last?.finishedAt;
  return {
    state: last?.result ?? 'never',
    words: last ? runWords(last) : 'The record was never verified as a whole.',
    overdue: !finished || now - finished.getTime() > OVERDUE_MS,
    last: last ? runView(last) : null,
    running: open ? runView(open) : null,
  };
}

export const runView = (run: Run) => ({
  run: run.run,
  asked_by: run.askedBy,
  started_at: run.startedAt.toISOString(),
  finished_at: run.finishedAt?.toISOString() ?? null,
  result: run.result,
  positions: run.done,
  of: run.head,
  checkpoint: run.checkpoint,
  checkpoints_met: run.met,
  first_bad: run.faultSays === null ? null : { position: run.faultPos, says: run.faultSays },
  trouble: run.trouble,
});

/** In sentences, without a time: what it is shown with has one. */
export function runWords(run: Run): string {
  if (run.result === null) return `${entries(run.done)} of ${count(run.head)} looked over so far.`;
  if (run.result === 'damaged') {
    const where = run.faultPos === null ? '' : `The first bad position is ${count(run.faultPos)}: `;
    const says = (run.faultSays ?? '').replace(/\.$/, '');
    return `${where}${says}. ${entries(run.done)} before it hold.`;
  }
  const found = `All ${entries(run.done)} are unaltered and in order`;
  return run.checkpoint === null
    ? `${found} among themselves. No checkpoint is kept outside the database: whoever owns it and ` +
        'computes every hash anew would not be found.'
    : `${found}, held to the checkpoint of ${entries(run.checkpoint)} kept outside the database.`;
}

const count = (n: number) => n.toLocaleString('en-US');
const entries = (n: number) => `${count(n)} ${n === 1 ? 'entry' : 'entries'}`;
