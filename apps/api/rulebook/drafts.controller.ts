// Drafts of the next rules edition: made, saved again, previewed, withdrawn, published.

import { Body, Controller, Param } from '@nestjs/common';
import { v7 as uuid } from 'uuid';
import { z } from 'zod';
import {
  DraftedEdits,
  Edit,
  impactSentence,
  PublishedImpact,
  RuleChange,
  RUNNING_JOBS,
  Words,
} from '#jobs/contract';
import { Header } from '../http/header.js';
import { Route, STAFF } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { IfMatch, Key } from '../jobs/jobs.controller.js';
import { Names } from '../people/names.js';
import { Problem } from '../problems.js';
import { Editions } from './editions.js';
import { Previews } from './previews.js';
import { Rulebooks, type SavedDraft } from './rulebooks.js';

export const DraftId = z.uuid('must be the id of a draft');
const DraftSchema = z
  .object({
    id: z.string(),
    version: z.int().describe('goes into If-Match when it is saved again or published'),
    number: z.int(),
    base: z.int(),
    newest: z.int().describe('of the published editions; a draft of an older one is out of date'),
    in_force_from: z.string(),
    summary: z.string(),
    edits: z.array(Edit),
    changes: z.array(RuleChange),
    by: z.string(),
    at: z.string(),
  })
  .meta({ id: 'RulesDraft' });
const Publish = z
  .strictObject({ reason: Words, running_jobs: z.enum(RUNNING_JOBS), preview: z.uuid().optional() })
  .meta({ id: 'PublishRules' });
const SEEN = { 'If-Match': 'the version of the draft that was seen' };
const KEY = { 'Idempotency-Key': 'the same key with the same request is done once' };
const MANAGER = ['standards-manager'] as const;
const FAILS = ['conflict', 'stale', 'wrong-stage', 'busy', 'version-missing'] as const;

@Controller('api/rulebook/drafts')
export class DraftsController {
  constructor(
    private readonly rulebooks: Rulebooks,
    private readonly editions: Editions,
    private readonly previews: Previews,
    private readonly names: Names,
  ) {}

  @Route('GET', '', {
    says: 'The drafts of the next rules edition',
    who: STAFF,
    gives: z.object({ drafts: z.array(DraftSchema) }),
  })
  async list(@Asking() { company }: SignedIn) {
    const drafts = await this.rulebooks.drafts(company.id);
    return { drafts: await Promise.all(drafts.map((each) => this.view(company.id, each))) };
  }

  @Route('GET', ':draft', {
    says: 'One draft with what it changes',
    who: STAFF,
    gives: DraftSchema,
  })
  async one(@Asking() { company }: SignedIn, @Param('draft', { schema: DraftId }) id: string) {
    return this.view(company.id, await this.rulebooks.draft(company.id, id));
  }

  @Route('POST', '', {
    says: 'Draft the next rules edition: what is changed of the newest one, each with its source',
    who: MANAGER,
    answers: 'created',
    headers: KEY,
    gives: DraftSchema,
    fails: FAILS,
  })
  async create(
    @Asking() asking: SignedIn,
    @Header('idempotency-key', Key) key: string | undefined,
    @Body({ schema: DraftedEdits.meta({ id: 'DraftedEdits' }) }) body: DraftedEdits,
  ) {
    const command = { type: 'draft-rules-edition', draft: uuid(), seen: 0, ...body } as const;
    const { draft = '' } = await this.rulebooks.execute(asking, command, key ?? uuid(), body);
    return this.view(asking.company.id, await this.rulebooks.draft(asking.company.id, draft));
  }

  @Route('PUT', ':draft', {
    says: 'Save a draft again, laid over the newest edition',
    who: MANAGER,
    headers: { ...KEY, ...SEEN },
    gives: DraftSchema,
    fails: FAILS,
  })
  async save(
    @Asking() asking: SignedIn,
    @Param('draft', { schema: DraftId }) draft: string,
    @Header('if-match', IfMatch) version: string | undefined,
    @Header('idempotency-key', Key) key: string | undefined,
    @Body({ schema: DraftedEdits }) body: DraftedEdits,
  ) {
    const seen = seenIn(version);
    await this.rulebooks.draft(asking.company.id, draft);
    await this.rulebooks.execute(
      asking,
      { type: 'draft-rules-edition', draft, seen, ...body },
      key ?? uuid(),
    );
    return this.view(asking.company.id, await this.rulebooks.draft(asking.company.id, draft));
  }

  @Route('POST', ':draft/withdrawal', {
    says: 'Withdraw a draft, with a reason',
    who: MANAGER,
    answers: 'nothing',
    headers: KEY,
    fails: FAILS,
  })
  async withdraw(
    @Asking() asking: SignedIn,
    @Param('draft', { schema: DraftId }) draft: string,
    @Header('idempotency-key', Key) key: string | undefined,
    @Body({ schema: z.strictObject({ reason: Words }) }) { reason }: { reason: string },
  ): Promise<void> {
    const command = { type: 'withdraw-rules-draft', draft, reason } as const;
    await this.rulebooks.execute(asking, command, key ?? uuid());
  }

  @Route('POST', ':draft/publication', {
    says: 'Publish a draft as it was seen, with a reason and what becomes of jobs under way',
    who: MANAGER,
    answers: 'created',
    headers: { ...KEY, ...SEEN },
    gives: z.object({ number: z.int() }),
    fails: FAILS,
  })
  async publish(
    @Asking() asking: SignedIn,
    @Param('draft', { schema: DraftId }) draft: string,
    @Header('if-match', IfMatch) version: string | undefined,
    @Header('idempotency-key', Key) key: string | undefined,
    @Body({ schema: Publish }) body: z.output<typeof Publish>,
  ) {
    const seen = seenIn(version);
    const { preview, ...said } = body;
    const impact = this.impactOf(asking.company.id, draft, seen, preview);
    const command = { type: 'publish-rules-edition', draft, seen, ...said } as const;
    const { number = 0 } = await this.rulebooks.execute(
      asking,
      impact ? { ...command, impact } : command,
      key ?? uuid(),
      { draft, seen, ...body },
    );
    return { number };
  }

  /** What a finished preview of exactly this draft found; @throws Problem where it is another's. */
  private impactOf(
    company: string,
    draft: string,
    seen: number,
    id: string | undefined,
  ): PublishedImpact | undefined {
    if (id === undefined) return undefined;
    const kept = this.previews.find(company, id);
    if (kept?.state !== 'done' || kept.draft !== draft || kept.draftVersion !== seen) {
      const message = 'is no finished preview of this draft as it stands: run it again';
      throw new Problem('malformed', { faults: [{ pointer: '/preview', message }] });
    }
    const { scope, position, done, counts } = kept;
    return { scope, position, checked: done, words: impactSentence(scope, done, counts) };
  }

  private async view(company: string, { edition, ...draft }: SavedDraft) {
    const [names, { editions }] = await Promise.all([
      this.names.of(company, [draft.by]),
      this.editions.rules(company),
    ]);
    const { number, in_force_from, summary } = edition;
    const newest = editions.at(-1)?.number ?? 0;
    return {
      ...draft,
      number,
      in_force_from,
      summary,
      newest,
      by: names.get(draft.by) ?? draft.by,
    };
  }
}

function seenIn(version: string | undefined): number {
  if (version === undefined)
    throw new Problem('version-missing', 'Send If-Match with the version you saw.');
  return Number(version.slice(1, -1));
}
