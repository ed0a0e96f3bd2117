// Every event a job's stream holds. The type carries its version; a stored sample of each version is
// a test. Person, role and times stand in the ledger's envelope.

import type { Finding, Priority, Stage, SurfaceKind } from '#rules';
import type { FileRef, PartyRef } from './amounts.js';
import type {
  Attachment,
  CommandOf,
  EngineerConditions,
  FactEntry,
  Hazards,
  License,
} from './commands.js';
import type { AfterOrderEvents } from './after-order-events.js';
import type { Evaluation } from './evaluation.js';
import type { TakeOffResult } from './take-off.js';
import type { Path } from './fact-dictionary.js';

/** Path → value, as it was read. A path not known then reads null. */
export type Reads = Readonly<Record<Path, unknown>>;

interface OverrideRecord {
  readonly rule: string;
  readonly reason: string;
  readonly says: string;
}

/** What every confirmed stage keeps: what it settled, what it read, and what the rules said. */
interface Confirmed {
  readonly surface: string;
  readonly reads: Reads;
  readonly findings: readonly Finding[];
  readonly overrides: readonly OverrideRecord[];
  readonly acknowledged: readonly string[];
  readonly rules_edition: { readonly number: number; readonly digest: string };
  readonly catalogue_edition: { readonly number: number; readonly digest: string };
  readonly reason: string | null;
}

export interface StyleContent {
  readonly profile: string;
  readonly profile_name: string;
  readonly family: string;
  readonly width: string;
  readonly lap_sealant: boolean;
}
export interface CoatingContent {
  readonly metal: string;
  readonly metallic_coating: string;
  readonly paint_system: string;
  readonly color_group: string;
  readonly color: string | null;
}
/** Loads as they count: entered or calculated, each with its source, at one stated basis. */
export interface HazardsContent {
  readonly wind: WindContent;
  readonly snow: SnowContent;
  readonly roof_live_psf: string | null;
  readonly temperature: NonNullable<Hazards['temperature']> | null;
}
export interface WindContent {
  readonly method: 'entered' | 'calculated' | 'not-applicable';
  readonly basis: 'strength' | 'ASD';
  readonly zones: readonly {
    readonly zone: string;
    readonly part: 'roof' | 'overhang' | 'wall';
    readonly inward_psf: string;
    readonly outward_psf: string;
  }[];
  readonly by_engineer: boolean;
  readonly source: string;
  readonly edition: string | null;
  readonly unconfirmed: readonly string[];
  readonly outside: readonly string[];
  readonly steps: Evaluation['demands'][number]['steps'];
}
export interface SnowContent {
  readonly method: 'entered' | 'calculated' | 'not-applicable';
  readonly basis: 'strength' | 'ASD';
  readonly roof_psf: string;
  /** Whether the slope factor of an unobstructed slippery roof was used. */
  readonly slippery: boolean;
  readonly by_engineer: boolean;
  readonly source: string;
  readonly edition: string | null;
  readonly unconfirmed: readonly string[];
  readonly outside: readonly string[];
  readonly steps: Evaluation['demands'][number]['steps'];
}
export interface SubstrateContent {
  readonly substrate: string;
  readonly open_framing: boolean;
  /** A reroof is provisional until the tear-off checkpoint. */
  readonly provisional: boolean;
}
export interface GaugeContent {
  readonly option: string;
  readonly gauge: string | null;
  readonly thickness_in: string;
  readonly grade: string;
  readonly attachment: Attachment;
  readonly recommended: string | null;
  readonly why: string | null;
}

export interface StageContents {
  readonly style: StyleContent;
  readonly coating: CoatingContent;
  readonly hazards: HazardsContent;
  readonly substrate: SubstrateContent;
  readonly gauge: GaugeContent;
}
export type ConfirmedStage = keyof StageContents;

interface SignOffAnswer {
  readonly request: string;
  readonly license: License;
  readonly statement: string;
  readonly exclusions: string;
  readonly packet: string;
}

export interface EventData extends AfterOrderEvents {
  'job-opened/1': {
    readonly number: string;
    readonly name: string;
    readonly site: PartyRef;
    readonly parties: CommandOf<'open-job'>['parties'];
    readonly priorities: readonly Priority[];
    readonly due: string | null;
    readonly jurisdiction: string | null;
  };
  'job-described/1': Omit<CommandOf<'describe-job'>, 'type'>;
  'building-added/1': { readonly building: string; readonly name: string };
  'surface-added/1': {
    readonly surface: string;
    readonly building: string;
    readonly name: string;
    readonly kind: SurfaceKind;
  };
  'surface-withdrawn/1': { readonly surface: string; readonly reason: string };
  'facts-recorded/1': {
    readonly facts: readonly (Omit<FactEntry, 'on' | 'fact'> & { readonly path: Path })[];
    readonly reason: string | null;
    readonly corrects: string | null;
  };
  'style-chosen/1': Confirmed & { readonly content: StyleContent };
  'coating-chosen/1': Confirmed & { readonly content: CoatingContent };
  'hazards-assessed/1': Confirmed & { readonly content: HazardsContent };
  'substrate-confirmed/1': Confirmed & { readonly content: SubstrateContent };
  'gauge-selected/1': Confirmed & {
    readonly content: GaugeContent;
    readonly evaluation: Evaluation;
  };
  'stage-reopened/1': {
    readonly surface: string;
    readonly stage: ConfirmedStage;
    readonly reason: string;
  };
  'tear-off-recorded/1': {
    readonly surface: string;
    readonly finding: 'as-assumed' | 'different';
    readonly words: string;
    readonly files: readonly FileRef[];
  };
  'sign-off-requested/1': {
    readonly request: string;
    readonly surfaces: readonly string[];
    readonly engineer: PartyRef;
    readonly scope_words: string;
    readonly exclusions: string;
    readonly expires: string;
    /** Inputs in scope, by surface; a later difference puts the sign-off up for re-check. */
    readonly scope: Readonly<Record<string, Reads>>;
    readonly requires: Readonly<Record<string, readonly string[]>>;
  };
  'sign-off-approved/1': SignOffAnswer & { readonly conditions: EngineerConditions | null };
  'sign-off-declined/1': SignOffAnswer & { readonly reasons: string };
  'engineer-design-received/1': Omit<CommandOf<'record-engineer-design'>, 'type'> & {
    readonly scope_inputs: Readonly<Record<string, Reads>>;
    readonly standing: 'attached, not verified in this system';
  };
  'sign-off-reaffirmed/1': {
    readonly request: string;
    readonly license: License;
    readonly statement: string;
    readonly differences: readonly Difference[];
    readonly scope: Readonly<Record<string, Reads>>;
  };
  'sign-off-revoked/1': { readonly request: string; readonly reason: string };
  'take-off-recorded/1': {
    readonly surface: string;
    /** Counted within its surface, from 1. */
    readonly number: number;
    readonly asked: Omit<CommandOf<'record-take-off'>, 'type' | 'surface'>;
    readonly result: TakeOffResult;
    readonly reads: Reads;
    readonly catalogue_edition: { readonly number: number; readonly digest: string };
  };
  'note-added/1': {
    readonly about: string | null;
    readonly words: string;
    readonly files: readonly FileRef[];
  };
}

export interface Difference {
  readonly surface: string;
  readonly path: Path;
  readonly from: unknown;
  readonly to: unknown;
}

export type EventType = keyof EventData;
/** What `decide` gives. */
export type JobEvent = {
  [T in EventType]: { readonly type: T; readonly data: EventData[T] };
}[EventType];
/** What `evolve` takes: the event with what the envelope says of it. */
export type PastEvent = JobEvent & {
  readonly id: string;
  readonly version: number;
  readonly by: { readonly person: string; readonly role: string };
  readonly recordedAt: string;
  readonly effectiveAt: string;
};

export const STAGE_EVENT = {
  style: 'style-chosen/1',
  coating: 'coating-chosen/1',
  hazards: 'hazards-assessed/1',
  substrate: 'substrate-confirmed/1',
  gauge: 'gauge-selected/1',
} as const satisfies Record<ConfirmedStage, EventType>;

export type { Stage };
