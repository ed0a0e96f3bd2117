// Asking an engineer to sign, and entering a design that an engineer sent.

import type { CommandOf } from '../contract/commands.js';
import { accept, decline, type Context, type Decision } from '../decision.js';
import { signOffRequired, type Job, type Surface } from '../job.js';
import { refuse, type Refusal } from '../refusal.js';
import { isRefusal, openSurface } from '../stages/confirm.js';
import { licenseRefusals } from './license.js';
import { scopeOf } from './scope.js';

export function requestSignOff(
  job: Job,
  command: CommandOf<'request-sign-off'>,
  context: Context,
): Decision {
  const { surfaces, refusals } = named(job, command.surfaces);
  if (job.signOffs[command.request])
    refusals.push(refuse('MOVE-07', `Request ${command.request} stands already.`, '/request'));
  if (command.expires < context.at.slice(0, 10))
    refusals.push(refuse('MOVE-10', 'The request would be over already.', '/expires'));
  for (const surface of surfaces) {
    if (surface.stages.gauge.status !== 'confirmed') {
      refusals.push(
        refuse('MOVE-13', `${surface.name}: the gauge is not selected on today's facts.`),
      );
    }
  }
  if (refusals.length > 0) return decline(...refusals);
  const { request, engineer, scope: scope_words, exclusions, expires } = command;
  return accept({
    type: 'sign-off-requested/1',
    data: {
      request,
      surfaces: command.surfaces,
      engineer,
      scope_words,
      exclusions,
      expires,
      scope: Object.fromEntries(surfaces.map((surface) => [surface.id, scopeOf(job, surface)])),
      requires: Object.fromEntries(
        surfaces.map((surface) => [surface.id, signOffRequired(surface)]),
      ),
    },
  });
}

export function recordDesign(
  job: Job,
  command: CommandOf<'record-engineer-design'>,
  context: Context,
): Decision {
  const { surfaces, refusals } = named(job, command.surfaces);
  if (job.signOffs[command.design])
    refusals.push(refuse('MOVE-07', `Design ${command.design} stands already.`, '/design'));
  refusals.push(...licenseRefusals(job, command.license, command.dated, '/license'));
  if (command.dated > context.at.slice(0, 10))
    refusals.push(refuse('MOVE-10', 'A design cannot be dated after today.', '/dated'));
  if (refusals.length > 0) return decline(...refusals);
  const { type: _, ...data } = command;
  return accept({
    type: 'engineer-design-received/1',
    data: {
      ...data,
      scope_inputs: Object.fromEntries(
        surfaces.map((surface) => [surface.id, scopeOf(job, surface)]),
      ),
      standing: 'attached, not verified in this system',
    },
  });
}

function named(job: Job, ids: readonly string[]): { surfaces: Surface[]; refusals: Refusal[] } {
  const surfaces: Surface[] = [];
  const refusals: Refusal[] = [];
  for (const id of new Set(ids)) {
    const surface = openSurface(job, id);
    if (isRefusal(surface)) refusals.push(surface);
    else surfaces.push(surface);
  }
  return { surfaces, refusals };
}
