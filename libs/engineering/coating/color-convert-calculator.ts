// The calculator `colour-convert`.

import { calculator, type Calculator } from '../calculator.js';
import { refused, result, step, type Fault, type Outcome, type Step } from '../check.js';
import { ILLUMINANTS, LAB, LCH, SCALE_CITES, XYZ } from './color-fields.js';
import { inScale, toXyz, type ColorReading } from './color-reading.js';
import { cielabToLch, cielabWhite, hunterScale, lchToCielab } from './color-space.js';
import type { Lab, Lch, Viewing, Xyz } from './color-space.js';

const SPACES = ['XYZ', 'CIELAB', 'Hunter', 'LCh'] as const;
type Space = (typeof SPACES)[number];

const WITH_OBSERVER = ILLUMINANTS.flatMap((each) => [
  each,
  `${each} 2-degree`,
  `${each} 10-degree`,
]);

export const colorConvertCalculator: Calculator = calculator({
  name: 'colour-convert',
  says: 'One color reading from one space to another',
  input: {
    from: { kind: 'choice', says: 'space of the value', of: SPACES },
    to: { kind: 'choice', says: 'space asked for', of: SPACES },
    value: {
      kind: 'either',
      says: 'X, Y, Z with Y of white = 100; L, a, b; or L, C, h_deg',
      of: [XYZ, LAB, LCH],
    },
    illuminant: {
      kind: 'choice',
      says: 'illuminant, with the observer; 2-degree where it is not named',
      of: WITH_OBSERVER,
    },
  },
  output: { value: 'the color in the space asked for' },
  cautions: [
    'A color difference counts in the scale that its limit names; no factor leads across.',
  ],
  run: (input) => {
    const given = input.value as Xyz | Lab | Lch;
    const from = input.from as Space;
    const to = input.to as Space;
    const [illuminant, observer = '2-degree'] = String(input.illuminant).split(' ');
    const viewing = { illuminant, observer } as Viewing;
    const wrong = wrongKeys(from, given);
    if (wrong !== undefined) return refused(wrong);
    return convert(from, to, given, viewing);
  },
});

const KEYS: Readonly<Record<Space, readonly string[]>> = {
  XYZ: ['X', 'Y', 'Z'],
  CIELAB: ['L', 'a', 'b'],
  Hunter: ['L', 'a', 'b'],
  LCh: ['L', 'C', 'h_deg'],
};

function wrongKeys(from: Space, given: object): Fault | undefined {
  if (KEYS[from].every((key) => key in given)) return undefined;
  return { pointer: '/value', message: `must be {${KEYS[from].join(', ')}} for ${from}` };
}

function convert(
  from: Space,
  to: Space,
  given: Xyz | Lab | Lch,
  viewing: Viewing,
): Outcome<Record<string, unknown>> {
  const start: ColorReading =
    from === 'LCh'
      ? { space: 'CIELAB', value: lchToCielab(given as Lch) }
      : ({ space: from, value: given } as ColorReading);
  const xyz = toXyz(start, viewing);
  if (Math.min(xyz.X, xyz.Y, xyz.Z) < -1e-9) {
    return refused({
      pointer: '/value',
      message: 'stands for no color: X, Y or Z would be negative',
    });
  }
  if (to === 'Hunter' && start.space !== 'Hunter' && !(xyz.Y > 0)) {
    return refused({
      pointer: '/value',
      message: 'must be lighter than black for the Hunter scale',
    });
  }
  const value =
    to === 'XYZ'
      ? xyz
      : to === 'LCh'
        ? cielabToLch(inScale(start, 'CIELAB', viewing))
        : inScale(start, to, viewing);
  const steps = [...whiteSteps(from, to, viewing)];
  for (const [key, v] of Object.entries(value)) {
    steps.push(step(key, v as number, '', `${from} to ${to}`, SCALE_CITES[scaleOf(to)]));
  }
  return result({ value }, steps, [`under ${viewing.illuminant}, ${viewing.observer} observer`]);
}

const scaleOf = (space: Space): 'Hunter' | 'CIELAB' => (space === 'Hunter' ? 'Hunter' : 'CIELAB');

/** The whites by which the spaces on the way are defined. */
function whiteSteps(from: Space, to: Space, viewing: Viewing): Step[] {
  const steps: Step[] = [];
  if (from === 'Hunter' || to === 'Hunter') {
    const { white, Ka, Kb } = hunterScale(viewing);
    steps.push(
      step('Xn, Yn, Zn', white.join(', '), '', 'white of the Hunter scale', SCALE_CITES.Hunter),
      step('Ka, Kb', `${Ka}, ${Kb}`, '', 'coefficients of the Hunter scale', SCALE_CITES.Hunter),
    );
  }
  if ([from, to].some((space) => space === 'CIELAB' || space === 'LCh')) {
    const white = cielabWhite(viewing).join(', ');
    steps.push(step('Xn, Yn, Zn', white, '', 'white of CIELAB', SCALE_CITES.CIELAB));
  }
  return steps;
}
