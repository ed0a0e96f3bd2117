// Cases of the guidance about money.

import type { GAUGE_VALUE_RULES } from '../gauge-value.js';
import type { RuleCases } from './rule-cases.js';
import { ALUMINUM_032, G24, G26, RIBBED, STANDING_SEAM } from './samples.js';

const mild = { wind_speed_mph: 115, ground_snow_psf: 20, design_stone_in: 1 } as const;
const shed = {
  ...mild,
  kind: 'roof',
  residential: false,
  priorities: ['value'],
  profile: RIBBED,
  paint_system: 'SMP',
  option: G26,
} as const;
const houseWall = { ...shed, kind: 'wall', residential: true, priorities: ['long-life'] } as const;
const priced = (price: number, thinner: number) => ({
  option: {
    ...G24,
    price_per_square_usd: price,
    thinner: { gauge: '26', price_per_square_usd: thinner },
  },
});

export const GAUGE_VALUE_CASES = {
  'GAUGE-10': {
    passes: [
      shed,
      { ...shed, kind: 'wall' },
      { ...shed, kind: 'wall', wind_speed_mph: 150 },
      houseWall,
      { ...houseWall, option: G24, paint_system: 'PVDF' },
    ],
    refuses: [
      { ...shed, option: G24 },
      { ...shed, residential: true, option: G24 },
      { ...shed, kind: 'wall', option: G24 },
      { ...shed, kind: 'wall', paint_system: 'PVDF' },
      { ...houseWall, option: G24 },
      { ...houseWall, paint_system: 'PVDF' },
    ],
    notApplicable: [
      { ...shed, priorities: ['long-life', 'value'] },
      { ...shed, profile: STANDING_SEAM },
      { ...shed, paint_system: 'PVDF', option: G24 },
      { ...shed, residential: true, paint_system: 'PVDF', option: G24 },
      { ...shed, wind_speed_mph: 130, option: G24 },
      { ...shed, ground_snow_psf: 40, option: G24 },
      { ...shed, design_stone_in: 1.75, option: G24 },
      { ...shed, design_stone_in: 2, wind_speed_mph: undefined },
      { ...shed, option: ALUMINUM_032 },
    ],
    unknown: [
      { ...shed, kind: undefined },
      { ...shed, residential: undefined },
      { ...shed, priorities: undefined },
      { ...shed, profile: undefined },
      { ...shed, paint_system: undefined },
      { ...shed, option: undefined },
      { ...shed, ground_snow_psf: undefined },
    ],
  },
  'GAUGE-13': {
    passes: [priced(120, 100), priced(140, 100), priced(130, 100)],
    refuses: [priced(119, 100), priced(119.999, 100), priced(141, 100), priced(140.001, 100)],
    notApplicable: [
      { option: { ...G24, price_per_square_usd: 100 } },
      { option: { ...priced(130, 100).option, gauge: '22' } },
      {
        option: {
          ...G24,
          price_per_square_usd: 130,
          thinner: { gauge: '29', price_per_square_usd: 100 },
        },
      },
    ],
    unknown: [{}, { option: { ...priced(130, 100).option, price_per_square_usd: undefined } }],
  },
} satisfies Record<(typeof GAUGE_VALUE_RULES)[number]['id'], RuleCases>;
