// A warranty document as a fold: one kind, one warrantor, each term on its own line, the supplier's
// text by its digest, and what recorded facts already exclude.

import type { WarrantyKind } from '../contract/after-order.js';
import type { EventData, PastEvent } from '../contract/events.js';
import { jobFact } from '../after-order/gate-facts.js';
import type { Job } from '../job.js';
import type { Names } from './moment.js';
import { jobUpTo, naming } from './moment.js';

export interface WarrantyPaper {
  readonly document: 'warranty';
  readonly job: { readonly number: string; readonly name: string };
  readonly number: string;
  readonly kind: WarrantyKind;
  /** RFC 3339. */
  readonly issued_at: string;
  readonly title: 'limited' | 'full';
  /** Tests of a full warranty (15 USC 2304) that the text does not meet. */
  readonly full_tests_not_met: readonly string[];
  readonly consumer_product: boolean;
  readonly warrantor: { readonly name: string; readonly address: string };
  /** The office, where it hands on another's warranty. */
  readonly passed_on_by: string | null;
  readonly owner: string;
  readonly surfaces: readonly string[];
  readonly start: string;
  readonly start_because: string;
  readonly years: number;
  /** Each term on its own line; a headline of years is never a term. */
  readonly terms: readonly WarrantyTerm[];
  readonly disclosures: readonly { readonly item: string; readonly words: string }[];
  readonly exclusions: readonly string[];
  readonly exclusions_triggered: readonly string[];
  readonly registration: {
    readonly due_by: string;
    readonly filed: string | null;
    readonly late_days: number;
  } | null;
  readonly transfer: 'none' | 'once' | 'with-notice';
  /** Years of full cover, after which it falls in a straight line; null where it never falls. */
  readonly full_years: number | null;
  /** Attached unchanged, and known by its digest. */
  readonly supplier_terms: {
    readonly name: string;
    readonly digest: string;
    readonly version: string | null;
  };
  readonly cautions: readonly string[];
}

export interface WarrantyTerm {
  /** "fade, dark colors, PVDF". */
  readonly what: string;
  /** "5 units, Hunter"; a scale that is not named is said to be not named. */
  readonly limit: string;
  readonly years: number;
}

type Issued = EventData['warranty-issued/1'];

/** undefined where no such document was issued. */
export function warrantyPaper(
  events: readonly PastEvent[],
  document: string,
  names: Names = {},
): WarrantyPaper | undefined {
  const at = events.findIndex(
    (event) => event.type === 'warranty-issued/1' && event.data.document === document,
  );
  const issued = events[at];
  if (issued?.type !== 'warranty-issued/1') return undefined;
  const { data } = issued;
  const job = jobUpTo(events, at);
  const registration = job.after.registrations[data.kind];
  const office = names['company'] ?? null;
  return {
    document: 'warranty',
    job: { number: job.number, name: job.name },
    number: document,
    kind: data.kind,
    issued_at: issued.recordedAt,
    title: data.title,
    full_tests_not_met: data.full_tests_not_met,
    consumer_product: jobFact<boolean>(job, 'consumer-product') === true,
    warrantor: {
      name: data.warrantor,
      address: data.warrantor_address ?? 'at the address that its own text gives',
    },
    passed_on_by: office === data.warrantor ? null : office,
    owner: naming(names)((job.parties['owner'] ?? job.parties['customer'])?.id ?? ''),
    surfaces: data.surfaces.map((id) => surfaceWords(job, id)),
    start: data.start,
    start_because:
      data.start === job.after.completedOn ? 'the day of completion' : 'as the document says',
    years: data.years,
    terms: termsOf(job, data),
    disclosures: data.disclosures,
    exclusions: data.exclusions_named,
    exclusions_triggered: data.exclusions_triggered,
    registration: registration
      ? { due_by: registration.due_by, filed: registration.on, late_days: registration.late_days }
      : null,
    transfer: data.transfer,
    full_years: data.full_years ?? null,
    supplier_terms: {
      name: data.terms.name,
      digest: data.terms.digest,
      version: data.terms_version ?? null,
    },
    cautions: CAUTIONS,
  };
}

/** "South: Snap seam 16, 24 gauge (0.0236 in), steel AZ50, PVDF slate, lot coil-7". */
function surfaceWords(job: Job, id: string): string {
  const surface = job.surfaces[id];
  const style = surface?.stages.style.record?.content;
  const coating = surface?.stages.coating.record?.content;
  const gauge = surface?.stages.gauge.record?.content;
  if (!surface || !style || !coating || !gauge)
    throw new Error(`${id} was not decided when its warranty was issued`);
  const sheet =
    gauge.gauge === null
      ? `${gauge.thickness_in} in`
      : `${gauge.gauge} gauge (${gauge.thickness_in} in)`;
  const finish =
    coating.paint_system === 'bare'
      ? 'unpainted'
      : `${coating.paint_system} ${coating.color ?? coating.color_group}`;
  const lots = job.after.lots[id] ?? [];
  return [
    `${surface.name}: ${style.profile_name}`,
    sheet,
    `${coating.metal} ${coating.metallic_coating}`,
    finish,
    ...(lots.length > 0 ? [`lot ${lots.join(' and ')}`] : []),
  ].join(', ');
}

function termsOf(
  job: Job,
  { kind, surfaces, years, fade, chalk }: Issued,
): readonly WarrantyTerm[] {
  if (kind !== 'paint' || (!fade && !chalk))
    return [{ what: kind, limit: "as the warrantor's own text says", years }];
  const groups = [
    ...new Set(
      surfaces.flatMap((id) => job.surfaces[id]?.stages.coating.record?.content.color_group ?? []),
    ),
  ];
  const scale = fade?.scale === 'not named' ? 'scale not named' : fade?.scale;
  return [
    ...(fade
      ? [
          {
            what: `fade, ${groups.join(' and ')} colors`,
            limit: `${fade.limit} units, ${scale}`,
            years: fade.years,
          },
        ]
      : []),
    ...(chalk ? [{ what: 'chalk', limit: `not under ${chalk.least}`, years: chalk.years }] : []),
  ];
}

const CAUTIONS = [
  'The warrantor named here promises, nobody else.',
  'Snow and ice slide off metal roofs: keep doors, walks and meters clear below them. Never walk a roof to look at it; photograph from the ground.',
] as const;
