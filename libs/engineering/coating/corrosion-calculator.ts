// The calculator `corrosion`.

import { calculator, type Calculator } from '../calculator.js';
import { result, step } from '../check.js';
import { cite } from '../sources.js';
import {
  BARE_METAL_CAUTION,
  CLIMATE_RANGE,
  corrosivity,
  firstYearSteel,
  firstYearZinc,
} from './corrosion.js';

export const corrosionCalculator: Calculator = calculator({
  name: 'corrosion',
  says: 'First-year loss of bare zinc and steel from climate and salt, with its category',
  input: {
    T_C: { kind: 'number', unit: 'deg C', says: 'yearly mean temperature', ...CLIMATE_RANGE.T },
    RH_pct: {
      kind: 'number',
      unit: '%',
      says: 'yearly mean relative humidity',
      ...CLIMATE_RANGE.RH,
    },
    SO2_Pd_mg_m2d: {
      kind: 'number',
      unit: 'mg/(m2 d)',
      says: 'sulfur dioxide deposition',
      ...CLIMATE_RANGE.Pd,
    },
    Cl_Sd_mg_m2d: {
      kind: 'number',
      unit: 'mg/(m2 d)',
      says: 'chloride deposition',
      ...CLIMATE_RANGE.Sd,
    },
  },
  output: {
    rcorr_zinc_um_per_y: 'first-year loss of zinc, um/y',
    rcorr_steel_um_per_y: 'first-year loss of carbon steel, um/y',
    category_zinc: 'category by zinc: C1 to C5, CX, or above CX',
    category_steel: 'category by carbon steel: C1 to C5, CX, or above CX',
  },
  cautions: [BARE_METAL_CAUTION],
  run: ({ T_C: T, RH_pct: RH, SO2_Pd_mg_m2d: Pd, Cl_Sd_mg_m2d: Sd }) => {
    const zinc = firstYearZinc({ T, RH, Pd, Sd });
    const steel = firstYearSteel({ T, RH, Pd, Sd });
    const categoryZinc = corrosivity('zinc um/y', zinc.rate);
    const categorySteel = corrosivity('steel um/y', steel.rate);
    const eq1 = cite('iso-9223', 'Eq. 1');
    const eq2 = cite('iso-9223', 'Eq. 2');
    const bands = cite('iso-9223', 'Table 2');
    return result(
      {
        rcorr_zinc_um_per_y: zinc.rate,
        rcorr_steel_um_per_y: steel.rate,
        category_zinc: categoryZinc,
        category_steel: categorySteel,
      },
      [
        step(
          'r_zn,S',
          zinc.sulfur,
          'um/y',
          `0.0129 Pd^0.44 exp(0.046 RH ${T <= 10 ? '+ 0.038' : '- 0.071'} (T - 10))`,
          eq2,
        ),
        step('r_zn,Cl', zinc.chloride, 'um/y', '0.0175 Sd^0.57 exp(0.008 RH + 0.085 T)', eq2),
        step('r_zn', zinc.rate, 'um/y', 'r_zn,S + r_zn,Cl', eq2),
        step('category', categoryZinc, '', 'band of r_zn, upper bound included', bands),
        step(
          'r_st,S',
          steel.sulfur,
          'um/y',
          `1.77 Pd^0.52 exp(0.020 RH ${T <= 10 ? '+ 0.150' : '- 0.054'} (T - 10))`,
          eq1,
        ),
        step('r_st,Cl', steel.chloride, 'um/y', '0.102 Sd^0.62 exp(0.033 RH + 0.040 T)', eq1),
        step('r_st', steel.rate, 'um/y', 'r_st,S + r_st,Cl', eq1),
        step('category', categorySteel, '', 'band of r_st, upper bound included', bands),
      ],
      ['No first-year rates are known here for 55 % Al-Zn.'],
    );
  },
});
