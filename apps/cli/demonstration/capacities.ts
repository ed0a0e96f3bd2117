// Load charts and tested assemblies of the demonstration's catalogue, calculated from the invented
// figures of its tables. The arithmetic gives them a likely shape; it is no method of design.

import { CHARTS, TESTS } from './capacities.table.js';
import { invented } from './invented.js';
import { profileRow, sheetOf, sheetsOf, type Sheet } from './offers.js';
import { amount } from './steps.js';
import { words } from './text-table.js';

type ChartRow = (typeof CHARTS)[number];
type TestRow = (typeof TESTS)[number];

const SPANS = ['1', '2', '3+'] as const;
/** How much more stiffness a second, and a third span give. */
const STIFFER = { '1': 1, '2': 2.411, '3+': 1.887 } as const;
const STEP = 6;

export function charts() {
  return CHARTS.flatMap((row) =>
    sheetsOf(row.profile).flatMap((sheet) =>
      SPANS.map((spans) => ({
        id: `${row.profile}-${sheet.id}-${spans === '3+' ? '3' : spans}`,
        profile: row.profile,
        spans,
        ...sheetOf(sheet),
        width: amount(profileRow(row.profile).widths, 'in'),
        basis: 'ASD',
        deflection_limit: 'L/180',
        attachment_included: false,
        interpolation: false,
        rows: chartRows(row, sheet, spans),
        source: invented(`Load charts of ${row.profile}`),
      })),
    ),
  );
}

function chartRows(row: ChartRow, sheet: Sheet, spans: (typeof SPANS)[number]) {
  const strength = Number(sheet.thickness) ** 1.15 * Number(sheet.yield);
  // Over an inner support the panel bends the other way, so the weaker side changes places.
  const [inward, outward] = spans === '1' ? [row.inward, row.outward] : [row.outward, row.inward];
  const more = spans === '3+' ? 1.25 : 1;
  const stiffness =
    Number(row.deflection) * Number(sheet.thickness) * Number(sheet.stiff) * STIFFER[spans];
  const count = (Number(row.to) - Number(row.from)) / STEP + 1;
  return Array.from({ length: count }, (_, i) => Number(row.from) + i * STEP).map((span) => {
    const load = (shape: string) => ((Number(shape) * strength * more) / span ** 2).toFixed(1);
    return {
      span: amount(span, 'in'),
      inward: amount(load(inward), 'psf'),
      outward: amount(load(outward), 'psf'),
      deflection: amount((stiffness / span ** 3).toFixed(1), 'psf'),
    };
  });
}

export function assemblies() {
  return TESTS.flatMap((row) => {
    const sheets = sheetsOf(row.profile).filter(({ metal }) => metal === row.metal);
    const widths = words(profileRow(row.profile).widths);
    const each = widths.flatMap((width) =>
      sheets.flatMap((sheet) => words(row.tested).map((tested) => ({ width, sheet, tested }))),
    );
    return each.map(({ width, sheet, tested }, i) =>
      assembly(
        row,
        `INV-${Number(row.first) + i}`,
        sheet,
        width,
        tested,
        Number(widths[0]) / Number(width),
      ),
    );
  });
}

/** A wider panel hangs more load on each clip: what it holds falls by the ratio of the widths. */
function assembly(
  row: TestRow,
  number: string,
  sheet: Sheet,
  width: string,
  tested: string,
  share: number,
) {
  const [spacing = '', uplift = ''] = tested.split(':');
  const hail = row.hail !== '' && Number(sheet.gauge) <= 24;
  return {
    id: number.toLowerCase(),
    number,
    profile: row.profile,
    metal: sheet.metal,
    thickness: amount(sheet.thickness, 'in'),
    width: amount(width, 'in'),
    fastener: row.fastener,
    substrates: words(row.on),
    attachment_spacing: amount(spacing, 'in'),
    ...(row.deck === ''
      ? { support_spacing: amount(spacing, 'in') }
      : { deck_thickness: amount(row.deck, 'in') }),
    outward: amount(toHalf(Number(uplift) * Number(sheet.uplift) * share), 'psf'),
    inward: amount(Math.round(Number(row.inward) * Number(sheet.uplift) ** 0.4), 'psf'),
    basis: 'ASD',
    standard: 'invented test',
    ...(hail ? { hail_class: Number(row.hail) } : {}),
    ...(row.expires === '' ? {} : { expires: row.expires }),
    source: invented(`Test report ${number}`),
  };
}

const toHalf = (psf: number): string => (Math.floor(psf * 2) / 2).toFixed(1);
