// Every way a request can fail, with its HTTP status and title: status numbers stand nowhere else.
// Bodies are RFC 9457 problem details.

import type { RefusalView } from '#jobs/contract';

/** Statuses of what went well. */
export const ANSWERS = { ok: 200, created: 201, nothing: 204 } as const;
export type Answer = keyof typeof ANSWERS;

type RefusalKind = RefusalView['kind'];
type TransportKind =
  | 'unreadable'
  | 'not-signed-in'
  | 'wrong-credentials'
  | 'conflict'
  | 'erased'
  | 'too-large'
  | 'unsupported-media'
  | 'malformed'
  | 'version-missing'
  | 'too-many-attempts'
  | 'fault'
  | 'busy';
export type ProblemKind = RefusalKind | TransportKind;

export const PROBLEMS = {
  unreadable: { status: 400, title: 'The request cannot be read' },
  'not-signed-in': { status: 401, title: 'Sign in first' },
  'wrong-credentials': { status: 401, title: 'This does not sign anybody in' },
  forbidden: { status: 403, title: 'Not allowed' },
  'not-found': { status: 404, title: 'Not found' },
  conflict: { status: 409, title: 'This stands against what is recorded' },
  'wrong-stage': { status: 409, title: 'Not at this stage' },
  erased: { status: 410, title: 'Erased' },
  stale: { status: 412, title: 'Somebody changed this in the meantime' },
  'too-large': { status: 413, title: 'Too large' },
  'unsupported-media': { status: 415, title: 'This kind of content is not taken here' },
  malformed: { status: 422, title: 'Some entries cannot be taken' },
  'invalid-request': { status: 422, title: 'Some entries cannot be taken' },
  'refused-by-rules': { status: 422, title: 'Refused by the rules' },
  'version-missing': { status: 428, title: 'The version this was made against is missing' },
  'too-many-attempts': { status: 429, title: 'Too many attempts' },
  fault: { status: 500, title: 'Something went wrong here' },
  busy: { status: 503, title: 'Too busy just now' },
} as const satisfies Record<ProblemKind, { readonly status: number; readonly title: string }>;

export interface Fault {
  /** JSON pointer into the body, or the name of a query or path parameter after its place. */
  readonly pointer: string;
  readonly message: string;
}

/** Who changed what since the version that a person saw. */
export interface Since {
  readonly by: string;
  readonly at: string;
  readonly words: string;
  readonly surfaces: readonly string[];
}

export interface ProblemDetails {
  readonly detail?: string;
  readonly faults?: readonly Fault[];
  readonly refusals?: readonly RefusalView[];
  readonly since?: readonly Since[];
  readonly retryAfter?: number;
  /** Set where a job number is in use. */
  readonly taken?: boolean;
  readonly incident?: string;
}

/** Thrown anywhere in the service; the filter turns it into the answer. */
export class Problem extends Error {
  readonly kind: ProblemKind;
  readonly details: ProblemDetails;

  constructor(kind: ProblemKind, details: ProblemDetails | string = {}) {
    const all = typeof details === 'string' ? { detail: details } : details;
    super(all.detail ?? PROBLEMS[kind].title);
    this.kind = kind;
    this.details = all;
  }
}

/** Where several refusals come at once, the first of this order gives the status. */
const ORDER: readonly RefusalKind[] = [
  'forbidden',
  'not-found',
  'stale',
  'wrong-stage',
  'refused-by-rules',
  'invalid-request',
];

export function refused(refusals: readonly RefusalView[], details: ProblemDetails = {}): Problem {
  const kind = ORDER.find((each) => refusals.some((refusal) => refusal.kind === each));
  const detail = refusals.map((refusal) => refusal.words).join(' ');
  return new Problem(kind ?? 'refused-by-rules', { detail, ...details, refusals });
}

export function problemBody({ kind, details }: Problem): Record<string, unknown> {
  const { status, title } = PROBLEMS[kind];
  const { retryAfter: _, taken: __, ...shown } = details;
  return { type: `urn:gauge-ledger:problem:${kind}`, title, status, ...shown };
}
