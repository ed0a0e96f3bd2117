// What falls due in one job, each with its day: asked of by a list that knows today.

import { label } from '#rules';
import { activeSurfaces, type Job } from '../job.js';
import { endOf } from './claims.js';
import { jobFact } from './gate-facts.js';
import { afterStage, documentsDue } from './view.js';
import { inForce } from './state.js';

export const DUE_KINDS = [
  'sign-off-waiting',
  'quote-expiring',
  'delivery',
  'tear-off-due',
  'registration-window',
  'term-ends',
] as const;
export type DueKind = (typeof DUE_KINDS)[number];

export interface Due {
  readonly kind: DueKind;
  /** Which of its kind: a request, a surface, a document. */
  readonly about: string;
  /** YYYY-MM-DD. */
  readonly on: string;
  readonly words: string;
}

export function fallsDue(job: Job): readonly Due[] {
  return [
    ...waiting(job),
    ...quote(job),
    ...delivery(job),
    ...tearOff(job),
    ...registration(job),
    ...terms(job),
  ];
}

function waiting(job: Job): readonly Due[] {
  return Object.values(job.signOffs)
    .filter(({ standing }) => standing === 'waiting')
    .map(({ id, expires, scopeWords }) => ({
      kind: 'sign-off-waiting',
      about: id,
      on: expires,
      words: `The engineer's answer is asked for until ${expires}: ${scopeWords}`,
    }));
}

function quote(job: Job): readonly Due[] {
  const last = jobFact<string>(job, 'quote-valid-until');
  if (last === undefined || Object.keys(job.after.orders).length > 0) return [];
  return [
    { kind: 'quote-expiring', about: 'quote', on: last, words: `The quote is good until ${last}` },
  ];
}

function delivery(job: Job): readonly Due[] {
  if (afterStage(job) !== 'delivery') return [];
  return Object.values(job.after.orders).flatMap((order) => {
    const { delivery: on } = inForce(order);
    return on === undefined
      ? []
      : [
          {
            kind: 'delivery' as const,
            about: order.id,
            on,
            words: `Delivery of order ${order.id} is asked for on ${on}`,
          },
        ];
  });
}

/** Due once panels are ordered: they are not laid before it. */
function tearOff(job: Job): readonly Due[] {
  const orders = Object.values(job.after.orders);
  const on = orders.map((order) => inForce(order).delivery ?? inForce(order).date).sort()[0];
  if (on === undefined) return [];
  return activeSurfaces(job)
    .filter((surface) => surface.tearOff === 'due' || surface.tearOff === 'different')
    .map(({ id, name }) => ({
      kind: 'tear-off-due',
      about: id,
      on,
      words: `${name}: tear-off checkpoint before any panel is laid`,
    }));
}

/** The window runs from completion; its last day is known where the catalogue has the warrantor's text. */
function registration(job: Job): readonly Due[] {
  const { completedOn, registrations } = job.after;
  const registrationDue: Readonly<Record<string, string | null | undefined>> =
    job.after.registrationDue;
  if (completedOn === null) return [];
  const registered: readonly string[] = Object.keys(registrations);
  return documentsDue(job)
    .filter((kind) => !registered.includes(kind) && registrationDue[kind] !== null)
    .map((kind) => ({
      kind: 'registration-window',
      about: kind,
      on: registrationDue[kind] ?? completedOn,
      words: registrationDue[kind]
        ? `Register the ${label(kind)} warranty by ${registrationDue[kind]}`
        : `Register the ${label(kind)} warranty: its window runs from completion on ${completedOn}`,
    }));
}

function terms(job: Job): readonly Due[] {
  return Object.values(job.after.warranties).map(({ document, kind, start, years }) => {
    const on = endOf(start, years);
    return {
      kind: 'term-ends',
      about: document,
      on,
      words: `The ${label(kind)} warranty ${document} ends on ${on}`,
    };
  });
}
