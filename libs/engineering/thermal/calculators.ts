// The calculators `thermal` and `least-slope`.

import { calculator, STRUCTURE_CAUTION, type Calculator } from '../calculator.js';
import { refused, result, step, TO_BE_CONFIRMED } from '../check.js';
import { fahrenheit, feet } from '../units.js';
import { leastSlope } from './least-slope.js';
import { EXPANSION_CITES, EXPANSION_PER_F, type RoofMetal } from './metals.table.js';
import { thermalMovement } from './movement.js';
import { LEAST_SLOPE_CLAUSE, type PanelFamily } from './roof-code.table.js';

const thermal = calculator({
  name: 'thermal',
  says: 'Thermal movement of a metal panel over its free length',
  input: {
    length_ft: {
      kind: 'number',
      unit: 'ft',
      least: 0,
      says: 'free length from the one fixed line, the whole run across end laps',
    },
    dT_F: {
      kind: 'number',
      unit: '°F',
      least: 0,
      most: 400,
      says: 'temperature difference; against a heated frame, panel minus frame',
    },
    material: {
      kind: 'choice',
      of: ['steel', 'stainless', 'copper', 'aluminum', 'aluminium', 'zinc'],
      says: 'metal of the panel',
    },
  },
  output: { movement_in: 'change of length over the range' },
  cautions: ['A clip system allows the movement its maker states; one line alone may be fixed.'],
  run: ({ length_ft, dT_F, material }) => {
    const metal: RoofMetal = material === 'aluminium' ? 'aluminum' : material;
    const movement = thermalMovement(metal, feet(length_ft), fahrenheit(dT_F));
    const source = metal === 'steel' ? EXPANSION_CITES.steel : EXPANSION_CITES.others;
    return result(
      { movement_in: movement },
      [
        step('alpha', EXPANSION_PER_F[metal], '1/°F', `expansion of ${metal}`, source),
        step('dL', movement, 'in', 'alpha L dT', EXPANSION_CITES.steel),
      ],
      metal === 'stainless' ? [`expansion of stainless is from memory; ${TO_BE_CONFIRMED}`] : [],
    );
  },
});

/** The code's own groups, and the panel families of a catalogue that fall under them. */
const FAMILIES = {
  lapped: 'lapped',
  corrugated: 'lapped',
  ribbed: 'lapped',
  'deep-rib': 'lapped',
  'standing-seam': 'standing-seam',
  'metal-shingles': 'metal-shingles',
  'metal-shingle': 'metal-shingles',
} as const satisfies Record<string, PanelFamily>;
type NamedFamily = keyof typeof FAMILIES;

const slope = calculator({
  name: 'least-slope',
  says: 'The least slope the code allows a metal roof covering',
  input: {
    panel_family: {
      kind: 'choice',
      of: Object.keys(FAMILIES) as readonly NamedFamily[],
      says: 'lapped: exposed fasteners, laps not soldered (corrugated, ribbed, deep-rib)',
    },
    sealed: {
      kind: 'flag',
      optional: true,
      says: 'sealant applied in the laps; needed for lapped panels alone',
    },
  },
  output: { min_rise_per_12: 'least rise in 12; the value itself is allowed' },
  cautions: [STRUCTURE_CAUTION, "The profile's listing and the warranty may ask for more."],
  run: ({ panel_family, sealed }) => {
    const family = FAMILIES[panel_family];
    if (family === 'lapped' && sealed === undefined) {
      return refused({ pointer: '/sealed', message: 'is missing: lapped panels go by it' });
    }
    const rise = leastSlope(family, sealed ?? false);
    const name = family === 'lapped' && sealed ? 'lapped with lap sealant' : family;
    return result({ min_rise_per_12: rise }, [
      step('least rise', rise, 'in 12', name, LEAST_SLOPE_CLAUSE[family]),
    ]);
  },
});

export const thermalCalculators: readonly Calculator[] = [thermal, slope];
