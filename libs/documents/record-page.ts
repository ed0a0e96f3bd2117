// The decision record laid out for paper: for each surface the five answers, then everything behind
// them; last the whole history.

import type { DecisionRecord, Evaluation, RecordedSurface } from '#jobs';
import { checkRows, stepTables } from './check-tables.js';
import {
  againstTable,
  changesTable,
  choosingWords,
  comparison,
  demandTable,
  optionsTable,
  reasonsTable,
  zoneTable,
} from './option-tables.js';
import {
  column,
  numbers,
  printDrawing,
  type Pair,
  type PrintDrawing,
  type PrintTable,
} from './print.js';
import { answers, pickedOption, type Answer } from './record-answers.js';
import { stagePage, stageTimeline, type StagePage } from './stage-pages.js';
import { momentWords, personWords } from './words.js';

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
  const { gauge: evaluation, name } = surface;
  const picked = pickedOption(surface);
  const stages =
    surface.stages.length === 0 ? [] : [printDrawing(stageTimeline(record, surface), 'beside')];
  return {
    name: `${name} (${surface.kind})`,
    answers: answers(record, surface),
    drawings: [
      ...(evaluation && picked
        ? [printDrawing(comparison(name, evaluation, picked), 'beside')]
        : []),
      ...given,
      ...stages,
    ],
    tables: evaluation
      ? [
          demandTable(name, evaluation),
          ...(picked ? [zoneTable('The choice, zone by zone', picked)] : []),
          optionsTable(name, evaluation, picked),
          ...evaluation.options
            .filter((each) => each !== picked && checkRows(each).length > 0)
            .map((each) => zoneTable('Zone by zone', each)),
          againstTable(name, evaluation, picked),
          changesTable(name, evaluation),
          reasonsTable(name, evaluation),
        ]
      : [],
    ranking: evaluation ? rankingWords(surface, evaluation) : [],
    stages: surface.stages.map((stage) => stagePage(stage, evaluation)),
    arithmetic: evaluation && picked ? stepTables(evaluation, picked) : [],
  };
}

const ONLY_IN_JSON =
  'The attached record.json also holds the arithmetic of the options not chosen, and the rules that they meet.';

function rankingWords({ why }: RecordedSurface, evaluation: Evaluation): readonly string[] {
  return [
    ...why.filter((each) => each.startsWith('The person took')),
    ...evaluation.sign_off_required.map((each) => `Sign-off is required. ${each}.`),
    ...choosingWords(evaluation),
    ONLY_IN_JSON,
  ];
}
