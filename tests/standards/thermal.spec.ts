// Thermal movement, least slopes and fastener metals against outside values, each with its source.

import { describe, expect, test } from '@jest/globals';
import type { Calculator } from '../../libs/engineering/calculator.js';
import { thermalCalculators } from '../../libs/engineering/thermal/calculators.js';
import { leastSlope, slopeAllowed } from '../../libs/engineering/thermal/least-slope.js';
import * as metals from '../../libs/engineering/thermal/metals.table.js';
import { expansion } from '../../libs/engineering/thermal/movement.js';
import * as code from '../../libs/engineering/thermal/roof-code.table.js';
import { fahrenheit, feet, per12 } from '../../libs/engineering/units.js';
import { readCases, runCases, type StandardCase } from './cases.js';

type Values = Record<string, unknown>;

interface Inputs {
  readonly metal?: string;
  readonly L_ft: number;
  readonly dT_F: number;
  readonly panel: string;
  readonly panel_family: string;
  readonly slope_rise_in12: number;
}

const [thermal, least] = thermalCalculators as [Calculator, Calculator];

/** A calculator's output, or the test fails with its faults. */
function ask(calculator: Calculator, input: Values): Values {
  const made = calculator.calculate(input);
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return made.value;
}

const thermalOutput = (i: Inputs): Values => ({
  dL_in: ask(thermal, {
    length_ft: i.L_ft,
    dT_F: i.dT_F,
    material: i.metal ?? 'steel',
  })['movement_in'],
});

const FAMILIES: Record<string, { panel_family: code.PanelFamily; sealed: boolean }> = {
  'standing seam': { panel_family: 'standing-seam', sealed: false },
  'lapped with sealant': { panel_family: 'lapped', sealed: true },
  'lapped no sealant': { panel_family: 'lapped', sealed: false },
  'lapped, nonsoldered seam, no lap sealant': { panel_family: 'lapped', sealed: false },
  'lapped, nonsoldered seam, with applied lap sealant': { panel_family: 'lapped', sealed: true },
  'metal roof shingles': { panel_family: 'metal-shingles', sealed: false },
};
const familyOf = (name: string): { panel_family: code.PanelFamily; sealed: boolean } => {
  const found = FAMILIES[name];
  if (found === undefined) throw new Error(`no family for ${name}`);
  return found;
};
const leastSlopeOutput = (i: Inputs): Values => {
  const rise = ask(least, familyOf(i.panel_family))['min_rise_per_12'] as number;
  return { min_rise_per_12: rise, min_slope_pct: Math.round((rise / 12) * 100) };
};

const BY_ID: Record<string, (i: Inputs) => Values> = {
  'thermal-nrca-2': (i) => {
    const { alpha_in_per_ft_F } = i as unknown as { alpha_in_per_ft_F: number };
    return { dL_in: expansion(alpha_in_per_ft_F / 12, feet(i.L_ft), fahrenheit(i.dT_F)) };
  },
  'thermal-coef-nrca': () => ({
    alpha_per_F: metals.EXPANSION_PER_F.steel,
    alpha_per_C: metals.EXPANSION_PER_C.steel,
  }),
  'thermal-coef-magazine': () => ({
    steel_per_C: metals.EXPANSION_PER_C.steel,
    concrete_per_C: metals.EXPANSION_PER_C.concrete,
    glass_per_C: metals.EXPANSION_PER_C.glass,
    wood_parallel_min_per_C: metals.EXPANSION_PER_C.woodAlongGrainLeast,
    wood_parallel_max_per_C: metals.EXPANSION_PER_C.woodAlongGrainMost,
    unpainted_roof_at_90F_sun_F: metals.SUNLIT_ROOF_AT_90F_F,
  }),
};

const BY_TOPIC: Record<string, (i: Inputs) => Values> = {
  'thermal movement': thermalOutput,
  'design temperature range': () => ({ dT_F: metals.CLIP_DESIGN_RANGE_F }),
  'minimum slope table': () => ({
    standing_seam_in12: leastSlope('standing-seam', false),
    lapped_nonsoldered_with_sealant_in12: leastSlope('lapped', true),
    lapped_nonsoldered_no_sealant_in12: leastSlope('lapped', false),
    metal_shingles_in12: leastSlope('metal-shingles', false),
  }),
  'minimum slope check': (i) => {
    const { panel_family, sealed } = familyOf(i.panel);
    return { allowed: slopeAllowed(panel_family, sealed, per12(i.slope_rise_in12)) };
  },
  'fastener metal by roof metal': () => ({
    steel_roof: code.CODE_FASTENER_METALS.steelRoof,
    copper_roof: code.CODE_FASTENER_METALS.copperRoof,
    any_metal: code.CODE_FASTENER_METALS.anyMetal,
    aluminum_roof_on_aluminum_supports: code.CODE_FASTENER_METALS.aluminumRoofOnAluminum,
  }),
  'minimum roof slope by panel family': leastSlopeOutput,
  'minimum roof slope, metal shingles': leastSlopeOutput,
};

const cases = readCases('thermal');
const evaluatorOf = (c: StandardCase) => BY_ID[c.id] ?? BY_TOPIC[c.topic];

describe('thermal movement and least slopes against outside values', () => {
  test('every case of the file is run', () => {
    expect(cases).toHaveLength(17);
    expect(new Set(cases.map((c) => c.id)).size).toBe(17);
    expect(cases.filter((c) => evaluatorOf(c) === undefined).map((c) => c.id)).toEqual([]);
  });

  runCases(cases, (c) => evaluatorOf(c)?.(c.inputs as unknown as Inputs) ?? {});
});
