// The tables of an order: cut list, other lines, totals by sheet and by stock length.

import { feetInches } from '#drawings';
import type { OrderedSurface, OrderLine, OrderPaper } from '#jobs';
import { column, numbers, type PrintTable } from './print.js';
import { sumOf, times } from './sums.js';
import { spaced } from './words.js';

/** Marks are lower-case ids in the record, and read as capitals on drawings and papers alike. */
export const lineMark = (id: string): string => id.toUpperCase();
const lengthWords = ({ length }: OrderLine): string =>
  length ? feetInches(Number(length.v)) : '–';
const weightWords = ({ weight }: OrderLine): string => (weight ? `${weight.v} lb` : '–');
const priceWords = ({ price }: OrderLine): string => (price ? `$ ${price.v}` : '–');

export const cutTable = (surface: OrderedSurface, panels: readonly OrderLine[]): PrintTable => ({
  caption: `Cut list, ${surface.name}`,
  columns: [
    column('Piece'),
    column('Panel', 1),
    numbers('Count'),
    numbers('Length'),
    numbers('In inches'),
    numbers('Weight'),
    numbers('Price'),
  ],
  rows: panels.map((line) => [
    lineMark(line.id),
    line.words,
    String(line.count),
    lengthWords(line),
    line.length ? `${line.length.v} in` : 'none',
    weightWords(line),
    priceWords(line),
  ]),
});

export const lineTable = (caption: string, lines: readonly OrderLine[]): PrintTable => ({
  caption,
  columns: [
    column('Line'),
    column('Kind'),
    column('What', 1),
    numbers('Count'),
    numbers('Length'),
    numbers('Weight'),
    numbers('Price'),
  ],
  rows: lines.map((line) => [
    lineMark(line.id),
    spaced(line.what),
    line.words,
    String(line.count),
    lengthWords(line),
    weightWords(line),
    priceWords(line),
  ]),
});

export function totalTables(order: OrderPaper): readonly PrintTable[] {
  return [bySheet(order), byStockLength(order), overAll(order)].filter(
    ({ rows }) => rows.length > 0,
  );
}

interface Group {
  readonly name: string;
  readonly lines: readonly OrderLine[];
}

function grouped(
  lines: readonly OrderLine[],
  nameOf: (line: OrderLine) => string,
): readonly Group[] {
  const names = [...new Set(lines.map(nameOf))];
  return names.map((name) => ({ name, lines: lines.filter((line) => nameOf(line) === name) }));
}

function bySheet({ lines, surfaces }: OrderPaper): PrintTable {
  const sheetOf = (line: OrderLine): string => {
    const surface = surfaces.find((each) => each.surface === line.surface);
    if (!surface) return 'no one surface';
    const gauge = surface.gauge === null ? '' : `${surface.gauge} gauge, `;
    return `${surface.profile}, ${gauge}${surface.thickness_in} in ${surface.metal}, ${surface.grade}, ${surface.color ?? spaced(surface.color_group)}`;
  };
  const panels = lines.filter(({ what }) => what === 'panel');
  return {
    caption: 'Panels by sheet',
    columns: [column('Sheet', 1), numbers('Pieces'), numbers('Length in all'), numbers('Weight')],
    rows: grouped(panels, sheetOf).map(({ name, lines: each }) => [
      name,
      String(pieces(each)),
      lengthInAll(each),
      weightInAll(each),
    ]),
  };
}

function byStockLength({ lines }: OrderPaper): PrintTable {
  const stock = lines.filter(
    ({ what, length }) => what !== 'panel' && what !== 'spare' && length !== undefined,
  );
  return {
    caption: 'Stock lengths',
    columns: [
      column('What', 1),
      numbers('Stock length'),
      numbers('Pieces'),
      numbers('Length in all'),
      numbers('Weight'),
    ],
    rows: grouped(stock, (line) => `${line.words} ${line.length?.v}`).map(({ lines: each }) => {
      const [first] = each;
      return first
        ? [
            first.words,
            lengthWords(first),
            String(pieces(each)),
            lengthInAll(each),
            weightInAll(each),
          ]
        : [];
    }),
  };
}

function overAll({ lines }: OrderPaper): PrintTable {
  const priced = lines.filter(({ price }) => price !== undefined);
  const open = lines.length - priced.length;
  const price = sumOf(priced.map((line) => line.price?.v ?? '0'));
  return {
    caption: 'In all',
    columns: [column('What', 1), numbers('Sum'), column('Of', 1)],
    rows: [
      ['Lines', String(lines.length), 'this order'],
      ['Weight', weightInAll(lines), 'lines that state one'],
      [
        'Price',
        priced.length === 0 ? 'not stated' : `$ ${price}`,
        open === 0 ? 'every line' : `${priced.length} lines; ${open} without a price`,
      ],
    ],
  };
}

const pieces = (lines: readonly OrderLine[]): number =>
  lines.reduce((sum, { count }) => sum + count, 0);

function lengthInAll(lines: readonly OrderLine[]): string {
  const inches = sumOf(lines.map(({ count, length }) => times(count, length?.v ?? '0')));
  return feetInches(Number(inches));
}

function weightInAll(lines: readonly OrderLine[]): string {
  const stated = lines.filter(({ weight }) => weight !== undefined);
  return stated.length === 0
    ? 'not stated'
    : `${sumOf(stated.map(({ weight }) => weight?.v ?? '0'))} lb`;
}
