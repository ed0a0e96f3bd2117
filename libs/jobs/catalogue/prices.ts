// A price list laid over what is made: it changes price, upcharge and lead time of rows that are
// there, and names every row that is not.

import type { MadeRow } from '../contract/catalogue.js';
import { Decimal } from '../contract/amounts.js';
import type { Line, SheetFault } from './parts.js';

const COMBINATION = [
  'profile',
  'width_in',
  'metal',
  'thickness_in',
  'grade',
  'metallic_coating',
  'paint_system',
] as const;

export function priced(
  made: readonly MadeRow[],
  lines: readonly Line[],
): { readonly made: readonly MadeRow[]; readonly faults: readonly SheetFault[] } {
  const faults: SheetFault[] = [];
  const rows = new Map(made.map((row) => [keyOfRow(row), row]));
  const prices = new Map<MadeRow, Line>();
  for (const line of lines) {
    faults.push(...cellFaults(line));
    const row = rows.get(keyOfLine(line));
    const at = (column: string, message: string) =>
      faults.push({ sheet: 'prices', row: line.row, column, message });
    if (!row)
      at('profile', 'this combination and these color groups are not made: price only what is');
    else if (prices.has(row))
      at('profile', `row ${prices.get(row)?.row} prices the same combination`);
    else prices.set(row, line);
  }
  return { made: made.map((row) => withPrice(row, prices.get(row))), faults };
}

const sorted = (groups: readonly string[]): string => [...groups].sort().join(' ');
const keyOfLine = ({ cells }: Line): string =>
  [
    ...COMBINATION.map((column) => cells[column]),
    sorted((cells['color_groups'] ?? '').split(/[;\s]+/).filter(Boolean)),
  ].join('|');
const keyOfRow = (row: MadeRow): string =>
  [
    row.profile,
    row.width.v,
    row.metal,
    row.thickness.v,
    row.grade,
    row.metallic_coating,
    row.paint_system,
    sorted(row.color_groups),
  ].join('|');

function cellFaults({ row, cells }: Line): readonly SheetFault[] {
  const fault = (column: string, message: string): SheetFault => ({
    sheet: 'prices',
    row,
    column,
    message,
  });
  const money = ['price_usd', 'upcharge_usd'].filter(
    (column) => cells[column] && !isMoney(cells[column]),
  );
  const days =
    cells['lead_days'] &&
    !(/^\d{1,3}$/.test(cells['lead_days']) && Number(cells['lead_days']) <= 365);
  return [
    ...money.map((column) => fault(column, 'must be a decimal number like 24.8, 0 or more')),
    ...(days ? [fault('lead_days', 'must be whole days, at most 365')] : []),
  ];
}
const isMoney = (cell: string): boolean => Decimal.safeParse(cell).success && Number(cell) >= 0;

function withPrice(row: MadeRow, line: Line | undefined): MadeRow {
  if (!line) return row;
  const { upcharge: _, ...rest } = row;
  const { price_usd = '', upcharge_usd, lead_days } = line.cells;
  return {
    ...rest,
    price: { v: price_usd, u: 'usd/square' },
    ...(upcharge_usd ? { upcharge: { v: upcharge_usd, u: 'usd/square' } } : {}),
    ...(lead_days ? { lead_days: Number(lead_days) } : {}),
  };
}
