// What is wrong with load charts as such, whatever they are used for: capacity that rises with the
// span, or falls with thickness within one grade. Across grades it is only noted.

import { numberOf } from '../contract/amounts.js';
import type { LoadChart } from '../contract/catalogue.js';

export interface ChartFault {
  readonly chart: string;
  /** From 0, in the chart's own order. */
  readonly row: number;
  readonly column: string;
  readonly message: string;
}

const LOADS = ['inward', 'outward', 'deflection'] as const;
type Load = (typeof LOADS)[number];
type ChartRow = LoadChart['rows'][number];

export function chartFaults(charts: readonly LoadChart[]): readonly ChartFault[] {
  const siblings = new Map<string, LoadChart[]>();
  for (const chart of charts)
    siblings.set(sheet(chart), [...(siblings.get(sheet(chart)) ?? []), chart]);
  return [...charts.flatMap(risingFaults), ...[...siblings.values()].flatMap(thicknessFaults)];
}

/** Charts that differ in thickness alone. */
const sheet = (chart: LoadChart): string =>
  [
    chart.profile,
    chart.width.v,
    chart.metal,
    chart.grade,
    chart.spans,
    chart.basis,
    chart.deflection_limit,
    chart.attachment_included,
  ].join(' ');

const capacity = (row: ChartRow, load: Load): number | undefined => {
  const amount = row[load];
  return amount === undefined ? undefined : Math.abs(numberOf(amount));
};

function risingFaults(chart: LoadChart): readonly ChartFault[] {
  return chart.rows.flatMap((row, index) => {
    const before = chart.rows[index - 1];
    if (!before) return [];
    if (numberOf(row.span) <= numberOf(before.span)) {
      const after = `span ${row.span.v} in does not follow ${before.span.v} in`;
      const message = `${after}: list them rising, each once`;
      return [{ chart: chart.id, row: index, column: 'span_in', message }];
    }
    return LOADS.flatMap((load) => {
      const [now, then] = [capacity(row, load), capacity(before, load)];
      if (now === undefined || then === undefined || now <= then) return [];
      const more = `${now} psf at ${row.span.v} in is more than ${then} psf`;
      const message = `${more} at ${before.span.v} in`;
      return [{ chart: chart.id, row: index, column: `${load}_psf`, message }];
    });
  });
}

function thicknessFaults(charts: readonly LoadChart[]): readonly ChartFault[] {
  const byThickness = [...charts].sort((a, b) => numberOf(a.thickness) - numberOf(b.thickness));
  return byThickness.flatMap((thicker, index) => {
    const thinner = byThickness[index - 1];
    if (!thinner) return [];
    if (numberOf(thinner.thickness) === numberOf(thicker.thickness)) {
      const message = `${thinner.id} is a chart of the same sheet and thickness`;
      return [{ chart: thicker.id, row: 0, column: 'thickness_in', message }];
    }
    return thicker.rows.flatMap((row, at) => {
      const same = thinner.rows.find((each) => numberOf(each.span) === numberOf(row.span));
      return LOADS.flatMap((load) => {
        const [thick, thin] = [capacity(row, load), same && capacity(same, load)];
        if (thick === undefined || thin === undefined || thick >= thin) return [];
        const less = `${thick} psf is less than ${thin} psf`;
        const message = `${less} of the thinner sheet (${thinner.id}) at ${row.span.v} in`;
        return [{ chart: thicker.id, row: at, column: `${load}_psf`, message }];
      });
    });
  });
}

/** Across grades a thicker sheet may rightly bear less than a thinner, harder one: worth a look. */
export function chartNotes(charts: readonly LoadChart[]): readonly string[] {
  const key = (chart: LoadChart): string =>
    [
      chart.profile,
      chart.width.v,
      chart.metal,
      chart.spans,
      chart.basis,
      chart.deflection_limit,
      chart.attachment_included,
    ].join(' ');
  const panels = new Map<string, LoadChart[]>();
  for (const chart of charts) panels.set(key(chart), [...(panels.get(key(chart)) ?? []), chart]);
  return [...panels.values()].flatMap((of) => {
    const byThickness = [...of].sort((a, b) => numberOf(a.thickness) - numberOf(b.thickness));
    return byThickness.flatMap((thick, index) => {
      const thin = byThickness[index - 1];
      const load =
        thin && thin.grade !== thick.grade
          ? LOADS.find((each) => bearsLess(thick, thin, each))
          : undefined;
      if (!thin || load === undefined) return [];
      return [
        `${thick.id} (${thick.thickness.v} in, ${thick.grade}) bears less ${load} than ${thin.id} (${thin.thickness.v} in, ${thin.grade})`,
      ];
    });
  });
}

const bearsLess = (thick: LoadChart, thin: LoadChart, load: Load): boolean =>
  thick.rows.some((row) => {
    const same = thin.rows.find((each) => numberOf(each.span) === numberOf(row.span));
    const [a, b] = [capacity(row, load), same && capacity(same, load)];
    return a !== undefined && b !== undefined && a < b;
  });
