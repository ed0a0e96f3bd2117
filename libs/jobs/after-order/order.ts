// The order: its gates, its revisions, and what comes back from the supplier. A change after the order
// is a change order: a new revision with the difference stated; the old one stays.

import { findings, type Facts, type Finding, type Gate } from '#rules';
import type { CommandOf } from '../contract/commands.js';
import type { OrderedSurface, Gated } from '../contract/after-order-events.js';
import { accept, decline, type Context, type Decision } from '../decision.js';
import { activeSurfaces, type Job } from '../job.js';
import { refuse, type Refusal } from '../refusal.js';
import { ruleRefusals, type StageCommand } from '../stages/confirm.js';
import { orderFacts } from './gate-facts.js';
import { lineDifferences, linesTwice, receiptDifferences } from './lines.js';
import { orderedTakeOffs, takeOffRefusals } from './ordered-take-offs.js';
import { inForce, type Order } from './state.js';

export function issueOrder(
  job: Job,
  command: CommandOf<'issue-order'>,
  context: Context,
): Decision {
  const before = job.after.orders[command.order];
  const refusals: Refusal[] = [];
  if (before && !before.changeOrder) {
    refusals.push(
      refuse('MOVE-19', `Order ${command.order} is out: open a change order first.`, '/order'),
    );
  }
  if (activeSurfaces(job).length === 0)
    refusals.push(refuse('MOVE-03', 'There is no surface to order for.'));
  refusals.push(
    ...linesTwice(command.lines).map((id) =>
      refuse('MOVE-07', `Line ${id} stands twice.`, '/lines'),
    ),
  );
  for (const { surface, id } of command.lines) {
    if (surface !== null && !job.surfaces[surface])
      refusals.push(
        refuse('MOVE-03', `Line ${id} is for surface ${surface}, which does not exist.`, '/lines'),
      );
  }
  refusals.push(...takeOffRefusals(job, command));
  const said = speakAt('order', orderFacts(job, command, context.catalogue), context);
  refusals.push(...ruleRefusals(said, asStage(command), context));
  if (refusals.length > 0) return decline(...refusals);
  const { order, supplier, date, lines, lengths, landing_place, delivery } = command;
  return accept({
    type: 'order-issued/1',
    data: {
      order,
      supplier,
      date,
      lines,
      lengths,
      ...(landing_place === undefined ? {} : { landing_place }),
      ...(delivery === undefined ? {} : { delivery }),
      revision: (before?.revisions.length ?? 0) + 1,
      surfaces: activeSurfaces(job).map((surface) => orderedSurface(job, surface.id, context)),
      difference: before ? lineDifferences(inForce(before).lines, lines) : [],
      take_offs: orderedTakeOffs(job, command),
      ...gated(said, command, context),
    },
  });
}

/** What every gate keeps of what its rules said. */
export function gated(
  said: readonly Finding[],
  command: Pick<StageCommand, 'overrides' | 'acknowledges'>,
  context: Context,
): Gated {
  return {
    findings: said,
    overrides: command.overrides.map(({ rule, reason }) => ({
      rule,
      reason,
      says: said.find((each) => each.rule === rule)?.words ?? '',
    })),
    acknowledged: command.acknowledges.filter((rule) => said.some((each) => each.rule === rule)),
    rules_edition: { number: context.edition.number, digest: context.editionDigest },
  };
}

export const speakAt = (gate: Gate, facts: Facts, context: Context): readonly Finding[] =>
  findings(context.edition, context.book, gate, facts);

/** A gate has overrides and acknowledgments like a stage, and no surface of its own. */
export const asStage = (
  command: Pick<StageCommand, 'overrides' | 'acknowledges'>,
): StageCommand => ({ surface: '', ...command });

function orderedSurface(job: Job, id: string, { catalogue }: Context): OrderedSurface {
  const surface = job.surfaces[id];
  const style = surface?.stages.style.record?.content;
  const coating = surface?.stages.coating.record?.content;
  const substrate = surface?.stages.substrate.record?.content;
  const gauge = surface?.stages.gauge.record?.content;
  if (!surface || !style || !coating || !substrate || !gauge)
    throw new Error(`${id} is not ready to be ordered`);
  return {
    surface: id,
    name: surface.name,
    profile: style.profile_name,
    width_in: style.width,
    gauge: gauge.gauge,
    thickness_in: gauge.thickness_in,
    grade: gauge.grade,
    metal: coating.metal,
    metallic_coating: coating.metallic_coating,
    paint_system: coating.paint_system,
    color_group: coating.color_group,
    color: coating.color,
    substrate: substrate.substrate,
    attachment: gauge.attachment,
    ...fastenerName(catalogue.fasteners.find((each) => each.id === gauge.attachment.fastener)),
  };
}

const fastenerName = (
  fastener: { readonly name: string } | undefined,
): Pick<OrderedSurface, 'fastener_name'> => (fastener ? { fastener_name: fastener.name } : {});

/** The order a command speaks of, or why there is none. */
export function orderOf(job: Job, id: string): Order | Refusal {
  return job.after.orders[id] ?? refuse('MOVE-03', `There is no order ${id}.`, '/order');
}
export const isNoOrder = (value: Order | Refusal): value is Refusal => 'code' in value;

export function openChangeOrder(job: Job, command: CommandOf<'open-change-order'>): Decision {
  const order = orderOf(job, command.order);
  if (isNoOrder(order)) return decline(order);
  if (order.changeOrder)
    return decline(
      refuse('MOVE-07', `A change order is open already: ${order.changeOrder.reason}`),
    );
  return accept({
    type: 'change-order-opened/1',
    data: { order: order.id, reason: command.reason },
  });
}

export function withdrawChangeOrder(
  job: Job,
  command: CommandOf<'withdraw-change-order'>,
): Decision {
  const order = orderOf(job, command.order);
  if (isNoOrder(order)) return decline(order);
  if (!order.changeOrder) return decline(refuse('MOVE-07', 'No change order is open.'));
  const disturbed = activeSurfaces(job).filter(({ stages }) =>
    Object.values(stages).some(({ status }) => status !== 'confirmed'),
  );
  if (disturbed.length > 0) {
    return decline(
      refuse(
        'MOVE-19',
        `Not as ordered any more: ${disturbed.map(({ name }) => name).join(', ')}. Confirm again or issue a new revision.`,
      ),
    );
  }
  return accept({
    type: 'change-order-withdrawn/1',
    data: { order: order.id, reason: command.reason },
  });
}

export function recordAcknowledgment(
  job: Job,
  command: CommandOf<'record-acknowledgment'>,
): Decision {
  const order = orderOf(job, command.order);
  if (isNoOrder(order)) return decline(order);
  const twice = linesTwice(command.lines);
  if (twice.length > 0)
    return decline(...twice.map((id) => refuse('MOVE-07', `Line ${id} stands twice.`, '/lines')));
  const { revision, lines } = inForce(order);
  const { type: _, ...data } = command;
  return accept({
    type: 'acknowledgment-recorded/1',
    data: { ...data, revision, differences: lineDifferences(lines, command.lines) },
  });
}

export function recordReceipt(job: Job, command: CommandOf<'record-receipt'>): Decision {
  const order = orderOf(job, command.order);
  if (isNoOrder(order)) return decline(order);
  const { revision, lines } = inForce(order);
  const refusals: Refusal[] = [];
  if (order.changeOrder)
    refusals.push(
      refuse('MOVE-19', `Delivery waits: a change order is open (${order.changeOrder.reason}).`),
    );
  for (const { line, count, damaged } of command.lines) {
    if (!lines.some(({ id }) => id === line))
      refusals.push(refuse('MOVE-03', `Line ${line} was not ordered.`, '/lines'));
    if (damaged > count)
      refusals.push(
        refuse('MOVE-10', `Line ${line}: ${damaged} damaged of ${count} that came.`, '/lines'),
      );
  }
  for (const { surface } of command.lots) {
    if (!job.surfaces[surface])
      refusals.push(refuse('MOVE-03', `There is no surface ${surface}.`, '/lots'));
  }
  if (refusals.length > 0) return decline(...refusals);
  const { type: _, ...data } = command;
  return accept({
    type: 'receipt-recorded/1',
    data: { ...data, revision, differences: receiptDifferences(order, command.lines) },
  });
}

export function settleReceipt(job: Job, command: CommandOf<'settle-receipt'>): Decision {
  const order = orderOf(job, command.order);
  if (isNoOrder(order)) return decline(order);
  if (!inForce(order).lines.some(({ id }) => id === command.line))
    return decline(refuse('MOVE-03', `Line ${command.line} was not ordered.`, '/line'));
  const { type: _, ...data } = command;
  return accept({ type: 'receipt-settled/1', data });
}
