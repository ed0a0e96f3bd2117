// Cases of the coating rules.

import type { COATING_RULES } from '../coating.js';
import type { RuleCases } from './rule-cases.js';

const roof = { kind: 'roof' } as const;
const bareBySurf = {
  metal: 'steel',
  paint_system: 'bare',
  water: 'breaking-surf',
  warranty_water_distance_ft: 1500,
} as const;

export const COATING_CASES = {
  'COAT-01': {
    passes: [{ combination: 'stock' }, { combination: 'special-run' }],
    refuses: [{ combination: 'not-made' }, { combination: 'not-stocked' }],
    unknown: [{}],
  },
  'COAT-02': {
    passes: [
      { ...roof, paint_system: 'PVDF', color_group: 'bright' },
      { ...roof, paint_system: 'PVDF' },
      { ...roof, paint_system: 'SMP', color_group: 'white' },
      { ...roof, paint_system: 'polyester', color_group: 'earth-tone' },
    ],
    refuses: [
      { ...roof, paint_system: 'SMP', color_group: 'bright' },
      { kind: 'soffit', paint_system: 'SMP', color_group: 'dark' },
      { kind: 'wall', paint_system: 'polyester', color_group: 'metallic' },
    ],
    notApplicable: [
      { kind: 'liner', paint_system: 'SMP', color_group: 'bright' },
      { kind: 'interior', paint_system: 'SMP', color_group: 'bright' },
      { ...roof, paint_system: 'bare', color_group: 'mill' },
    ],
    unknown: [{ kind: 'roof' }, { paint_system: 'SMP' }, { ...roof, paint_system: 'SMP' }],
  },
  'COAT-03': {
    passes: [{ ...bareBySurf, water_distance_ft: 1501 }],
    refuses: [
      { ...bareBySurf, water_distance_ft: 1500 },
      { ...bareBySurf, water_distance_ft: 400 },
    ],
    notApplicable: [
      { ...bareBySurf, metal: 'aluminum', water_distance_ft: 400 },
      { ...bareBySurf, paint_system: 'PVDF', water_distance_ft: 400 },
      { ...bareBySurf, water: 'none' },
      { ...bareBySurf, water: 'bay', water_distance_ft: 400 },
    ],
    unknown: [
      { metal: 'steel' },
      { paint_system: 'bare' },
      { metal: 'steel', paint_system: 'bare' },
      { ...bareBySurf },
      { ...bareBySurf, water_distance_ft: 400, warranty_water_distance_ft: undefined },
    ],
  },
} satisfies Record<(typeof COATING_RULES)[number]['id'], RuleCases>;
