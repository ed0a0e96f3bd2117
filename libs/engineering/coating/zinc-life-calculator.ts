// The calculator `zinc-life`.

import { calculator, type Calculator } from '../calculator.js';
import { refused, result, step, type Fault, type Step } from '../check.js';
import { cite } from '../sources.js';
import { micrometers, type Micrometers } from '../units.js';
import { coatingMass } from './coating-mass.js';
import { COATING_DESIGNATIONS, type CoatingDesignation } from './coating-mass.table.js';
import { BARE_METAL_CAUTION } from './corrosion.js';
import { CATEGORIES, type Corrosivity } from './corrosion.table.js';
import { upperZincRate, zincExponent, zincLifeYears, type ZincExponent } from './zinc-life.js';

export const zincLifeCalculator: Calculator = calculator({
  name: 'zinc-life',
  says: 'Years until the weather has used up a zinc coating',
  input: {
    zinc_um_per_side: {
      kind: 'number',
      unit: 'um',
      says: 'zinc on the side, or give a designation',
      above: 0,
      most: 1000,
      optional: true,
    },
    designation: {
      kind: 'choice',
      says: 'zinc coating designation (average of an even split)',
      of: COATING_DESIGNATIONS,
      optional: true,
    },
    rcorr_um_per_y: {
      kind: 'number',
      unit: 'um/y',
      says: 'first-year loss of zinc, or give a category',
      above: 0,
      most: 25,
      optional: true,
    },
    category: {
      kind: 'choice',
      says: 'corrosivity category, judged at its upper rate',
      of: CATEGORIES,
      optional: true,
    },
    exponent: {
      kind: 'choice',
      says: 'B1 average, B2 conservative, linear a constant rate',
      of: ['B1', 'B2', 'linear'],
    },
  },
  output: { years: 'years until the average thickness is used up' },
  cautions: [BARE_METAL_CAUTION],
  run: (input) => {
    const faults = [
      ...oneOf(input, 'zinc_um_per_side', 'designation'),
      ...oneOf(input, 'rcorr_um_per_y', 'category'),
      ...notZinc(input.designation),
    ];
    if (faults.length > 0) return refused(...faults);
    const { steps, zinc, rate } = zincAndRate(input);
    const exponent = input.exponent as ZincExponent;
    const years = zincLifeYears(zinc, rate, exponent);
    const eqs = cite(
      'iso-9224',
      exponent === 'linear' ? 'Eq. 1 with b = 1' : 'Eq. 1, 3 and Table 3',
    );
    steps.push(
      step(
        'b',
        zincExponent(exponent),
        '',
        exponent === 'linear' ? 'constant rate' : `zinc, ${exponent}`,
        eqs,
      ),
      step(
        'years',
        years,
        'y',
        years <= 20 ? '(z / r)^(1/b)' : '20 + (z - r 20^b) / (r b 20^(b-1))',
        eqs,
      ),
    );
    const notes = ['Average thickness: red rust begins earlier at thin spots and cut edges.'];
    if (years > 100)
      notes.push('Over 100 years, past the printed time factors: read it as a long time.');
    return result({ years }, steps, notes);
  },
});

function notZinc(designation: string | number | undefined): Fault[] {
  if (!String(designation).startsWith('AZ')) return [];
  return [
    {
      pointer: '/designation',
      message: 'is 55 % Al-Zn, for which no rates are known here; give a zinc designation',
    },
  ];
}

function zincAndRate(input: {
  readonly zinc_um_per_side?: number;
  readonly designation?: string | number;
  readonly rcorr_um_per_y?: number;
  readonly category?: string;
}): { steps: Step[]; zinc: Micrometers; rate: number } {
  const { zinc_um_per_side: given, designation, rcorr_um_per_y: entered, category } = input;
  const zinc =
    given !== undefined
      ? micrometers(given)
      : coatingMass(designation as CoatingDesignation).thicknessPerSide;
  const rate = entered ?? upperZincRate(category as Corrosivity);
  const steps = [
    step(
      'z',
      zinc,
      'um',
      given !== undefined ? 'entered' : `${designation}, average of an even split`,
      given !== undefined ? cite('iso-9224', 'Eq. 1') : cite('astm-a653', '8.1.3'),
    ),
    step(
      'r',
      rate,
      'um/y',
      entered !== undefined ? 'entered' : `upper rate of ${category}`,
      cite('iso-9223', 'Table 2'),
    ),
  ];
  return { steps, zinc, rate };
}

function oneOf(input: object, first: string, second: string): Fault[] {
  const has = (key: string): boolean => (input as Record<string, unknown>)[key] !== undefined;
  if (has(first) && has(second)) {
    return [{ pointer: `/${second}`, message: `give ${first} or ${second}, not both` }];
  }
  if (!has(first) && !has(second)) {
    return [{ pointer: `/${first}`, message: `is missing: give ${first} or ${second}` }];
  }
  return [];
}
