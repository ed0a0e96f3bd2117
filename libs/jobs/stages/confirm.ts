// Confirming a stage: the stages before it stand, the rules have spoken on today's facts, cautions
// are acknowledged, overrides are lawful. The same way for all; a stage adds only its own content.

import {
  factsReadBy,
  findings,
  label,
  mayBeOverridden,
  type Finding,
  type Role,
  type Stage,
} from '#rules';
import type { CommandOf } from '../contract/commands.js';
import type { ConfirmedStage, Reads, StageContents } from '../contract/events.js';
import type { Path } from '../contract/fact-dictionary.js';
import { accept, decline, type Context, type Decision } from '../decision.js';
import { stagesBefore, type Job, type Surface } from '../job.js';
import { contentPaths, lookupIn, same, type Lookup } from '../lookup.js';
import { pathsOf } from '../fact-paths.js';
import { surfaceFacts } from '../reading.js';
import { refuse, refusedBy, type Refusal } from '../refusal.js';

export interface StageCommand {
  readonly surface: string;
  readonly overrides: readonly { readonly rule: string; readonly reason: string }[];
  readonly acknowledges: readonly string[];
  readonly reason?: string | undefined;
}

/** The surface of a stage command, or why there is none to work on. */
export function openSurface(job: Job, id: string): Surface | Refusal {
  const surface = job.surfaces[id];
  if (!surface) return refuse('MOVE-03', `There is no surface ${id}.`, '/surface');
  if (surface.withdrawn !== null)
    return refuse('MOVE-07', `${surface.name} is withdrawn: ${surface.withdrawn}`, '/surface');
  return surface;
}
export const isRefusal = (value: Surface | Refusal): value is Refusal => 'code' in value;

/** Refusals of order: each earlier stage that does not stand. */
export function beforeRefusals(surface: Surface, stage: Stage): readonly Refusal[] {
  return stagesBefore(stage)
    .filter((before) => surface.stages[before].status !== 'confirmed')
    .map((before) => {
      const state =
        surface.stages[before].status === 'needs-recheck' ? 'needs a re-check' : 'is not confirmed';
      return refuse('MOVE-01', `${surface.name}: ${label(before)} ${state}.`);
    });
}

/** A change of what was confirmed needs a reason; confirming the same again after a re-check does not. */
export function reasonRefusals(
  surface: Surface,
  stage: ConfirmedStage,
  content: object,
  reason: string | undefined,
): readonly Refusal[] {
  const { status, record } = surface.stages[stage];
  if (!record || reason) return [];
  if (status === 'needs-recheck' && same(record.content, content)) return [];
  return [
    refuse('MOVE-02', `${label(stage)} was confirmed before: say why it changes.`, '/reason'),
  ];
}

/** What the rules of a stage say with its content laid over the record. */
export function speak(
  job: Job,
  surface: Surface,
  stage: ConfirmedStage,
  content: object,
  context: Context,
): { findings: readonly Finding[]; reads: Reads } {
  const at = lookupIn(job, contentPaths(surface.id, stage, content));
  const facts = surfaceFacts(at, surface, context.catalogue);
  return {
    findings: findings(context.edition, context.book, stage, facts),
    reads: readsOf(
      job,
      surface,
      stage,
      pathsOf(factsReadBy(context.edition, context.book, stage), surface),
      at,
    ),
  };
}

/** Path → value for everything read, but for the stage's own content. */
export function readsOf(
  job: Job,
  surface: Surface,
  stage: ConfirmedStage,
  paths: readonly Path[],
  at: Lookup,
): Reads {
  const own = `surface/${surface.id}/${stage}/`;
  const job_ = new Set(paths.filter((path) => !path.startsWith(own)));
  return Object.fromEntries([...job_].map((path) => [path, at(path) ?? null]));
}

/** Refusing findings that are not lawfully set aside, unacknowledged cautions, unlawful overrides. */
export function ruleRefusals(
  said: readonly Finding[],
  command: StageCommand,
  context: Context,
): readonly Refusal[] {
  const speaking = said.filter(({ outcome }) => outcome === 'fail');
  const lawful = new Set(
    command.overrides
      .map(({ rule }) => rule)
      .filter((rule) => overrideFault(rule, speaking, context) === null),
  );
  const refusing = said.filter(
    ({ rule, severity, outcome }) =>
      severity === 'refuse' &&
      (outcome === 'fail' || outcome === 'not-evaluated') &&
      !lawful.has(rule),
  );
  const unread = speaking.filter(
    ({ rule, severity }) =>
      severity === 'caution' && !lawful.has(rule) && !command.acknowledges.includes(rule),
  );
  return [
    ...refusing.map(refusedBy),
    ...unread.map((finding) =>
      refuse(
        'MOVE-05',
        `${finding.rule} is a caution to acknowledge: ${finding.words}`,
        '/acknowledges',
      ),
    ),
    ...command.overrides.flatMap(({ rule }, i) => {
      const fault = overrideFault(rule, speaking, context);
      return fault === null ? [] : [refuse('MOVE-06', fault, `/overrides/${i}`)];
    }),
  ];
}

function overrideFault(
  rule: string,
  speaking: readonly Finding[],
  context: Context,
): string | null {
  const finding = speaking.find((each) => each.rule === rule);
  if (!finding) return `${rule} says nothing here that could be set aside.`;
  if (!mayBeOverridden(finding.class))
    return `${rule} is ${label(finding.class)}: it may not be set aside.`;
  const may: readonly Role[] =
    context.policy.overrides[finding.class as 'guidance' | 'house-policy'];
  return context.by.roles.some((role) => may.includes(role))
    ? null
    : `${rule} may be set aside by ${may.join(', ') || 'nobody'}.`;
}

/** What every confirmed stage keeps beside its content. */
export function kept(
  said: { findings: readonly Finding[]; reads: Reads },
  command: StageCommand,
  context: Context,
) {
  return {
    surface: command.surface,
    reads: said.reads,
    findings: said.findings,
    overrides: command.overrides.map(({ rule, reason }) => ({
      rule,
      reason,
      says: said.findings.find((finding) => finding.rule === rule)?.words ?? '',
    })),
    acknowledged: command.acknowledges.filter((rule) => said.findings.some((f) => f.rule === rule)),
    rules_edition: { number: context.edition.number, digest: context.editionDigest },
    catalogue_edition: { number: context.catalogue.edition, digest: context.catalogueDigest },
    reason: command.reason ?? null,
  };
}

/** The whole way for a stage whose rules need nothing but the facts. */
export function confirmPlain<S extends 'style' | 'coating' | 'hazards' | 'substrate'>(
  job: Job,
  command: StageCommand,
  context: Context,
  stage: S,
  content: (surface: Surface) => StageContents[S] | readonly Refusal[],
  event: (
    data: ReturnType<typeof kept> & { content: StageContents[S] },
  ) => Extract<Decision, { ok: true }>['events'][0],
): Decision {
  const surface = openSurface(job, command.surface);
  if (isRefusal(surface)) return decline(surface);
  const built = content(surface);
  const before = beforeRefusals(surface, stage);
  if (Array.isArray(built)) return decline(...before, ...(built as readonly Refusal[]));
  const settled = built as StageContents[S];
  const said = speak(job, surface, stage, settled, context);
  const refusals = [
    ...before,
    ...reasonRefusals(surface, stage, settled, command.reason),
    ...ruleRefusals(said.findings, command, context),
  ];
  return refusals.length > 0
    ? decline(...refusals)
    : accept(event({ ...kept(said, command, context), content: settled }));
}

export function reopenStage(job: Job, command: CommandOf<'reopen-stage'>): Decision {
  const surface = openSurface(job, command.surface);
  if (isRefusal(surface)) return decline(surface);
  if (surface.stages[command.stage].status !== 'confirmed') {
    return decline(refuse('MOVE-18', `${surface.name}: ${label(command.stage)} is not confirmed.`));
  }
  return accept({
    type: 'stage-reopened/1',
    data: { surface: surface.id, stage: command.stage, reason: command.reason },
  });
}
