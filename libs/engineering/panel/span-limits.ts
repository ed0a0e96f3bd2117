// What uniform load a panel bears over equal spans, one limit state at a time (ASD, psf).

import { check, step, type Check, type Step } from '../check.js';
import { cite, type Citation } from '../sources.js';
import { psf, type Feet, type Psf } from '../units.js';
import { OMEGA_B } from './bending.js';
import { beamCoefficients, type BeamCoefficients } from './beam.js';
import type { PanelStrength } from './panel.js';
import { SOURCE_OF } from './shear.js';

/** Inward acts toward the surface; outward away from it (uplift, suction). */
export type LoadDirection = 'inward' | 'outward';

export interface SpanLimit {
  readonly limitState: string;
  readonly kind: 'strength' | 'deflection';
  /** Allowable uniform load, as a magnitude. */
  readonly load: Psf;
  readonly steps: readonly Step[];
}

/** Safety factor of combined bending and web crippling (AISI S100-16 H3, from memory). */
export const OMEGA_H3 = 1.7;

const DEFLECTION = cite('mechanics', 'three-moment equation, equal spans');

/**
 * Every limit state of a panel over `beam.spans` equal spans of length L (ft) for one direction.
 * `deflection` is the n of L/n. The moment in the span and the one over a support are each held
 * against their own strength; shear and the interaction over a support (AISI S100-16 H2, H3) take
 * the largest moment together with the largest shear. Web crippling counts for inward load only:
 * outward load pulls on the attachment instead. The standard exempts some continuous decks from H3;
 * here it always applies, which is the stricter reading.
 */
export function spanLimits(
  strength: PanelStrength,
  beam: BeamCoefficients,
  L: Feet,
  direction: LoadDirection,
  deflection: number,
): SpanLimit[] {
  const s100 = SOURCE_OF[strength.panel.edition];
  const inward = direction === 'inward';
  const inSpan = inward ? strength.positive : strength.negative;
  const overSupport = inward ? strength.negative : strength.positive;
  const limits: SpanLimit[] = [];
  const strengthLimit = (limitState: string, load: number, formula: string, at: string): void => {
    limits.push(limit(limitState, 'strength', load, formula, cite(s100, at)));
  };
  const mInSpan = momentPerPsf(beam.mPos, L);
  const mOver = momentPerPsf(beam.mNeg, L);
  const v = (beam.vMax * L) / 1000;
  strengthLimit('bending in the span', inSpan.Ma / mInSpan, 'M_a / (m+ L^2)', 'F3.1');
  strengthLimit('shear', strength.Va / v, 'V_a / (v L)', 'G2.1');
  if (beam.mNeg > 0) {
    const both = 1 / Math.hypot(mOver / overSupport.Ma, v / strength.Va);
    strengthLimit('bending over a support', overSupport.Ma / mOver, 'M_a / (m- L^2)', 'F3.1');
    strengthLimit(
      'bending and shear over a support',
      both,
      'sqrt((M/M_a)^2 + (V/V_a)^2) = 1',
      'H2',
    );
  }
  const { crippling } = strength;
  if (inward && typeof crippling !== 'string') {
    const end = crippling.end.Pa / ((beam.rEnd * L) / 1000);
    strengthLimit('web crippling at an end support', end, 'P_a / (r L)', 'G5');
    if (beam.rInt !== null) {
      const r = (beam.rInt * L) / 1000;
      const both = 1.46 / OMEGA_H3 / ((0.88 * r) / crippling.interior.Pn + mOver / overSupport.Mn);
      const pressed = crippling.interior.Pa / r;
      strengthLimit('web crippling at an interior support', pressed, 'P_a / (r L)', 'G5');
      strengthLimit('bending and web crippling', both, '0.88 P/P_n + M/M_n = 1.46/1.70', 'H3');
    }
  }
  const stiff = (12000 * strength.panel.E * inSpan.serviceI) / (beam.delta * deflection);
  const w = stiff / (12 * L) ** 3;
  limits.push(limit('deflection', 'deflection', w, `L/${deflection}: E I/(d n L^3)`, DEFLECTION));
  return limits;
}

/** kip-in per foot of cover for one psf. */
const momentPerPsf = (coefficient: number, L: number): number => (coefficient * L * L * 12) / 1000;

function limit(
  limitState: string,
  kind: SpanLimit['kind'],
  load: number,
  formula: string,
  source: Citation,
): SpanLimit {
  return {
    limitState,
    kind,
    load: psf(load),
    steps: [step('w', load, 'psf', formula, source)],
  };
}

/** The limit that governs. */
export function governing(limits: readonly SpanLimit[]): SpanLimit {
  let least = limits[0]!;
  for (const each of limits) if (each.load < least.load) least = each;
  return least;
}

export interface PanelDemand {
  readonly spans: number;
  readonly L: Feet;
  /** Net ASD pressure toward the surface, and away from it (negative or zero). */
  readonly inward: Psf;
  readonly outward: Psf;
  readonly deflection: number;
}

/** Demand against capacity of every limit state in both directions, with the strength's steps. */
export function panelChecks(strength: PanelStrength, demand: PanelDemand): Check[] {
  const beam = beamCoefficients(demand.spans);
  const checks: Check[] = [];
  const common = strengthSteps(strength);
  for (const direction of ['inward', 'outward'] as const) {
    const pressure = demand[direction];
    for (const each of spanLimits(strength, beam, demand.L, direction, demand.deflection)) {
      const name = `${direction}: ${each.limitState}`;
      checks.push(check(name, pressure, each.load, 'psf', [...common, ...each.steps]));
    }
  }
  return checks;
}

/** Steps of the strengths that span limits start from, per foot of cover. */
export function strengthSteps(strength: PanelStrength): Step[] {
  const source = SOURCE_OF[strength.panel.edition];
  const f = cite(source, 'F3.1, Appendix 1');
  const { positive, negative } = strength;
  const steps = [
    step('S_e+', positive.effective.S, 'in3/ft', 'effective section at first yield', f),
    step('M_a+', positive.Ma, 'kip-in/ft', `S_e F_y / ${OMEGA_B}`, f),
    step('S_e-', negative.effective.S, 'in3/ft', 'effective section at first yield', f),
    step('M_a-', negative.Ma, 'kip-in/ft', `S_e F_y / ${OMEGA_B}`, f),
    step('I_d+', positive.serviceI, 'in4/ft', 'effective section at 0.6 F_y', f),
    step('I_d-', negative.serviceI, 'in4/ft', 'effective section at 0.6 F_y', f),
    step('V_a', strength.Va, 'kip/ft', 'sum of V_n sin theta / Omega_v', cite(source, 'G2.1')),
  ];
  if (typeof strength.crippling !== 'string') {
    const { end, interior } = strength.crippling;
    const g5 = cite('aisi-s100-16', 'Table G5-5');
    steps.push(step('P_a,end', end.Pa, 'kip/ft', 'sum of P_n / Omega_w, EOF', g5));
    steps.push(step('P_a,int', interior.Pa, 'kip/ft', 'sum of P_n / Omega_w, IOF', g5));
  }
  return steps;
}
