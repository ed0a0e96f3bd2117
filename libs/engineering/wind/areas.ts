// Lengths and areas that the wind figures are entered with: dimension a and effective wind areas.

import { feet, squareFeet, type Degrees, type Feet, type SquareFeet } from '../units.js';
import type { AsceEdition } from '../sources.js';

/**
 * Dimension a in ft: 10 % of the least horizontal dimension or 0.4 h, the smaller, but not less
 * than 4 % of that dimension or 3 ft. From 7-16, for theta <= 7 degrees and a least dimension over
 * 300 ft, not above 0.8 h. Notes of the wall and roof figures. `width` excludes overhangs.
 */
export function dimensionA(edition: AsceEdition, width: Feet, h: Feet, theta: Degrees): Feet {
  const a = Math.max(Math.min(0.1 * width, 0.4 * h), 0.04 * width, 3);
  const capped = edition !== '7-10' && theta <= 7 && width > 300;
  return feet(capped ? Math.min(a, 0.8 * h) : a);
}

/**
 * Effective wind area of a panel in ft2: its span times a width not less than a third of the span
 * (26.2, definition). It only enters the curve; the pressure acts on the real tributary width.
 */
export function panelWindArea(span: Feet, cover: Feet): SquareFeet {
  return squareFeet(span * Math.max(cover, span / 3));
}

/** Of a fastener of cladding: not more than the area tributary to that fastener (26.2). */
export function fastenerWindArea(panelArea: SquareFeet, tributary: SquareFeet): SquareFeet {
  return squareFeet(Math.min(panelArea, tributary));
}
