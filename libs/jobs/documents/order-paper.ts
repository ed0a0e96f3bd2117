// The order as a fold: one revision of one order, as it was issued, with what it changes.

import type {
  LineDifference,
  OrderedSurface,
  OrderedTakeOff,
} from '../contract/after-order-events.js';
import type { TakeOffResult } from '../contract/take-off.js';
import type { OrderLine } from '../contract/after-order.js';
import type { EventData, PastEvent } from '../contract/events.js';
import type { Names } from './moment.js';
import { jobUpTo, naming } from './moment.js';

export interface OrderPaper {
  readonly document: 'order';
  readonly job: { readonly number: string; readonly name: string };
  readonly order: string;
  readonly revision: number;
  /** RFC 3339, when this revision was issued. */
  readonly issued_at: string;
  readonly supplier: string;
  readonly buyer: string;
  /** Who issued it, and so entered what was entered. */
  readonly issued_by: string;
  readonly deliver_to: string;
  readonly landing_place: string | null;
  readonly delivery: string | null;
  readonly surfaces: readonly OrderedSurface[];
  /** Weight and price of a line are for all its pieces. */
  readonly lines: readonly OrderLine[];
  readonly lengths: EventData['order-issued/1']['lengths'];
  /** The take-offs that lengths come from, each with what it counted. */
  readonly take_offs: readonly (OrderedTakeOff & { readonly result: TakeOffResult })[];
  /** Against the revision before; empty on the first. */
  readonly difference: readonly LineDifference[];
  readonly change_reason: string | null;
  readonly bundles: readonly {
    readonly name: string;
    readonly holds: string;
    readonly weight_lb: string;
    readonly landing_place: string;
  }[];
  readonly cautions: readonly string[];
}

/** undefined where that revision was not issued. */
export function orderPaper(
  events: readonly PastEvent[],
  order: string,
  revision: number,
  names: Names = {},
): OrderPaper | undefined {
  const at = events.findIndex(
    (event) =>
      event.type === 'order-issued/1' &&
      event.data.order === order &&
      event.data.revision === revision,
  );
  const issued = events[at];
  if (issued?.type !== 'order-issued/1') return undefined;
  const { data } = issued;
  const job = jobUpTo(events, at);
  const name = naming(names);
  const takeOffs = takeOffsOf(events.slice(0, at), data.take_offs ?? [], name);
  return {
    document: 'order',
    job: { number: job.number, name: job.name },
    order,
    revision,
    issued_at: issued.recordedAt,
    supplier: data.supplier,
    buyer: [names['company'], names['company-address'], name(issued.by.person)]
      .filter((each) => each)
      .join(', '),
    issued_by: name(issued.by.person),
    deliver_to: name(job.site?.id ?? ''),
    landing_place: data.landing_place ?? null,
    delivery: data.delivery ?? null,
    surfaces: data.surfaces,
    lines: data.lines,
    lengths: data.lengths,
    take_offs: takeOffs,
    difference: data.difference,
    change_reason: reasonBefore(events.slice(0, at), order),
    bundles: takeOffs.flatMap(({ surface, result }) =>
      result.bundles.map((each) => ({
        name: takeOffs.length > 1 ? `${nameOf(data.surfaces, surface)} ${each.name}` : each.name,
        holds: each.pieces.map(({ mark, count }) => `${count} of ${mark.toUpperCase()}`).join(', '),
        weight_lb: each.weight_lb,
        landing_place: each.place,
      })),
    ),
    cautions: CAUTIONS,
  };
}

const nameOf = (surfaces: readonly OrderedSurface[], id: string): string =>
  surfaces.find(({ surface }) => surface === id)?.name ?? id;

function takeOffsOf(
  events: readonly PastEvent[],
  named: readonly OrderedTakeOff[],
  name: (id: string) => string,
): OrderPaper['take_offs'] {
  return named.flatMap((each) => {
    const recorded = events.findLast(
      (event) =>
        event.type === 'take-off-recorded/1' &&
        event.data.surface === each.surface &&
        event.data.number === each.number,
    );
    return recorded?.type === 'take-off-recorded/1'
      ? [{ ...each, by: name(each.by), result: recorded.data.result }]
      : [];
  });
}

function reasonBefore(events: readonly PastEvent[], order: string): string | null {
  const opened = events.findLast(
    (event) => event.type === 'change-order-opened/1' && event.data.order === order,
  );
  return opened?.type === 'change-order-opened/1' ? opened.data.reason : null;
}

const CAUTIONS = [
  'An office aid: local code and the authority having jurisdiction govern. What spans needs a licensed engineer. A panel that passes a chart is not thereby walkable.',
  'Bundles are heavy: land them over framing that bears them, never on an unchecked roof. Wind takes loose sheets; keep clear of power lines.',
] as const;
