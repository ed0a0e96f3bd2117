// Installation: as built, inspection with its punch list, completion.

import type { JobView } from '#jobs/contract';
import { day, today } from '../parts/words.js';
import { OFFICE } from '../shell/home.js';
import type { AfterForm, Ask } from './asks.js';
import { first, nextId, YES_NO } from './pick.js';

const approved = (job: JobView, surface: string | undefined) =>
  job.surfaces.find(({ id }) => id === surface)?.stages.gauge.content?.attachment;
const decided = (job: JobView) =>
  job.surfaces
    .filter(({ id, withdrawn }) => withdrawn === null && approved(job, id))
    .map(({ id, name }) => ({ value: id, label: name }));

export const recordAsBuilt: AfterForm = {
  title: 'Record the attachment as built',
  roles: [...OFFICE, 'crew-lead'],
  button: 'Save as built',
  saved: 'As built was recorded.',
  lead: 'What was approved stands beside each field. What differs is a difference for the record, not a fault of yours.',
  missing: (job) =>
    decided(job).length > 0 ? null : 'No surface has a gauge and an attachment yet.',
  start: (job, about) => ({ surface: first(decided(job), about) }),
  asks: (job, { surface }, catalogue) => [
    { id: 'surface', label: 'Surface', kind: 'pick', options: decided(job) },
    {
      id: 'fastener',
      label: 'Fastener',
      kind: 'pick',
      options: (catalogue?.fasteners ?? []).map(({ id, name }) => ({ value: id, label: name })),
      hint: `Approved: ${catalogue?.fasteners.find(({ id }) => id === approved(job, surface)?.fastener)?.name ?? approved(job, surface)?.fastener ?? 'choose the surface first'}`,
    },
    ...(approved(job, surface)?.zones ?? []).flatMap(({ zone, spacing, rows }, i): Ask[] => [
      {
        id: `spacing-${i}`,
        label: `Zone ${zone}: spacing as built`,
        kind: 'decimal',
        unit: 'in',
        hint: `Approved: ${spacing.v} in`,
      },
      ...(rows
        ? [
            {
              id: `rows-${i}`,
              label: `Zone ${zone}: rows as built`,
              kind: 'decimal' as const,
              unit: 'in',
              hint: `Approved: ${rows.v} in`,
            },
          ]
        : []),
    ]),
    { id: 'files', label: 'Photos of work that is covered later', kind: 'files', optional: true },
  ],
  command: (given, job) => ({
    type: 'record-as-built',
    surface: given.text('surface'),
    fastener: given.text('fastener'),
    zones: (approved(job, given.text('surface'))?.zones ?? []).map(({ zone, rows }, i) => ({
      zone,
      spacing: { v: given.decimal(`spacing-${i}`), u: 'in' },
      ...(rows ? { rows: { v: given.decimal(`rows-${i}`), u: 'in' as const } } : {}),
    })),
    files: given.files('files'),
  }),
  roofWork: true,
};

export const recordInspection: AfterForm = {
  title: 'Record the final inspection',
  roles: OFFICE,
  button: 'Save the inspection',
  saved: 'The inspection was recorded.',
  missing: () => null,
  start: () => ({ on: day(today()) }),
  asks: () => [
    { id: 'on', label: 'Inspected on', kind: 'day' },
    { id: 'passed', label: 'Passed?', kind: 'choice', options: YES_NO },
    { id: 'punch', label: 'Punch list, one item on each line', kind: 'lines', optional: true },
    { id: 'files', label: 'Photos and report', kind: 'files', optional: true },
  ],
  command: (given, job) => ({
    type: 'record-inspection',
    on: given.day('on'),
    passed: given.text('passed') === 'yes',
    punch: punchItems(job, given.list('punch')),
    files: given.files('files'),
  }),
  roofWork: true,
};

function punchItems(job: JobView, words: readonly string[]) {
  const taken = job.after.punch.map(({ id }) => id);
  return words.map((each) => {
    const id = nextId('p', taken);
    taken.push(id);
    return { id, words: each };
  });
}

const open = (job: JobView) =>
  job.after.punch
    .filter((each) => each.open)
    .map(({ id, words }) => ({ value: id, label: `${id}, ${words}` }));

export const closePunchItem: AfterForm = {
  title: 'Close an item of the punch list',
  roles: [...OFFICE, 'crew-lead'],
  button: 'Close the item',
  saved: 'The item is closed.',
  missing: (job) => (open(job).length > 0 ? null : 'No item of the punch list is open.'),
  start: (job, about) => ({ item: first(open(job), about) }),
  asks: (job) => [
    { id: 'item', label: 'Item', kind: 'pick', options: open(job) },
    { id: 'words', label: 'What was done', kind: 'long' },
  ],
  command: ({ text }) => ({ type: 'close-punch-item', item: text('item'), words: text('words') }),
  roofWork: true,
};

export const recordCompletion: AfterForm = {
  title: 'Record completion',
  roles: OFFICE,
  button: 'Record completion',
  saved: 'Completion was recorded.',
  lead: 'Registration windows run from this day.',
  missing: (job) =>
    job.after.completed_on === null ? null : `Completed on ${day(job.after.completed_on)}.`,
  start: () => ({ on: day(today()) }),
  asks: () => [{ id: 'on', label: 'Completed on', kind: 'day' }],
  command: ({ day: on }) => ({ type: 'record-completion', on: on('on') }),
  gated: 'firm',
  correct:
    'Completion is recorded once. A wrong day is corrected by a note; the entry stays in the history.',
};
