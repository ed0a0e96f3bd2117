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
export function assemblyFor(question: Question, option: Option, zone: Zone): TestedAssembly | string {
  const { catalogue, profile, width, attachment, substrate, day } = question;
  const own = catalogue.assemblies.filter(
    (each) => each.profile === profile.id && each.width.v === width && each.metal === option.metal && same(each.thickness, option.thickness_in),
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
      (each.support_spacing === undefined || (zone.spacing_in !== null && Number(each.support_spacing.v) >= zone.spacing_in)) &&
      (each.deck_thickness === undefined || (question.deck_thickness_in ?? 0) >= Number(each.deck_thickness.v)),
  );
  const live = fits.filter((each) => each.expires === undefined || each.expires >= day);
  const best = live.sort((a, b) => assemblyOutward(b) - assemblyOutward(a))[0];
  if (best) return best;
  const expired = fits[0];
  return expired ? `test ${expired.number} expired on ${expired.expires}` : 'no tested assembly with this substrate, attachment and spacing';
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

/** The chart's allowable loads at a span, or why it gives none. */
export function chartFor(question: Question, option: Option, span_in: number): ChartReading | string {
  const { catalogue, profile, width } = question;
  const spans = spanCondition(question.longest_piece_ft, span_in);
  const own = catalogue.charts.filter(
    (each) =>
      each.profile === profile.id && each.width.v === width && each.metal === option.metal &&
      each.grade === option.grade && same(each.thickness, option.thickness_in),
  );
  if (own.length === 0) return 'no load chart of this thickness and grade';
  const chart = own.find((each) => each.spans === spans);
  if (!chart) return `no load chart for ${spans} span${spans === '1' ? '' : 's'}`;
  if (chart.basis !== 'ASD') return `load chart ${chart.id} is on ${chart.basis} basis`;
  const reading = readChart(chart, span_in);
  if (!reading) {
    const longest = Math.max(...chart.rows.map(({ span }) => Number(span.v)));
    return `load chart ${chart.id} ends at ${longest} in; ${span_in} in has no row`;
  }
  return { chart, ...reading, source: `load chart ${chart.id}, ${chart.source.edition}, ${chart.spans} spans, row ${reading.row}` };
}

/** One, two, or three and more spans, from the longest piece; one where it is not known. */
function spanCondition(longest_ft: number | undefined, span_in: number): LoadChart['spans'] {
  if (longest_ft === undefined) return '1';
  const spans = Math.floor((longest_ft * 12) / span_in + 1e-9);
  return spans >= 3 ? '3+' : spans === 2 ? '2' : '1';
}

function readChart(chart: LoadChart, span_in: number) {
  const rows = [...chart.rows].sort((a, b) => Number(a.span.v) - Number(b.span.v));
  const next = rows.findIndex(({ span }) => Number(span.v) >= span_in - 1e-9);
  const row = rows[next];
  if (!row) return undefined;
  const before = rows[next - 1];
  const between = chart.interpolation && before && Number(row.span.v) > span_in + 1e-9;
  const share = between ? (span_in - Number(before.span.v)) / (Number(row.span.v) - Number(before.span.v)) : 1;
  const at = (a: string | undefined, b: string): number => (between && a !== undefined ? Math.abs(Number(a)) + share * (Math.abs(Number(b)) - Math.abs(Number(a))) : Math.abs(Number(b)));
  return {
    inward: at(before?.inward.v, row.inward.v),
    outward: at(before?.outward.v, row.outward.v),
    deflection: row.deflection && at(before?.deflection?.v, row.deflection.v),
    row: between ? `${before.span.v} to ${row.span.v} in, interpolated as the source permits` : `${row.span.v} in`,
  };
}
