// Moments, reactions and deflection of equal spans under a uniform load on all of them.

import { step, type Step } from '../check.js';
import { cite } from '../sources.js';

/** Coefficients: moments of w L^2, forces of w L, deflection of w L^4/(E I), places of L. */
export interface BeamCoefficients {
  readonly spans: number;
  /** Largest moment in each span and moment over each interior support (as a magnitude). */
  readonly spanMoments: readonly number[];
  readonly supportMoments: readonly number[];
  readonly reactions: readonly number[];
  readonly mPos: number;
  readonly mNeg: number;
  readonly rEnd: number;
  /** Null for one span. */
  readonly rInt: number | null;
  /** Largest shear, beside the first interior support. */
  readonly vMax: number;
  readonly delta: number;
  /** Where in the end span the largest moment and deflection lie. */
  readonly xMPos: number;
  readonly xDelta: number;
}

const STATICS = cite('mechanics', 'three-moment equation, equal spans');

/**
 * Three-moment equation M_(i-1) + 4 M_i + M_(i+1) = -w L^2/2 for equal spans of one stiffness on
 * level simple supports. `spans` 1 to 20. Left out: unequal spans, partial loading, settlement.
 */
export function beamCoefficients(spans: number): BeamCoefficients {
  const M = supportMoments(spans);
  const shears = Array.from({ length: spans }, (_, i) => 0.5 + M[i + 1]! - M[i]!);
  const spanMoments = shears.map((V, i) => M[i]! + (V * V) / 2);
  const reactions = [...shears, 0].map((V, i) => V + (i === 0 ? 0 : 1 - shears[i - 1]!));
  const interior = reactions.slice(1, -1);
  const V = shears[0]!;
  const xDelta = deepest(V);
  return {
    spans,
    spanMoments,
    supportMoments: M.slice(1, -1).map((m) => -m),
    reactions,
    mPos: Math.max(...spanMoments),
    mNeg: Math.max(0, ...M.map((m) => -m)),
    rEnd: reactions[0]!,
    rInt: interior.length > 0 ? Math.max(...interior) : null,
    vMax: Math.max(V, 1 - V),
    delta: (V * (xDelta - xDelta ** 3)) / 6 - (xDelta - xDelta ** 4) / 24,
    xMPos: V,
    xDelta,
  };
}

/** Moments over all supports, ends included (0): forward elimination of the tridiagonal system. */
function supportMoments(spans: number): number[] {
  const M = new Array<number>(spans + 1).fill(0);
  const pivot: number[] = [];
  const right: number[] = [];
  for (let i = 0; i < spans - 1; i++) {
    const before = i === 0 ? 0 : 1 / pivot[i - 1]!;
    pivot.push(4 - before);
    right.push(-0.5 - before * (i === 0 ? 0 : right[i - 1]!));
  }
  for (let i = spans - 2; i >= 0; i--) M[i + 1] = (right[i]! - M[i + 2]!) / pivot[i]!;
  return M;
}

/** Root of the end span's slope, V (3 x^2 - 1)/6 - (4 x^3 - 1)/24, by Newton's rule. */
function deepest(V: number): number {
  let x = 0.45;
  for (let i = 0; i < 8; i++) {
    const slope = (V * (3 * x * x - 1)) / 6 - (4 * x * x * x - 1) / 24;
    x -= slope / (V * x - (x * x) / 2);
  }
  return x;
}

export function beamSteps(c: BeamCoefficients): Step[] {
  return [
    step('M+', c.mPos, 'w L^2', 'M_i + V_i^2/2, largest of the spans', STATICS),
    step('M-', c.mNeg, 'w L^2', 'M_(i-1) + 4 M_i + M_(i+1) = -w L^2/2', STATICS),
    step('R_end', c.rEnd, 'w L', '1/2 + M_1', STATICS),
    ...(c.rInt === null
      ? []
      : [step('R_int', c.rInt, 'w L', 'largest interior reaction', STATICS)]),
    step('delta', c.delta, 'w L^4/(E I)', `end span at ${c.xDelta.toFixed(4)} L`, STATICS),
  ];
}
