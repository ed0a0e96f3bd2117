// Opening and describing a job: its parties, buildings and surfaces, and notes on it.

import type { CommandOf } from './contract/commands.js';
import type { JobEvent } from './contract/events.js';
import { accept, decline, type Decision } from './decision.js';
import type { Job } from './job.js';
import { same } from './lookup.js';
import { refuse, type Refusal } from './refusal.js';

export function openJob(job: Job, command: CommandOf<'open-job'>): Decision {
  if (job.version > 0) return decline(refuse('MOVE-07', `Job ${job.number} is open already.`));
  const { buildings, surfaces } = command;
  const refusals = [
    ...twice(buildings.map(({ id }) => id)).map((id) =>
      refuse('MOVE-07', `Building ${id} is named twice.`, '/buildings'),
    ),
    ...twice(surfaces.map(({ id }) => id)).map((id) =>
      refuse('MOVE-07', `Surface ${id} is named twice.`, '/surfaces'),
    ),
    ...surfaces
      .filter(({ building }) => !buildings.some(({ id }) => id === building))
      .map(({ id, building }) =>
        refuse(
          'MOVE-03',
          `Surface ${id} is on building ${building}, which is not named.`,
          '/surfaces',
        ),
      ),
  ];
  if (refusals.length > 0) return decline(...refusals);
  return accept(
    {
      type: 'job-opened/1',
      data: {
        number: command.number,
        name: command.name,
        site: command.site,
        parties: command.parties,
        priorities: command.priorities,
        due: command.due ?? null,
        jurisdiction: command.jurisdiction ?? null,
      },
    },
    ...buildings.map(({ id, name }): JobEvent => ({
      type: 'building-added/1',
      data: { building: id, name },
    })),
    ...surfaces.map(({ id, ...rest }): JobEvent => ({
      type: 'surface-added/1',
      data: { surface: id, ...rest },
    })),
  );
}

const twice = (ids: readonly string[]): readonly string[] => [
  ...new Set(ids.filter((id, i) => ids.indexOf(id) !== i)),
];

export function describeJob(job: Job, command: CommandOf<'describe-job'>): Decision {
  const { type: _, ...data } = command;
  const { reason, ...said } = data;
  if (Object.keys(said).length === 0)
    return decline(refuse('MOVE-10', 'Say what is to be changed.'));
  const decided = Object.values(job.surfaces).some((s) => s.stages.gauge.record !== null);
  if (decided && !reason && said.priorities && !same(said.priorities, job.priorities)) {
    return decline(
      refuse(
        'MOVE-02',
        'A gauge was selected on the old priorities: say why they change.',
        '/reason',
      ),
    );
  }
  return accept({ type: 'job-described/1', data });
}

export function addBuilding(job: Job, command: CommandOf<'add-building'>): Decision {
  if (job.buildings[command.id])
    return decline(refuse('MOVE-07', `Building ${command.id} stands already.`, '/id'));
  return accept({ type: 'building-added/1', data: { building: command.id, name: command.name } });
}

export function addSurface(job: Job, command: CommandOf<'add-surface'>): Decision {
  const refusals: Refusal[] = [];
  if (job.surfaces[command.id])
    refusals.push(refuse('MOVE-07', `Surface ${command.id} stands already.`, '/id'));
  if (!job.buildings[command.building])
    refusals.push(refuse('MOVE-03', `There is no building ${command.building}.`, '/building'));
  if (refusals.length > 0) return decline(...refusals);
  const { id, building, name, kind } = command;
  return accept({ type: 'surface-added/1', data: { surface: id, building, name, kind } });
}

export function withdrawSurface(job: Job, command: CommandOf<'withdraw-surface'>): Decision {
  const surface = job.surfaces[command.surface];
  if (!surface)
    return decline(refuse('MOVE-03', `There is no surface ${command.surface}.`, '/surface'));
  if (surface.withdrawn !== null)
    return decline(refuse('MOVE-07', `${surface.name} is withdrawn already.`));
  return accept({
    type: 'surface-withdrawn/1',
    data: { surface: surface.id, reason: command.reason },
  });
}

export function addNote(job: Job, command: CommandOf<'add-note'>): Decision {
  const { about, words, files } = command;
  if (about !== null && !job.surfaces[about] && !job.buildings[about]) {
    return decline(refuse('MOVE-03', `There is no building or surface ${about}.`, '/about'));
  }
  return accept({ type: 'note-added/1', data: { about, words, files } });
}
