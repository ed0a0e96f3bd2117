// Sheet thickness and weight by gauge. A gauge number means nothing without its table: coated,
// uncoated and statutory thickness differ. Strength uses base steel, without coating.

import { refused, result, step, TO_BE_CONFIRMED, type Outcome } from '../check.js';
import { cite, type Citation } from '../sources.js';
import { inches, psf, type Inches, type Psf, type Quantity } from '../units.js';
import { GALVANIZED, MSG, USC206_OUNCES, USC206_READ_TO } from './gauge.table.js';

export type GaugeTableName = 'msg' | 'galvanized' | 'usc206';
export const GAUGE_TABLE_NAMES = ['msg', 'galvanized', 'usc206'] as const;

export interface SheetThickness {
  readonly gauge: number;
  readonly table: GaugeTableName;
  readonly t: Inches;
  /** Flat sheet; a formed panel weighs more by developed width over cover. */
  readonly weight: Psf;
  readonly least?: Inches;
  readonly most?: Inches;
}

type PsfPerInch = Quantity<'psf/in'>;

/** Sheet gauge convention for carbon steel sheet (gauge chart). */
export const SHEET_WEIGHT = 41.82 as PsfPerInch;
/** Plate at 489.6 pcf (gauge chart). */
export const PLATE_WEIGHT = 40.8 as PsfPerInch;

const SHEET_CHART: Record<'msg' | 'galvanized', Citation> = {
  msg: cite('gauge-chart', 'uncoated, cold rolled'),
  galvanized: cite('gauge-chart', 'galvanized'),
};
const STATUTE = cite('usc-15-206', 'table');

/**
 * Nominal thickness, weight and tolerance range of a gauge; a gauge not in the table is refused.
 */
export function sheetThickness(gauge: number, table: GaugeTableName): Outcome<SheetThickness> {
  if (table === 'usc206') return statutory(gauge);
  const rows = table === 'msg' ? MSG : GALVANIZED;
  const row = rows[gauge];
  if (row === undefined) return unknownGauge(gauge, table, rows);
  const [t, least, most] = row;
  const weight = sheetWeight(inches(t));
  const source = SHEET_CHART[table];
  const value = {
    gauge,
    table,
    t: inches(t),
    weight,
    ...(least !== undefined && most !== undefined
      ? { least: inches(least), most: inches(most) }
      : {}),
  };
  const steps = [
    step('t', t, 'in', `${table} table, gauge ${gauge}`, source),
    step('w', weight, 'psf', '41.82 t', source),
  ];
  const notes =
    table === 'galvanized'
      ? ['the thickness includes the coating: never use it for strength']
      : ['uncoated base steel; the range is that of cold-rolled sheet'];
  return result(value, steps, notes);
}

function statutory(gauge: number): Outcome<SheetThickness> {
  const ounces = USC206_OUNCES[gauge];
  if (ounces === undefined) return unknownGauge(gauge, 'usc206', USC206_OUNCES);
  const t = inches(ounces / 640);
  const weight = psf(ounces / 16);
  const steps = [
    step('oz', ounces, 'oz/ft2', `table, gauge ${gauge}`, STATUTE),
    step('t', t, 'in', 'oz / 640 (wrought iron, 40 psf per inch)', STATUTE),
    step('w', weight, 'psf', 'oz / 16', STATUTE),
  ];
  const notes = ['statutory thickness of wrought iron: not the thickness of a steel sheet'];
  if (gauge > USC206_READ_TO) notes.push(`row from memory: ${TO_BE_CONFIRMED}`);
  return result({ gauge, table: 'usc206', t, weight }, steps, notes);
}

function unknownGauge(
  gauge: number,
  table: GaugeTableName,
  rows: Readonly<Record<number, unknown>>,
): Outcome<never> {
  const known = Object.keys(rows);
  return refused({
    pointer: '/gauge',
    message: `the ${table} table has no gauge ${gauge}; it has ${known[0]} to ${known.at(-1)}`,
  });
}

/** Weight of flat steel sheet, psf = 41.82 t (gauge chart). */
export function sheetWeight(t: Inches): Psf {
  return psf(SHEET_WEIGHT * t);
}

/** Weight of a formed panel: flat weight times developed width over cover (geometry). */
export function panelWeight(flat: Psf, developedWidth: Inches, cover: Inches): Psf {
  return psf((flat * developedWidth) / cover);
}

/**
 * Design thickness from the minimum delivered base thickness, which may be 95 % of design:
 * t = t_min / 0.95 (AISI S100-16 A3.2/B7.1, from memory).
 */
export function designThickness(leastDelivered: Inches): Inches {
  return inches(leastDelivered / 0.95);
}
