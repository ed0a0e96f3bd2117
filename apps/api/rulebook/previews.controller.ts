// Previews of what a draft would change: begun, followed, cancelled, read and downloaded.

import { Body, Controller, Param, Query, Res } from '@nestjs/common';
import { stringify } from 'csv-stringify/sync';
import type { Response } from 'express';
import { z } from 'zod';
import { ANSWERS, ANSWER_WORDS, IMPACT_SCOPES, impactSentence } from '#jobs/contract';
import { Route } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { Problem } from '../problems.js';
import { DraftId } from './drafts.controller.js';
import { PREVIEW_STATES, Previews, type KeptPreview } from './previews.js';
import { Rulebooks } from './rulebooks.js';
import type { ImpactRow } from './run-preview.js';

const PreviewId = z.uuid('must be the id of a preview');
const PreviewSchema = z
  .object({
    id: z.string(),
    draft: z.string(),
    draft_version: z.int(),
    edition: z.int(),
    scope: z.enum(IMPACT_SCOPES),
    state: z.enum(PREVIEW_STATES),
    asked_at: z.string(),
    read: z.int().describe('how much is read, of what is to be read'),
    of: z.int(),
    done: z.int(),
    counts: z.record(z.string(), z.int()),
    words: z.string(),
    position: z.int().describe('of the record, up to which it looked'),
    differing: z.int(),
    unlisted: z.int().describe('counted and not listed'),
    failure: z.string().nullable(),
  })
  .meta({ id: 'RulesPreview' });
const RowSchema = z.object({
  job: z.string(),
  number: z.string(),
  job_name: z.string(),
  surface: z.string(),
  surface_name: z.string(),
  stage: z.string(),
  answer: z.enum(ANSWERS),
  before: z.string(),
  after: z.string(),
  words: z.string(),
  rules: z.array(z.string()),
});
const emptyIsNone = (value: unknown) => (value === '' ? undefined : value);
const Filter = z.strictObject({
  answer: z.preprocess(emptyIsNone, z.enum(ANSWERS).optional()),
  rule: z.preprocess(emptyIsNone, z.string().max(20).optional()),
  find: z.string().trim().max(200).optional(),
});
const Paged = Filter.extend({ page: z.coerce.number().int().min(1).max(100_000).default(1) });
type Filter = z.output<typeof Filter>;
const Start = z.strictObject({ scope: z.enum(IMPACT_SCOPES).default('open') });

const SIZE = 100;
const MANAGER = ['standards-manager'] as const;
const COLUMNS = [
  'job',
  'job name',
  'surface',
  'stage',
  'answer',
  'before',
  'after',
  'rules',
  'words',
];

@Controller('api/rulebook')
export class PreviewsController {
  constructor(
    private readonly previews: Previews,
    private readonly rulebooks: Rulebooks,
  ) {}

  @Route('POST', 'drafts/:draft/previews', {
    says: 'Work out in the background what a draft would change; asked twice, it runs once',
    who: MANAGER,
    answers: 'created',
    gives: PreviewSchema,
  })
  async start(
    @Asking() { company }: SignedIn,
    @Param('draft', { schema: DraftId }) id: string,
    @Body({ schema: Start }) { scope }: z.output<typeof Start>,
  ) {
    const { version, edition } = await this.rulebooks.draft(company.id, id);
    const asked = { company: company.id, draft: id, draftVersion: version, edition, scope };
    return view(this.previews.start(asked));
  }

  @Route('GET', 'drafts/:draft/previews', {
    says: 'The previews of a draft that are still there',
    who: MANAGER,
    gives: z.object({ previews: z.array(PreviewSchema) }),
  })
  list(@Asking() { company }: SignedIn, @Param('draft', { schema: DraftId }) id: string) {
    return { previews: this.previews.ofDraft(company.id, id).map(view) };
  }

  @Route('GET', 'previews/:preview', {
    says: 'How far a preview is, and what it found',
    who: MANAGER,
    gives: PreviewSchema,
  })
  one(@Asking() asking: SignedIn, @Param('preview', { schema: PreviewId }) id: string) {
    return view(this.found(asking, id));
  }

  @Route('DELETE', 'previews/:preview', {
    says: 'Cancel a preview; one that is finished stays',
    who: MANAGER,
    gives: PreviewSchema,
  })
  cancel(@Asking() asking: SignedIn, @Param('preview', { schema: PreviewId }) id: string) {
    this.found(asking, id);
    return view(this.previews.cancel(asking.company.id, id) ?? this.found(asking, id));
  }

  @Route('GET', 'previews/:preview/rows', {
    says: 'Only what differs, before and after; filtered',
    who: MANAGER,
    gives: z.object({ rows: z.array(RowSchema), total: z.int(), page: z.int(), size: z.int() }),
  })
  rows(
    @Asking() asking: SignedIn,
    @Param('preview', { schema: PreviewId }) id: string,
    @Query({ schema: Paged }) { page, ...filter }: z.output<typeof Paged>,
  ) {
    const all = this.found(asking, id).rows.filter((row) => matches(row, filter));
    const rows = all.slice((page - 1) * SIZE, page * SIZE);
    return { rows, total: all.length, page, size: SIZE };
  }

  @Route('GET', 'previews/:preview/rows.csv', {
    says: 'The same rows, all pages, as CSV',
    who: MANAGER,
    gives: 'text/csv',
  })
  csv(
    @Asking() asking: SignedIn,
    @Param('preview', { schema: PreviewId }) id: string,
    @Query({ schema: Filter }) filter: Filter,
    @Res() response: Response,
  ): void {
    const preview = this.found(asking, id);
    const lines = preview.rows.filter((row) => matches(row, filter)).map(cells);
    const name = `edition-${preview.edition.number}-${preview.scope}.csv`;
    response.setHeader('Content-Type', 'text/csv; charset=utf-8');
    response.setHeader('Content-Disposition', `attachment; filename="${name}"`);
    response.setHeader('Cache-Control', 'no-store');
    response.end(stringify([COLUMNS, ...lines], { bom: true, escape_formulas: true }));
  }

  private found({ company }: SignedIn, id: string): KeptPreview {
    const kept = this.previews.find(company.id, id);
    if (!kept) throw new Problem('not-found', 'This preview is not kept any more: run it again.');
    return kept;
  }
}

export const cells = (row: ImpactRow): readonly string[] => [
  row.number,
  row.job_name,
  row.surface_name,
  row.stage,
  ANSWER_WORDS[row.answer],
  row.before,
  row.after,
  row.rules.join(' '),
  row.words,
];

function matches(row: ImpactRow, { answer, rule, find }: Filter): boolean {
  const text = `${row.number} ${row.job_name} ${row.surface_name}`.toLowerCase();
  return (
    (answer === undefined || row.answer === answer) &&
    (rule === undefined || row.rules.includes(rule)) &&
    (find === undefined || text.includes(find.toLowerCase()))
  );
}

const view = (kept: KeptPreview) => ({
  id: kept.id,
  draft: kept.draft,
  draft_version: kept.draftVersion,
  edition: kept.edition.number,
  scope: kept.scope,
  state: kept.state,
  asked_at: kept.askedAt,
  read: kept.read,
  of: kept.of,
  done: kept.done,
  counts: kept.counts,
  words: impactSentence(kept.scope, kept.done, kept.counts),
  position: kept.position,
  differing: kept.done - kept.counts.same,
  unlisted: kept.unlisted,
  failure: kept.failure,
});
