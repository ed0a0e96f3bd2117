// An invented catalogue for tests: three profiles, a handful of rows, charts and tests with round
// numbers, so that every utilization can be checked by hand. No maker's data.

import type { Catalogue, LoadChart, MadeRow } from './contract/catalogue.js';

const v = <U extends string>(value: string, u: U) => ({ v: value, u });
const invented = (document: string) => ({ document, edition: 'edition 1', date: '2026-01-15', invented: true });

const rib = (thickness: string, gauge: string, price: string, rest: Partial<MadeRow> = {}): MadeRow => ({
  profile: 'rib-36', width: v('36', 'in'), metal: 'steel', thickness: v(thickness, 'in'), gauge, gauge_table: 'galvanized',
  grade: 'SS 80', metallic_coating: 'AZ50', paint_system: 'SMP',
  color_groups: ['white', 'light', 'earth-tone', 'dark'], status: 'stock', lead_days: 7, price: v(price, 'usd/square'), ...rest,
});
const seam = (thickness: string, gauge: string, price: string, rest: Partial<MadeRow> = {}): MadeRow => ({
  profile: 'seam-16', width: v('16', 'in'), metal: 'steel', thickness: v(thickness, 'in'), gauge, gauge_table: 'galvanized',
  grade: 'SS 50 Class 1', metallic_coating: 'AZ50', paint_system: 'PVDF',
  color_groups: ['white', 'light', 'earth-tone', 'bright', 'dark', 'metallic'], status: 'stock', lead_days: 10, price: v(price, 'usd/square'), ...rest,
});

const chart = (id: string, thickness: string, gauge: string, spans: LoadChart['spans'], rows: readonly [string, string, string, string][]): LoadChart => ({
  id, profile: 'rib-36', width: v('36', 'in'), metal: 'steel', grade: 'SS 80', thickness: v(thickness, 'in'), gauge, spans, basis: 'ASD',
  deflection_limit: 'L/180', attachment_included: false, interpolation: false,
  rows: rows.map(([span, inward, outward, deflection]) => ({ span: v(span, 'in'), inward: v(inward, 'psf'), outward: v(outward, 'psf'), deflection: v(deflection, 'psf') })),
  source: invented(`invented chart ${id}`),
});

const SPANS_3: Readonly<Record<string, readonly [string, string, string, string][]>> = {
  '0.0236': [['24', '160', '150', '240'], ['36', '72', '68', '90'], ['48', '40', '38', '40'], ['60', '26', '24', '20']],
  '0.0187': [['24', '120', '112', '190'], ['36', '54', '50', '66'], ['48', '30', '28', '28'], ['60', '19', '18', '14']],
  '0.0142': [['24', '80', '74', '140'], ['36', '36', '33', '45'], ['48', '20', '18', '19']],
};

const GAUGE: Readonly<Record<string, string>> = { '0.0236': '24', '0.0187': '26', '0.0142': '29' };

export const SAMPLE_CATALOGUE: Catalogue = {
  edition: 1,
  in_force_from: '2026-01-01',
  summary: 'Invented for tests.',
  invented: true,
  profiles: [
    {
      id: 'rib-36', name: 'Ribbed 36', family: 'ribbed', fastening: 'exposed', seam: 'screw-down', structural: true,
      least_slope: v('1', 'per-12'), widths: [v('36', 'in')], rib_height: v('0.75', 'in'), rib_pitch: v('9', 'in'),
      flat_width: v('7', 'in'), striated: true, longest_piece: v('40', 'ft'), developed_width: v('43', 'in'),
    },
    {
      id: 'seam-16', name: 'Snap seam 16', family: 'standing-seam', fastening: 'concealed', seam: 'snap-lock', structural: false,
      least_slope: v('3', 'per-12'), widths: [v('16', 'in')], rib_height: v('1.75', 'in'), flat_width: v('16', 'in'), striated: true,
      longest_piece: v('45', 'ft'), developed_width: v('20', 'in'),
    },
    {
      id: 'deep-30', name: 'Deep rib 30', family: 'deep-rib', fastening: 'exposed', seam: 'screw-down', structural: true,
      least_slope: v('0.5', 'per-12'), widths: [v('30', 'in')], rib_height: v('1.5', 'in'), rib_pitch: v('7.5', 'in'),
      flat_width: v('4', 'in'), striated: false, longest_piece: v('50', 'ft'),
    },
  ],
  made: [
    rib('0.0236', '24', '260.00', { status: 'special-run', lead_days: 28 }),
    rib('0.0187', '26', '195.00'),
    rib('0.0142', '29', '170.00'),
    seam('0.0296', '22', '420.00', { status: 'special-run', lead_days: 35, least_order: v('30', 'squares') }),
    seam('0.0236', '24', '340.00'),
    seam('0.0187', '26', '270.00', { color_groups: ['white', 'light'] }),
    { ...rib('0.0236', '24', '300.00'), profile: 'deep-30', width: v('30', 'in'), grade: 'SS 50 Class 1', paint_system: 'PVDF' },
  ],
  charts: [
    ...Object.entries(SPANS_3).map(([t, rows]) => chart(`R${GAUGE[t]}-3`, t, GAUGE[t] ?? '', '3+', rows)),
  ],
  assemblies: [
    {
      id: 't-101', number: 'T-101', profile: 'seam-16', width: v('16', 'in'), metal: 'steel', thickness: v('0.0236', 'in'),
      substrates: ['plywood', 'osb'], fastener: 'clip-s', attachment_spacing: v('24', 'in'), deck_thickness: v('0.5', 'in'),
      outward: v('90', 'psf'), basis: 'ultimate', safety_factor: '2', standard: 'invented test', expires: '2028-12-31', source: invented('invented report T-101'),
    },
    {
      id: 't-102', number: 'T-102', profile: 'seam-16', width: v('16', 'in'), metal: 'steel', thickness: v('0.0236', 'in'),
      substrates: ['plywood', 'osb'], fastener: 'clip-s', attachment_spacing: v('12', 'in'), deck_thickness: v('0.5', 'in'),
      outward: v('80', 'psf'), basis: 'ASD', standard: 'invented test', expires: '2028-12-31', source: invented('invented report T-102'),
    },
  ],
  fasteners: [
    { id: 'clip-s', name: 'Sliding clip', kind: 'clip', clip_movement: 'floating', metal: 'galvanized' },
    {
      id: 'screw-12', name: 'Screw #12 with washer', kind: 'screw', metal: 'galvanized', diameter: v('0.216', 'in'), washer_diameter: v('0.5', 'in'),
      tested: [{ into: 'purlins', least_thickness: v('0.06', 'in'), allowable: v('300', 'lb'), source: invented('invented screw test') }],
    },
    { id: 'screw-14', name: 'Screw #14 with washer', kind: 'screw', metal: 'galvanized', diameter: v('0.242', 'in'), washer_diameter: v('0.625', 'in') },
  ],
  terms: [
    { metal: 'steel', metallic_coating: 'AZ50', paint_system: 'SMP', color_group: 'earth-tone', finish_years: 30, document: 'invented finish warranty A', fade: { limit: '7', scale: 'Hunter', years: 25 } },
    { metal: 'steel', metallic_coating: 'AZ50', paint_system: 'PVDF', color_group: 'dark', finish_years: 35, document: 'invented finish warranty B', water_distance: v('1500', 'ft'), fade: { limit: '5', scale: 'Hunter', years: 30 } },
    { metal: 'steel', metallic_coating: 'AZ50', paint_system: 'PVDF', color_group: 'light', finish_years: 35, document: 'invented finish warranty B', water_distance: v('1500', 'ft') },
  ],
};
