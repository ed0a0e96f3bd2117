// The curves of a figure as text for the steps: the printed points that a reader checks by hand.

import type { ZoneCurve } from './curves.js';
import { curveText } from './curves.js';
import { zonesOf, type Coefficients } from './roof-figure.js';

/** The printed points of each zone as text, made once a table. */
export function curveTexts(c: Coefficients, kind: 'negative' | 'overhang'): readonly string[] {
  const low = textsOf(zonesOf(c.low, kind));
  if (c.t === 0) return low;
  const high = textsOf(zonesOf(c.high, kind));
  return low.map((each, i) => `${each}, then ${c.t.toFixed(3)} of the way to ${high[i]}`);
}

const texts = new WeakMap<readonly ZoneCurve[], readonly string[]>();

export function textsOf(list: readonly ZoneCurve[]): readonly string[] {
  const known = texts.get(list);
  if (known) return known;
  const made = list.map(
    (each) =>
      `linear in log10 A through ${each.readings.map(curveText).join(', or the larger of ')}`,
  );
  texts.set(list, made);
  return made;
}
