// One warranty document each for paint, substrate, weathertightness and workmanship: its own title and
// warrantor, the supplier's terms unchanged beside it, exclusions that facts already trigger, named.

import { createHash } from 'node:crypto';
import { titleRequired, warrantyTitle } from '#engineering';
import type { WarrantyKind, WarrantyPaper } from '#jobs';
import { DISCLOSURE_ITEMS, disclosureParts } from './disclosures.js';
import { issuePaper, PdfRefused, type PaperOptions } from './pdf.js';
import { column, numbers, type Pair, type Section } from './print.js';
import { capital, dayWords } from './words.js';

const COVERS: Readonly<Record<WarrantyKind, string>> = {
  paint: 'Paint finish',
  substrate: 'Substrate (perforation)',
  weathertightness: 'Weathertightness',
  workmanship: 'Workmanship',
};
const TRANSFER: Readonly<Record<WarrantyPaper['transfer'], string>> = {
  none: 'not transferable',
  once: 'once',
  'with-notice': 'with notice to the warrantor',
};
/** The price of a roof is over every limit of the rules on titles and disclosures. */
const OVER_EVERY_LIMIT_USD = 1000;

/** Throws PdfRefused with every fault: no term, a full title not earned, a missing disclosure, altered terms. */
export async function renderWarranty(
  warranty: WarrantyPaper,
  options: PaperOptions,
): Promise<Uint8Array> {
  const faults = faultsOf(warranty, options);
  if (faults.length > 0) throw new PdfRefused(faults.join('; '));
  const title = capital(warrantyTitle(warranty.title === 'full', warranty.years));
  const about = {
    kind: `${title}: ${COVERS[warranty.kind].toLowerCase()}`,
    about: `Document ${warranty.number}; job ${warranty.job.number}, ${warranty.job.name}`,
    at: warranty.issued_at,
    cautions: warranty.cautions,
  };
  const body = {
    lead: `${COVERS[warranty.kind]} alone. Paint, substrate, weathertightness and workmanship each have their own document and warrantor.`,
    head: head(warranty),
    sections: sections(warranty),
    disclosures: {
      name: 'What you are told about this warranty',
      items: disclosureParts(warranty.disclosures),
    },
  };
  return issuePaper('warranty', about, body, options);
}

function faultsOf(warranty: WarrantyPaper, { attachments = [] }: PaperOptions): readonly string[] {
  const { kind, title, full_tests_not_met, terms, disclosures, supplier_terms } = warranty;
  const missing = DISCLOSURE_ITEMS.filter(
    ({ item }) => Number(item) <= 5 && !disclosures.some((each) => each.item === item),
  );
  const attached = attachments.find(({ name }) => name === supplier_terms.name);
  const altered =
    attached && createHash('sha256').update(attached.bytes).digest('hex') !== supplier_terms.digest;
  return [
    ...(terms.length === 0
      ? [`no ${kind} warranty exists here: without a term none is printed`]
      : []),
    ...(title === 'full' && full_tests_not_met.length > 0
      ? [`not a full warranty: ${full_tests_not_met.join(', ')} (15 USC 2304)`]
      : []),
    ...(warranty.consumer_product && titleRequired(OVER_EVERY_LIMIT_USD)
      ? missing.map(
          ({ item, asks }) => `16 CFR 701.3(a)(${item}) is missing: ${asks.toLowerCase()}`,
        )
      : []),
    ...(altered ? [`${supplier_terms.name} is not the text on file: its digest differs`] : []),
  ];
}

function head(warranty: WarrantyPaper): readonly Pair[] {
  const { warrantor, registration } = warranty;
  return [
    ['Warrantor', `${warrantor.name}, ${warrantor.address}`],
    ...(warranty.passed_on_by === null
      ? []
      : [['Handed on by', `${warranty.passed_on_by}, who is not the warrantor`] as const]),
    ['Issued', dayWords(warranty.issued_at)],
    ['Owner', warranty.owner],
    ['Surfaces', warranty.surfaces.join(', ')],
    ['Starts', `${dayWords(warranty.start)}, ${warranty.start_because}`],
    ['Runs', `${warranty.years} years, term by term as below`],
    ['Transfer', TRANSFER[warranty.transfer]],
    ['Registration', registration ? registrationWords(registration) : 'not asked for'],
  ];
}

function registrationWords({
  due_by,
  filed,
  late_days,
}: NonNullable<WarrantyPaper['registration']>): string {
  if (filed === null) return `due by ${dayWords(due_by)}, not filed`;
  return late_days > 0
    ? `filed late: ${dayWords(filed)}, ${late_days} days after ${dayWords(due_by)}`
    : `filed ${dayWords(filed)}, due by ${dayWords(due_by)}`;
}

function sections(warranty: WarrantyPaper): readonly Section[] {
  const { terms, exclusions, exclusions_triggered, supplier_terms } = warranty;
  const none = 'No recorded fact triggers an exclusion.';
  return [
    {
      name: 'Terms',
      ...(typeof warranty.full_years === 'number' ? { words: [fallWords(warranty)] } : {}),
      tables: [
        {
          caption: 'Each term on its own line',
          columns: [column('Term', 1), column('Limit', 1), numbers('Years'), column('Ends')],
          rows: terms.map(({ what, limit, years }) => [
            what,
            limit,
            String(years),
            dayWords(yearsAfter(warranty.start, years)),
          ]),
        },
      ],
    },
    {
      name: 'Already excluded by recorded facts',
      ...(exclusions_triggered.length > 0 ? { list: exclusions_triggered } : { words: [none] }),
    },
    {
      name: 'Exclusions',
      ...(exclusions.length > 0
        ? { list: exclusions }
        : { words: ['None beyond the text of the terms.'] }),
    },
    {
      name: "The warrantor's own text",
      words: [
        'It is attached to this document unchanged and is known by its digest. Where this page and that text differ, that text is what the warrantor wrote.',
      ],
      pairs: [
        ['File', supplier_terms.name],
        ...(supplier_terms.version ? [['Version', supplier_terms.version] as const] : []),
        ['SHA-256', supplier_terms.digest],
      ],
    },
  ];
}

const fallWords = ({ full_years, years }: WarrantyPaper): string =>
  full_years === years
    ? 'Cover is full until the term ends.'
    : `Cover is full for ${full_years} years, then falls by the month in a straight line, to nothing after ${years} years.`;

/** The same day so many years on; 29 February becomes 28 February where there is none. */
function yearsAfter(day: string, years: number): string {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const last = new Date(Date.UTC(year + years, month, 0)).getUTCDate();
  return new Date(Date.UTC(year + years, month - 1, Math.min(date, last)))
    .toISOString()
    .slice(0, 10);
}
