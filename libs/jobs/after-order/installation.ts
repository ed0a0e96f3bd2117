// What is built: lots accepted, attachment as built beside as approved, inspection, punch list,
// completion with its gate.

import type { CommandOf } from '../contract/commands.js';
import { accept, decline, type Context, type Decision } from '../decision.js';
import type { Job } from '../job.js';
import { refuse } from '../refusal.js';
import { isRefusal, openSurface, ruleRefusals } from '../stages/confirm.js';
import { installedFacts } from './gate-facts.js';
import { asStage, gated, speakAt } from './order.js';
import { registrationDue } from './warranty.js';

export function acceptMixedLots(job: Job, command: CommandOf<'accept-mixed-lots'>): Decision {
  const surface = openSurface(job, command.surface);
  if (isRefusal(surface)) return decline(surface);
  if ((job.after.lots[surface.id] ?? []).length < 2)
    return decline(refuse('MOVE-07', `${surface.name} has one lot.`));
  const { type: _, ...data } = command;
  return accept({ type: 'mixed-lots-accepted/1', data });
}

export function recordAsBuilt(job: Job, command: CommandOf<'record-as-built'>): Decision {
  const surface = openSurface(job, command.surface);
  if (isRefusal(surface)) return decline(surface);
  const approved = surface.stages.gauge.record?.content.attachment;
  if (!approved)
    return decline(refuse('MOVE-01', `${surface.name}: nothing was decided that could be built.`));
  const { type: _, ...data } = command;
  return accept({
    type: 'as-built-recorded/1',
    data: { ...data, differences: builtDifferences(approved, command) },
  });
}

type Attached = Pick<CommandOf<'record-as-built'>, 'fastener' | 'zones'>;

/** Wider than approved, another fastener, a zone left out; closer is no difference. */
function builtDifferences(approved: Attached, built: Attached): readonly string[] {
  return [
    ...(approved.fastener === built.fastener
      ? []
      : [`${built.fastener} instead of ${approved.fastener}`]),
    ...approved.zones.flatMap((zone) => {
      const own = built.zones.find((each) => each.zone === zone.zone);
      if (!own) return [`zone ${zone.zone} not recorded`];
      const wider = (is: { v: string } | undefined, was: { v: string } | undefined): boolean =>
        Number(is?.v ?? 0) > Number(was?.v ?? Infinity);
      return [
        ...(wider(own.spacing, zone.spacing)
          ? [`zone ${zone.zone}: ${own.spacing.v} in instead of ${zone.spacing.v} in`]
          : []),
        ...(zone.rows && wider(own.rows, zone.rows)
          ? [`zone ${zone.zone}: rows at ${own.rows?.v} in instead of ${zone.rows.v} in`]
          : []),
      ];
    }),
  ];
}

export function recordInspection(job: Job, command: CommandOf<'record-inspection'>): Decision {
  const known = command.punch.filter(({ id }) => job.after.punch[id]);
  if (known.length > 0)
    return decline(
      ...known.map(({ id }) => refuse('MOVE-07', `Punch item ${id} stands already.`, '/punch')),
    );
  const { type: _, ...data } = command;
  return accept({ type: 'inspection-recorded/1', data });
}

export function closePunchItem(job: Job, command: CommandOf<'close-punch-item'>): Decision {
  const item = job.after.punch[command.item];
  if (!item) return decline(refuse('MOVE-03', `There is no punch item ${command.item}.`, '/item'));
  if (!item.open)
    return decline(refuse('MOVE-07', `Punch item ${command.item} is closed already.`));
  const { type: _, ...data } = command;
  return accept({ type: 'punch-item-closed/1', data });
}

export function recordCompletion(
  job: Job,
  command: CommandOf<'record-completion'>,
  context: Context,
): Decision {
  if (job.after.completedOn !== null)
    return decline(refuse('MOVE-07', `Completed on ${job.after.completedOn} already.`));
  if (Object.keys(job.after.orders).length === 0)
    return decline(refuse('MOVE-01', 'Nothing was ordered.'));
  const said = speakAt('delivery', installedFacts(job), context);
  // Completion records what is so; cautions stand in the record, refusals of the gate stop it.
  const refusals = ruleRefusals(
    said,
    asStage({ overrides: [], acknowledges: said.map(({ rule }) => rule) }),
    context,
  );
  if (refusals.length > 0) return decline(...refusals);
  return accept({
    type: 'completion-recorded/1',
    data: {
      on: command.on,
      registration_due: registrationDue(context.catalogue, command.on),
      ...gated(said, { overrides: [], acknowledges: [] }, context),
    },
  });
}
