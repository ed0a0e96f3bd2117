// What a job holds after the gauge: orders with their revisions, deliveries, what was built, warranty
// documents and claims.

import type { ClaimKind, WarrantyKind } from '../contract/after-order.js';
import type { EventData, PastEvent } from '../contract/events.js';
import type { AfterOrderEvents, LineDifference } from '../contract/after-order-events.js';

export interface Revision extends Readonly<EventData['order-issued/1']> {
  readonly at: string;
  readonly by: string;
}

export interface Order {
  readonly id: string;
  /** Oldest first; the last is in force. */
  readonly revisions: readonly Revision[];
  readonly changeOrder: { readonly reason: string; readonly at: string } | null;
  readonly acknowledgment: {
    readonly revision: number;
    readonly differences: readonly LineDifference[];
  } | null;
  readonly receipts: readonly EventData['receipt-recorded/1'][];
  /** Lines whose short count or damage was settled. */
  readonly settled: readonly string[];
}

export interface Warranty extends Readonly<EventData['warranty-issued/1']> {
  readonly at: string;
  readonly transfers: readonly EventData['warranty-transferred/1'][];
}

export interface Claim {
  readonly id: string;
  readonly surface: string;
  readonly kind: ClaimKind;
  readonly lot: string | null;
  readonly document: string | null;
  readonly notice: string;
  readonly words: string;
  readonly files: number;
  readonly at: string;
  readonly readings: readonly EventData['reading-recorded/1'][];
  readonly decided:
    (EventData['claim-decided/1'] & { readonly at: string; readonly by: string }) | null;
}

export interface AfterOrder {
  readonly orders: Readonly<Record<string, Order>>;
  /** Surface → coils or lots that came for it. */
  readonly lots: Readonly<Record<string, readonly string[]>>;
  readonly mixedLotsAccepted: readonly string[];
  readonly asBuilt: Readonly<Record<string, EventData['as-built-recorded/1']>>;
  readonly inspection: { readonly on: string; readonly passed: boolean } | null;
  readonly punch: Readonly<Record<string, { readonly words: string; readonly open: boolean }>>;
  readonly completedOn: string | null;
  /** Last day of each registration window known at completion; null where none is asked for. */
  readonly registrationDue: Readonly<Partial<Record<WarrantyKind, string | null>>>;
  readonly registrations: Readonly<
    Partial<Record<WarrantyKind, EventData['registration-filed/1']>>
  >;
  readonly warranties: Readonly<Record<string, Warranty>>;
  readonly claims: Readonly<Record<string, Claim>>;
}

export const NOTHING_ORDERED: AfterOrder = {
  orders: {},
  lots: {},
  mixedLotsAccepted: [],
  asBuilt: {},
  inspection: null,
  punch: {},
  completedOn: null,
  registrationDue: {},
  registrations: {},
  warranties: {},
  claims: {},
};

export const inForce = (order: Order): Revision => {
  const last = order.revisions.at(-1);
  if (!last) throw new Error(`order ${order.id} has no revision`);
  return last;
};

/** Whether an order is out and no change order is open: stages then stand still. */
export function orderedAndClosed(after: AfterOrder): boolean {
  const orders = Object.values(after.orders);
  return orders.length > 0 && orders.every(({ changeOrder }) => changeOrder === null);
}

type AfterEvent = Extract<PastEvent, { readonly type: keyof AfterOrderEvents }>;

const AFTER: Readonly<Record<keyof AfterOrderEvents, true>> = {
  'order-issued/1': true,
  'change-order-opened/1': true,
  'change-order-withdrawn/1': true,
  'acknowledgment-recorded/1': true,
  'receipt-recorded/1': true,
  'receipt-settled/1': true,
  'mixed-lots-accepted/1': true,
  'as-built-recorded/1': true,
  'inspection-recorded/1': true,
  'punch-item-closed/1': true,
  'completion-recorded/1': true,
  'registration-filed/1': true,
  'warranty-issued/1': true,
  'warranty-transferred/1': true,
  'claim-opened/1': true,
  'reading-recorded/1': true,
  'claim-decided/1': true,
};
export const isAfterOrder = (event: PastEvent): event is AfterEvent =>
  Object.hasOwn(AFTER, event.type);

/** What each event makes of it. */
export function evolveAfter(after: AfterOrder, event: AfterEvent): AfterOrder {
  switch (event.type) {
    case 'order-issued/1':
      return withOrder(after, event.data.order, (order) => ({
        ...order,
        revisions: [
          ...order.revisions,
          { ...event.data, at: event.recordedAt, by: event.by.person },
        ],
        changeOrder: null,
        acknowledgment: null,
      }));
    case 'change-order-opened/1':
      return withOrder(after, event.data.order, (order) => ({
        ...order,
        changeOrder: { reason: event.data.reason, at: event.recordedAt },
      }));
    case 'change-order-withdrawn/1':
      return withOrder(after, event.data.order, (order) => ({ ...order, changeOrder: null }));
    case 'acknowledgment-recorded/1':
      return withOrder(after, event.data.order, (order) => ({
        ...order,
        acknowledgment: { revision: event.data.revision, differences: event.data.differences },
      }));
    case 'receipt-recorded/1':
      return received(after, event.data);
    case 'receipt-settled/1':
      return withOrder(after, event.data.order, (order) => ({
        ...order,
        settled: [...order.settled, event.data.line],
      }));
    case 'mixed-lots-accepted/1':
      return { ...after, mixedLotsAccepted: [...after.mixedLotsAccepted, event.data.surface] };
    case 'as-built-recorded/1':
      return { ...after, asBuilt: { ...after.asBuilt, [event.data.surface]: event.data } };
    case 'inspection-recorded/1': {
      const { on, passed, punch } = event.data;
      const items = Object.fromEntries(punch.map(({ id, words }) => [id, { words, open: true }]));
      return { ...after, inspection: { on, passed }, punch: { ...after.punch, ...items } };
    }
    case 'punch-item-closed/1': {
      const item = after.punch[event.data.item];
      return item
        ? { ...after, punch: { ...after.punch, [event.data.item]: { ...item, open: false } } }
        : after;
    }
    case 'completion-recorded/1':
      return {
        ...after,
        completedOn: event.data.on,
        registrationDue: event.data.registration_due ?? {},
      };
    case 'registration-filed/1':
      return { ...after, registrations: { ...after.registrations, [event.data.kind]: event.data } };
    default:
      return evolveClaims(after, event);
  }
}

type ClaimEvent = Extract<
  AfterEvent,
  {
    readonly type:
      | 'warranty-issued/1'
      | 'warranty-transferred/1'
      | 'claim-opened/1'
      | 'reading-recorded/1'
      | 'claim-decided/1';
  }
>;

function evolveClaims(after: AfterOrder, event: ClaimEvent): AfterOrder {
  switch (event.type) {
    case 'warranty-issued/1':
      return {
        ...after,
        warranties: {
          ...after.warranties,
          [event.data.document]: { ...event.data, at: event.recordedAt, transfers: [] },
        },
      };
    case 'warranty-transferred/1': {
      const before = after.warranties[event.data.document];
      if (!before) throw new Error(`no warranty ${event.data.document}`);
      return {
        ...after,
        warranties: {
          ...after.warranties,
          [before.document]: { ...before, transfers: [...before.transfers, event.data] },
        },
      };
    }
    case 'claim-opened/1': {
      const {
        claim: id,
        surface,
        kind,
        lot = null,
        document = null,
        notice,
        words,
        files,
      } = event.data;
      const claim: Claim = {
        id,
        surface,
        kind,
        lot,
        document,
        notice,
        words,
        files: files.length,
        at: event.recordedAt,
        readings: [],
        decided: null,
      };
      return { ...after, claims: { ...after.claims, [id]: claim } };
    }
    case 'reading-recorded/1':
      return withClaim(after, event.data.claim, (claim) => ({
        ...claim,
        readings: [...claim.readings, event.data],
      }));
    case 'claim-decided/1':
      return withClaim(after, event.data.claim, (claim) => ({
        ...claim,
        decided: { ...event.data, at: event.recordedAt, by: event.by.person },
      }));
  }
}

function received(after: AfterOrder, data: EventData['receipt-recorded/1']): AfterOrder {
  const lots = { ...after.lots };
  for (const { surface, lot } of data.lots)
    lots[surface] = [...new Set([...(lots[surface] ?? []), lot])];
  return withOrder({ ...after, lots }, data.order, (order) => ({
    ...order,
    receipts: [...order.receipts, data],
  }));
}

const NEW_ORDER = {
  revisions: [],
  changeOrder: null,
  acknowledgment: null,
  receipts: [],
  settled: [],
} as const;

function withOrder(after: AfterOrder, id: string, how: (order: Order) => Order): AfterOrder {
  return {
    ...after,
    orders: { ...after.orders, [id]: how(after.orders[id] ?? { id, ...NEW_ORDER }) },
  };
}

function withClaim(after: AfterOrder, id: string, how: (claim: Claim) => Claim): AfterOrder {
  const claim = after.claims[id];
  if (!claim) throw new Error(`no claim ${id}`);
  return { ...after, claims: { ...after.claims, [id]: how(claim) } };
}
