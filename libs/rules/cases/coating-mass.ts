// Cases of the rules on coating mass, terms, reflectance and bends.

import type { COATING_MASS_RULES } from '../coating-mass.js';
import type { RuleCases } from './rule-cases.js';

const roof = { kind: 'roof' } as const;
const painted = {
  metal: 'steel',
  paint_system: 'PVDF',
  water: 'breaking-surf',
  warranty_water_distance_ft: 1500,
} as const;
const dark = { ...roof, paint_system: 'PVDF', color_group: 'dark' } as const;

export const COATING_MASS_CASES = {
  'COAT-04': {
    passes: [{ ...painted, water_distance_ft: 1501 }],
    refuses: [
      { ...painted, water_distance_ft: 1500 },
      { ...painted, paint_system: 'bare', water: 'brackish', water_distance_ft: 200 },
      { ...painted, water: 'bay', water_distance_ft: 200 },
    ],
    notApplicable: [
      { ...painted, metal: 'aluminum', water_distance_ft: 200 },
      { ...painted, water: 'none' },
      { ...painted, paint_system: 'bare', water_distance_ft: 200 },
    ],
    unknown: [
      { metal: 'steel' },
      { paint_system: 'SMP' },
      { metal: 'steel', paint_system: 'SMP' },
      { ...painted },
      { ...painted, warranty_water_distance_ft: undefined, water_distance_ft: 200 },
    ],
  },
  'COAT-05': {
    passes: [
      { metallic_coating: 'AZ55', paint_system: 'bare' },
      { metallic_coating: 'AZ50', paint_system: 'SMP' },
    ],
    refuses: [{ metallic_coating: 'AZ50', paint_system: 'bare' }],
    notApplicable: [{ metallic_coating: 'G90', paint_system: 'bare' }],
    unknown: [{ metallic_coating: 'AZ50' }, { paint_system: 'bare' }],
  },
  'COAT-06': {
    passes: [
      { ...roof, metal: 'steel', metallic_coating: 'G90' },
      { ...roof, metal: 'steel', metallic_coating: 'AZ50' },
    ],
    refuses: [
      { ...roof, metal: 'steel', metallic_coating: 'G60' },
      { kind: 'canopy', metal: 'steel', metallic_coating: 'none' },
    ],
    notApplicable: [
      { kind: 'wall', metal: 'steel', metallic_coating: 'G60' },
      { ...roof, metal: 'aluminum', metallic_coating: 'none' },
    ],
    unknown: [{ kind: 'roof' }, { metal: 'steel' }, { ...roof, metal: 'steel' }],
  },
  'COAT-07': {
    passes: [{ paint_system: 'SMP', asked_term_years: 30, finish_term_years: 30 }],
    refuses: [{ paint_system: 'SMP', asked_term_years: 35, finish_term_years: 30 }],
    notApplicable: [
      { paint_system: 'bare', asked_term_years: 30 },
      { paint_system: 'SMP', finish_term_years: 30 },
    ],
    unknown: [{ asked_term_years: 30 }, { paint_system: 'SMP', asked_term_years: 30 }],
  },
  'COAT-12': {
    passes: [{ ...dark, reflectance_shown: true }],
    refuses: [
      { ...dark, reflectance_shown: false },
      { ...dark, paint_system: 'bare', color_group: 'mill', reflectance_shown: false },
      { ...dark, color_group: 'white', cool_roof_asked: true, reflectance_shown: false },
    ],
    notApplicable: [
      { ...dark, kind: 'wall' },
      { ...dark, color_group: 'white', cool_roof_asked: false },
    ],
    unknown: [{ kind: 'roof' }, { paint_system: 'bare' }, { ...dark }],
  },
  'COAT-13': {
    passes: [{ metallic_coating: 'AZ55', trim_bend_radius_t: 2 }],
    refuses: [{ metallic_coating: 'AZ50', trim_bend_radius_t: 1.5 }],
    notApplicable: [{ metallic_coating: 'G90', trim_bend_radius_t: 0 }],
    unknown: [{ trim_bend_radius_t: 1 }, { metallic_coating: 'AZ55' }],
  },
} satisfies Record<(typeof COATING_MASS_RULES)[number]['id'], RuleCases>;
