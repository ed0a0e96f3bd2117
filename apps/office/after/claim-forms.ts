// Claims: opened, measured, decided by a person.

import { CLAIM_KINDS, type CommandInput, type JobView } from '#jobs/contract';
import { day, today } from '../parts/words.js';
import { OFFICE } from '../shell/home.js';
import type { AfterForm, Ask, Given } from './asks.js';
import {
  claimOptions,
  first,
  nextId,
  optionsOf,
  surfaceOptions,
  warrantyOptions,
  YES_NO,
} from './pick.js';

const noClaim = (job: JobView): string | null =>
  claimOptions(job).length > 0 ? null : 'No claim is waiting for a decision.';
const plain = (words: readonly string[]) => words.map((value) => ({ value, label: value }));

export const openClaim: AfterForm = {
  title: 'Open a claim',
  roles: [...OFFICE, 'warranty-reviewer'],
  button: 'Open the claim',
  saved: 'The claim is open.',
  missing: () => null,
  start: (job, about) => ({
    surface: first(surfaceOptions(job), about),
    document: first(warrantyOptions(job), about),
    notice: day(today()),
  }),
  asks: (job) => [
    { id: 'surface', label: 'Surface', kind: 'pick', options: surfaceOptions(job) },
    { id: 'kind', label: 'What is claimed', kind: 'pick', options: optionsOf(CLAIM_KINDS) },
    { id: 'notice', label: 'Notice was given on', kind: 'day' },
    {
      id: 'document',
      label: 'Warranty document',
      kind: 'pick',
      options: warrantyOptions(job),
      optional: true,
    },
    { id: 'lot', label: 'Coil or lot number', kind: 'text', optional: true },
    { id: 'words', label: 'What the owner says', kind: 'long' },
    { id: 'files', label: 'Photos and letters', kind: 'files', optional: true },
  ],
  command: ({ text, day: on, files }, job) => ({
    type: 'open-claim',
    claim: nextId(
      '',
      job.after.claims.map(({ claim }) => claim),
    ),
    surface: text('surface'),
    kind: text('kind') as 'fade',
    notice: on('notice'),
    words: text('words'),
    ...(text('document') ? { document: text('document') } : {}),
    ...(text('lot') ? { lot: text('lot') } : {}),
    files: files('files'),
  }),
};

const AXES = ['L', 'a', 'b'] as const;
const colorAsks: readonly Ask[] = [
  { id: 'scale', label: 'Scale', kind: 'pick', options: plain(['Hunter', 'CIELAB', 'CIEDE2000']) },
  { id: 'illuminant', label: 'Illuminant', kind: 'pick', options: plain(['A', 'C', 'D50', 'D65']) },
  {
    id: 'observer',
    label: 'Observer',
    kind: 'pick',
    options: [
      { value: '2', label: '2 degrees' },
      { value: '10', label: '10 degrees' },
    ],
  },
  ...(['retained', 'weathered'] as const).flatMap((sample) =>
    AXES.map((axis): Ask => ({
      id: `${sample}-${axis}`,
      label: `${sample === 'retained' ? 'Retained sample' : 'Weathered panel'}: ${axis}`,
      kind: 'decimal',
    })),
  ),
];

export const recordReading: AfterForm = {
  title: 'Record a reading for a claim',
  roles: ['warranty-reviewer'],
  button: 'Save the reading',
  saved: 'The reading was recorded.',
  missing: noClaim,
  start: (job, about) => ({ claim: first(claimOptions(job), about), on: day(today()) }),
  asks: (job, { what }) => [
    { id: 'claim', label: 'Claim', kind: 'pick', options: claimOptions(job) },
    { id: 'on', label: 'Measured on', kind: 'day' },
    {
      id: 'what',
      label: 'What was measured',
      kind: 'pick',
      options: optionsOf(['color', 'chalk', 'hail', 'coating-thickness']),
    },
    ...(what === 'color' ? colorAsks : []),
    ...(what && what !== 'color'
      ? [{ id: 'rating', label: 'Rating or reading', kind: 'decimal' as const }]
      : []),
    { id: 'washed', label: 'Was the panel washed before?', kind: 'choice', options: YES_NO },
    { id: 'instrument', label: 'Instrument', kind: 'text', optional: true },
    { id: 'calibrated', label: 'Calibrated on', kind: 'day', optional: true },
  ],
  command: (given) => ({
    type: 'record-reading',
    claim: given.text('claim'),
    on: given.day('on'),
    what: given.text('what') as 'color',
    washed: given.text('washed') === 'yes',
    ...(given.text('what') === 'color' ? color(given) : { rating: given.decimal('rating') }),
    ...(given.text('instrument') ? { instrument: given.text('instrument') } : {}),
    ...(given.text('calibrated') ? { calibrated: given.day('calibrated') } : {}),
  }),
  roofWork: true,
};

type Reading = Extract<CommandInput, { type: 'record-reading' }>;

function color({
  text,
  decimal,
}: Given): Pick<Reading, 'scale' | 'illuminant' | 'observer' | 'retained' | 'weathered'> {
  const lab = (of: string) => ({
    L: decimal(`${of}-L`),
    a: decimal(`${of}-a`),
    b: decimal(`${of}-b`),
  });
  return {
    scale: text('scale') as 'Hunter',
    illuminant: text('illuminant') as 'C',
    observer: text('observer') as '2',
    retained: lab('retained'),
    weathered: lab('weathered'),
  };
}

export const decideClaim: AfterForm = {
  title: 'Decide a claim',
  roles: ['warranty-reviewer'],
  button: 'Record the decision',
  saved: 'The claim is decided.',
  lead: 'The tests on the job’s page are computed; the decision is a person’s.',
  missing: noClaim,
  start: (job, about) => ({ claim: first(claimOptions(job), about) }),
  asks: (job) => [
    { id: 'claim', label: 'Claim', kind: 'pick', options: claimOptions(job) },
    {
      id: 'decision',
      label: 'Decision',
      kind: 'choice',
      options: optionsOf(['accepted', 'accepted-in-part', 'declined']),
    },
    { id: 'reason', label: 'Reason', kind: 'long' },
    { id: 'clause', label: 'Clause of the document it rests on', kind: 'text' },
  ],
  command: ({ text }) => ({
    type: 'decide-claim',
    claim: text('claim'),
    decision: text('decision') as 'declined',
    reason: text('reason'),
    clause: text('clause'),
  }),
  correct: 'A decision stays. New facts open a new claim; both stay in the history.',
};
