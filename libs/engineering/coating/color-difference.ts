// Color differences: the distance in CIELAB, in Hunter L, a, b, and CIEDE2000. There is no simple
// factor between them; a difference is compared with a limit in the limit's own scale only
// (ASTM D2244-15a, 5.1 and 5.2).

import type { Lab } from './color-space.js';

export type ColorScale = 'CIELAB' | 'CIEDE2000' | 'Hunter';

/** sqrt(dL^2 + da^2 + db^2): dE*ab of CIELAB readings, dE_H of Hunter readings. */
export function labDistance(first: Lab, second: Lab): number {
  return Math.hypot(second.L - first.L, second.a - first.a, second.b - first.b);
}

/** The quantities of CIEDE2000 by the names of Sharma, Wu, Dalal 2005, Eq. 2 to 22. */
export interface Ciede2000 {
  readonly dE: number;
  readonly G: number;
  readonly dL: number;
  readonly dC: number;
  readonly dH: number;
  readonly meanL: number;
  readonly meanC: number;
  readonly meanHueDeg: number;
  readonly SL: number;
  readonly SC: number;
  readonly SH: number;
  readonly RT: number;
}

const TO_RAD = Math.PI / 180;
const POW_25_7 = 25 ** 7;

/**
 * CIEDE2000 with kL = kC = kH = 1, of two CIELAB readings. Sharma, Wu, Dalal 2005, Eq. 2 to 22.
 * Left out: other k factors. The hue difference and mean follow the paper's comparisons exactly:
 * a difference of just 180 degrees is not wrapped, and a hue sum of 360 or more is lowered.
 */
export function ciede2000(first: Lab, second: Lab): Ciede2000 {
  const chroma = (Math.hypot(first.a, first.b) + Math.hypot(second.a, second.b)) / 2;
  const c7 = chroma ** 7;
  const G = 0.5 * (1 - Math.sqrt(c7 / (c7 + POW_25_7)));
  const a1 = (1 + G) * first.a;
  const a2 = (1 + G) * second.a;
  const C1 = Math.hypot(a1, first.b);
  const C2 = Math.hypot(a2, second.b);
  const h1 = hueDeg(a1, first.b);
  const h2 = hueDeg(a2, second.b);
  const gray = C1 * C2 === 0;

  const dL = second.L - first.L;
  const dC = C2 - C1;
  const dH = gray ? 0 : 2 * Math.sqrt(C1 * C2) * Math.sin((hueStep(h1, h2) / 2) * TO_RAD);
  const meanL = (first.L + second.L) / 2;
  const meanC = (C1 + C2) / 2;
  const meanHueDeg = gray ? h1 + h2 : meanHue(h1, h2);

  const fromL50 = (meanL - 50) ** 2;
  const SL = 1 + (0.015 * fromL50) / Math.sqrt(20 + fromL50);
  const SC = 1 + 0.045 * meanC;
  const SH = 1 + 0.015 * meanC * hueWeight(meanHueDeg);
  const RT = rotation(meanC, meanHueDeg);
  const l = dL / SL;
  const c = dC / SC;
  const h = dH / SH;
  const dE = Math.sqrt(Math.max(0, l * l + c * c + h * h + RT * c * h));
  return { dE, G, dL, dC, dH, meanL, meanC, meanHueDeg, SL, SC, SH, RT };
}

function hueDeg(a: number, b: number): number {
  if (a === 0 && b === 0) return 0;
  const h = Math.atan2(b, a) / TO_RAD;
  return h < 0 ? h + 360 : h;
}

/** Eq. 10: from the first hue to the second, the short way round. */
function hueStep(h1: number, h2: number): number {
  const step = h2 - h1;
  if (Math.abs(step) <= 180) return step;
  return step > 180 ? step - 360 : step + 360;
}

/** Eq. 14. */
function meanHue(h1: number, h2: number): number {
  const sum = h1 + h2;
  if (Math.abs(h1 - h2) <= 180) return sum / 2;
  return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
}

/** T of Eq. 15. */
function hueWeight(h: number): number {
  return (
    1 -
    0.17 * Math.cos((h - 30) * TO_RAD) +
    0.24 * Math.cos(2 * h * TO_RAD) +
    0.32 * Math.cos((3 * h + 6) * TO_RAD) -
    0.2 * Math.cos((4 * h - 63) * TO_RAD)
  );
}

/** R_T of Eq. 16, 17 and 21. */
function rotation(meanC: number, meanHueDeg: number): number {
  const theta = 30 * Math.exp(-(((meanHueDeg - 275) / 25) ** 2));
  const c7 = meanC ** 7;
  return -Math.sin(2 * theta * TO_RAD) * 2 * Math.sqrt(c7 / (c7 + POW_25_7));
}
