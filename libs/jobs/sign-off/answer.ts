// The engineer's own acts: approve, approve with conditions, decline, reaffirm, revoke. Nobody else
// may do them, and what is signed must be what stands today.

import type { CommandOf } from '../contract/commands.js';
import type { Difference, Reads } from '../contract/events.js';
import { accept, decline, type Context, type Decision } from '../decision.js';
import type { Job, SignOff } from '../job.js';
import { same } from '../lookup.js';
import { refuse, type Refusal } from '../refusal.js';
import { licenseRefusals } from './license.js';
import { scopeOf } from './scope.js';

export function answerSignOff(
  job: Job,
  command: CommandOf<'answer-sign-off'>,
  context: Context,
): Decision {
  const signOff = job.signOffs[command.request];
  if (!signOff)
    return decline(refuse('MOVE-03', `There is no request ${command.request}.`, '/request'));
  const refusals = [
    ...notTheirs(signOff, context),
    ...licenseRefusals(job, command.license, context.at.slice(0, 10), '/license'),
  ];
  if (signOff.standing !== 'waiting')
    refusals.push(refuse('MOVE-07', `This request was answered already: ${signOff.standing}.`));
  if (signOff.expires < context.at.slice(0, 10))
    refusals.push(refuse('MOVE-07', `This request ended on ${signOff.expires}.`));
  if (command.answer !== 'decline') refusals.push(...changedSince(signOff));
  if (command.answer === 'approve-with-conditions' && !command.conditions) {
    refusals.push(
      refuse('MOVE-10', 'Approval with conditions states the conditions.', '/conditions'),
    );
  }
  if (command.answer === 'approve' && command.conditions) {
    refusals.push(refuse('MOVE-10', 'Approval without conditions states none.', '/conditions'));
  }
  if (command.answer === 'decline' && !command.reasons)
    refusals.push(refuse('MOVE-10', 'Declining states the reasons.', '/reasons'));
  if (refusals.length > 0) return decline(...refusals);
  const {
    request,
    license,
    statement,
    exclusions,
    packet,
    conditions = null,
    reasons = '',
  } = command;
  const said = { request, license, statement, exclusions, packet };
  return command.answer === 'decline'
    ? accept({ type: 'sign-off-declined/1', data: { ...said, reasons } })
    : accept({ type: 'sign-off-approved/1', data: { ...said, conditions } });
}

export function reaffirmSignOff(
  job: Job,
  command: CommandOf<'reaffirm-sign-off'>,
  context: Context,
): Decision {
  const signOff = job.signOffs[command.request];
  if (!signOff)
    return decline(refuse('MOVE-03', `There is no sign-off ${command.request}.`, '/request'));
  const refusals = [
    ...notTheirs(signOff, context),
    ...licenseRefusals(job, command.license, context.at.slice(0, 10), '/license'),
  ];
  if (signOff.standing !== 'approved' && signOff.standing !== 'approved-with-conditions') {
    refusals.push(
      refuse('MOVE-07', `Only an approval can be reaffirmed; this is ${signOff.standing}.`),
    );
  }
  if (signOff.differences.length === 0)
    refusals.push(refuse('MOVE-07', 'Nothing in scope has changed.'));
  else if (!sameDifferences(signOff.differences, command.differences)) {
    refusals.push(
      refuse(
        'MOVE-16',
        `The differences today are: ${words(signOff.differences)}.`,
        '/differences',
      ),
    );
  }
  for (const id of signOff.surfaces) {
    if (job.surfaces[id]?.stages.gauge.status !== 'confirmed') {
      refusals.push(
        refuse(
          'MOVE-13',
          `${job.surfaces[id]?.name ?? id}: the gauge is not confirmed on today's facts.`,
        ),
      );
    }
  }
  if (refusals.length > 0) return decline(...refusals);
  const { request, license, statement } = command;
  const scope = Object.fromEntries(
    signOff.surfaces.flatMap((id): [string, Reads][] =>
      job.surfaces[id] ? [[id, scopeOf(job, job.surfaces[id])]] : [],
    ),
  );
  return accept({
    type: 'sign-off-reaffirmed/1',
    data: { request, license, statement, differences: signOff.differences, scope },
  });
}

export function revokeSignOff(
  job: Job,
  command: CommandOf<'revoke-sign-off'>,
  context: Context,
): Decision {
  const signOff = job.signOffs[command.request];
  if (!signOff)
    return decline(refuse('MOVE-03', `There is no sign-off ${command.request}.`, '/request'));
  const refusals = notTheirs(signOff, context);
  if (signOff.standing !== 'approved' && signOff.standing !== 'approved-with-conditions') {
    refusals.push(refuse('MOVE-07', `There is no approval to revoke: ${signOff.standing}.`));
  }
  if (refusals.length > 0) return decline(...refusals);
  return accept({
    type: 'sign-off-revoked/1',
    data: { request: command.request, reason: command.reason },
  });
}

function notTheirs(signOff: SignOff, context: Context): Refusal[] {
  return signOff.kind === 'asked' && signOff.engineer === context.by.person
    ? []
    : [refuse('MOVE-15', 'This sign-off was asked of another engineer.')];
}

function changedSince(signOff: SignOff): Refusal[] {
  return signOff.differences.length === 0
    ? []
    : [refuse('MOVE-16', `Changed since it was asked: ${words(signOff.differences)}. Ask again.`)];
}

const words = (differences: readonly Difference[]): string =>
  differences
    .map(({ path, from, to }) => `${path} ${JSON.stringify(from)} → ${JSON.stringify(to)}`)
    .join('; ');

function sameDifferences(
  ours: readonly Difference[],
  theirs: readonly { surface: string; path: string; from?: unknown; to?: unknown }[],
): boolean {
  return (
    ours.length === theirs.length && ours.every((each) => theirs.some((other) => same(each, other)))
  );
}
