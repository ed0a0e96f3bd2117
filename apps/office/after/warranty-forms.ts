// Warranty: registration, a document of one warrantor, its transfer.

import { DISCLOSURES, WARRANTY_KINDS, type CommandInput, type JobView } from '#jobs/contract';
import { day, today } from '../parts/words.js';
import { OFFICE } from '../shell/home.js';
import type { AfterForm, Ask, Given } from './asks.js';
import { first, nextId, optionsOf, surfaceOptions, warrantyOptions, YES_NO } from './pick.js';

const notComplete = (job: JobView): string | null =>
  job.after.completed_on === null ? 'Record completion first.' : null;

export const fileRegistration: AfterForm = {
  title: 'Record a registration',
  roles: OFFICE,
  button: 'Save the registration',
  saved: 'The registration was recorded.',
  lead: 'The window runs from completion. Filed late, it is printed as filed late.',
  missing: notComplete,
  start: () => ({ on: day(today()) }),
  asks: () => [
    { id: 'kind', label: 'Kind of warranty', kind: 'pick', options: optionsOf(WARRANTY_KINDS) },
    { id: 'on', label: 'Registered on', kind: 'day' },
    {
      id: 'window_days',
      label: 'Window after completion, in days',
      kind: 'count',
      hint: 'As the supplier’s text says',
    },
  ],
  command: ({ text, day: on, count }) => ({
    type: 'file-registration',
    kind: text('kind') as 'paint',
    on: on('on'),
    window_days: count('window_days'),
  }),
};

const SCALES = ['Hunter', 'CIELAB', 'CIEDE2000', 'not named'].map((value) => ({
  value,
  label: value,
}));
const TITLES = [
  { value: 'limited', label: 'Limited' },
  { value: 'full', label: 'Full', hint: 'Only where every test of a full warranty is met' },
];
const TRANSFERS = [
  { value: 'none', label: 'None' },
  { value: 'once', label: 'Once' },
  { value: 'with-notice', label: 'With notice' },
];

const paintAsks: readonly Ask[] = [
  { id: 'fade-limit', label: 'Fade: color change at most', kind: 'decimal', optional: true },
  {
    id: 'fade-scale',
    label: 'Fade: scale the text names',
    kind: 'pick',
    options: SCALES,
    optional: true,
    hint: 'Where the text names none, a claim stays an open question',
  },
  { id: 'fade-years', label: 'Fade: years', kind: 'count', optional: true },
  { id: 'chalk-least', label: 'Chalk: rating at least', kind: 'decimal', optional: true },
  { id: 'chalk-years', label: 'Chalk: years', kind: 'count', optional: true },
];

export const issueWarranty: AfterForm = {
  title: 'Issue a warranty document',
  roles: OFFICE,
  button: 'Issue the document',
  saved: 'The warranty document was issued.',
  lead: 'One document for each kind, from its own warrantor, with that warrantor’s text unchanged.',
  missing: notComplete,
  start: (job) => ({
    title: 'limited',
    start: day(job.after.completed_on),
    transfer: 'none',
    surfaces: surfaceOptions(job)
      .map(({ value }) => value)
      .join('\n'),
  }),
  asks: (job, { kind, title }) => [
    { id: 'kind', label: 'Kind', kind: 'choice', options: optionsOf(WARRANTY_KINDS) },
    { id: 'warrantor', label: 'Warrantor', kind: 'text' },
    {
      id: 'address',
      label: 'Its mailing address',
      kind: 'text',
      optional: true,
      hint: 'The catalogue’s own address counts where it has this warrantor',
    },
    { id: 'surfaces', label: 'Surfaces', kind: 'many', options: surfaceOptions(job) },
    { id: 'title', label: 'Title', kind: 'choice', options: TITLES },
    ...(title === 'full'
      ? [
          {
            id: 'not-met',
            label: 'Tests of a full warranty not met, one on each line',
            kind: 'lines' as const,
            optional: true as const,
          },
        ]
      : []),
    { id: 'start', label: 'Starts on', kind: 'day' },
    { id: 'years', label: 'Years', kind: 'count' },
    {
      id: 'full-years',
      label: 'Years of full cover, where it falls afterwards',
      kind: 'count',
      optional: true,
    },
    { id: 'terms', label: 'The warrantor’s text, one file, unchanged', kind: 'files' },
    ...(kind === 'paint' ? paintAsks : []),
    {
      id: 'exclusions',
      label: 'Exclusions named, one on each line',
      kind: 'lines',
      optional: true,
    },
    { id: 'transfer', label: 'Transfer', kind: 'choice', options: TRANSFERS },
    ...Object.entries(DISCLOSURES).map(([item, words]): Ask => ({
      id: `disclosure-${item}`,
      label: `Disclosure ${item}: ${words}`,
      kind: 'long',
      optional: true,
      ...(item === '1'
        ? { hint: 'Where it is a consumer product; the words are the warrantor’s own' }
        : {}),
    })),
  ],
  command: (given, job) => ({
    type: 'issue-warranty',
    document: nextId(
      '',
      job.after.warranties.map(({ document }) => document),
    ),
    kind: given.text('kind') as 'paint',
    title: given.text('title') as 'limited',
    warrantor: given.text('warrantor'),
    ...(given.text('address') ? { warrantor_address: given.text('address') } : {}),
    ...(given.text('full-years') ? { full_years: given.count('full-years') } : {}),
    surfaces: given.list('surfaces'),
    start: given.day('start'),
    years: given.count('years'),
    terms: given.files('terms')[0] ?? { digest: '', name: '' },
    ...paintTerms(given),
    full_tests_not_met: given.list('not-met'),
    disclosures: Object.keys(DISCLOSURES).flatMap((item) => {
      const words = given.text(`disclosure-${item}`);
      return words ? [{ item, words }] : [];
    }),
    exclusions_named: given.list('exclusions'),
    transfer: given.text('transfer') as 'none',
  }),
  gated: 'open',
  correct:
    'An issued document stays. A wrong one is followed by another document; both stay in the history.',
};

type Issue = Extract<CommandInput, { type: 'issue-warranty' }>;

const paintTerms = ({ text, decimal, count }: Given): Pick<Issue, 'fade' | 'chalk'> =>
  text('kind') !== 'paint'
    ? {}
    : {
        ...(text('fade-limit')
          ? {
              fade: {
                limit: decimal('fade-limit'),
                scale: (text('fade-scale') || 'not named') as 'not named',
                years: count('fade-years'),
              },
            }
          : {}),
        ...(text('chalk-least')
          ? { chalk: { least: decimal('chalk-least'), years: count('chalk-years') } }
          : {}),
      };

export const transferWarranty: AfterForm = {
  title: 'Record a transfer of a warranty',
  roles: [...OFFICE, 'warranty-reviewer'],
  button: 'Save the transfer',
  saved: 'The transfer was recorded.',
  missing: (job) =>
    job.after.warranties.length > 0 ? null : 'No warranty document is issued yet.',
  start: (job, about) => ({ document: first(warrantyOptions(job), about), on: day(today()) }),
  asks: (job) => [
    { id: 'document', label: 'Document', kind: 'pick', options: warrantyOptions(job) },
    { id: 'to', label: 'To whom', kind: 'text' },
    { id: 'on', label: 'On', kind: 'day' },
    { id: 'notice', label: 'Was notice given to the warrantor?', kind: 'choice', options: YES_NO },
  ],
  command: ({ text, day: on }) => ({
    type: 'transfer-warranty',
    document: text('document'),
    to: text('to'),
    on: on('on'),
    notice_given: text('notice') === 'yes',
  }),
};
