// What the color calculators take: readings, illuminants, observers.

import type { NumberField } from '../input.js';
import { cite, type Citation } from '../sources.js';
import type { ColorScale } from './color-difference.js';
import type { Illuminant, Viewing } from './color-space.js';

export const ILLUMINANTS = ['A', 'C', 'D50', 'D65', 'F2'] as const satisfies readonly Illuminant[];
export const OBSERVERS = [2, 10, '2', '10', '2-degree', '10-degree'] as const;

const value = (says: string, least: number, most: number): NumberField => ({
  kind: 'number',
  unit: '',
  says,
  least,
  most,
});
export const LAB = {
  L: value('lightness', 0, 100),
  a: value('red against green', -500, 500),
  b: value('yellow against blue', -500, 500),
} as const;
export const XYZ = {
  X: value('tristimulus X, Y of white = 100', 0, 200),
  Y: value('tristimulus Y, Y of white = 100', 0, 100),
  Z: value('tristimulus Z, Y of white = 100', 0, 200),
} as const;
export const LCH = {
  L: value('lightness', 0, 100),
  C: value('chroma', 0, 500),
  h_deg: value('hue', 0, 360),
} as const;

export const READING = {
  kind: 'either',
  says: 'a reading: L, a, b in the scale (CIELAB coordinates for CIEDE2000), or X, Y, Z',
  of: [LAB, XYZ],
} as const;

export const ILLUMINANT = {
  kind: 'choice',
  says: 'illuminant of the readings',
  of: ILLUMINANTS,
} as const;

export const observerOf = (given: (typeof OBSERVERS)[number]): Viewing['observer'] =>
  String(given).startsWith('10') ? '10-degree' : '2-degree';

export const SCALE_CITES: Readonly<Record<ColorScale, Citation>> = {
  CIELAB: cite('cie-lab', 'dE*ab'),
  CIEDE2000: cite('ciede2000', 'Eq. 2 to 22'),
  Hunter: cite('hunter-lab', 'dE_H'),
};
