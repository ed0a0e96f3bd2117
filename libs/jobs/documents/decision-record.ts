// The decision record: a fold of a job's events up to a moment. For each surface what was chosen at
// each stage, by whom, on which facts, under which edition, every option's outcome, who signed.

import { citationText } from '#engineering';
import type { Finding, Stage } from '#rules';
import type {
  DecisionRecord,
  ReadFact,
  RecordedStage,
  RecordedSurface,
} from '../contract/decision-record.js';
import { STAGE_EVENT, type ConfirmedStage, type PastEvent } from '../contract/events.js';
import type { Evaluation } from '../contract/evaluation.js';
import { evolveKnown } from '../as-of.js';
import { wordsFor } from '../history.js';
import {
  activeSurfaces,
  CONFIRMED_STAGES,
  initial,
  type Job,
  type StageRecord,
  type Surface,
} from '../job.js';
import { isStageEvent } from '../rulebook/decided.js';
import { fastenerKey, type Names } from './moment.js';
import { jobView, stageWords, jobStage } from '../view.js';
import type { Cause } from '../contract/cause.js';
import type { SignOffView, StageStatus } from '../contract/views.js';

export function decisionRecord(
  id: string,
  events: readonly PastEvent[],
  names: Names,
): DecisionRecord {
  const { job, decided } = told(id, events);
  const last = events.at(-1);
  const view = jobView(job);
  const name = (key: string): string => names[key] ?? key;
  return {
    document: 'decision-record',
    job: {
      id,
      number: job.number,
      name: job.name,
      customer: name(job.parties['customer']?.id ?? ''),
      site: name(job.site?.id ?? ''),
      jurisdiction: job.jurisdiction,
    },
    as_of: { recorded: last?.recordedAt ?? '', version: job.version },
    stands_at: stageWords(jobStage(job)),
    surfaces: activeSurfaces(job).map((surface) => {
      const seen = view.surfaces.find((each) => each.id === surface.id)!;
      return recordedSurface(decided, surface, seen.sign_off, name);
    }),
    timeline: events.map((event) => ({
      version: event.version,
      at: event.recordedAt,
      effective: event.effectiveAt,
      by: name(event.by.person),
      role: event.by.role,
      words: wordsFor(event),
    })),
    cautions: CAUTIONS,
  };
}

/** The job at the end, and as it stood when each stage of each surface was confirmed last. */
function told(
  id: string,
  events: readonly PastEvent[],
): { readonly job: Job; readonly decided: ReadonlyMap<string, Job> } {
  const decided = new Map<string, Job>();
  let job = initial(id);
  for (const event of events) {
    job = evolveKnown(job, event);
    if (isStageEvent(event)) decided.set(`${event.data.surface} ${event.type}`, job);
  }
  return { job: { ...job, version: events.at(-1)?.version ?? 0 }, decided };
}

function recordedSurface(
  decided: ReadonlyMap<string, Job>,
  surface: Surface,
  signOff: SignOffView,
  name: (id: string) => string,
): RecordedSurface {
  const gauge = surface.stages.gauge.record;
  return {
    id: surface.id,
    name: surface.name,
    kind: surface.kind,
    stages: CONFIRMED_STAGES.flatMap((stage) => {
      const { status, record, causes } = surface.stages[stage];
      const then = decided.get(`${surface.id} ${STAGE_EVENT[stage]}`);
      return record && then ? [recordedStage(then, stage, status, record, causes, name)] : [];
    }),
    gauge: gauge?.evaluation ?? null,
    why: gauge?.evaluation
      ? whyWords(gauge.evaluation, gauge.content.option, gauge.content.why)
      : [],
    sign_off: signOff,
  };
}

/** How a value that a stage read was known then: a fact somebody recorded, or an earlier decision. */
function knownOf(job: Job, path: string): Omit<ReadFact, 'path' | 'value'> {
  const fact = job.facts[path];
  if (fact) return { how: fact.how, source: fact.source, by: fact.by, at: fact.at };
  const [, surface = '', stage = ''] = path.split('/');
  const record = job.surfaces[surface]?.stages[stage as ConfirmedStage]?.record;
  return { how: null, source: null, by: record?.by.person ?? null, at: record?.at ?? null };
}

function recordedStage(
  then: Job,
  stage: Stage,
  status: StageStatus,
  record: StageRecord,
  causes: readonly Cause[],
  name: (id: string) => string,
): RecordedStage {
  const fastener = (given: string): string => {
    const key = fastenerKey(record.catalogue_edition.number, given);
    const named = name(key);
    return named === key ? given : named;
  };
  return {
    stage,
    status,
    chosen: Object.entries(record.content).flatMap(([what, value]) => {
      const text = plain(value, fastener);
      return text === null ? [] : [{ what: what.replaceAll('_', ' '), value: text }];
    }),
    facts: Object.entries(record.reads)
      .filter(([path, value]) => value !== null && !path.endsWith('#how'))
      .map(([path, value]) => {
        const { by, ...known } = knownOf(then, path);
        return { path, value, ...known, by: by === null ? null : name(by) };
      }),
    said: record.findings.map(saidWords),
    overrides: record.overrides,
    by: name(record.by.person),
    role: record.by.role,
    at: record.at,
    rules_edition: record.rules_edition.number,
    catalogue_edition: record.catalogue_edition.number,
    causes: causes.map((cause) => ({ ...cause, by: name(cause.by) })),
  };
}

const saidWords = ({ rule, severity, outcome, words, cites }: Finding) => ({
  rule,
  severity,
  outcome,
  words,
  cites: cites.map(citationText),
});

/** Values as they read in a table; whole evaluations and load sets stand elsewhere. */
function plain(value: unknown, nameOf: (fastener: string) => string): string | null {
  if (value === null || value === undefined) return null;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return value;
  const { method, source, basis, zones } = value as {
    method?: string;
    source?: string;
    basis?: string;
    zones?: readonly object[];
  };
  if (method)
    return [method, method === 'not-applicable' ? '' : `${basis} level`, source]
      .filter((each) => each)
      .join(', ');
  if (zones && 'fastener' in (value as object)) {
    const { fastener } = value as { fastener: string };
    return `${nameOf(fastener)}: ${zones.map((each) => zoneWords(each as never)).join('; ')}`;
  }
  return null;
}

const zoneWords = ({
  zone,
  spacing,
  rows,
}: {
  zone: string;
  spacing: { v: string; u: string };
  rows?: { v: string };
}): string =>
  `${zone === 'all' ? 'every zone' : `zone ${zone}`} at ${spacing.v} in${rows ? `, rows at ${rows.v} in` : ''}`;

/** Why this gauge, in a few sentences: the recommendation, the person's reason, each other option. */
export function whyWords(
  evaluation: Evaluation,
  picked: string,
  why: string | null,
): readonly string[] {
  return [
    evaluation.recommendation.sentence,
    ...(evaluation.recommendation.option === picked
      ? []
      : [`The person took ${wordsOf(evaluation, picked)} instead: ${why ?? 'no reason given'}`]),
    ...evaluation.options.flatMap(({ why_not }) => (why_not ? [why_not.words] : [])),
  ];
}

function wordsOf({ options }: Evaluation, id: string): string {
  const option = options.find((each) => each.id === id);
  if (!option) return id;
  const { gauge, thickness, grade } = option;
  return gauge === null
    ? `${thickness.v} in (${grade})`
    : `${gauge} gauge (${thickness.v} in, ${grade})`;
}

const CAUTIONS = [
  'An office aid: local code and the authority having jurisdiction govern. What spans needs a licensed engineer. A panel that passes is not thereby walkable.',
  'The record shows what was recorded, unchanged and in this order, to anyone holding a checkpoint; it does not show that what was recorded is true.',
] as const;
