// Refusals of movement: what a job does not allow whatever its facts are. Each has an id of its own,
// as rules have; a page shows the words, a test names the id.

import { citationText } from '#engineering';
import type { Finding } from '#rules';
import type { RefusalView } from './contract/views.js';

export type Refusal = RefusalView;

/** Rules of movement, by id: the kind of refusal and what it says in general. */
export const MOVES = {
  'MOVE-01': {
    kind: 'wrong-stage',
    says: 'A stage can be confirmed only when all stages before it are confirmed.',
  },
  'MOVE-02': { kind: 'invalid-request', says: 'A change of what was confirmed needs a reason.' },
  'MOVE-03': { kind: 'not-found', says: 'The job, building, surface or request must exist.' },
  'MOVE-04': { kind: 'forbidden', says: 'The role may not do this.' },
  'MOVE-05': { kind: 'refused-by-rules', says: 'Cautions must be acknowledged.' },
  'MOVE-06': {
    kind: 'refused-by-rules',
    says: 'Only guidance and house policy may be overridden, by a role that the policy names, and only where the rule speaks.',
  },
  'MOVE-07': {
    kind: 'wrong-stage',
    says: 'A thing can be opened, added, answered or withdrawn only once.',
  },
  'MOVE-08': {
    kind: 'wrong-stage',
    says: 'A reroof is confirmed provisionally until the tear-off checkpoint.',
  },
  'MOVE-09': { kind: 'refused-by-rules', says: "An engineer's conditions bind the gauge stage." },
  'MOVE-10': {
    kind: 'invalid-request',
    says: 'A value must be one that its fact allows, on a thing of its kind.',
  },
  'MOVE-11': {
    kind: 'refused-by-rules',
    says: 'What is chosen must stand in the catalogue edition.',
  },
  'MOVE-12': {
    kind: 'invalid-request',
    says: 'An option other than the recommended one needs a reason.',
  },
  'MOVE-13': {
    kind: 'wrong-stage',
    says: 'A sign-off can be asked for once the gauge is selected.',
  },
  'MOVE-14': {
    kind: 'refused-by-rules',
    says: "A license must be in force and of the job's jurisdiction when it signs.",
  },
  'MOVE-15': {
    kind: 'forbidden',
    says: 'Only the engineer who was asked may answer, reaffirm or revoke.',
  },
  'MOVE-16': { kind: 'stale', says: 'What is signed must be what stands today.' },
  'MOVE-17': { kind: 'invalid-request', says: 'A hazard value needs its source and date.' },
  'MOVE-19': {
    kind: 'wrong-stage',
    says: 'After the order a change is a change order; what is out stays in force until a new revision.',
  },
  'MOVE-20': {
    kind: 'refused-by-rules',
    says: 'A warranty is transferred as its own terms allow.',
  },
  'MOVE-21': {
    kind: 'refused-by-rules',
    says: 'Lengths from a take-off are those that it counted, and count only while nothing it was made from has changed.',
  },
  'MOVE-18': { kind: 'wrong-stage', says: 'Nothing can be re-opened that is not confirmed.' },
} as const satisfies Record<string, { kind: RefusalView['kind']; says: string }>;
export type MoveId = keyof typeof MOVES;

export function refuse(code: MoveId, words: string, pointer?: string): Refusal {
  return {
    kind: MOVES[code].kind,
    code,
    words,
    cites: [],
    figures: [],
    ...(pointer === undefined ? {} : { pointer }),
  };
}

/** A rule's refusal, as the caller reads it. */
export function refusedBy(finding: Finding): Refusal {
  return {
    kind: 'refused-by-rules',
    code: finding.rule,
    words: finding.words,
    cites: finding.cites.map(citationText),
    figures: finding.margin ? [...finding.figures, finding.margin] : finding.figures,
  };
}
