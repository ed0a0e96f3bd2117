// Numbers in findings: a failing value never looks as if it passed, nor the other way round.

import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { against, listed, marginOf, recorded, text } from './figures.js';

describe('a value shown against its limit', () => {
  it('keeps its side of the limit, whatever it is rounded to', () => {
    const near = fc.tuple(
      fc.double({ min: -1e-9, max: 1e-9, noNaN: true }),
      fc.integer({ min: -50, max: 50 }),
    );
    fc.assert(
      fc.property(near, ([off, limit]) => {
        const shown = against('x', limit + off, limit, 'psf', 3);
        expect(Math.sign(Number(shown.v) - limit)).toBe(Math.sign(limit + off - limit));
      }),
      { seed: 2, numRuns: 2000 },
    );
  });

  it('takes no more decimals than it needs', () => {
    expect(against('x', 0.8, 1, '', 3)).toEqual({ name: 'x', v: '0.800', u: '' });
    expect(against('x', 1.00004, 1, '', 3).v).toBe('1.00004');
    expect(against('x', 1, 1, '', 2).v).toBe('1.00');
    expect(against('x', 1 + 4e-13, 1, '', 3).v).toBe('1.0000000000004');
    expect(against('x', 1 + 2.4e-12, 1, '', 3).v).toBe('1.000000000002');
  });
});

describe('words for figures', () => {
  it('have value and unit', () => {
    expect(text(recorded('span', 26.5, 'in'))).toBe('26.5 in');
    expect(text(recorded('limit', 0.95, ''))).toBe('0.95');
    expect(marginOf(-0.25, 'in', 2)).toEqual({ name: 'margin', v: '-0.25', u: 'in' });
  });

  it('stand in a list as people write one', () => {
    expect(listed([])).toBe('');
    expect(listed(['a'])).toBe('a');
    expect(listed(['a', 'b'])).toBe('a and b');
    expect(listed(['a', 'b', 'c'])).toBe('a, b and c');
  });
});
