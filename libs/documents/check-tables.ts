// Checks as tables: each zone's demand, capacity, utilization and source, and the steps behind them.

import { citationText } from '#engineering';
import type { CheckRecord, Evaluation, OptionResult, StepRecord, ZoneResult } from '#jobs';
import { column, numbers, type PrintTable } from './print.js';
import { amountWords } from './words.js';

export const CHECK_COLUMNS = [
  column('Zone'),
  column('Check', 1),
  column('Direction'),
  numbers('Demand'),
  numbers('Capacity'),
  numbers('Utilization'),
  column('Outcome'),
  column('Source', 1),
];

/** One row for every check; where nothing gives a number, a row that says why. */
export function checkRows(option: OptionResult): readonly (readonly string[])[] {
  return option.zones.flatMap((zone) => [
    ...checksOf(zone).map((each) => [
      zone.zone,
      each.limit_state,
      directionWords(each.direction),
      amountWords(each.demand),
      amountWords(each.capacity),
      each.utilization,
      each.passes ? 'passes' : 'FAILS',
      `${each.source}${each.calculated ? ' (calculated, not tested)' : ''}`,
    ]),
    ...zone.missing.map((words) => [
      zone.zone,
      words,
      '',
      '',
      '',
      'no number',
      'no number',
      'none',
    ]),
  ]);
}

export const directionWords = (direction: CheckRecord['direction']): string =>
  direction === 'outward' ? 'uplift' : 'inward';
export const checksOf = (zone: ZoneResult): readonly CheckRecord[] => [
  ...zone.panel,
  ...zone.attachment,
];

/** The arithmetic of the loads and of one option's checks, step by step. */
export function stepTables(
  demands: Evaluation['demands'],
  option: OptionResult,
): readonly PrintTable[] {
  return [
    ...demands.map((each) => stepTable(`Loads on zone ${each.zone} (${each.part})`, each.steps)),
    ...option.zones.flatMap((zone) =>
      checksOf(zone).map((each) =>
        stepTable(
          `Zone ${zone.zone}, ${each.limit_state}, ${directionWords(each.direction)}`,
          each.steps,
        ),
      ),
    ),
  ].filter(({ rows }) => rows.length > 0);
}

function stepTable(caption: string, steps: readonly StepRecord[]): PrintTable {
  return {
    caption,
    columns: [
      column('Symbol'),
      column('From', 2),
      numbers('Value'),
      column('Unit'),
      column('Clause', 1),
    ],
    rows: steps.map(({ symbol, formula, value, unit, cite }) => [
      symbol,
      formula,
      value,
      unit,
      citationText(cite),
    ]),
  };
}
