// Color conversions and differences against published and other outside values; each case's
// source stands beside its check.

import { describe, expect, test } from '@jest/globals';
import { calculateAll, hunterCoefficients, xyzToCielab, xyzToHunter } from '#engineering';
import { readCases, runCases, type StandardCase } from './cases.js';

type Values = Record<string, unknown>;
type Inputs = Record<string, number>;

function calc(name: string, input: Values): Values {
  const made = calculateAll(name, input);
  if (made.outcome !== 'results') throw new Error(JSON.stringify(made));
  return made.output as Values;
}

const dE = (scale: string, first: Values, second: Values): unknown =>
  calc('colour-difference', { scale, illuminant: 'C', observer: 2, first, second })['dE'];

function ciede(i: Inputs): Values {
  const dE00 = dE(
    'CIEDE2000',
    { L: i['L1'], a: i['a1'], b: i['b1'] },
    { L: i['L2'], a: i['a2'], b: i['b2'] },
  );
  return { dE00, dE00_full: dE00 };
}

function toCielab(i: Inputs): Values {
  const { white_x: x = NaN, white_y: y = NaN } = i;
  const [X, Y, Z] = ['X_Y1scale', 'Y_Y1scale', 'Z_Y1scale'].map((key) => 100 * (i[key] ?? NaN));
  const names: Record<string, string> = {
    0.3457: 'D50',
    0.44757: 'A',
    0.3127: 'D65',
    0.37208: 'F2',
  };
  const made = calc('colour-convert', {
    from: 'XYZ',
    to: 'CIELAB',
    value: { X, Y, Z },
    illuminant: names[x],
  })['value'] as Values;
  const white = [(100 * x) / y, 100, (100 * (1 - x - y)) / y] as const;
  expect(xyzToCielab({ X: X as number, Y: Y as number, Z: Z as number }, white)).toEqual(made);
  return made;
}

const toLch = ({ L, a, b }: Inputs): Values =>
  calc('colour-convert', { from: 'CIELAB', to: 'LCh', value: { L, a, b }, illuminant: 'D65' })[
    'value'
  ] as Values;

const xyz100 = (i: Inputs): { X: number; Y: number; Z: number } => ({
  X: i['X_Y100scale'] ?? NaN,
  Y: i['Y_Y100scale'] ?? NaN,
  Z: i['Z_Y100scale'] ?? NaN,
});
const hunterValues = ({ L, a, b }: { L: number; a: number; b: number }): Values => ({
  L_hunter: L,
  a_hunter: a,
  b_hunter: b,
});

const toHunter =
  (illuminant: string) =>
  (i: Inputs): Values =>
    hunterValues(
      calc('colour-convert', { from: 'XYZ', to: 'Hunter', value: xyz100(i), illuminant })[
        'value'
      ] as { L: number; a: number; b: number },
    );

function toHunterByRule(i: Inputs): Values {
  const { Xn = NaN, Yn = NaN, Zn = NaN } = i;
  return hunterValues(
    xyzToHunter(xyz100(i), { white: [Xn, Yn, Zn], ...hunterCoefficients(Xn, Zn) }),
  );
}

function fromHunter(i: Inputs): Values {
  const value = { L: i['L_hunter'], a: i['a_hunter'], b: i['b_hunter'] };
  const { X, Y, Z } = calc('colour-convert', {
    from: 'Hunter',
    to: 'XYZ',
    value,
    illuminant: 'D65 2-degree',
  })['value'] as Values;
  return { X_Y100scale: X, Y_Y100scale: Y, Z_Y100scale: Z };
}

function threeScales(i: Inputs): Values {
  const first = { X: i['X1'], Y: i['Y1'], Z: i['Z1'] };
  const second = { X: i['X2'], Y: i['Y2'], Z: i['Z2'] };
  return {
    dE_hunter: dE('Hunter', first, second),
    dE_ab: dE('CIELAB', first, second),
    dE00: dE('CIEDE2000', first, second),
  };
}

const TOPICS: Readonly<Record<string, (inputs: never) => Values>> = {
  'colour difference CIEDE2000 (kL=kC=kH=1)': ciede,
  'colour difference CIEDE2000, very large chroma': ciede,
  'colour difference CIEDE2000, very large chroma, mean hue past 360': ciede,
  'colour difference CIEDE2000': ciede,
  'XYZ to CIELAB': toCielab,
  'CIELAB to LCh(ab)': toLch,
  'XYZ to Hunter L,a,b (1958/1966 square-root form)': toHunter('D65'),
  'XYZ to Hunter L,a,b with K computed from the white': toHunterByRule,
  'Hunter chromaticity coefficients Ka, Kb': (i: Inputs): Values => ({
    ...hunterCoefficients(i['X_Y100scale'] ?? NaN, i['Z_Y100scale'] ?? NaN),
  }),
  'Hunter L,a,b to XYZ': fromHunter,
  'Hunter L,a,b simplified form (illuminant C, 2-degree)': toHunter('C'),
  'same colour change on three scales': threeScales,
};

const cases = readCases('color');
const evaluated = new Set<string>();

function evaluate(each: StandardCase): Values {
  const how = TOPICS[each.topic];
  if (how === undefined) throw new Error(`no check for the topic "${each.topic}"`);
  evaluated.add(each.id);
  return how(each.inputs as never);
}

describe('color', () => {
  runCases(cases, evaluate);

  test('every case of the file has run', () => {
    expect(cases.length).toBe(46);
    expect(evaluated.size).toBe(cases.length);
  });
});
