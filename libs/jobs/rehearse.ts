// A rehearsal: what the rules would say to a command and what it would put up for re-check, with
// nothing recorded. Pages show it before anyone confirms.

import type { Finding, Stage } from '#rules';
import type { Command } from './contract/commands.js';
import type { JobEvent, PastEvent } from './contract/events.js';
import type { Rehearsal } from './contract/views.js';
import { decide } from './decide.js';
import type { Context, Decision } from './decision.js';
import { evolve } from './evolve.js';
import { CONFIRMED_STAGES, differencesFor, type Job } from './job.js';
import { evaluationFor, questionOf } from './stages/gauge.js';
import { linesOf } from './take-off/lines.js';
import { speak } from './stages/confirm.js';
import { draftContent } from './stages/draft.js';

const STAGE_OF: Readonly<Partial<Record<Command['type'], Stage>>> = {
  'choose-style': 'style',
  'choose-coating': 'coating',
  'assess-hazards': 'hazards',
  'confirm-substrate': 'substrate',
  'select-gauge': 'gauge',
};

export function rehearse(job: Job, command: Command, context: Context): Rehearsal {
  const decision = decide(job, command, context);
  const said = saidIn(decision) ?? saidBy(job, command, context);
  return {
    surface: 'surface' in command ? command.surface : '',
    stage: STAGE_OF[command.type] ?? 'sign-off',
    findings: said.findings,
    refusals: decision.ok ? [] : decision.refusals,
    reopens: decision.ok ? reopens(job, decision.events, context) : [],
    ...(said.evaluation ? { evaluation: said.evaluation } : {}),
    ...(decision.ok ? takenOff(job, decision.events, context) : {}),
  };
}

function takenOff(
  job: Job,
  [event]: readonly JobEvent[],
  { catalogue }: Context,
): Pick<Rehearsal, 'take_off'> {
  const surface =
    event?.type === 'take-off-recorded/1' ? job.surfaces[event.data.surface] : undefined;
  if (event?.type !== 'take-off-recorded/1' || !surface) return {};
  const number = Object.keys(job.surfaces).indexOf(surface.id) + 1;
  return {
    take_off: {
      result: event.data.result,
      lines: linesOf(surface, number, event.data.result, catalogue),
    },
  };
}

/** What an accepted gauge says stands in its event: it is not worked out a second time. */
function saidIn(decision: Decision): Pick<Rehearsal, 'findings' | 'evaluation'> | undefined {
  const [event] = decision.ok ? decision.events : [];
  if (event?.type !== 'gauge-selected/1') return undefined;
  const { findings, evaluation } = event.data;
  return { findings, evaluation };
}

function saidBy(
  job: Job,
  command: Command,
  context: Context,
): Pick<Rehearsal, 'findings' | 'evaluation'> {
  const stage = STAGE_OF[command.type];
  const surface = 'surface' in command ? job.surfaces[command.surface] : undefined;
  if (!stage || !surface) return { findings: [] };
  if (command.type === 'select-gauge') {
    const asked = questionOf(job, surface, command.attachment, context);
    if (Array.isArray(asked)) return { findings: [] };
    const evaluation = evaluationFor(job, surface, command.attachment, context, command.option);
    if (Array.isArray(evaluation) || !('options' in evaluation)) return { findings: [] };
    const picked = evaluation.options.find(({ id }) => id === command.option);
    return { findings: picked?.findings ?? [], evaluation };
  }
  const content = draftContent(job, surface, command, context);
  return {
    findings: content
      ? speak(job, surface, stage as never, content, context).findings
      : ([] as Finding[]),
  };
}

/** Stages and sign-offs that stood before and would not after. */
function reopens(job: Job, events: readonly JobEvent[], context: Context): Rehearsal['reopens'] {
  const after = events.reduce<Job>(
    (state, event) => evolve(state, asPast(event, state, context)),
    job,
  );
  return Object.values(job.surfaces).flatMap((before) => {
    const now = after.surfaces[before.id];
    const stages = CONFIRMED_STAGES.filter(
      (stage) =>
        before.stages[stage].status === 'confirmed' &&
        now?.stages[stage].status === 'needs-recheck',
    );
    const signOff = before.signOff ? after.signOffs[before.signOff] : undefined;
    const was = before.signOff ? job.signOffs[before.signOff] : undefined;
    const signed =
      signOff &&
      was &&
      differencesFor(was, before.id).length === 0 &&
      differencesFor(signOff, before.id).length > 0;
    return [
      ...stages.map((stage) => ({
        surface: before.id,
        stage: stage as Stage,
        because: now?.stages[stage].causes.map(({ path }) => path) ?? [],
      })),
      ...(signed
        ? [
            {
              surface: before.id,
              stage: 'sign-off' as const,
              because: differencesFor(signOff, before.id).map(({ path }) => path),
            },
          ]
        : []),
    ];
  });
}

/** An event as it would stand in the record: enough for `evolve`. */
function asPast(event: JobEvent, job: Job, context: Context): PastEvent {
  const { person, roles } = context.by;
  return {
    ...event,
    id: 'rehearsal',
    version: job.version + 1,
    by: { person, role: roles[0] ?? '' },
    recordedAt: context.at,
    effectiveAt: context.at,
  };
}
