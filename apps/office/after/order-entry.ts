// What is typed for an order, its faults, and the command made of it.

import type { CommandInput, JobView, OrderLine, TakeOffSheet } from '#jobs/contract';
import type { FieldErrors } from '../parts/fields.js';
import { day, parseDay, today } from '../parts/words.js';
import { decimal } from '../stages/hazards-entry.js';
import { inForce, nextId, orderOf, surfaceName, surfaceOptions } from './pick.js';

export interface LineTyped {
  readonly id: string;
  readonly surface: string;
  readonly what: string;
  readonly words: string;
  readonly length: string;
  readonly count: string;
  /** Of all its pieces. */
  readonly weight: string;
  readonly price: string;
}

export interface LengthsTyped {
  readonly surface: string;
  readonly by: string;
  readonly standing: string;
  readonly signedBy: string;
}

export interface OrderTyped {
  readonly supplier: string;
  readonly date: string;
  readonly landing: string;
  readonly delivery: string;
  readonly lines: readonly LineTyped[];
  readonly lengths: readonly LengthsTyped[];
}

export type IssueOrder = Extract<CommandInput, { type: 'issue-order' }>;

/** Starts from the revision in force where a change order is open; else one panel line for each surface. */
export function orderTyped(job: JobView, order: string): OrderTyped {
  const before = inForce(orderOf(job, order));
  const had = (surface: string) => before?.lengths.find((each) => each.surface === surface);
  return {
    supplier: before?.supplier ?? '',
    date: day(today()),
    landing: before?.landing_place ?? '',
    delivery: day(before?.delivery),
    lines:
      before?.lines.map(lineTyped) ??
      surfaceOptions(job).map(({ value }, i) => panelLine(job, `l${i + 1}`, value)),
    lengths: surfaceOptions(job).map(({ value }) => ({
      surface: value,
      by: had(value)?.by ?? 'entered',
      standing: had(value)?.standing ?? '',
      signedBy: had(value)?.signed_by ?? '',
    })),
  };
}

/** The lines of a surface are those of its take-off, in the place of what stood there. */
export function withTakeOff(
  typed: OrderTyped,
  sheet: TakeOffSheet,
): Pick<OrderTyped, 'lines' | 'lengths' | 'landing'> {
  const others = typed.lines.filter(
    (line) => line.surface !== sheet.surface || (!TAKEN.test(line.id) && line.what !== 'panel'),
  );
  const places = [...new Set(sheet.result.bundles.map(({ place }) => place))];
  return {
    landing: typed.landing.trim() || places.join('; '),
    lines: [...sheet.lines.map(lineTyped), ...others],
    lengths: typed.lengths.map((each) =>
      each.surface === sheet.surface ? { ...each, by: 'take-off' } : each,
    ),
  };
}

/** A surface whose lengths come from a take-off: its lines are shown, and changed by a new take-off. */
export const isTaken = ({ lengths }: OrderTyped, line: LineTyped): boolean =>
  TAKEN.test(line.id) &&
  lengths.some(({ surface, by }) => surface === line.surface && by === 'take-off');
/** Lines of a take-off start with the number of their surface; lines of a hand with a letter. */
const TAKEN = /^\d/;

const lineTyped = ({
  id,
  surface,
  what,
  words,
  length,
  count,
  weight,
  price,
}: OrderLine): LineTyped => ({
  id,
  surface: surface ?? '',
  what,
  words,
  length: length?.v ?? '',
  count: String(count),
  weight: weight?.v ?? '',
  price: price?.v ?? '',
});

function panelLine(job: JobView, id: string, surface: string): LineTyped {
  const stages = job.surfaces.find((each) => each.id === surface)?.stages;
  const gauge = stages?.gauge.content?.gauge;
  const words = [stages?.style.content?.profile_name, gauge && `${gauge} gauge`]
    .filter(Boolean)
    .join(', ');
  return { id, surface, what: 'panel', words, length: '', count: '', weight: '', price: '' };
}

export const lineAfter = (lines: readonly LineTyped[]): LineTyped => {
  const last = lines.at(-1);
  return {
    id: nextId(
      'l',
      lines.map(({ id }) => id),
    ),
    surface: last?.surface ?? '',
    what: last?.what ?? 'panel',
    words: last?.words ?? '',
    length: '',
    count: '',
    weight: '',
    price: '',
  };
};

export function orderFaults(job: JobView, typed: OrderTyped): FieldErrors {
  return [
    ...(typed.supplier.trim() ? [] : [{ field: 'supplier', message: 'Enter the supplier' }]),
    ...(parseDay(typed.date)
      ? []
      : [{ field: 'date', message: 'Enter the date of the order like 14 Feb 2026' }]),
    ...(!typed.delivery.trim() || parseDay(typed.delivery)
      ? []
      : [{ field: 'delivery', message: 'Enter the delivery like 14 Feb 2026, or leave it empty' }]),
    ...(typed.lines.length > 0 ? [] : [{ field: 'add-line', message: 'Add at least one line' }]),
    ...typed.lines.flatMap(lineFaults),
    ...typed.lengths.flatMap(({ surface, standing, signedBy }) => {
      const name = surfaceName(job, surface);
      if (!standing)
        return [{ field: `standing-${surface}`, message: `${name}: say how the lengths stand` }];
      return standing === 'signed' && !signedBy.trim()
        ? [{ field: `signed-${surface}`, message: `${name}: enter who measured` }]
        : [];
    }),
  ];
}

const lineFaults = ({ id, what, words, length, count, weight, price }: LineTyped): FieldErrors => [
  ...(
    [
      ['weight', weight, 'pounds'],
      ['price', price, 'dollars'],
    ] as const
  ).flatMap(([field, text, unit]) =>
    text.trim() && !(Number(decimal(text) ?? -1) >= 0)
      ? [{ field: `${field}-${id}`, message: `Line ${id}: enter ${unit} in digits, like 252.5` }]
      : [],
  ),
  ...(words.trim() ? [] : [{ field: `words-${id}`, message: `Line ${id}: say what it is` }]),
  ...(what === 'panel' && !length.trim()
    ? [{ field: `length-${id}`, message: `Line ${id}: enter the length of a piece in inches` }]
    : []),
  ...(length.trim() && !(Number(decimal(length) ?? 0) > 0)
    ? [{ field: `length-${id}`, message: `Line ${id}: enter inches in digits, like 252.5` }]
    : []),
  ...(/^[1-9]\d{0,5}$/.test(count.trim())
    ? []
    : [{ field: `count-${id}`, message: `Line ${id}: enter how many` }]),
];

export const orderCommand = (order: string, typed: OrderTyped): IssueOrder => ({
  type: 'issue-order',
  order,
  supplier: typed.supplier.trim(),
  date: parseDay(typed.date) ?? '',
  lines: typed.lines.map(lineOf),
  lengths: typed.lengths.map(({ surface, by, standing, signedBy }) => ({
    surface,
    by: by as 'entered',
    standing: standing as 'signed',
    ...(standing === 'signed' ? { signed_by: signedBy.trim() } : {}),
  })),
  ...(typed.landing.trim() ? { landing_place: typed.landing.trim() } : {}),
  ...(parseDay(typed.delivery) ? { delivery: parseDay(typed.delivery) } : {}),
});

const lineOf = ({
  id,
  surface,
  what,
  words,
  length,
  count,
  weight,
  price,
}: LineTyped): OrderLine => ({
  id,
  surface: surface || null,
  what: what as 'panel',
  words: words.trim(),
  count: Number(count),
  ...(length.trim() ? { length: { v: decimal(length) ?? '', u: 'in' as const } } : {}),
  ...(weight.trim() ? { weight: { v: decimal(weight) ?? '', u: 'lb' as const } } : {}),
  ...(price.trim() ? { price: { v: decimal(price) ?? '', u: 'usd' as const } } : {}),
});

/** The rules are asked from the start: lines and lengths that are not complete are left out, and one
 * spare stands in where no line is complete yet. */
export function askedOrder(order: string, typed: OrderTyped): IssueOrder {
  const lines = typed.lines.filter((line) => lineFaults(line).length === 0);
  const command = orderCommand(order, {
    ...typed,
    supplier: typed.supplier.trim() || 'not given yet',
    date: parseDay(typed.date) ? typed.date : today(),
    lines,
    lengths: typed.lengths.filter(
      ({ standing, signedBy }) => standing && (standing !== 'signed' || signedBy.trim()),
    ),
  });
  return lines.length > 0
    ? command
    : {
        ...command,
        lines: [{ id: 'none-yet', surface: null, what: 'spare', words: 'No line yet', count: 1 }],
      };
}
