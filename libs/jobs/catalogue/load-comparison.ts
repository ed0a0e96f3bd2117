// A profile's load charts beside the calculation from its outline: a second opinion, never a chart.
// Where a sheet has no chart the calculation stands alone, and whoever takes it needs a sign-off.

import {
  amount,
  beamCoefficients,
  feet,
  governing,
  spanLimits,
  STRUCTURE_CAUTION,
  type BeamCoefficients,
  type Outcome,
  type PanelStrength,
  type SpanLimit,
} from '#engineering';
import { BEARING_IN, calculatedStrength, CALCULATED_SOURCE } from '../choosing/calculated-panel.js';
import { numberOf } from '../contract/amounts.js';
import type { Catalogue, LoadChart, MadeRow, Profile } from '../contract/catalogue.js';
import type { ComparedLoad, ComparedSheet, LoadComparison } from '../contract/load-comparison.js';

const CONDITIONS = ['1', '2', '3+'] as const;
/** n of L/n where a sheet has no chart that names one. */
const DEFLECTION_N = 180;

/** Undefined where the edition has no such profile. */
export function compareLoads(catalogue: Catalogue, id: string): LoadComparison | undefined {
  const profile = catalogue.profiles.find((each) => each.id === id);
  if (!profile) return undefined;
  const charts = catalogue.charts.filter((each) => each.profile === id);
  const charted = charts.map((chart) => besideChart(profile, chart));
  const alone = uncharted(catalogue, id, charts).flatMap((row) =>
    withoutChart(profile, row, charts),
  );
  return {
    profile: { id, name: profile.name },
    sheets: [...charted, ...alone].sort(inOrder),
    notes: NOTES,
    cautions: [
      STRUCTURE_CAUTION,
      'A calculated load is a second opinion for bending of through-fastened panels. It is never a ' +
        'capacity against uplift of standing seam, where only tests count.',
      'A capacity that is only calculated always needs an engineer to sign.',
    ],
  };
}

const NOTES = [
  `${CALCULATED_SOURCE.replace('calculated', 'Calculated')}: effective section, ASD, base thickness of the sheet.`,
  `Supports bear at least ${BEARING_IN} in and are screwed at 18 in or closer; attachment is checked apart.`,
  'Difference: calculated against chart, in percent of the chart. Where they differ, the chart counts.',
  'Panel strength and deflection stand apart; where a chart has no column for deflection, its inward ' +
    'load is held against the lesser of both.',
];

const inOrder = (a: ComparedSheet, b: ComparedSheet): number =>
  Number(a.width.v) - Number(b.width.v) ||
  Number(b.thickness.v) - Number(a.thickness.v) ||
  a.grade.localeCompare(b.grade) ||
  CONDITIONS.indexOf(a.spans) - CONDITIONS.indexOf(b.spans);

interface Calculation {
  readonly beam: BeamCoefficients;
  readonly strength: Outcome<PanelStrength>;
  /** null where no limit of deflection is asked. */
  readonly deflection: number | null;
}

function besideChart(profile: Profile, chart: LoadChart): ComparedSheet {
  const { width, metal, grade, thickness, spans, deflection_limit: limit } = chart;
  const strength = calculatedStrength(profile, numberOf(width), {
    metal,
    grade,
    thickness_in: numberOf(thickness),
  });
  const n = /^L\/(\d+)$/.exec(limit)?.[1];
  const reasons = [
    ...(strength.ok ? [] : strength.faults.map(({ message }) => message)),
    ...(chart.basis === 'ASD'
      ? []
      : [`the chart is on ${chart.basis} basis, the calculation on ASD`]),
  ];
  const calculation = { strength, beam: beamOf(spans), deflection: n ? Number(n) : null };
  return {
    chart: chart.id,
    width,
    metal,
    gauge: chart.gauge ?? null,
    thickness,
    grade,
    spans,
    deflection_limit: limit,
    attachment_included: chart.attachment_included,
    source: `${chart.source.document}, ${chart.source.edition}`,
    not_calculated: reasons,
    rows: chart.rows.map((row) => comparedRow(row, reasons.length > 0 ? null : calculation)),
  };
}

const beamOf = (spans: LoadChart['spans']): BeamCoefficients =>
  beamCoefficients(spans === '3+' ? 3 : Number(spans));

type ChartRow = Pick<LoadChart['rows'][number], 'span'> & Partial<LoadChart['rows'][number]>;

function comparedRow(
  row: ChartRow,
  calculation: Calculation | null,
): ComparedSheet['rows'][number] {
  const { span, inward, outward, deflection } = row;
  if (!calculation?.strength.ok) {
    return { span, inward: only(inward), outward: only(outward), deflection: only(deflection) };
  }
  const { beam, strength, deflection: n } = calculation;
  const limits = (direction: 'inward' | 'outward'): readonly SpanLimit[] =>
    spanLimits(strength.value, beam, feet(numberOf(span) / 12), direction, n ?? DEFLECTION_N);
  const down = limits('inward');
  const together = inward !== undefined && deflection === undefined && n !== null;
  const strengthOf = (each: readonly SpanLimit[]): SpanLimit =>
    governing(each.filter(({ kind }) => kind === 'strength'));
  const stiff = n === null ? null : governing(down.filter(({ kind }) => kind === 'deflection'));
  return {
    span,
    inward: compared(inward, together ? governing(down) : strengthOf(down)),
    outward: compared(outward, strengthOf(limits('outward'))),
    deflection: compared(deflection, stiff),
  };
}

const only = (chart: ComparedLoad['chart'] | undefined): ComparedLoad => ({
  chart: chart ?? null,
  calculated: null,
  difference: null,
  smaller: null,
  limit_state: null,
});

/** Magnitudes: a chart may print uplift with its sign. */
function compared(chart: ComparedLoad['chart'] | undefined, own: SpanLimit | null): ComparedLoad {
  if (own === null) return only(chart);
  const calculated = { calculated: amount(own.load, 1, 'psf'), limit_state: own.limitState };
  const charted = chart ? Math.abs(numberOf(chart)) : 0;
  if (!chart || charted === 0) return { ...only(chart), ...calculated };
  const difference = amount((100 * (own.load - charted)) / charted, 1, '%');
  const sign = Math.sign(numberOf(difference));
  const smaller = sign === 0 ? 'neither' : sign > 0 ? 'chart' : 'calculated';
  return { chart, ...calculated, difference, smaller };
}

/** One row for each steel sheet of the profile that is made and has no chart at all. */
function uncharted(
  { made }: Catalogue,
  profile: string,
  charts: readonly LoadChart[],
): readonly MadeRow[] {
  const key = ({ width, metal, thickness, grade }: MadeRow | LoadChart): string =>
    [width.v, metal, thickness.v, grade].join(' ');
  const known = new Set(charts.map(key));
  return made.filter((row) => {
    if (row.profile !== profile || row.metal !== 'steel' || known.has(key(row))) return false;
    known.add(key(row));
    return true;
  });
}

/** At the spans that the profile's charts name; nothing where it cannot be calculated. */
function withoutChart(
  profile: Profile,
  { width, metal, gauge, thickness, grade }: MadeRow,
  charts: readonly LoadChart[],
): readonly ComparedSheet[] {
  const strength = calculatedStrength(profile, numberOf(width), {
    metal,
    grade,
    thickness_in: numberOf(thickness),
  });
  if (!strength.ok) return [];
  const spansNamed = [...new Set(charts.flatMap(({ rows }) => rows.map(({ span }) => span.v)))];
  const spans = spansNamed.length > 0 ? spansNamed : ['24', '36', '48', '60', '72'];
  return CONDITIONS.map((condition) => ({
    chart: null,
    width,
    metal,
    gauge: gauge ?? null,
    thickness,
    grade,
    spans: condition,
    deflection_limit: `L/${DEFLECTION_N}`,
    attachment_included: false,
    source: null,
    not_calculated: [],
    rows: spans
      .sort((a, b) => Number(a) - Number(b))
      .map((v) =>
        comparedRow(
          { span: { v, u: 'in' } },
          { strength, beam: beamOf(condition), deflection: DEFLECTION_N },
        ),
      ),
  }));
}
