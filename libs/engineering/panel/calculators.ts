// The calculators of panel strength, in the order of the list.

import type { Calculator } from '../calculator.js';
import { loadTableCalculator } from './load-table-calculator.js';
import { section } from './section-calculator.js';
import { corrugationCalculator, gauge, grade } from './sheet-calculators.js';
import { beam, effectiveWidthCalculator, shear, webCrippling } from './strength-calculators.js';

export const panelCalculators: readonly Calculator[] = [
  gauge,
  corrugationCalculator,
  section,
  effectiveWidthCalculator,
  shear,
  webCrippling,
  beam,
  loadTableCalculator,
  grade,
];
