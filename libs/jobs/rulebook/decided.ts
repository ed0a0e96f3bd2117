// A stage as it was decided: its content, what it read and what the rules said. From an event of
// the record, or from a job as it stands.

import type { Edition, Finding, RuleBook } from '#rules';
import type { Catalogue } from '../contract/catalogue.js';
import type { Evaluation } from '../contract/evaluation.js';
import {
  STAGE_EVENT,
  type ConfirmedStage,
  type PastEvent,
  type Reads,
  type StageContents,
} from '../contract/events.js';
import type { Path } from '../contract/fact-dictionary.js';
import { kindPath, type Where } from '../fact-paths.js';
import { activeSurfaces, CONFIRMED_STAGES, type Job } from '../job.js';
import { contentPaths, lookupIn, type Lookup } from '../lookup.js';

export interface Decided {
  readonly job: string;
  readonly surface: string;
  readonly stage: ConfirmedStage;
  readonly content: StageContents[ConfirmedStage];
  readonly reads: Reads;
  readonly findings: readonly Finding[];
  readonly evaluation?: Evaluation | undefined;
  readonly rules_edition: { readonly number: number; readonly digest: string };
  readonly catalogue_edition: { readonly number: number; readonly digest: string };
  /** What else was known then; a rule of another edition may ask for it. */
  readonly known?: Lookup | undefined;
}

/** Editions by their number, as they were published, with the digest of each. */
export interface Shelf {
  readonly book: RuleBook;
  readonly rules: (
    number: number,
  ) => { readonly edition: Edition; readonly digest: string } | undefined;
  readonly catalogue: (
    number: number,
  ) => { readonly edition: Catalogue; readonly digest: string } | undefined;
}

type StageEventType = (typeof STAGE_EVENT)[ConfirmedStage];
export type StageEvent = Extract<PastEvent, { readonly type: StageEventType }>;

export const isStageEvent = (event: PastEvent): event is StageEvent =>
  (Object.values(STAGE_EVENT) as readonly string[]).includes(event.type);

/** From the event's own data. */
export function decidedBy(job: string, event: StageEvent): Decided {
  const stage = CONFIRMED_STAGES.find((each) => STAGE_EVENT[each] === event.type);
  if (!stage) throw new Error(`${event.type} confirms no stage`);
  const { surface, content, reads, findings, rules_edition, catalogue_edition } = event.data;
  const evaluation = event.type === 'gauge-selected/1' ? event.data.evaluation : undefined;
  return {
    job,
    surface,
    stage,
    content,
    reads,
    findings,
    evaluation,
    rules_edition,
    catalogue_edition,
  };
}

/** Every confirmed stage of a job's surfaces. */
export function decidedIn(job: Job): readonly Decided[] {
  const known = lookupIn(job);
  return activeSurfaces(job).flatMap((surface) =>
    CONFIRMED_STAGES.flatMap((stage) => {
      const { status, record } = surface.stages[stage];
      return status === 'confirmed' && record
        ? [{ ...record, job: job.id, surface: surface.id, stage, known }]
        : [];
    }),
  );
}

/** What stood at each path when it was decided; null where it was neither read nor known. */
export function recordedIn({ surface, stage, content, reads, evaluation, known }: Decided): Lookup {
  const values = new Map<Path, unknown>([
    ...(evaluation?.facts.map(({ path, value }) => [path, value] as const) ?? []),
    ...Object.entries(reads),
    ...(stage === 'gauge' ? [] : Object.entries(contentPaths(surface, stage, content))),
  ]);
  return (path) => (values.has(path) ? values.get(path) : (known?.(path) ?? null));
}

export function whereOf(decided: Decided): Where {
  const { surface, reads, known } = decided;
  const building = Object.keys(reads)
    .find((path) => path.startsWith('building/'))
    ?.split('/')[1];
  const kind = reads[kindPath(surface)] ?? known?.(kindPath(surface)) ?? null;
  return { id: surface, building: building ?? '', kind: (kind ?? undefined) as Where['kind'] };
}
