// A warranty document as a fold: one kind, one warrantor, the supplier's text unchanged beside it, and
// what recorded facts already exclude.

import type { WarrantyKind } from '../contract/after-order.js';
import type { EventData, PastEvent } from '../contract/events.js';
import { DISCLOSURES, type Disclosure } from '../after-order/disclosures.js';
import type { Names } from './decision-record.js';
import { jobUpTo, naming } from './moment.js';

export interface WarrantyPaper {
  readonly document: 'warranty';
  readonly job: { readonly number: string; readonly name: string };
  /** The document's own id in the job. */
  readonly id: string;
  readonly kind: WarrantyKind;
  readonly title: 'limited' | 'full';
  readonly warrantor: string;
  readonly owner: string;
  readonly site: string;
  /** RFC 3339. */
  readonly issued_at: string;
  readonly start: string;
  readonly years: number;
  readonly completed_on: string | null;
  readonly surfaces: readonly WarrantedSurface[];
  readonly terms: { readonly name: string; readonly digest: string };
  readonly fade: EventData['warranty-issued/1']['fade'] | null;
  readonly chalk: EventData['warranty-issued/1']['chalk'] | null;
  readonly registration: { readonly on: string; readonly due_by: string; readonly late_days: number } | null;
  readonly transfer: 'none' | 'once' | 'with-notice';
  /** 16 CFR 701.3(a), in the order of the rule. */
  readonly disclosures: readonly { readonly item: string; readonly asks: string; readonly words: string }[];
  readonly full_tests_not_met: readonly string[];
  readonly exclusions_triggered: readonly string[];
  readonly exclusions_named: readonly string[];
  readonly cautions: readonly string[];
}

export interface WarrantedSurface {
  readonly surface: string;
  readonly name: string;
  readonly panel: string;
  readonly metal: string;
  readonly metallic_coating: string;
  readonly paint_system: string;
  readonly color_group: string;
  readonly color: string | null;
  readonly lots: readonly string[];
}

/** undefined where no such document was issued. */
export function warrantyPaper(events: readonly PastEvent[], document: string, names: Names = {}): WarrantyPaper | undefined {
  const at = events.findIndex((event) => event.type === 'warranty-issued/1' && event.data.document === document);
  const issued = events[at];
  if (issued?.type !== 'warranty-issued/1') return undefined;
  const { data } = issued;
  const job = jobUpTo(events, at);
  const name = naming(names);
  const registration = job.after.registrations[data.kind];
  return {
    document: 'warranty',
    job: { number: job.number, name: job.name },
    id: document,
    kind: data.kind,
    title: data.title,
    warrantor: data.warrantor,
    owner: name((job.parties['owner'] ?? job.parties['customer'])?.id ?? ''),
    site: name(job.site?.id ?? ''),
    issued_at: issued.recordedAt,
    start: data.start,
    years: data.years,
    completed_on: job.after.completedOn,
    surfaces: data.surfaces.map((id) => warranted(job, id)),
    terms: { name: data.terms.name, digest: data.terms.digest },
    fade: data.fade ?? null,
    chalk: data.chalk ?? null,
    registration: registration ? { on: registration.on, due_by: registration.due_by, late_days: registration.late_days } : null,
    transfer: data.transfer,
    disclosures: [...data.disclosures]
      .sort((a, b) => a.item.localeCompare(b.item, 'en', { numeric: true }))
      .map(({ item, words }) => ({ item, asks: DISCLOSURES[item as Disclosure] ?? 'stated by the warrantor', words })),
    full_tests_not_met: data.full_tests_not_met,
    exclusions_triggered: data.exclusions_triggered,
    exclusions_named: data.exclusions_named,
    cautions: CAUTIONS,
  };
}

function warranted(job: ReturnType<typeof jobUpTo>, id: string): WarrantedSurface {
  const surface = job.surfaces[id];
  const style = surface?.stages.style.record?.content;
  const coating = surface?.stages.coating.record?.content;
  const gauge = surface?.stages.gauge.record?.content;
  if (!surface || !style || !coating || !gauge) throw new Error(`${id} was not decided when its warranty was issued`);
  const sheet = `${gauge.gauge === null ? '' : `${gauge.gauge} gauge, `}${gauge.thickness_in} in`;
  return {
    surface: id,
    name: surface.name,
    panel: `${style.profile_name}, ${style.width} in wide, ${sheet}`,
    metal: coating.metal,
    metallic_coating: coating.metallic_coating,
    paint_system: coating.paint_system,
    color_group: coating.color_group,
    color: coating.color,
    lots: job.after.lots[id] ?? [],
  };
}

const CAUTIONS = [
  'The warrantor named here promises, nobody else; the attached text is the warrantor\'s own and unchanged.',
  'Snow and ice slide off metal roofs: keep doors, walks and meters clear below them. Never walk a roof to look at it; photograph from the ground.',
] as const;
