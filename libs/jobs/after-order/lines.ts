// Lines compared by piece: a change order against what it replaces, an acknowledgment against the
// order, a receipt against the order.

import type { OrderLine } from '../contract/after-order.js';
import type { LineDifference } from '../contract/after-order-events.js';
import type { EventData } from '../contract/events.js';
import type { Order } from './state.js';
import { inForce } from './state.js';

const said = ({ words, length, count }: OrderLine): string =>
  `${count} × ${words}${length ? ` at ${length.v} in` : ''}`;

export function lineDifferences(
  from: readonly OrderLine[],
  to: readonly OrderLine[],
): readonly LineDifference[] {
  const before = new Map(from.map((line) => [line.id, line]));
  const after = new Map(to.map((line) => [line.id, line]));
  return [...new Set([...after.keys(), ...before.keys()])].flatMap((id): LineDifference[] => {
    const was = before.get(id);
    const is = after.get(id);
    if (!was && is) return [{ line: id, what: 'added', from: null, to: said(is) }];
    if (was && !is) return [{ line: id, what: 'removed', from: said(was), to: null }];
    return was && is && said(was) !== said(is)
      ? [{ line: id, what: 'changed', from: said(was), to: said(is) }]
      : [];
  });
}

/** What has come so far, line by line, against the revision in force; settled lines are left out. */
export function receiptDifferences(
  order: Order,
  added?: EventData['receipt-recorded/1']['lines'],
): readonly string[] {
  const came = new Map<string, number>();
  for (const { line, count } of [
    ...order.receipts.flatMap(({ lines }) => lines),
    ...(added ?? []),
  ]) {
    came.set(line, (came.get(line) ?? 0) + count);
  }
  return inForce(order).lines.flatMap((line) => {
    const count = came.get(line.id) ?? 0;
    return count === line.count || order.settled.includes(line.id)
      ? []
      : [`${line.words}: ${count} of ${line.count} came`];
  });
}

export function damageLeft(order: Order): readonly string[] {
  return order.receipts.flatMap(({ lines }) =>
    lines
      .filter(({ line, damaged }) => damaged > 0 && !order.settled.includes(line))
      .map(({ line, damaged }) => `${line}: ${damaged} damaged`),
  );
}

/** A duplicated line id would be counted twice. */
export function linesTwice(lines: readonly OrderLine[]): readonly string[] {
  const ids = lines.map(({ id }) => id);
  return [...new Set(ids.filter((id, i) => ids.indexOf(id) !== i))];
}
