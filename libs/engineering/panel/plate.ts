// Effective width of plate elements under uniform compression and stress gradient (AISI S100-16
// Appendix 1). Widths and thickness in inches, stresses in ksi; compression is positive.

/** Limits of Appendix 1 and B4.1. */
export const LAMBDA_LIMIT = 0.673;
export const SLENDERNESS_FACTOR = 1.052;
export const K_STIFFENED = 4;
export const K_UNSTIFFENED = 0.43;
export const WIDTH_LIMITS = {
  stiffened: 500,
  simpleLip: 60,
  unstiffened: 60,
  web: 200,
  lipOverFlange: 0.8,
} as const;

/**
 * Coefficients in which S100-16 differs from older rules. `k` fixes the unstiffened coefficient
 * (older practice) instead of the stress gradient's.
 */
export interface PlateRules {
  readonly unstiffened: number;
  readonly fixedUnstiffened: boolean;
  readonly lipConstant: number;
  readonly lipExponent: (wOverTS: number) => number;
}

export const S100_RULES: PlateRules = {
  unstiffened: K_UNSTIFFENED,
  fixedUnstiffened: false,
  lipConstant: 0.328,
  lipExponent: (x) => Math.max(1 / 3, 0.582 - x / 4),
};

export interface PlateWidth {
  readonly k: number;
  readonly lambda: number;
  readonly rho: number;
  readonly b: number;
}

/** rho = 1 to lambda 0.673, then (1 - 0.22/lambda)/lambda (Eq. 1.1-2). */
export function reduction(lambda: number): number {
  return lambda <= LAMBDA_LIMIT ? 1 : Math.min(1, (1 - 0.22 / lambda) / lambda);
}

/** lambda = (1.052/sqrt k)(w/t) sqrt(f/E) (Eq. 1.1-4). */
export function slenderness(wOverT: number, f: number, E: number, k: number): number {
  return (SLENDERNESS_FACTOR / Math.sqrt(k)) * wOverT * Math.sqrt(f / E);
}

/** Effective width b = rho w of a flat of width w under uniform stress f (1.1). */
export function effectiveWidth(w: number, t: number, f: number, E: number, k: number): PlateWidth {
  const lambda = slenderness(w / t, f, E, k);
  const rho = reduction(lambda);
  return { k, lambda, rho, b: rho * w };
}

export interface GradientWidth extends PlateWidth {
  readonly psi: number;
  /** Next to the more compressed end, and next to the neutral axis or the other end. */
  readonly b1: number;
  readonly b2: number;
  /** b1 + b2 reach over the whole compressed depth. */
  readonly full: boolean;
}

/**
 * A flat with both edges supported, stress f1 at its more compressed end and f2 at the other
 * (tension negative), both at the ends of the flat (1.1.2). `narrow`: h_o/b_o over 4, where b2
 * shrinks (from memory). `lesserB2` takes b_e/2 on both sides of psi = 0.236, the smaller reading,
 * for the case where the rule's jump keeps a section from settling.
 */
export function stiffenedGradient(
  w: number,
  t: number,
  f1: number,
  f2: number,
  E: number,
  narrow = false,
  lesserB2 = false,
): GradientWidth {
  const psi = Math.abs(f2 / f1);
  const pressed = f2 >= 0;
  const spread = pressed ? 1 - psi : 1 + psi;
  const k = 4 + 2 * spread * spread * spread + 2 * spread;
  const lambda = slenderness(w / t, f1, E, k);
  const rho = reduction(lambda);
  const b = rho * w;
  const b1 = b / (pressed ? 3 - psi : 3 + psi);
  if (pressed) return { k, lambda, rho, b, psi, b1, b2: b - b1, full: rho >= 1 };
  const b2 = narrow ? b / (1 + psi) - b1 : psi > 0.236 || lesserB2 ? b / 2 : b - b1;
  return { k, lambda, rho, b, psi, b1, b2, full: b1 + b2 >= (w * f1) / (f1 - f2) };
}

/**
 * A flat with one free edge: stress `supported` at its bend, `free` at its edge (1.2.1, 1.2.2). All
 * branches meet at their limits. The tension branches are from memory. b is measured from the bend.
 */
export function unstiffened(
  w: number,
  t: number,
  supported: number,
  free: number,
  E: number,
  rules: PlateRules = S100_RULES,
): PlateWidth {
  const f1 = Math.max(supported, free);
  if (f1 <= 0) return { k: NaN, lambda: 0, rho: 1, b: w };
  if (rules.fixedUnstiffened) return effectiveWidth(w, t, f1, E, rules.unstiffened);
  const psi = Math.abs(Math.min(supported, free) / f1);
  if (supported >= 0 && free >= 0) {
    const k = supported >= free ? 0.578 / (psi + 0.34) : 0.57 - 0.21 * psi + 0.07 * psi * psi;
    return effectiveWidth(w, t, f1, E, k);
  }
  if (free < 0) {
    const k = 1.7 + 5 * psi + 17.1 * psi * psi;
    const { lambda, rho } = effectiveWidth(w, t, f1, E, k);
    return { k, lambda, rho, b: w - ((1 - rho) * w) / (1 + psi) };
  }
  const k = 0.57 + 0.21 * psi + 0.07 * psi * psi;
  const lambda = slenderness(w / t, f1, E, k);
  const spread = 1 + psi;
  const rho =
    lambda <= LAMBDA_LIMIT * spread ? 1 : (spread * (1 - (0.22 * spread) / lambda)) / lambda;
  return { k, lambda, rho, b: rho * w };
}
