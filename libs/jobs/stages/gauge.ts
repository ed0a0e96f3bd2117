// Gauge selected: the whole evaluation, the pick, the attachment by zone, who and why. Comes last on
// purpose: the earlier choices often leave only one.

import type { Attachment, CommandOf } from '../contract/commands.js';
import type { Evaluation, FactUse } from '../contract/evaluation.js';
import type { GaugeContent, Reads } from '../contract/events.js';
import { factPath, type Path } from '../contract/fact-dictionary.js';
import { accept, decline, type Context, type Decision } from '../decision.js';
import { pathsOfExplanation, pathsRead, questionAt } from '../choosing/asking.js';
import { evaluate } from '../choosing/evaluate.js';
import { withExplanation } from '../choosing/what-would.js';
import type { Question } from '../choosing/question.js';
import type { Job, Surface } from '../job.js';
import { lookupIn, same } from '../lookup.js';
import { refuse, type Refusal } from '../refusal.js';
import { boundValues } from '../sign-off/past.js';
import {
  beforeRefusals,
  isRefusal,
  kept,
  openSurface,
  readsOf,
  reasonRefusals,
  ruleRefusals,
} from './confirm.js';

export function selectGauge(
  job: Job,
  command: CommandOf<'select-gauge'>,
  context: Context,
): Decision {
  const surface = openSurface(job, command.surface);
  if (isRefusal(surface)) return decline(surface);
  const before = beforeRefusals(surface, 'gauge');
  const asked = questionOf(job, surface, command.attachment, context);
  if (isQuestionRefusal(asked)) return decline(...before, ...asked);
  const reads = gaugeReads(job, surface, context);
  const evaluation = evaluate(asked, factsOf(job, surface, context), command.option);
  const option = evaluation.options.find(({ id }) => id === command.option);
  if (!option) {
    const known = evaluation.options.map(({ id }) => id).join(', ') || 'none';
    return decline(
      ...before,
      refuse(
        'MOVE-11',
        `There is no option ${command.option}; the catalogue edition offers ${known}.`,
        '/option',
      ),
    );
  }
  const recommended = evaluation.recommendation.option;
  const content: GaugeContent = {
    option: option.id,
    gauge: option.gauge,
    thickness_in: option.thickness.v,
    grade: option.grade,
    attachment: command.attachment,
    recommended,
    why: command.why ?? null,
  };
  const refusals = [
    ...before,
    ...reasonRefusals(surface, 'gauge', content, command.reason),
    ...ruleRefusals(option.findings, command, context),
    ...(recommended !== option.id && !command.why
      ? [
          refuse(
            'MOVE-12',
            `${recommended ?? 'Nothing'} is recommended: say why ${option.id} is taken instead.`,
            '/why',
          ),
        ]
      : []),
    ...boundRefusals(job, surface, content, asked),
  ];
  if (refusals.length > 0) return decline(...refusals);
  const said = { findings: option.findings, reads };
  return accept({
    type: 'gauge-selected/1',
    data: {
      ...kept(said, command, context),
      content,
      evaluation: withExplanation(asked, evaluation),
    },
  });
}

/** The evaluation as it would stand now, for a page that compares options before anyone picks. */
export function evaluationFor(
  job: Job,
  surface: Surface,
  attachment: Attachment,
  context: Context,
  picked?: string,
): Evaluation | readonly Refusal[] {
  const asked = questionOf(job, surface, attachment, context);
  return isQuestionRefusal(asked)
    ? asked
    : withExplanation(asked, evaluate(asked, factsOf(job, surface, context), picked));
}

const isQuestionRefusal = (value: Question | readonly Refusal[]): value is readonly Refusal[] =>
  Array.isArray(value);

export function questionOf(
  job: Job,
  surface: Surface,
  attachment: Attachment,
  context: Context,
): Question | readonly Refusal[] {
  const at = lookupIn(job);
  const { style, hazards } = surface.stages;
  if (
    !style.record ||
    !hazards.record ||
    at(factPath('surface', surface.id, 'substrate')) === null
  ) {
    return [
      refuse('MOVE-01', `${surface.name}: style, hazards and substrate come before the gauge.`),
    ];
  }
  return (
    questionAt(at, surface, attachment, { ...context, day: context.at.slice(0, 10) }) ?? [
      refuse(
        'MOVE-11',
        `Profile ${style.record.content.profile} is not in catalogue edition ${context.catalogue.edition}.`,
      ),
    ]
  );
}

const gaugeReads = (job: Job, surface: Surface, context: Context): Reads =>
  readsOf(job, surface, 'gauge', pathsRead(surface, context), lookupIn(job));

/** The facts as they are kept: what the evaluation read, and what only its explanation did. */
function factsOf(job: Job, surface: Surface, context: Context): readonly FactUse[] {
  const paths = [...pathsRead(surface, context), ...pathsOfExplanation(surface, context)];
  return factUses(job, readsOf(job, surface, 'gauge', paths, lookupIn(job)));
}

function factUses(job: Job, reads: Readonly<Record<Path, unknown>>): readonly FactUse[] {
  return Object.entries(reads).map(([path, value]) => {
    const fact = job.facts[path];
    return { path, value, how: fact?.how ?? null, source: fact?.source ?? null };
  });
}

/** What an engineer's conditions or design bind, and this does not keep. */
function boundRefusals(
  job: Job,
  surface: Surface,
  content: GaugeContent,
  asked: Question,
): readonly Refusal[] {
  const signOff = surface.signOff ? job.signOffs[surface.signOff] : undefined;
  const binding =
    signOff &&
    (signOff.standing === 'approved-with-conditions' || signOff.standing === 'design-received');
  if (!binding || !signOff.conditions) return [];
  const { conditions } = signOff;
  const refusals = Object.entries(boundValues(surface.id, conditions))
    .filter(
      ([path, value]) =>
        !same(value, (content as unknown as Record<string, unknown>)[path.split('/').at(-1) ?? '']),
    )
    .map(([path, value]) =>
      refuse(
        'MOVE-09',
        `The engineer set ${path.split('/').at(-1)} to ${JSON.stringify(value)}: ${conditions.words}`,
      ),
    );
  const widest = asked.facts.support_spacing_in;
  if (
    conditions.support_spacing &&
    widest !== undefined &&
    widest > Number(conditions.support_spacing.v)
  ) {
    refusals.push(
      refuse(
        'MOVE-09',
        `The engineer set supports at ${conditions.support_spacing.v} in or closer; ${widest} in was measured.`,
      ),
    );
  }
  return refusals;
}
