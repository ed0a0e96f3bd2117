// The state of a job, as its events tell it. Stage contents stay visible when they need a re-check;
// they no longer count until they are confirmed again.

import { STAGES, type Finding, type Priority, type Stage, type SurfaceKind } from '#rules';
import { NOTHING_ORDERED, type AfterOrder } from './after-order/state.js';
import type { PartyRef } from './contract/amounts.js';
import type { EngineerConditions, License } from './contract/commands.js';
import type {
  ConfirmedStage,
  Difference,
  EventData,
  Reads,
  StageContents,
} from './contract/events.js';
import type { Evaluation } from './contract/evaluation.js';
import type { Path } from './contract/fact-dictionary.js';
import type { Cause } from './contract/cause.js';

export interface Job {
  readonly id: string;
  /** How many events it has; 0 before it is opened. */
  readonly version: number;
  readonly number: string;
  readonly name: string;
  readonly site: PartyRef | null;
  readonly parties: Readonly<Record<string, PartyRef | undefined>>;
  readonly priorities: readonly Priority[];
  readonly due: string | null;
  readonly jurisdiction: string | null;
  readonly assigned: string | null;
  readonly buildings: Readonly<Record<string, { readonly id: string; readonly name: string }>>;
  readonly surfaces: Readonly<Record<string, Surface>>;
  readonly facts: Readonly<Record<Path, FactState>>;
  readonly signOffs: Readonly<Record<string, SignOff>>;
  readonly notes: readonly Note[];
  /** The newest of each surface that has one. */
  readonly takeOffs: Readonly<Record<string, TakeOffState>>;
  readonly after: AfterOrder;
  readonly updatedAt: string;
}

export interface Note {
  readonly about: string | null;
  readonly words: string;
  readonly by: string;
  readonly at: string;
}

export interface FactState {
  readonly value: unknown;
  readonly how: string;
  readonly source: string | null;
  readonly by: string;
  readonly at: string;
  readonly effectiveAt: string;
  readonly earlier: readonly Omit<FactState, 'earlier'>[];
}

export interface Surface {
  readonly id: string;
  readonly building: string;
  readonly name: string;
  readonly kind: SurfaceKind;
  readonly withdrawn: string | null;
  readonly stages: { readonly [S in ConfirmedStage]: StageState<S> };
  readonly tearOff: 'not-needed' | 'due' | 'different' | 'confirmed';
  /** Set by a tear-off that differed; panel laying is on hold until every stage stands again. */
  readonly held: boolean;
  /** The sign-off or design that speaks for this surface, newest first. */
  readonly signOff: string | null;
}

export interface StageState<S extends ConfirmedStage = ConfirmedStage> {
  readonly status: 'not-started' | 'confirmed' | 'needs-recheck';
  readonly record: StageRecord<S> | null;
  readonly causes: readonly Cause[];
}

export interface StageRecord<S extends ConfirmedStage = ConfirmedStage> {
  readonly content: StageContents[S];
  readonly reads: Reads;
  readonly findings: readonly Finding[];
  readonly overrides: readonly {
    readonly rule: string;
    readonly reason: string;
    readonly says: string;
  }[];
  readonly acknowledged: readonly string[];
  readonly rules_edition: { readonly number: number; readonly digest: string };
  readonly catalogue_edition: { readonly number: number; readonly digest: string };
  readonly by: { readonly person: string; readonly role: string };
  readonly at: string;
  readonly evaluation?: Evaluation;
}

export interface SignOff {
  readonly id: string;
  readonly kind: 'asked' | 'design-received';
  readonly surfaces: readonly string[];
  readonly engineer: string;
  readonly scopeWords: string;
  readonly exclusions: string;
  readonly askedBy: string;
  readonly askedAt: string;
  readonly expires: string;
  readonly standing:
    | 'waiting'
    | 'approved'
    | 'approved-with-conditions'
    | 'declined'
    | 'revoked'
    | 'design-received';
  readonly license: License | null;
  readonly words: string | null;
  readonly conditions: EngineerConditions | null;
  /** Inputs in scope, by surface. */
  readonly scope: Readonly<Record<string, Reads>>;
  /** Changes of inputs in scope since; once there is one, only the engineer can cure it. */
  readonly differences: readonly Difference[];
}

export const CONFIRMED_STAGES = [
  'style',
  'coating',
  'hazards',
  'substrate',
  'gauge',
] as const satisfies readonly ConfirmedStage[];

const notStarted = { status: 'not-started', record: null, causes: [] } as const;
export const NO_STAGES: Surface['stages'] = {
  style: notStarted,
  coating: notStarted,
  hazards: notStarted,
  substrate: notStarted,
  gauge: notStarted,
};

export function initial(id: string): Job {
  return {
    id,
    version: 0,
    number: '',
    name: '',
    site: null,
    parties: {},
    priorities: [],
    due: null,
    jurisdiction: null,
    assigned: null,
    buildings: {},
    surfaces: {},
    facts: {},
    signOffs: {},
    notes: [],
    takeOffs: {},
    after: NOTHING_ORDERED,
    updatedAt: '',
  };
}

/** Stages before this one, in order. */
export function stagesBefore(stage: Stage): readonly ConfirmedStage[] {
  return STAGES.slice(0, STAGES.indexOf(stage)) as readonly ConfirmedStage[];
}
export function stagesAfter(stage: Stage): readonly ConfirmedStage[] {
  return CONFIRMED_STAGES.slice(STAGES.indexOf(stage) + 1);
}

/** The first stage of a surface that does not count; "done" where all do. */
export function surfaceStage(job: Job, surface: Surface): Stage | 'done' {
  const open = CONFIRMED_STAGES.find((stage) => surface.stages[stage].status !== 'confirmed');
  if (open) return open;
  return signOffStands(job, surface) ? 'done' : 'sign-off';
}

export const signOffRequired = (surface: Surface): readonly string[] =>
  surface.stages.gauge.record?.evaluation?.sign_off_required ?? [];

/** Whether an engineer has spoken for this surface, on today's inputs and within the license. */
export function signOffStands(job: Job, surface: Surface): boolean {
  if (signOffRequired(surface).length === 0) return true;
  const signOff = surface.signOff ? job.signOffs[surface.signOff] : undefined;
  if (!signOff || differencesFor(signOff, surface.id).length > 0) return false;
  return (
    signOff.standing === 'approved' ||
    signOff.standing === 'approved-with-conditions' ||
    signOff.standing === 'design-received'
  );
}

export const differencesFor = (signOff: SignOff, surface: string): readonly Difference[] =>
  signOff.differences.filter((each) => each.surface === surface);

export const activeSurfaces = (job: Job): readonly Surface[] =>
  Object.values(job.surfaces).filter((surface) => surface.withdrawn === null);

export interface TakeOffState extends Readonly<EventData['take-off-recorded/1']> {
  readonly by: string;
  readonly at: string;
  /** Empty while it counts. */
  readonly causes: readonly Cause[];
}
