// Load charts alone from a CSV file, one line a span; every fault with its row and column.

import { importCharts, PARTS, type SheetFault } from '#jobs';
import type { LoadChart } from '#jobs/contract';
import { csvRows } from './csv-rows.js';

export const CHART_COLUMNS = PARTS.charts;

export type ChartsRead =
  | { readonly ok: true; readonly charts: readonly LoadChart[] }
  | { readonly ok: false; readonly faults: readonly SheetFault[] };

/** The names of profiles are not looked up: that is done when an edition is drafted. */
export function readCharts(csv: string): ChartsRead {
  const read = csvRows('charts', csv);
  return read.ok ? importCharts(read.sheets[0]?.rows ?? []) : read;
}
