// A job as pages see it: every state in words, every fact with its history, nothing obscured.

import { label, STAGES, type Stage } from '#rules';
import { factDefinition, type FactName } from './contract/fact-dictionary.js';
import { afterOrderView } from './after-order/view.js';
import { takeOffView } from './take-off/view.js';
import type { Catalogue } from './contract/catalogue.js';
import type { ConfirmedStage } from './contract/events.js';
import type {
  FactView,
  JobView,
  RequestView,
  SignOffView,
  StageView,
  SurfaceView,
} from './contract/views.js';
import {
  activeSurfaces,
  CONFIRMED_STAGES,
  differencesFor,
  signOffRequired,
  signOffStands,
  surfaceStage,
  type FactState,
  type Job,
  type SignOff,
  type Surface,
} from './job.js';

/** With a catalogue the tests of open claims are computed too. */
export function jobView(job: Job, catalogue: Catalogue | null = null): JobView {
  const { id, version, number, name, priorities, due, jurisdiction, assigned } = job;
  return {
    id,
    version,
    number,
    name,
    priorities,
    due,
    jurisdiction,
    assigned,
    site: job.site?.id ?? '',
    parties: Object.fromEntries(
      Object.entries(job.parties).flatMap(([role, party]) => (party ? [[role, party.id]] : [])),
    ),
    stage: jobStage(job),
    surfaces_done: activeSurfaces(job).filter((surface) => surfaceStage(job, surface) === 'done')
      .length,
    buildings: Object.values(job.buildings),
    surfaces: Object.values(job.surfaces).map((surface) => surfaceView(job, surface)),
    facts: Object.entries(job.facts).map(([path, fact]) => factView(path, fact)),
    requests: Object.values(job.signOffs).map(requestView),
    take_offs: Object.values(job.takeOffs).map(takeOffView),
    after: afterOrderView(job, catalogue),
    notes: job.notes,
  };
}

/** The earliest stage that any surface has not confirmed. */
export function jobStage(job: Job): Stage | 'done' | 'no-surfaces' {
  const stages = activeSurfaces(job).map((surface) => surfaceStage(job, surface));
  if (stages.length === 0) return 'no-surfaces';
  return STAGES.find((stage) => stages.includes(stage)) ?? 'done';
}

function surfaceView(job: Job, surface: Surface): SurfaceView {
  const { id, building, name, kind, withdrawn, tearOff } = surface;
  const stage = surfaceStage(job, surface);
  return {
    id,
    building,
    name,
    kind,
    withdrawn,
    stage,
    tear_off: tearOff === 'different' ? 'due' : tearOff,
    on_hold: surface.held && stage !== 'done',
    stages: Object.fromEntries(
      CONFIRMED_STAGES.map((each) => [each, stageView(surface, each)]),
    ) as SurfaceView['stages'],
    sign_off: signOffView(job, surface),
  };
}

function stageView<S extends ConfirmedStage>(surface: Surface, stage: S): StageView<S> {
  const { status, record, causes } = surface.stages[stage];
  return {
    stage,
    status,
    causes,
    content: record?.content ?? null,
    findings: record?.findings ?? [],
    overrides: record?.overrides ?? [],
    acknowledged: record?.acknowledged ?? [],
    confirmed: record ? { by: record.by.person, role: record.by.role, at: record.at } : null,
    rules_edition: record?.rules_edition ?? null,
    catalogue_edition: record?.catalogue_edition ?? null,
    ...(record?.evaluation ? { evaluation: record.evaluation } : {}),
  };
}

function signOffView(job: Job, surface: Surface): SignOffView {
  const required = signOffRequired(surface);
  const signOff = surface.signOff ? job.signOffs[surface.signOff] : undefined;
  return {
    stage: 'sign-off',
    status: signOffStatus(job, surface, signOff),
    required,
    request: signOff?.id ?? null,
    standing: signOff ? standingWords(signOff) : null,
    license: signOff?.license ?? null,
    conditions: signOff?.conditions?.words ?? null,
    differences: signOff ? differencesFor(signOff, surface.id) : [],
  };
}

function signOffStatus(
  job: Job,
  surface: Surface,
  signOff: SignOff | undefined,
): SignOffView['status'] {
  if (signOff && differencesFor(signOff, surface.id).length > 0) return 'needs-recheck';
  if (signOff?.standing === 'waiting') return 'waiting';
  if (surface.stages.gauge.record === null) return 'not-started';
  if (signOffRequired(surface).length === 0) return 'not-needed';
  if (!signOff) return 'not-started';
  return signOffStands(job, surface) ? 'confirmed' : 'declined';
}

const STANDING: Readonly<Record<SignOff['standing'], RequestView['standing']>> = {
  waiting: 'waiting',
  approved: 'approved',
  'approved-with-conditions': 'approved with conditions',
  declined: 'declined',
  revoked: 'revoked',
  'design-received': 'design received',
};

function standingWords(signOff: SignOff): string {
  return signOff.kind === 'design-received'
    ? 'design received: attached, not verified in this system'
    : STANDING[signOff.standing];
}

function requestView(signOff: SignOff): RequestView {
  return {
    request: signOff.id,
    surfaces: signOff.surfaces,
    engineer: signOff.engineer,
    scope: signOff.scopeWords,
    exclusions: signOff.exclusions,
    asked: { by: signOff.askedBy, at: signOff.askedAt },
    expires: signOff.expires,
    standing: STANDING[signOff.standing],
    license: signOff.license,
    words: signOff.words,
  };
}

function factView(path: string, fact: FactState): FactView {
  const name = (path.split('/').at(-1) ?? '') as FactName;
  const { value, how, source, by, at, effectiveAt } = fact;
  return {
    path,
    name,
    value,
    how,
    source,
    by,
    at,
    effectiveAt,
    definition: factDefinition(name),
    earlier: fact.earlier.map((each) => ({
      value: each.value,
      how: each.how,
      by: each.by,
      at: each.at,
    })),
  };
}

export const stageWords = (stage: Stage | 'done' | 'no-surfaces'): string => {
  if (stage === 'done') return '6/6 Ready to order';
  if (stage === 'no-surfaces') return '0/6 No surfaces yet';
  return `${STAGES.indexOf(stage) + 1}/6 ${stage === 'sign-off' ? label(stage) : capital(label(stage))}`;
};
const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
