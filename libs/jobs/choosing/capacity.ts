// What a panel bears in a zone, by source: a tested assembly first, then the profile's own load
// chart. Another gauge's row is never borrowed; beyond the longest span there is no answer.

import type { LoadChart, TestedAssembly } from '../contract/catalogue.js';
import type { Option } from './options.js';
import type { Zone } from './demand.js';
import { attachmentIn, type Question } from './question.js';

export interface Capacity {
  readonly psf: number;
  readonly source: string;
  readonly calculated: boolean;
}

const same = (a: { v: string }, b: number): boolean => Math.abs(Number(a.v) - b) < 1e-9;

/** The best tested assembly that covers this option as it is attached here, or why there is none. */
export function assemblyFor(
  question: Question,
  option: Option,
  zone: Zone,
): TestedAssembly | string {
  const { catalogue, profile, width, attachment, substrate, day } = question;
  const own = catalogue.assemblies.filter(
    (each) =>
      each.profile === profile.id &&
      each.width.v === width &&
      each.metal === option.metal &&
      same(each.thickness, option.thickness_in),
  );
  if (own.length === 0) return 'no tested assembly of this thickness';
  const here = attachmentIn(question, zone.zone);
  if (!here) return 'no attachment is proposed for this zone';
  const spacing = Number(here.spacing.v);
  const fits = own.filter(
    (each) =>
      each.substrates.includes(substrate) &&
      each.fastener === attachment.fastener &&
      Number(each.attachment_spacing.v) >= spacing &&
      (each.support_spacing === undefined ||
        (zone.spacing_in !== null && Number(each.support_spacing.v) >= zone.spacing_in)) &&
      (each.deck_thickness === undefined ||
        (question.deck_thickness_in ?? 0) >= Number(each.deck_thickness.v)),
  );
  const live = fits.filter((each) => each.expires === undefined || each.expires >= day);
  const best = live.sort((a, b) => assemblyOutward(b) - assemblyOutward(a))[0];
  if (best) return best;
  const expired = fits[0];
  return expired
    ? `test ${expired.number} expired on ${expired.expires}`
    : 'no tested assembly with this substrate, attachment and spacing';
}

/** Allowable uplift of an assembly, psf, positive. */
export function assemblyOutward(assembly: TestedAssembly): number {
  const tested = Math.abs(Number(assembly.outward.v));
  return assembly.basis === 'ASD' ? tested : tested / Number(assembly.safety_factor ?? NaN);
}
export function assemblyInward(assembly: TestedAssembly): number | undefined {
  if (!assembly.inward) return undefined;
  const tested = Number(assembly.inward.v);
  return assembly.basis === 'ASD' ? tested : tested / Number(assembly.safety_factor ?? NaN);
}
export const assemblySource = ({ number, standard, source }: TestedAssembly): string =>
  `test ${number}, ${standard}, ${source.edition}`;

export interface ChartReading {
  readonly chart: LoadChart;
  readonly inward: number;
  readonly outward: number;
  readonly deflection: number | undefined;
  readonly source: string;
}

/** Only then a calculation may stand: a sheet that has a chart is never carried past its rows. */
export const NO_CHART = 'no load chart of this thickness and grade';

/** The chart's allowable loads at a span, or why it gives none. */
export function chartFor(
  question: Question,
  option: Option,
  span_in: number,
): ChartReading | string {
  const { catalogue, profile, width } = question;
  const spans = spanCondition(question.longest_piece_ft, span_in);
  let own = false;
  const chart = catalogue.charts.find((each) => {
    const fits =
      each.profile === profile.id &&
      each.width.v === width &&
      each.metal === option.metal &&
      each.grade === option.grade &&
      same(each.thickness, option.thickness_in);
    own ||= fits;
    return fits && each.spans === spans;
  });
  if (!own) return NO_CHART;
  if (!chart) return `no load chart for ${spans} span${spans === '1' ? '' : 's'}`;
  if (chart.basis !== 'ASD') return `load chart ${chart.id} is on ${chart.basis} basis`;
  const reading = readChart(chart, span_in);
  if (!reading) {
    const longest = Math.max(...chart.rows.map(({ span }) => Number(span.v)));
    return `load chart ${chart.id} ends at ${longest} in; ${span_in} in has no row`;
  }
  return {
    chart,
    ...reading,
    source: `load chart ${chart.id}, ${chart.source.edition}, ${chart.spans} spans, row ${reading.row}`,
  };
}

/** One, two, or three and more spans, from the longest piece; one where it is not known. */
function spanCondition(longest_ft: number | undefined, span_in: number): LoadChart['spans'] {
  if (longest_ft === undefined) return '1';
  const spans = Math.floor((longest_ft * 12) / span_in + 1e-9);
  return spans >= 3 ? '3+' : spans === 2 ? '2' : '1';
}

type RisingRow = Readonly<Record<'span' | 'inward' | 'outward', number>> & {
  readonly deflection: number | undefined;
  readonly named: string;
};

/** A chart's rows as numbers by rising span, loads as magnitudes; charts never change, so once each. */
const risen = new WeakMap<LoadChart, readonly RisingRow[]>();

function risingRows(chart: LoadChart): readonly RisingRow[] {
  const found =
    risen.get(chart) ??
    chart.rows
      .map(({ span, inward, outward, deflection }) => ({
        span: Number(span.v),
        inward: Math.abs(Number(inward.v)),
        outward: Math.abs(Number(outward.v)),
        deflection: deflection && Math.abs(Number(deflection.v)),
        named: span.v,
      }))
      .sort((a, b) => a.span - b.span);
  risen.set(chart, found);
  return found;
}

function readChart(chart: LoadChart, span_in: number) {
  const rows = risingRows(chart);
  const next = rows.findIndex(({ span }) => span >= span_in - 1e-9);
  const row = rows[next];
  if (!row) return undefined;
  const before = rows[next - 1];
  if (!chart.interpolation || !before || row.span <= span_in + 1e-9) {
    const { inward, outward, deflection, named } = row;
    return { inward, outward, deflection, row: `${named} in` };
  }
  const share = (span_in - before.span) / (row.span - before.span);
  const at = (a: number, b: number): number => a + share * (b - a);
  return {
    inward: at(before.inward, row.inward),
    outward: at(before.outward, row.outward),
    deflection:
      row.deflection === undefined
        ? undefined
        : at(before.deflection ?? row.deflection, row.deflection),
    row: `${before.named} to ${row.named} in, interpolated as the source permits`,
  };
}
