// The decision record laid out for paper: for each surface the five answers, then everything behind
// them; last the whole history.

import { gaugeComparison, timeline, type GaugeOption } from '#drawings';
import type { DecisionRecord, OptionResult, RecordedStage, RecordedSurface } from '#jobs';
import {
  column,
  numbers,
  printDrawing,
  type Pair,
  type PrintDrawing,
  type PrintTable,
} from './print.js';
import { checkRows, CHECK_COLUMNS, stepTables } from './check-tables.js';
import { answers, optionName, pickedOption, type Answer } from './record-answers.js';
import {
  amountWords,
  capital,
  factWords,
  momentWords,
  personWords,
  spaced,
  valueWords,
} from './words.js';

export interface RecordPage {
  readonly head: readonly Pair[];
  readonly surfaces: readonly SurfacePage[];
  readonly history: PrintTable;
}

interface SurfacePage {
  readonly name: string;
  readonly answers: readonly Answer[];
  readonly drawings: readonly PrintDrawing[];
  readonly tables: readonly PrintTable[];
  readonly ranking: readonly string[];
  readonly stages: readonly StagePage[];
  readonly arithmetic: readonly PrintTable[];
}

interface StagePage {
  readonly name: string;
  readonly standing: string;
  readonly chosen: readonly Pair[];
  readonly tables: readonly PrintTable[];
}

/** Drawings that need more than the record holds, by surface id: a zone plan, load against span. */
export type SurfaceDrawings = Readonly<Record<string, readonly PrintDrawing[]>>;

export function recordPage(record: DecisionRecord, drawings: SurfaceDrawings = {}): RecordPage {
  const { job, as_of } = record;
  return {
    head: [
      ['Job', `${job.number}, ${job.name}`],
      ['Customer', job.customer],
      ['Site', job.site],
      ['Jurisdiction', job.jurisdiction ?? 'not recorded'],
      ['Stands at', record.stands_at],
      ['As of', `${momentWords(as_of.recorded)}, entry ${as_of.version} of the job's history`],
    ],
    surfaces: record.surfaces.map((each) => surfacePage(record, each, drawings[each.id] ?? [])),
    history: {
      caption: 'Everything recorded, in order',
      columns: [
        numbers('Entry'),
        column('Recorded'),
        column('In effect from'),
        column('By'),
        column('What', 1),
      ],
      rows: record.timeline.map((each) => [
        String(each.version),
        momentWords(each.at),
        momentWords(each.effective),
        personWords(each.by, each.role),
        each.words,
      ]),
    },
  };
}

function surfacePage(
  record: DecisionRecord,
  surface: RecordedSurface,
  given: readonly PrintDrawing[],
): SurfacePage {
  const evaluation = surface.gauge;
  const picked = pickedOption(surface);
  const where = surface.name;
  return {
    name: `${surface.name} (${surface.kind})`,
    answers: answers(record, surface),
    drawings: [
      ...(evaluation && picked
        ? [printDrawing(comparison(where, evaluation.options, picked), 'beside')]
        : []),
      ...given,
      ...(surface.stages.length > 0 ? [printDrawing(stageTimeline(surface), 'beside')] : []),
    ],
    tables: evaluation
      ? [
          {
            caption: `What each zone asks of the panel, ${where}`,
            columns: [
              column('Zone'),
              column('Part'),
              numbers('Inward'),
              numbers('Uplift'),
              numbers('Support spacing'),
              column('Source of the loads', 1),
            ],
            rows: evaluation.demands.map((each) => [
              each.zone,
              each.part,
              amountWords(each.inward),
              amountWords(each.outward),
              each.support_spacing ? amountWords(each.support_spacing) : 'solid',
              each.source,
            ]),
          },
          ...(picked
            ? [
                {
                  caption: `The choice, zone by zone: ${optionName(picked)}`,
                  columns: CHECK_COLUMNS,
                  rows: checkRows(picked),
                },
              ]
            : []),
          optionsTable(where, evaluation.options, picked),
          ...evaluation.options
            .filter((each) => each !== picked && checkRows(each).length > 0)
            .map((each) => ({
              caption: `Zone by zone: ${optionName(each)}`,
              columns: CHECK_COLUMNS,
              rows: checkRows(each),
            })),
        ]
      : [],
    ranking: evaluation ? rankingWords(surface, evaluation) : [],
    stages: surface.stages.map(stagePage),
    arithmetic: evaluation && picked ? stepTables(evaluation.demands, picked) : [],
  };
}

const outcomeOf = (option: OptionResult, picked: OptionResult | undefined): string =>
  option === picked
    ? 'chosen'
    : option.why_not?.class === 'dominated'
      ? 'would pass'
      : spaced(option.why_not?.class ?? 'not judged');

function comparison(where: string, options: readonly OptionResult[], picked: OptionResult) {
  return gaugeComparison({
    title: `Every gauge compared, ${where}`,
    options: options.map((each): GaugeOption => ({
      name: optionName(each),
      chosen: each === picked,
      outcome: outcomeOf(each, picked),
      governs: each.governs ? `zone ${each.governs.zone}, ${each.governs.limit_state}` : null,
      utilization: each.governs?.utilization ?? null,
      weight: amountWords(each.weight),
      price_difference: priceDifference(each, picked),
    })),
  });
}

function priceDifference(option: OptionResult, picked: OptionResult): string {
  if (!option.price) return 'no price';
  if (option === picked) return amountWords(option.price);
  if (!picked.price) return amountWords(option.price);
  const cents = Math.round(Number(option.price.v) * 100) - Math.round(Number(picked.price.v) * 100);
  if (cents === 0) return 'same price';
  return `$ ${(Math.abs(cents) / 100).toFixed(2)} ${cents > 0 ? 'more' : 'less'} per square`;
}

function stageTimeline(surface: RecordedSurface) {
  return timeline({
    title: `Decisions as they stand, ${surface.name}`,
    as_of: null,
    decisions: [...surface.stages]
      .sort((a, b) => a.at.localeCompare(b.at))
      .map((stage) => ({
        at: stage.at,
        words: `${capital(stage.stage)}: ${stage.chosen
          .filter(({ value }) => value !== 'no')
          .slice(0, 4)
          .map(({ value }) => spaced(value))
          .join(', ')}`,
        by: personWords(stage.by, stage.role),
        standing: stage.status === 'confirmed' ? 'stands' : spaced(stage.status),
      })),
  });
}

function optionsTable(
  where: string,
  options: readonly OptionResult[],
  picked: OptionResult | undefined,
): PrintTable {
  return {
    caption: `Every option and what became of it, ${where}`,
    columns: [
      column('Option'),
      column('Outcome'),
      numbers('Rank'),
      numbers('Utilization'),
      numbers('Weight'),
      numbers('Price'),
      column('How it is had'),
      column('Why not', 1),
    ],
    rows: options.map((each) => [
      optionName(each),
      outcomeOf(each, picked),
      each.rank === null ? 'none' : String(each.rank),
      each.governs?.utilization ?? 'no number',
      amountWords(each.weight),
      each.price ? amountWords(each.price) : 'none',
      availability(each),
      each.why_not?.words ?? 'It was chosen.',
    ]),
  };
}

function availability({ availability: had, lead_days, least_order }: OptionResult): string {
  const lead = lead_days === null ? '' : `, ${lead_days} days`;
  return `${spaced(had)}${lead}${least_order ? `, least order ${amountWords(least_order)}` : ''}`;
}

function rankingWords(
  surface: RecordedSurface,
  evaluation: NonNullable<RecordedSurface['gauge']>,
): readonly string[] {
  return [
    ...surface.why.slice(0, 1),
    ...surface.why.filter((each) => each.startsWith('The person took')),
    `How options are ranked: ${evaluation.ranking.by}`,
    ...evaluation.what_would_change.map(
      ({ words, site_fact }) => `${site_fact ? 'What if' : 'What would change it'}: ${words}`,
    ),
    ...evaluation.sign_off_required.map((each) => `Sign-off is required. ${each}`),
    `Worked out by ${evaluation.engine}, rules edition ${evaluation.rules_edition.number}, catalogue edition ${evaluation.catalogue_edition.number}.`,
  ];
}

function stagePage(stage: RecordedStage): StagePage {
  return {
    name: capital(stage.stage),
    standing: `${capital(spaced(stage.status))}. ${personWords(stage.by, stage.role)}, ${momentWords(stage.at)}; rules edition ${stage.rules_edition}, catalogue edition ${stage.catalogue_edition}.`,
    chosen: stage.chosen.map(({ what, value }) => [capital(what), value]),
    tables: [
      {
        caption: `Facts that the ${stage.stage} stage read`,
        columns: [column('Fact'), column('Value', 1), column('How known'), column('Source')],
        rows: stage.facts.map(({ path, value, how, source }) => [
          factWords(path),
          valueWords(value),
          how ?? 'decided earlier',
          source ?? 'none given',
        ]),
      },
      {
        caption: `What the rules said at the ${stage.stage} stage`,
        columns: [
          column('Rule'),
          column('Severity'),
          column('Outcome'),
          column('Words', 3),
          column('Source', 1),
        ],
        rows: stage.said.map((each) => [
          each.rule,
          each.severity,
          spaced(each.outcome),
          each.words,
          each.cites.join('; '),
        ]),
      },
      {
        caption: `Set aside at the ${stage.stage} stage, with the reason`,
        columns: [column('Rule'), column('It says', 1), column('Reason', 1)],
        rows: stage.overrides.map(({ rule, says, reason }) => [rule, says, reason]),
      },
    ].filter(({ rows }) => rows.length > 0),
  };
}
