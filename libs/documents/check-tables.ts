// Checks as tables: each zone's demand, capacity, utilization and source, and the steps behind them.

import { citationText } from '#engineering';
import {
  number,
  prose,
  type CheckRecord,
  type Evaluation,
  type FactUse,
  type OptionResult,
  type StepRecord,
  type ZoneResult,
} from '#jobs';
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
      checkName(zone, each),
      directionWords(each.direction),
      amountWords(each.demand),
      amountWords(each.capacity),
      each.utilization,
      each.passes ? 'passes' : 'FAILS',
      `${prose(each.source)}${each.calculated ? ' (calculated, not tested)' : ''}`,
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

/** "panel: uplift of the tested assembly"; one test may stand for panel and attachment. */
const checkName = (zone: ZoneResult, check: CheckRecord): string =>
  `${zone.panel.includes(check) ? 'panel' : 'attachment'}: ${check.limit_state}`;

/** The arithmetic of the loads and of one option's checks, step by step; one table for each zone. */
export function stepTables(
  { demands, facts }: Evaluation,
  option: OptionResult,
): readonly PrintTable[] {
  const loads = demands.map((each): Steps => [`zone ${each.zone} (${each.part})`, each.steps]);
  const zones = option.zones.map((zone): readonly [string, readonly Steps[]] => [
    `Zone ${zone.zone}`,
    checksOf(zone).map((each): Steps => [
      `${checkName(zone, each)}, ${directionWords(each.direction)}`,
      each.steps,
    ]),
  ]);
  return [
    stepTable('Hazards, as calculated', facts.map(hazardSteps)),
    stepTable('Loads by zone', loads),
    ...zones.map(([name, steps]) => stepTable(name, steps)),
  ].filter(({ rows }) => rows.length > 0);
}

/** The steps that a calculated hazard carries in its own value. */
function hazardSteps({ path, value }: FactUse): Steps {
  const { steps } = (value ?? {}) as { readonly steps?: readonly StepRecord[] };
  return [path.split('/').at(-1) ?? '', Array.isArray(steps) ? steps : []];
}

type Steps = readonly [of: string, steps: readonly StepRecord[]];

/** What the steps belong to stands at their first line only. */
function stepTable(caption: string, parts: readonly Steps[]): PrintTable {
  return {
    caption,
    columns: [
      column('Of', 1.4),
      column('Symbol'),
      column('From', 1.7),
      numbers('Value'),
      column('Unit'),
      column('Clause', 1.6),
    ],
    rows: parts.flatMap(([of, steps]) =>
      steps.map(({ symbol, formula, value, unit, cite }, i) => [
        i === 0 ? of : '',
        symbol,
        formula,
        number(value),
        unit,
        citationText(cite),
      ]),
    ),
  };
}
