// The calculator of a load table by gauge and span.

import { calculator, STRUCTURE_CAUTION } from '../calculator.js';
import { refused, result, type Fault } from '../check.js';
import {
  BUILDING_CODES,
  DEFLECTION_LIMITS,
  DEFLECTION_UNCONFIRMED,
} from '../combinations/deflection-limits.table.js';
import { feet, inches } from '../units.js';
import { loadTable, type LoadTableRow, type SpanLoad } from './load-table.js';
import { OUTLINE, outlineOf, squareBends } from './outline-input.js';
import { STEEL_EDITIONS } from './shear.js';
import { steelGrade } from './steel.js';

/** Taken where no bearing is given: a 2x member, the shortest usual support. */
const BEARING_IN = 1.5;

export const loadTableCalculator = calculator({
  name: 'load-table',
  says: 'Allowable uniform loads of a through-fastened panel by gauge and span, calculated',
  input: {
    outline: OUTLINE,
    repeat_in: { kind: 'number', says: 'cover of the outline', unit: 'in', above: 0 },
    gauges: {
      kind: 'list',
      says: 'gauges of the uncoated sheet table',
      least: 1,
      most: 21,
      of: { kind: 'number', says: 'gauge', unit: '', whole: true },
    },
    grade: { kind: 'text', says: 'structural grade: SS 33, SS 50 Class 1, SS 80 …' },
    spans: { kind: 'number', says: 'equal spans', unit: '', whole: true, least: 1, most: 20 },
    span_ft: {
      kind: 'list',
      says: 'spans',
      least: 1,
      most: 100,
      of: { kind: 'number', says: 'span', unit: 'ft', above: 0 },
    },
    deflection: {
      kind: 'number',
      says: 'n of the limit L/n',
      unit: '',
      least: 1,
      optional: true,
    },
    building_code: {
      kind: 'choice',
      of: BUILDING_CODES,
      says: 'instead of deflection: its limit for formed metal sheets (Table 1604.3, from memory)',
      optional: true,
    },
    edition: {
      kind: 'choice',
      of: STEEL_EDITIONS,
      says: 'edition of AISI S100; S100-16 unless given',
      optional: true,
    },
    bearing_in: {
      kind: 'number',
      says: 'bearing length at supports; 1.5 unless given',
      unit: 'in',
      above: 0,
      optional: true,
    },
    fastened: {
      kind: 'flag',
      says: 'fastened to supports at 18 in or closer; taken as not, unless given',
      optional: true,
    },
  },
  either: [['deflection', 'building_code']],
  output: {
    rows: '[{gauge, t_in, span_ft, inward_psf, outward_psf, governs: {inward, outward}, …}]',
    edition: 'edition of AISI S100',
  },
  cautions: [
    STRUCTURE_CAUTION,
    'Never a capacity against uplift of standing seam: only tests count.',
  ],
  run: (input) => {
    const grade = steelGrade(input.grade);
    const { edition = 'S100-16', bearing_in = BEARING_IN, fastened = false } = input;
    if (!grade.ok) return refused(...grade.faults);
    const code = input.building_code;
    const deflection = code ? DEFLECTION_LIMITS[code].panelTotal : input.deflection!;
    const table = loadTable({
      outline: outlineOf(input.outline),
      cover: inches(input.repeat_in),
      gauges: input.gauges,
      grade: grade.value,
      spans: input.spans,
      spanLengths: input.span_ft.map(feet),
      deflection,
      edition,
      bearing: inches(bearing_in),
      fastened,
    });
    if (!table.ok) return refused(...distinct(table.faults));
    const assumed = `AISI ${edition}, bearing ${bearing_in} in, ${fastened ? '' : 'not '}fastened`;
    const notes = [
      ...table.notes,
      ...squareBends(input.outline),
      ...(code ? [DEFLECTION_UNCONFIRMED] : []),
      assumed,
    ];
    return result({ rows: table.value.map(rowOf), edition }, table.steps, notes);
  },
});

/** A fault of the outline itself is told once, not once a gauge and direction. */
function distinct(faults: readonly Fault[]): Fault[] {
  const seen = new Set<string>();
  return faults.filter((f) => {
    const key = `${f.pointer} ${f.message}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

function rowOf(row: LoadTableRow): Record<string, unknown> {
  return {
    gauge: row.gauge,
    t_in: row.t,
    span_ft: row.span,
    inward_psf: row.inward.load,
    outward_psf: row.outward.load,
    governs: { inward: row.inward.governs, outward: row.outward.governs },
    ...parts('inward', row.inward),
    ...parts('outward', row.outward),
  };
}

const parts = (name: string, load: SpanLoad) => ({
  [`${name}_strength_psf`]: load.strength,
  [`${name}_deflection_psf`]: load.deflection,
});
