// Substrate confirmed: from the recorded facts, all measured or documented. A reroof is confirmed
// provisionally until the tear-off checkpoint confirms it or reopens it for that surface alone.

import { isOpenFraming, type Substrate } from '#rules';
import type { CommandOf } from '../contract/commands.js';
import { factPath } from '../contract/fact-dictionary.js';
import { accept, decline, type Context, type Decision } from '../decision.js';
import type { Job, Surface } from '../job.js';
import { lookupIn } from '../lookup.js';
import { surfaceFacts } from '../reading.js';
import { refuse, type Refusal } from '../refusal.js';
import { confirmPlain, isRefusal, openSurface } from './confirm.js';

export function confirmSubstrate(
  job: Job,
  command: CommandOf<'confirm-substrate'>,
  context: Context,
): Decision {
  return confirmPlain(
    job,
    command,
    context,
    'substrate',
    (surface) => {
      const substrate = lookupIn(job)(
        factPath('surface', surface.id, 'substrate'),
      ) as Substrate | null;
      const refusals = provisionalRefusals(job, surface, command.provisional);
      if (substrate === null) {
        return [
          ...refusals,
          refuse('MOVE-10', `${surface.name}: record what the panels lie on first.`, '/surface'),
        ];
      }
      if (refusals.length > 0) return refusals;
      return {
        substrate,
        open_framing: isOpenFraming(substrate),
        provisional: command.provisional,
      };
    },
    (data) => ({ type: 'substrate-confirmed/1', data }),
  );
}

function provisionalRefusals(job: Job, surface: Surface, provisional: boolean): readonly Refusal[] {
  const reroof = lookupIn(job)(factPath('surface', surface.id, 'reroof')) === true;
  const tornOff = surface.tearOff === 'different' || surface.tearOff === 'confirmed';
  if (provisional && !reroof)
    return [refuse('MOVE-08', 'Only a reroof is confirmed provisionally.', '/provisional')];
  if (provisional && tornOff)
    return [refuse('MOVE-08', 'The old roof is off: confirm what was found.', '/provisional')];
  if (reroof && !provisional && !tornOff) {
    return [
      refuse(
        'MOVE-08',
        'The old roof still covers it: confirm provisionally; the tear-off checkpoint follows.',
        '/provisional',
      ),
    ];
  }
  const loose = tornOff && reroof ? looseFacts(job, surface) : [];
  return loose.map((name) =>
    refuse('MOVE-08', `The old roof is off: record ${name} as measured.`, '/surface'),
  );
}

const looseFacts = (job: Job, surface: Surface): readonly string[] =>
  surfaceFacts(lookupIn(job), surface, NO_CATALOGUE).substrate_not_measured ?? [];

export function recordTearOff(job: Job, command: CommandOf<'record-tear-off'>): Decision {
  const surface = openSurface(job, command.surface);
  if (isRefusal(surface)) return decline(surface);
  if (surface.tearOff !== 'due') {
    return decline(
      refuse('MOVE-08', `${surface.name}: no tear-off checkpoint is due (${surface.tearOff}).`),
    );
  }
  if (command.finding === 'as-assumed') {
    const loose = looseFacts(job, surface);
    if (loose.length > 0) {
      return decline(refuse('MOVE-08', `Record what was measured first: ${loose.join(', ')}.`));
    }
  }
  const { finding, words, files } = command;
  return accept({
    type: 'tear-off-recorded/1',
    data: { surface: surface.id, finding, words, files },
  });
}

const NO_CATALOGUE = {
  edition: 1,
  in_force_from: '2000-01-01',
  summary: 'none',
  profiles: [],
  made: [],
  charts: [],
  assemblies: [],
  fasteners: [],
  terms: [],
};
