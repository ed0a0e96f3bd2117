// Change orders and what comes back from the supplier: acknowledgment, receipt, differences settled.

import { day, today } from '../parts/words.js';
import { OFFICE } from '../shell/home.js';
import type { Option } from '../parts/fields.js';
import type { AfterForm, Ask } from './asks.js';
import {
  first,
  inForce,
  orderOf,
  orderOptions,
  surfaceName,
  surfaceOptions,
  YES_NO,
} from './pick.js';
import { feetInches } from '#drawings';
import type { JobView, OrderLine } from '#jobs/contract';

const noOrder = (job: JobView): string | null =>
  job.after.orders.length > 0 ? null : 'No order is out yet.';
const theOrder = (job: JobView): Ask => ({
  id: 'order',
  label: 'Order',
  kind: 'pick',
  options: orderOptions(job),
});
const startOrder = (job: JobView, about: string) => ({ order: first(orderOptions(job), about) });
/** "1A, Snap seam 16, 18'-0\"": lines of one panel differ by their length. */
const lineWords = ({ id, words, length }: OrderLine): string =>
  [id.toUpperCase(), words, ...(length ? [feetInches(Number(length.v))] : [])].join(', ');
const linesOf = (job: JobView, order: string | undefined) =>
  inForce(orderOf(job, order))?.lines ?? [];

const lineOptions = (job: JobView, order: string | undefined): readonly Option[] =>
  linesOf(job, order).map((line) => ({ value: line.id, label: lineWords(line) }));

export const openChangeOrder: AfterForm = {
  title: 'Open a change order',
  roles: ['project-manager'],
  button: 'Open the change order',
  saved: 'The change order is open.',
  lead: 'The order out stays as it is until it is issued again; then both stand, with the difference between them.',
  missing: (job) =>
    job.after.orders.some(({ change_order }) => change_order === null)
      ? null
      : 'No order is out without a change order.',
  start: startOrder,
  asks: (job) => [theOrder(job), { id: 'reason', label: 'Reason', kind: 'long' }],
  command: ({ text }) => ({
    type: 'open-change-order',
    order: text('order'),
    reason: text('reason'),
  }),
  correct: 'A change order can be withdrawn, with a reason; both stay in the history.',
};

export const withdrawChangeOrder: AfterForm = {
  ...openChangeOrder,
  title: 'Withdraw the change order',
  button: 'Withdraw it',
  saved: 'The change order is withdrawn.',
  lead: 'The revision in force stays as it is.',
  missing: (job) =>
    job.after.orders.some(({ change_order }) => change_order) ? null : 'No change order is open.',
  command: ({ text }) => ({
    type: 'withdraw-change-order',
    order: text('order'),
    reason: text('reason'),
  }),
  correct: 'A change order can be opened again.',
};

export const recordAcknowledgment: AfterForm = {
  title: 'Record the supplier’s acknowledgment',
  roles: OFFICE,
  button: 'Save the acknowledgment',
  saved: 'The acknowledgment was recorded.',
  lead: 'Counts and lengths stand as ordered; change what the supplier confirms otherwise. Nought: left out. What differs is compared line by line.',
  missing: noOrder,
  start: (job, about) => {
    const start = startOrder(job, about);
    return {
      ...start,
      ...Object.fromEntries(
        linesOf(job, start.order).flatMap(({ id, count, length }) => [
          [`count-${id}`, String(count)],
          ...(length ? [[`length-${id}`, length.v]] : []),
        ]),
      ),
    };
  },
  asks: (job, { order }) => [
    theOrder(job),
    { id: 'dated', label: 'Dated', kind: 'day' },
    ...linesOf(job, order).flatMap((line): Ask[] => [
      { id: `count-${line.id}`, label: `${lineWords(line)}: how many confirmed`, kind: 'count' },
      ...(line.length
        ? [
            {
              id: `length-${line.id}`,
              label: `${line.id.toUpperCase()}: length confirmed`,
              kind: 'decimal' as const,
              unit: 'in',
            },
          ]
        : []),
    ]),
    { id: 'files', label: 'The acknowledgment as it came', kind: 'files', optional: true },
  ],
  command: (given, job) => ({
    type: 'record-acknowledgment',
    order: given.text('order'),
    dated: given.day('dated'),
    lines: linesOf(job, given.text('order'))
      .map((line) => ({
        ...line,
        count: given.count(`count-${line.id}`),
        ...(line.length
          ? { length: { v: given.decimal(`length-${line.id}`), u: 'in' as const } }
          : {}),
      }))
      .filter(({ count }) => count > 0),
    files: given.files('files'),
  }),
};

export const recordReceipt: AfterForm = {
  title: 'Record what was received',
  roles: [...OFFICE, 'crew-lead'],
  button: 'Save the receipt',
  saved: 'The receipt was recorded.',
  lead: 'Count at the truck. Lots matter: one plane of two lots may show two shades.',
  missing: noOrder,
  start: (job, about) => ({ ...startOrder(job, about), on: day(today()) }),
  asks: (job, { order }) => [
    theOrder(job),
    { id: 'on', label: 'Received on', kind: 'day' },
    ...linesOf(job, order).flatMap((line): Ask[] => [
      {
        id: `count-${line.id}`,
        label: `${lineWords(line)}: received of ${line.count}`,
        kind: 'count',
        optional: true,
        hint: 'Empty: none of it came',
      },
      {
        id: `damaged-${line.id}`,
        label: `${line.id.toUpperCase()}: of these damaged`,
        kind: 'count',
        optional: true,
      },
    ]),
    ...surfaceOptions(job).map(({ value, label }): Ask => ({
      id: `lots-${value}`,
      label: `Coil or lot numbers for ${label}, one on each line`,
      kind: 'lines',
      optional: true,
    })),
    { id: 'dry', label: 'Stored dry and off the ground?', kind: 'choice', options: YES_NO },
    { id: 'files', label: 'Photos and tickets', kind: 'files', optional: true },
  ],
  command: (given, job) => ({
    type: 'record-receipt',
    order: given.text('order'),
    on: given.day('on'),
    lines: linesOf(job, given.text('order'))
      .filter(({ id }) => given.text(`count-${id}`) || given.text(`damaged-${id}`))
      .map(({ id }) => ({
        line: id,
        count: given.count(`count-${id}`),
        damaged: given.count(`damaged-${id}`),
      })),
    lots: surfaceOptions(job).flatMap(({ value }) =>
      given.list(`lots-${value}`).map((lot) => ({ surface: value, lot })),
    ),
    stored_dry: given.text('dry') === 'yes',
    files: given.files('files'),
  }),
  roofWork: true,
};

export const settleReceipt: AfterForm = {
  title: 'Settle a line of a receipt',
  roles: OFFICE,
  button: 'Save how it is settled',
  saved: 'The line is settled.',
  missing: noOrder,
  start: (job, about) => {
    const { order } = startOrder(job, about);
    return { order, line: first(lineOptions(job, order)) };
  },
  asks: (job, { order }) => [
    theOrder(job),
    { id: 'line', label: 'Line', kind: 'pick', options: lineOptions(job, order) },
    { id: 'words', label: 'How the shortage or the damage was settled', kind: 'long' },
  ],
  command: ({ text }) => ({
    type: 'settle-receipt',
    order: text('order'),
    line: text('line'),
    words: text('words'),
  }),
};

const mixed = (job: JobView) =>
  job.after.lots
    .filter((each) => each.mixed === 'not accepted')
    .map(({ surface }) => ({ value: surface, label: surfaceName(job, surface) }));

export const acceptMixedLots: AfterForm = {
  title: 'Accept mixed lots on a plane',
  roles: OFFICE,
  button: 'Save the acceptance',
  saved: 'The mixed lots are accepted.',
  missing: (job) =>
    mixed(job).length > 0 ? null : 'No plane has mixed lots that are not accepted.',
  start: (job, about) => ({ surface: first(mixed(job), about) }),
  asks: (job) => [
    { id: 'surface', label: 'Surface', kind: 'pick', options: mixed(job) },
    { id: 'words', label: 'Who accepts them, and on what', kind: 'long' },
    { id: 'files', label: 'The written acceptance', kind: 'files' },
  ],
  command: ({ text, files }) => ({
    type: 'accept-mixed-lots',
    surface: text('surface'),
    words: text('words'),
    files: files('files'),
  }),
};
