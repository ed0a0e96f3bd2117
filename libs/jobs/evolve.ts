// What each event makes of a job. Never refuses and never asks a rule; an unknown event is a fault.
// A change marks the later stages that read it, once, and every sign-off whose scope holds it.

import { HOWS } from '#rules';
import { evolveAfter, isAfterOrder } from './after-order/state.js';
import type { ConfirmedStage, EventData, PastEvent } from './contract/events.js';
import { NO_STAGES, type FactState, type Job, type Surface } from './job.js';
import { contentPaths, lookupIn, same, type PathChange } from './lookup.js';
import { change, markChanges, withSurface } from './re-check.js';
import { takenOff } from './take-off/state.js';
import { answered, asked, designReceived, reaffirmed, revoked } from './sign-off/past.js';

export function evolve(job: Job, event: PastEvent): Job {
  if (event.version !== job.version + 1) {
    throw new Error(`${job.id}: event ${event.version} does not follow version ${job.version}`);
  }
  return { ...apply(job, event), version: event.version, updatedAt: event.recordedAt };
}

function apply(job: Job, event: PastEvent): Job {
  switch (event.type) {
    case 'job-opened/1':
      return { ...job, ...event.data };
    case 'job-described/1':
      return described(job, event.data, event);
    case 'building-added/1':
      return withBuilding(job, event.data);
    case 'surface-added/1':
      return withSurface(job, newSurface(event.data));
    case 'surface-withdrawn/1':
      return change(job, event.data.surface, (s) => ({ ...s, withdrawn: event.data.reason }));
    case 'facts-recorded/1':
      return factsRecorded(job, event.data, event);
    case 'style-chosen/1':
      return stageConfirmed(job, 'style', event.data, event);
    case 'coating-chosen/1':
      return stageConfirmed(job, 'coating', event.data, event);
    case 'hazards-assessed/1':
      return stageConfirmed(job, 'hazards', event.data, event);
    case 'substrate-confirmed/1':
      return substrateConfirmed(job, event.data, event);
    case 'gauge-selected/1':
      return stageConfirmed(job, 'gauge', event.data, event);
    case 'stage-reopened/1':
      return reopened(job, event.data.surface, event.data.stage, event.data.reason, event);
    case 'tear-off-recorded/1':
      return tornOff(job, event.data, event);
    case 'sign-off-requested/1':
      return asked(job, event.data, event);
    case 'sign-off-approved/1':
    case 'sign-off-declined/1':
      return answered(job, event, event);
    case 'engineer-design-received/1':
      return designReceived(job, event.data, event);
    case 'sign-off-reaffirmed/1':
      return reaffirmed(job, event.data);
    case 'sign-off-revoked/1':
      return revoked(job, event.data);
    case 'take-off-recorded/1':
      return takenOff(job, event.data, event);
    case 'note-added/1':
      return withNote(job, event.data, event);
    default:
      if (isAfterOrder(event)) return { ...job, after: evolveAfter(job.after, event) };
      return unknownEvent(event);
  }
}

function unknownEvent(event: never): never {
  throw new Error(`unknown event: ${JSON.stringify((event as { type?: unknown }).type)}`);
}

const withBuilding = (job: Job, { building, name }: EventData['building-added/1']): Job => ({
  ...job,
  buildings: { ...job.buildings, [building]: { id: building, name } },
});

const withNote = (job: Job, { about, words }: EventData['note-added/1'], of: PastEvent): Job => ({
  ...job,
  notes: [...job.notes, { about, words, by: of.by.person, at: of.recordedAt }],
});

function newSurface(data: EventData['surface-added/1']): Surface {
  const { surface: id, building, name, kind } = data;
  return {
    id,
    building,
    name,
    kind,
    withdrawn: null,
    stages: NO_STAGES,
    tearOff: 'not-needed',
    held: false,
    signOff: null,
  };
}

function described(job: Job, data: EventData['job-described/1'], event: PastEvent): Job {
  const { reason, parties, ...rest } = data;
  const next = { ...job, ...defined(rest), parties: { ...job.parties, ...defined(parties ?? {}) } };
  if (data.priorities === undefined) return next;
  return markChanges(
    next,
    [{ path: 'job/priorities', from: job.priorities, to: data.priorities }],
    event,
    reason ?? null,
  );
}

function defined<T extends object>(value: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined)) as never;
}

function factsRecorded(job: Job, data: EventData['facts-recorded/1'], event: PastEvent): Job {
  const facts: Record<string, FactState> = { ...job.facts };
  const changes: PathChange[] = [];
  for (const entry of data.facts) {
    const before = facts[entry.path];
    if (!before || !same(before.value, entry.value)) {
      changes.push({ path: entry.path, from: before?.value ?? null, to: entry.value });
    }
    if (!before || HOWS.indexOf(entry.how) < HOWS.indexOf(before.how as never)) {
      changes.push({ path: `${entry.path}#how`, from: before?.how ?? null, to: entry.how });
    }
    const { earlier = [], ...last } = before ?? {};
    facts[entry.path] = {
      value: entry.value,
      how: entry.how,
      source: entry.source ?? null,
      by: event.by.person,
      at: event.recordedAt,
      effectiveAt: event.effectiveAt,
      earlier: before ? [...earlier, last as Omit<FactState, 'earlier'>] : [],
    };
  }
  return markChanges({ ...job, facts }, changes, event, data.reason);
}

type Confirmation = EventData[
  | 'style-chosen/1'
  | 'coating-chosen/1'
  | 'hazards-assessed/1'
  | 'substrate-confirmed/1'
  | 'gauge-selected/1'];

function stageConfirmed(
  job: Job,
  stage: ConfirmedStage,
  data: Confirmation,
  event: PastEvent,
): Job {
  const before = lookupIn(job);
  const { surface, reason, ...kept } = data;
  const next = change(job, surface, (s) => ({
    ...s,
    stages: {
      ...s.stages,
      [stage]: {
        status: 'confirmed',
        record: { ...kept, by: event.by, at: event.recordedAt },
        causes: [],
      },
    },
  }));
  const changes = Object.entries(contentPaths(surface, stage, data.content)).flatMap(
    ([path, to]) => {
      const from = before(path);
      return same(from, to) ? [] : [{ path, from, to }];
    },
  );
  return markChanges(next, changes, event, reason);
}

function substrateConfirmed(
  job: Job,
  data: EventData['substrate-confirmed/1'],
  event: PastEvent,
): Job {
  return change(stageConfirmed(job, 'substrate', data, event), data.surface, (s) => ({
    ...s,
    tearOff: data.content.provisional
      ? 'due'
      : s.tearOff === 'not-needed'
        ? 'not-needed'
        : 'confirmed',
  }));
}

function reopened(
  job: Job,
  surface: string,
  stage: ConfirmedStage,
  reason: string,
  event: PastEvent,
): Job {
  const path = `surface/${surface}/${stage}`;
  const cause = {
    path,
    from: 'confirmed',
    to: 'reopened',
    at: event.recordedAt,
    by: event.by.person,
    reason,
  };
  return change(job, surface, (s) => ({
    ...s,
    stages: {
      ...s.stages,
      [stage]: {
        ...s.stages[stage],
        status: 'needs-recheck',
        causes: [...s.stages[stage].causes, cause],
      },
    },
  }));
}

function tornOff(job: Job, data: EventData['tear-off-recorded/1'], event: PastEvent): Job {
  if (data.finding === 'as-assumed')
    return change(job, data.surface, (s) => ({ ...s, tearOff: 'confirmed' }));
  const held = change(job, data.surface, (s) => ({ ...s, tearOff: 'different', held: true }));
  return reopened(held, data.surface, 'substrate', `tear-off: ${data.words}`, event);
}
