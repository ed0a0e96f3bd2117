// What sign-off events make of a job: asked, answered, design received, reaffirmed, revoked.

import type { EventData, PastEvent } from '../contract/events.js';
import { contentPath } from '../contract/fact-dictionary.js';
import type { EngineerConditions } from '../contract/commands.js';
import type { Reads } from '../contract/events.js';
import type { Job, SignOff, Surface } from '../job.js';
import { lookupIn, same } from '../lookup.js';

export function asked(job: Job, data: EventData['sign-off-requested/1'], event: PastEvent): Job {
  return speaksFor(job, {
    id: data.request,
    kind: 'asked',
    surfaces: data.surfaces,
    engineer: data.engineer.id,
    scopeWords: data.scope_words,
    exclusions: data.exclusions,
    askedBy: event.by.person,
    askedAt: event.recordedAt,
    expires: data.expires,
    standing: 'waiting',
    license: null,
    words: null,
    conditions: null,
    scope: data.scope,
    differences: [],
  });
}

type Answer = PastEvent & { readonly type: 'sign-off-approved/1' | 'sign-off-declined/1' };

export function answered(job: Job, event: Answer, past: PastEvent): Job {
  const before = known(job, event.data.request);
  const said = {
    license: event.data.license,
    exclusions: joined(before.exclusions, event.data.exclusions),
  };
  if (event.type === 'sign-off-declined/1') {
    return withSignOff(job, {
      ...before,
      ...said,
      standing: 'declined',
      words: event.data.reasons,
    });
  }
  const { conditions, statement } = event.data;
  const signOff: SignOff = {
    ...before,
    ...said,
    standing: conditions ? 'approved-with-conditions' : 'approved',
    words: conditions?.words ?? statement,
    conditions,
  };
  return conditions ? bind(job, signOff, conditions, past) : withSignOff(job, signOff);
}

export function designReceived(
  job: Job,
  data: EventData['engineer-design-received/1'],
  event: PastEvent,
): Job {
  const signOff: SignOff = {
    id: data.design,
    kind: 'design-received',
    surfaces: data.surfaces,
    engineer: data.license.name,
    scopeWords: data.scope,
    exclusions: data.exclusions,
    askedBy: event.by.person,
    askedAt: event.recordedAt,
    expires: data.license.expires,
    standing: 'design-received',
    license: data.license,
    words: data.adopts.words,
    conditions: data.adopts,
    scope: data.scope_inputs,
    differences: [],
  };
  return bind(speaksFor(job, signOff), signOff, data.adopts, event);
}

export function reaffirmed(job: Job, data: EventData['sign-off-reaffirmed/1']): Job {
  const before = known(job, data.request);
  return withSignOff(job, {
    ...before,
    license: data.license,
    words: data.statement,
    scope: data.scope,
    differences: [],
  });
}

export function revoked(job: Job, data: EventData['sign-off-revoked/1']): Job {
  return withSignOff(job, { ...known(job, data.request), standing: 'revoked', words: data.reason });
}

/** Conditions bind the gauge stage: their values are the scope, and a stage that differs reopens. */
function bind(job: Job, signOff: SignOff, conditions: EngineerConditions, event: PastEvent): Job {
  const scope: Record<string, Reads> = { ...signOff.scope };
  let next = job;
  for (const id of signOff.surfaces) {
    const bound = boundValues(id, conditions);
    const kept = Object.entries(scope[id] ?? {}).filter(
      ([path]) => !(conditions.thickness && path === contentPath(id, 'gauge', 'grade')),
    );
    scope[id] = { ...Object.fromEntries(kept), ...bound };
    const surface = next.surfaces[id];
    if (surface) next = reopenWhereDifferent(next, surface, bound, conditions.words, event);
  }
  return withSignOff(next, { ...signOff, scope });
}

export function boundValues(
  surface: string,
  conditions: EngineerConditions,
): Record<string, unknown> {
  return {
    ...(conditions.thickness
      ? { [contentPath(surface, 'gauge', 'thickness_in')]: conditions.thickness.v }
      : {}),
    ...(conditions.attachment
      ? { [contentPath(surface, 'gauge', 'attachment')]: conditions.attachment }
      : {}),
  };
}

function reopenWhereDifferent(
  job: Job,
  surface: Surface,
  bound: Reads,
  words: string,
  event: PastEvent,
): Job {
  const state = surface.stages.gauge;
  if (!state.record) return job;
  const at = lookupIn(job);
  const causes = Object.entries(bound)
    .filter(([path, to]) => !same(at(path), to))
    .map(([path, to]) => ({
      path,
      from: at(path),
      to,
      at: event.recordedAt,
      by: event.by.person,
      reason: words,
    }));
  // Conditions always ask for the gauge stage to be confirmed again, even where it happens to agree.
  const gauge = {
    ...state,
    status: 'needs-recheck' as const,
    causes: [
      ...state.causes,
      ...(causes.length > 0 ? causes : [conditionsCause(surface.id, words, event)]),
    ],
  };
  return {
    ...job,
    surfaces: {
      ...job.surfaces,
      [surface.id]: { ...surface, stages: { ...surface.stages, gauge } },
    },
  };
}

const conditionsCause = (surface: string, words: string, event: PastEvent) => ({
  path: `surface/${surface}/sign-off`,
  from: null,
  to: 'conditions',
  at: event.recordedAt,
  by: event.by.person,
  reason: words,
});

function speaksFor(job: Job, signOff: SignOff): Job {
  const surfaces = { ...job.surfaces };
  for (const id of signOff.surfaces) {
    const surface = surfaces[id];
    if (surface) surfaces[id] = { ...surface, signOff: signOff.id };
  }
  return withSignOff({ ...job, surfaces }, signOff);
}

function withSignOff(job: Job, signOff: SignOff): Job {
  return { ...job, signOffs: { ...job.signOffs, [signOff.id]: signOff } };
}

function known(job: Job, id: string): SignOff {
  const signOff = job.signOffs[id];
  if (!signOff) throw new Error(`${job.id} has no sign-off ${id}`);
  return signOff;
}

const joined = (a: string, b: string): string => [a, b].filter((each) => each !== '').join(' ');
