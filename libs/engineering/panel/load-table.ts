// A calculated load table: allowable uniform loads by gauge and span, to stand beside an imported
// chart. Through-fastened panels in bending only; never for uplift of standing seam.

import { refused, result, TO_BE_CONFIRMED, type Fault, type Outcome, type Step } from '../check.js';
import { inches, type Feet, type Inches, type Psf } from '../units.js';
import { beamCoefficients } from './beam.js';
import { sheetThickness } from './gauge.js';
import type { OutlinePoint } from './corners.js';
import { panelStrength, type PanelStrength } from './panel.js';
import type { SteelEdition } from './shear.js';
import { governing, spanLimits, strengthSteps, type LoadDirection } from './span-limits.js';
import { designStresses, E_STEEL, type SteelGrade } from './steel.js';

export interface LoadTableRequest {
  readonly outline: readonly OutlinePoint[];
  readonly cover: Inches;
  /** Gauges of the uncoated table: base steel. */
  readonly gauges: readonly number[];
  readonly grade: SteelGrade;
  readonly spans: number;
  readonly spanLengths: readonly Feet[];
  /** n of L/n. */
  readonly deflection: number;
  readonly edition: SteelEdition;
  readonly bearing: Inches;
  readonly fastened: boolean;
}

export interface SpanLoad {
  readonly load: Psf;
  readonly governs: string;
  readonly strength: Psf;
  readonly deflection: Psf;
}

export interface LoadTableRow {
  readonly gauge: number;
  readonly t: Inches;
  readonly span: Feet;
  readonly inward: SpanLoad;
  readonly outward: SpanLoad;
}

/**
 * Allowable loads (ASD, psf, magnitudes) for every gauge and span. A gauge that cannot be
 * calculated refuses the whole table, named by its place in `gauges`.
 */
export function loadTable(request: LoadTableRequest): Outcome<readonly LoadTableRow[]> {
  const rows: LoadTableRow[] = [];
  const faults: Fault[] = [];
  const steps: Step[] = [];
  const notes = new Set(TABLE_NOTES);
  const beam = beamCoefficients(request.spans);
  request.gauges.forEach((gauge, i) => {
    const strength = gaugeStrength(request, gauge);
    if (!strength.ok) {
      for (const f of strength.faults) {
        faults.push({ pointer: `/gauges/${i}`, message: `gauge ${gauge}: ${f.message}` });
      }
      return;
    }
    const { value } = strength;
    steps.push(...strengthSteps(value));
    if (typeof value.crippling === 'string') notes.add(`not evaluated: ${value.crippling}`);
    for (const span of request.spanLengths) {
      const load = (direction: LoadDirection): SpanLoad => {
        const limits = spanLimits(value, beam, span, direction, request.deflection);
        const strengths = limits.filter((l) => l.kind === 'strength');
        const least = governing(limits);
        return {
          load: least.load,
          governs: least.limitState,
          strength: governing(strengths).load,
          deflection: governing(limits.filter((l) => l.kind === 'deflection')).load,
        };
      };
      const t = value.panel.t;
      rows.push({ gauge, t, span, inward: load('inward'), outward: load('outward') });
    }
  });
  return faults.length > 0 ? refused(...faults) : result(rows, steps, [...notes]);
}

/** Strength of the panel in one gauge, from base thickness and design stresses. */
export function gaugeStrength(request: LoadTableRequest, gauge: number): Outcome<PanelStrength> {
  const sheet = sheetThickness(gauge, 'msg');
  if (!sheet.ok) return sheet;
  const { outline, cover, edition, bearing, fastened, grade } = request;
  return panelStrength({
    outline,
    cover,
    t: inches(sheet.value.t),
    Fy: designStresses(grade).Fy,
    E: E_STEEL,
    edition,
    bearing,
    fastened,
  });
}

const TABLE_NOTES = [
  'total uniform load on the panel, its own weight included; attachment is checked apart',
  'bending of a through-fastened panel; never a capacity against uplift of standing seam',
  'deflection uses the effective section at 0.6 F_y',
  `bending and web crippling (H3) always applied, the stricter reading: ${TO_BE_CONFIRMED}`,
];
