// What the service answers beside the views of the contract.

import type { Finding, JobRow, JobView, RefusalView, Role } from '#jobs/contract';

/** What the next signing of this session needs. */
export interface SigningStanding {
  readonly code_needed: boolean;
  readonly comes: 'e-mail' | 'phone';
}

export interface Session {
  readonly person: { readonly id: string; readonly name: string; readonly email: string };
  readonly roles: readonly Role[];
  readonly company: { readonly id: string; readonly name: string };
  readonly csrf: string;
  readonly expiresAt: string;
}

export interface Fault {
  readonly pointer: string;
  readonly message: string;
}

/** Who changed what since the version the person saw. */
export interface Since {
  readonly by: string;
  readonly at: string;
  readonly words: string;
  readonly surfaces: readonly string[] | 'all';
}

/** RFC 9457 problem details with this product's lists. */
export interface Problem {
  readonly status: number;
  readonly title: string;
  readonly detail?: string;
  readonly refusals?: readonly RefusalView[];
  readonly faults?: readonly Fault[];
  readonly since?: readonly Since[];
}

export interface JobPage {
  readonly rows: readonly JobRow[];
  readonly total: number;
  readonly page: number;
  readonly size: number;
}

export interface HistoryEntry {
  readonly version: number;
  readonly pos: number;
  readonly id: string;
  readonly type: string;
  readonly words: string;
  readonly by: { readonly name: string; readonly role: string };
  readonly recordedAt: string;
  readonly effectiveAt: string;
  readonly surface?: string | readonly string[];
  readonly data: unknown;
}

export interface Party {
  readonly id: string;
  readonly kind: 'person' | 'site';
  readonly details?: Readonly<Record<string, string>>;
  readonly erased?: string;
}

export interface Colleague {
  readonly id: string;
  readonly name: string;
  readonly roles: readonly Role[];
}

export interface User extends Colleague {
  readonly email: string;
  readonly active: boolean;
  readonly has_password: boolean;
}

/** What an engineer is asked to sign: the job as it stood then, named by its digest. */
export interface Packet {
  readonly digest: string;
  readonly frozen_at: string;
  readonly body: { readonly job: JobView; readonly cautions: readonly string[] };
}

export interface WaitingRequest {
  readonly job: string;
  readonly number: string;
  readonly name: string;
  readonly request: string;
  readonly surfaces: readonly { readonly id: string; readonly name: string }[];
  readonly engineer: { readonly id: string; readonly name: string };
  readonly asked_at: string;
  readonly asked_by: string;
  readonly expires: string;
  readonly due: string | null;
}

export interface SpanningSurface {
  readonly job: string;
  readonly number: string;
  readonly name: string;
  readonly surface: { readonly id: string; readonly name: string };
  readonly due: string | null;
  readonly waits_for: string;
  readonly engineer: string | null;
  readonly asked_at: string | null;
  readonly since: string;
}

export interface SignOffs {
  readonly requests: readonly WaitingRequest[];
  readonly spanning: readonly SpanningSurface[];
}

export interface EditionRow {
  readonly number: number;
  readonly in_force_from: string;
  readonly summary: string;
  readonly digest?: string;
  readonly state?: string;
  readonly retired_on?: string | null;
}

export interface EditionRule extends Pick<Finding, 'title' | 'class' | 'severity' | 'version'> {
  readonly rule: string;
  readonly stage: string;
  readonly says: string;
  readonly cites: readonly string[];
  readonly settings: Readonly<Record<string, string | number | boolean>>;
}

export interface Rulebook extends EditionRow {
  readonly rules: readonly EditionRule[];
}

export interface Health {
  readonly ok: boolean;
  readonly version: string;
  readonly lists: readonly { readonly name: string; readonly pos: number; readonly head: number }[];
  readonly clock: {
    readonly steps: number;
    readonly last: {
      readonly clock: string;
      readonly after: string;
      readonly behind_ms: number;
      readonly position: number;
    };
  } | null;
  readonly verification: Verification | null;
  readonly time_stamp: TimeStamp | null;
}

export interface VerificationRun {
  readonly run: string;
  readonly asked_by: string | null;
  readonly started_at: string;
  readonly finished_at: string | null;
  readonly result: 'sound' | 'damaged' | null;
  readonly positions: number;
  readonly of: number;
  readonly checkpoint: number | null;
  readonly checkpoints_met: number;
  readonly first_bad: { readonly position: number | null; readonly says: string } | null;
  readonly trouble: string | null;
}

export interface Verification {
  readonly state: 'sound' | 'damaged' | 'never';
  readonly words: string;
  readonly overdue: boolean;
  readonly last: VerificationRun | null;
  readonly running: VerificationRun | null;
}

export interface TimeStamp {
  /** Whether a time-stamping authority is set up. */
  readonly asks: boolean;
  readonly stamp: { readonly at: string; readonly by: string; readonly size: number } | null;
  readonly fault: string | null;
  readonly trouble: string | null;
  /** Size of a newer checkpoint without one. */
  readonly untimed: number | null;
}
