// The trade's words as a page shows them.

import { describe, expect, it } from '@jest/globals';
import {
  aSurface,
  factLabel,
  isOpenFraming,
  label,
  OPEN_SUBSTRATES,
  SOLID_SUBSTRATES,
} from './words.js';

describe('words on a page', () => {
  it('have their own label where dashes as spaces would not do', () => {
    const words = [
      'sign-off',
      'osb',
      'one-shingle-layer',
      'steel-deck',
      'insulated-deck',
      'earth-tone',
      'mill',
      'bare',
      'best-appearance',
    ];
    expect(words.map(label)).toEqual([
      'Engineer sign-off',
      'OSB',
      'over one layer of shingles',
      'steel deck',
      'deck with rigid insulation',
      'earth tone',
      'mill finish',
      'bare metal',
      'best appearance',
    ]);
  });

  it('name a surface with its article and a fact without its unit', () => {
    expect([aSurface('roof'), aSurface('interior')]).toEqual(['a roof', 'an interior']);
    expect(['support_spacing_in', 'slope_per_12', 'water', 'in_ft_or_not'].map(factLabel)).toEqual([
      'support spacing',
      'slope',
      'water',
      'in ft or not',
    ]);
  });

  it('tell open framing from a solid substrate', () => {
    expect(OPEN_SUBSTRATES.every(isOpenFraming)).toBe(true);
    expect(SOLID_SUBSTRATES.some(isOpenFraming)).toBe(false);
  });
});
