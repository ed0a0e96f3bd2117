// The calculator `colour-difference`.

import { calculator, type Calculator } from '../calculator.js';
import { refused, result, step, type Fault, type Step } from '../check.js';
import { cite, type Citation } from '../sources.js';
import { ciede2000, labDistance, type Ciede2000, type ColorScale } from './color-difference.js';
import { ILLUMINANT, OBSERVERS, observerOf, READING, SCALE_CITES } from './color-fields.js';
import { inScale, type ColorReading } from './color-reading.js';
import type { Illuminant, Lab, Viewing, Xyz } from './color-space.js';

export const colorDifferenceCalculator: Calculator = calculator({
  name: 'colour-difference',
  says: 'Color difference of two readings in one scale',
  input: {
    scale: {
      kind: 'choice',
      says: 'the scale of the limit',
      of: ['CIELAB', 'CIEDE2000', 'Hunter'],
    },
    illuminant: ILLUMINANT,
    observer: { kind: 'choice', says: 'observer in degrees', of: OBSERVERS },
    first: READING,
    second: READING,
  },
  output: {
    dE: 'color difference in the scale',
    first: 'L, a, b of the first reading in the scale',
    second: 'L, a, b of the second reading in the scale',
  },
  cautions: [
    'Compare a difference with a limit in the scale of the limit only.',
    'Read color after dirt and chalk are washed off; rate chalk before.',
  ],
  run: (input) => {
    const scale = input.scale as ColorScale;
    const viewing: Viewing = {
      illuminant: input.illuminant as Illuminant,
      observer: observerOf(input.observer),
    };
    const first = reading(input.first, scale);
    const second = reading(input.second, scale);
    const faults = [...unreadable(first, scale, '/first'), ...unreadable(second, scale, '/second')];
    if (faults.length > 0) return refused(...faults);
    const a = inScale(first, scale, viewing);
    const b = inScale(second, scale, viewing);
    const steps = [...readingSteps(a, '1', scale), ...readingSteps(b, '2', scale)];
    const notes = [`${scale} under ${viewing.illuminant}, ${viewing.observer} observer`];
    if (scale !== 'CIEDE2000') {
      const dE = labDistance(a, b);
      steps.push(step('dE', dE, scale, 'sqrt(dL^2 + da^2 + db^2)', SCALE_CITES[scale]));
      return result({ dE, first: a, second: b }, steps, notes);
    }
    const parts = ciede2000(a, b);
    steps.push(...ciede2000Steps(parts));
    return result({ dE: parts.dE, first: a, second: b }, steps, notes);
  },
});

const reading = (given: Lab | Xyz, scale: ColorScale): ColorReading =>
  'X' in given
    ? { space: 'XYZ', value: given }
    : { space: scale === 'Hunter' ? 'Hunter' : 'CIELAB', value: given };

/** Hunter's form divides by the root of Y. */
function unreadable(given: ColorReading, scale: ColorScale, at: string): Fault[] {
  if (scale !== 'Hunter' || given.space !== 'XYZ' || given.value.Y > 0) return [];
  return [{ pointer: `${at}/Y`, message: 'must be over 0 for the Hunter scale' }];
}

const readingSteps = (lab: Lab, at: string, scale: ColorScale): Step[] => [
  step(`L_${at}`, lab.L, '', 'lightness in the scale', SCALE_CITES[scale]),
  step(`a_${at}`, lab.a, '', 'a in the scale', SCALE_CITES[scale]),
  step(`b_${at}`, lab.b, '', 'b in the scale', SCALE_CITES[scale]),
];

function ciede2000Steps(p: Ciede2000): Step[] {
  const eq = (where: string): Citation => cite('ciede2000', where);
  return [
    step('G', p.G, '', '0.5 (1 - sqrt(C^7 / (C^7 + 25^7)))', eq('Eq. 4')),
    step("dL'", p.dL, '', 'L2 - L1', eq('Eq. 8')),
    step("dC'", p.dC, '', "C'2 - C'1", eq('Eq. 9')),
    step("dH'", p.dH, '', "2 sqrt(C'1 C'2) sin(dh'/2)", eq('Eq. 10, 11')),
    step('S_L', p.SL, '', "1 + 0.015 (L' - 50)^2 / sqrt(20 + (L' - 50)^2)", eq('Eq. 18')),
    step('S_C', p.SC, '', "1 + 0.045 C'", eq('Eq. 19')),
    step('S_H', p.SH, '', "1 + 0.015 C' T", eq('Eq. 20')),
    step('R_T', p.RT, '', '-sin(2 dtheta) R_C', eq('Eq. 21')),
    step(
      'dE00',
      p.dE,
      'CIEDE2000',
      "sqrt((dL'/S_L)^2 + (dC'/S_C)^2 + (dH'/S_H)^2 + R_T dC'/S_C dH'/S_H)",
      eq('Eq. 22'),
    ),
  ];
}
