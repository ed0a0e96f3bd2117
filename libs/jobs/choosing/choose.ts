// The calculator `choose`: one surface's facts in, the whole evaluation out; nothing is recorded. It
// plays the stages in memory, so that the same rules and refusals hold as in a job.

import { z } from 'zod';
import { refused, result, type Fault, type Outcome } from '#engineering';
import {
  COLOR_GROUPS,
  METALLIC_COATINGS,
  METALS,
  PAINT_SYSTEMS,
  PRIORITIES,
  SURFACE_KINDS,
} from '#rules';
import { Id } from '../contract/amounts.js';
import { Attachment, Command, Hazards, type CommandInput } from '../contract/commands.js';
import { factDefinition, FACT_NAMES, type FactName } from '../contract/fact-dictionary.js';
import type { Evaluation } from '../contract/evaluation.js';
import type { JobEvent } from '../contract/events.js';
import { decide } from '../decide.js';
import type { Context } from '../decision.js';
import { evolve } from '../evolve.js';
import { initial, type Job } from '../job.js';
import { evaluationFor } from '../stages/gauge.js';

const facts = z.partialRecord(
  z.enum(FACT_NAMES as readonly [FactName, ...FactName[]]),
  z.unknown(),
);

export const ChooseInput = z.strictObject({
  kind: z.enum(SURFACE_KINDS),
  priorities: z.array(z.enum(PRIORITIES)).max(6).default([]),
  facts: z.strictObject({
    site: facts.default({}),
    building: facts.default({}),
    surface: facts.default({}),
  }),
  style: z.strictObject({
    profile: Id,
    width_in: z.number().positive(),
    lap_sealant: z.boolean().default(false),
  }),
  coating: z.strictObject({
    metal: z.enum(METALS),
    metallic_coating: z.enum(METALLIC_COATINGS),
    paint_system: z.enum(PAINT_SYSTEMS),
    color_group: z.enum(COLOR_GROUPS),
  }),
  hazards: Hazards,
  attachment: Attachment,
  option: z
    .string()
    .max(60)
    .optional()
    .describe('the option to speak of; the recommended one where not given'),
});

/** The evaluation, or every fault: of the input, or of a stage that the rules refuse. */
export function choose(input: unknown, context: Context): Outcome<Evaluation> {
  const read = ChooseInput.safeParse(input);
  if (!read.success) {
    return refused(
      ...read.error.issues.map(({ path, message }) => ({ pointer: `/${path.join('/')}`, message })),
    );
  }
  const asked = read.data;
  const faults: Fault[] = [];
  let job: Job = initial('choose');
  for (const command of stagesOf(asked)) {
    const played = play(job, command, context);
    if ('job' in played) job = played.job;
    else
      faults.push(
        ...played.faults.map(({ pointer, message }) => ({
          pointer: `/${command.type}${pointer}`,
          message,
        })),
      );
  }
  if (faults.length > 0) return refused(...faults);
  const surface = job.surfaces['surface'];
  if (!surface) throw new Error('the surface was not added');
  const evaluation = evaluationFor(job, surface, asked.attachment, context, asked.option);
  if (!('options' in evaluation)) {
    return refused(
      ...evaluation.map(({ code, words, pointer = '' }) => ({
        pointer,
        message: `${code}: ${words}`,
      })),
    );
  }
  return result(evaluation, [], []);
}

type Asked = z.output<typeof ChooseInput>;

function stagesOf(asked: Asked): readonly CommandInput[] {
  const { style, coating, hazards } = asked;
  const surface = 'surface';
  const entries = (['site', 'building', 'surface'] as const).flatMap((on) =>
    Object.entries(asked.facts[on]).map(([fact, value]) => ({
      on: on === 'site' ? null : on,
      fact,
      value,
      how: 'measured',
    })),
  );
  const id = '00000000-0000-4000-8000-000000000000';
  return [
    {
      type: 'open-job',
      number: 'CHOOSE',
      name: 'choose',
      site: { id },
      parties: { customer: { id } },
      priorities: asked.priorities,
      buildings: [{ id: 'building', name: 'building' }],
      surfaces: [{ id: surface, building: 'building', name: 'surface', kind: asked.kind }],
    },
    ...(entries.length > 0
      ? [{ type: 'record-facts', facts: entries } as unknown as CommandInput]
      : []),
    {
      type: 'choose-style',
      surface,
      profile: style.profile,
      width: { v: String(style.width_in), u: 'in' },
      lap_sealant: style.lap_sealant,
    },
    { type: 'choose-coating', surface, ...coating },
    { type: 'assess-hazards', surface, hazards } as CommandInput,
    {
      type: 'confirm-substrate',
      surface,
      provisional: asked.facts.surface['reroof' as FactName] === true,
    },
  ];
}

/** Plays a command; cautions are acknowledged, since nothing is decided here. */
function play(
  job: Job,
  command: CommandInput,
  context: Context,
): { readonly job: Job } | { readonly faults: readonly Fault[] } {
  const parsed = Command.safeParse(command);
  if (!parsed.success)
    return {
      faults: parsed.error.issues.map(({ path, message }) => ({
        pointer: `/${path.join('/')}`,
        message,
      })),
    };
  const first = decide(job, parsed.data, context);
  if (first.ok) return { job: after(job, first.events, context) };
  const cautions = first.refusals
    .filter(({ code }) => code === 'MOVE-05')
    .map(({ words }) => words.split(' ')[0] ?? '');
  const again =
    cautions.length > 0
      ? decide(job, { ...parsed.data, acknowledges: cautions } as Command, context)
      : first;
  if (again.ok) return { job: after(job, again.events, context) };
  return {
    faults: again.refusals.map(({ code, words, pointer = '' }) => ({
      pointer,
      message: `${code}: ${words}`,
    })),
  };
}

function after(job: Job, events: readonly JobEvent[], context: Context): Job {
  return events.reduce<Job>(
    (state, event) =>
      evolve(state, {
        ...event,
        id: 'choose',
        version: state.version + 1,
        by: { person: context.by.person, role: context.by.roles[0] ?? 'office' },
        recordedAt: context.at,
        effectiveAt: context.at,
      }),
    job,
  );
}

/** What `choose` takes, as JSON Schema, and gives. */
export const chooseSchema = () => ({
  name: 'choose',
  says: 'every option for one surface: checks, findings, ranking, why not',
  input: z.toJSONSchema(ChooseInput, { io: 'input', unrepresentable: 'any' }),
  facts: Object.fromEntries(FACT_NAMES.map((name) => [name, factDefinition(name)])),
  output: {
    options: 'each thickness with availability, zones, findings, rank and why not',
    demands: 'what each zone asks, with steps',
    recommendation: 'the option recommended and the sentence that says why',
    what_would_change: 'changes of design that would turn an outcome, each checked',
    sign_off_required: 'why an engineer signs; empty where none is required',
    cautions: 'what always goes with such results',
  },
});
