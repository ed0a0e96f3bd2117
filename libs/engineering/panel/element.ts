// A flat of a bent sheet as a plate element, and the stresses it stands in.

import type { PlateRules } from './plate.js';

export type ElementKind =
  'tension' | 'stiffened' | 'web' | 'unstiffened' | 'lip' | 'lipped' | 'ribbed';

export interface Element {
  readonly kind: ElementKind;
  /** Index of the (first) flat. */
  readonly flat: number;
  readonly w: number;
  /** Stress at the more and the less compressed end, ksi. */
  readonly f1: number;
  readonly f2: number;
  readonly k: number | null;
  readonly lambda: number | null;
  readonly rho: number;
  readonly b: number;
  readonly b1: number | null;
  readonly b2: number | null;
  /** Overall lip and its angle (radians) of a flange that needs one. */
  readonly lip: { readonly D: number; readonly theta: number } | null;
  /** Effective lengths from the flat's start and up to its end. */
  readonly head: number;
  readonly tail: number;
}

/** The state of stress: neutral axis, ksi per inch above it, and the rules. */
export interface Stresses {
  readonly y0: number;
  readonly perInch: number;
  readonly E: number;
  readonly rules: PlateRules;
  readonly lesserB2: boolean;
}
