// A job after the gauge as pages see it, and the words of where it stands.

import type { Catalogue } from '../contract/catalogue.js';
import type {
  AfterOrderView,
  AfterStage,
  ClaimView,
  OrderView,
  RegistrationView,
  WarrantyView,
} from '../contract/after-order-views.js';
import type { EventData } from '../contract/events.js';
import type { Job } from '../job.js';
import { claimTests, endOf } from './claims.js';
import { jobFact } from './gate-facts.js';
import { damageLeft, receiptDifferences } from './lines.js';
import { inForce, type Claim, type Order, type Warranty } from './state.js';

/** Claims that are not decided are computed with the catalogue given. */
export function afterOrderView(job: Job, catalogue: Catalogue | null = null): AfterOrderView {
  const { after } = job;
  return {
    stage: afterStage(job),
    orders: Object.values(after.orders).map(orderView),
    lots: Object.entries(after.lots).map(([surface, lots]) => ({
      surface,
      lots,
      mixed:
        lots.length < 2
          ? 'no'
          : after.mixedLotsAccepted.includes(surface)
            ? 'accepted'
            : 'not accepted',
    })),
    as_built: Object.values(after.asBuilt),
    inspection: after.inspection,
    punch: Object.entries(after.punch).map(([id, item]) => ({ id, ...item })),
    completed_on: after.completedOn,
    registrations: Object.values(after.registrations).flatMap((each) =>
      each ? [registrationView(each)] : [],
    ),
    warranties: Object.values(after.warranties).map(warrantyView),
    claims: Object.values(after.claims).map((claim) => claimView(job, claim, catalogue)),
  };
}

/** An open change order stands before everything that follows it. */
export function afterStage(job: Job): AfterStage | null {
  const orders = Object.values(job.after.orders);
  if (orders.length === 0) return null;
  if (orders.some(({ changeOrder }) => changeOrder)) return 'order';
  if (job.after.completedOn === null)
    return orders.some((order) => receiptDifferences(order).length > 0)
      ? 'delivery'
      : 'installation';
  const open = Object.values(job.after.claims).some(({ decided }) => decided === null);
  return open || documentsDue(job).length > 0 ? 'warranty' : 'complete';
}

/** Warranty documents that were promised and are not issued. */
export function documentsDue(job: Job): readonly string[] {
  const issued = Object.values(job.after.warranties).map(({ kind }): string => kind);
  return (jobFact<readonly string[]>(job, 'promised-documents') ?? []).filter(
    (kind) => !issued.includes(kind),
  );
}

export interface NextAfter {
  readonly state: 'Ready' | 'Blocked' | 'Waiting' | 'Done';
  readonly words: string;
  readonly on: string;
}

/** What is next after the order, and whose it is. */
export function nextAfter(job: Job, stage: AfterStage): NextAfter {
  const orders = Object.values(job.after.orders);
  switch (stage) {
    case 'order':
      return {
        state: 'Blocked',
        words: 'Change order is open: issue the new revision or withdraw it',
        on: 'project manager',
      };
    case 'delivery': {
      const differing = orders.find(
        ({ acknowledgment }) => (acknowledgment?.differences.length ?? 0) > 0,
      );
      if (differing)
        return {
          state: 'Blocked',
          words: `Order ${differing.id}: the supplier acknowledged something else`,
          on: 'office',
        };
      return { state: 'Waiting', words: 'Delivery: receive what was ordered', on: 'supplier' };
    }
    case 'installation':
      return { state: 'Ready', words: installationNext(job, orders), on: 'crew lead' };
    case 'warranty': {
      const claim = Object.values(job.after.claims).find(({ decided }) => decided === null);
      if (claim)
        return { state: 'Ready', words: `Decide claim ${claim.id}`, on: 'warranty reviewer' };
      return {
        state: 'Ready',
        words: `Issue the warranty document: ${documentsDue(job).join(', ')}`,
        on: 'office',
      };
    }
    case 'complete':
      return { state: 'Done', words: 'Complete', on: 'office' };
  }
}

function installationNext(job: Job, orders: readonly Order[]): string {
  if (orders.some((order) => damageLeft(order).length > 0))
    return 'Settle the damage of the delivery';
  const open = Object.values(job.after.punch).filter((item) => item.open);
  if (open.length > 0) return `Close the punch list: ${open.length} open`;
  return job.after.inspection?.passed
    ? 'Record completion'
    : 'Record what was built, and the inspection';
}

export const AFTER_WORDS: Readonly<Record<AfterStage, string>> = {
  order: 'Order, changing',
  delivery: 'Delivery',
  installation: 'Installation',
  warranty: 'Warranty',
  complete: 'Complete',
};

function orderView(order: Order): OrderView {
  const last = inForce(order);
  return {
    order: order.id,
    revisions: order.revisions.map((each) => ({
      revision: each.revision,
      standing: each === last ? 'in force' : 'superseded',
      supplier: each.supplier,
      date: each.date,
      issued: { by: each.by, at: each.at },
      delivery: each.delivery ?? null,
      landing_place: each.landing_place ?? null,
      surfaces: each.surfaces,
      lines: each.lines,
      lengths: each.lengths,
      difference: each.difference,
      take_offs: each.take_offs ?? [],
    })),
    change_order: order.changeOrder,
    acknowledgment: order.acknowledgment,
    receipts: order.receipts,
    short: receiptDifferences(order),
    damaged: damageLeft(order),
  };
}

function registrationView({
  kind,
  on,
  due_by,
  late_days,
}: EventData['registration-filed/1']): RegistrationView {
  const words =
    late_days > 0
      ? `registered ${on}, filed ${late_days} days late`
      : `registered ${on}, in its window`;
  return { kind, on, due_by, late_days, words };
}

function warrantyView(warranty: Warranty): WarrantyView {
  const { document, kind, title, warrantor, surfaces, start, years, exclusions_triggered } =
    warranty;
  return {
    document,
    kind,
    title,
    warrantor,
    surfaces,
    start,
    years,
    exclusions_triggered,
    ends: endOf(start, years),
    transfers: warranty.transfers.map(({ to, on, notice_given }) => ({ to, on, notice_given })),
    issued_at: warranty.at,
  };
}

function claimView(job: Job, claim: Claim, catalogue: Catalogue | null): ClaimView {
  const { id, surface, kind, lot, document, notice, words, at, readings, decided } = claim;
  return {
    claim: id,
    surface,
    kind,
    lot,
    document,
    notice,
    words,
    opened_at: at,
    readings,
    tests: decided?.tests ?? (catalogue ? claimTests(job, claim, { catalogue }) : null),
    decided: decided
      ? {
          decision: decided.decision,
          reason: decided.reason,
          clause: decided.clause,
          by: decided.by,
          at: decided.at,
        }
      : null,
  };
}
