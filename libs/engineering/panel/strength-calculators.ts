// Calculators of single strengths: effective width, shear, web crippling, equal spans.

import { calculator, STRUCTURE_CAUTION } from '../calculator.js';
import { refused, result, step, TO_BE_CONFIRMED, type Fault } from '../check.js';
import { cite } from '../sources.js';
import { degrees, inches, ksi } from '../units.js';
import { beamCoefficients, beamSteps, type BeamCoefficients } from './beam.js';
import { effectiveWidth, WIDTH_LIMITS } from './plate.js';
import { SHEAR_NOTES, STEEL_EDITIONS, webShear, webShearSteps } from './shear.js';
import { CRIPPLING_CASES } from './web-crippling.table.js';
import { deckCrippling } from './web-crippling.js';

const positive = (says: string, unit: string) =>
  ({ kind: 'number', says, unit, above: 0 }) as const;

const APPENDIX_1 = cite('aisi-s100-16', 'Appendix 1, 1.1');

export const effectiveWidthCalculator = calculator({
  name: 'effective-width',
  says: 'Effective width of one uniformly compressed flat',
  input: {
    w_in: positive('flat width', 'in'),
    t_in: positive('thickness', 'in'),
    f_ksi: positive('compressive stress', 'ksi'),
    k: positive('plate buckling coefficient: 4 stiffened, 0.43 unstiffened', ''),
    E_ksi: positive('modulus of elasticity', 'ksi'),
  },
  output: { lambda: 'slenderness', rho: 'reduction', b_in: 'effective width' },
  cautions: [STRUCTURE_CAUTION],
  run: ({ w_in, t_in, f_ksi, k, E_ksi }) => {
    if (w_in / t_in > WIDTH_LIMITS.stiffened) {
      const message = `w/t is ${(w_in / t_in).toFixed(1)}, over 500 (AISI S100-16 B4.1)`;
      return refused({ pointer: '/w_in', message });
    }
    const { lambda, rho, b } = effectiveWidth(w_in, t_in, f_ksi, E_ksi, k);
    return result({ lambda, rho, b_in: b }, [
      step('lambda', lambda, '', '(1.052/sqrt k)(w/t) sqrt(f/E)', APPENDIX_1),
      step('rho', rho, '', '1 to lambda 0.673; (1 - 0.22/lambda)/lambda above', APPENDIX_1),
      step('b', b, 'in', 'rho w', APPENDIX_1),
    ]);
  },
});

export const shear = calculator({
  name: 'shear',
  says: 'Shear strength of one flat web without holes or stiffeners',
  input: {
    h_in: positive('flat depth in the plane of the web', 'in'),
    t_in: positive('thickness', 'in'),
    Fy_ksi: positive('yield stress', 'ksi'),
    E_ksi: positive('modulus of elasticity', 'ksi'),
    kv: positive('shear buckling coefficient: 5.34 unstiffened', ''),
    edition: { kind: 'choice', of: STEEL_EDITIONS, says: 'edition of AISI S100' },
  },
  output: {
    Vy_kip: 'yield shear',
    Vcr_kip: 'elastic buckling shear',
    lambda_v: 'slenderness',
    Vn_kip: 'nominal strength',
    Va_kip: 'allowable strength',
  },
  cautions: [STRUCTURE_CAUTION],
  run: ({ h_in, t_in, Fy_ksi, E_ksi, kv, edition }) => {
    if (h_in / t_in > WIDTH_LIMITS.web) {
      const message = `h/t is ${(h_in / t_in).toFixed(1)}, over 200 (AISI S100-16 B4.1)`;
      return refused({ pointer: '/h_in', message });
    }
    const v = webShear(inches(h_in), inches(t_in), ksi(Fy_ksi), ksi(E_ksi), kv, edition);
    const value = { Vy_kip: v.Vy, Vcr_kip: v.Vcr, lambda_v: v.lambda, Vn_kip: v.Vn, Va_kip: v.Va };
    return result(value, webShearSteps(v), SHEAR_NOTES[edition]);
  },
});

export const webCrippling = calculator({
  name: 'web-crippling',
  says: 'Web crippling strength of one web of a multiple-web deck section',
  input: {
    case: {
      kind: 'choice',
      of: CRIPPLING_CASES,
      says: 'fastened to support or not; end or interior; one or two flanges loaded',
    },
    Fy_ksi: positive('yield stress', 'ksi'),
    t_in: positive('thickness', 'in'),
    R_in: { kind: 'number', says: 'inside bend radius', unit: 'in', least: 0 },
    N_in: positive('bearing length', 'in'),
    h_in: positive('flat depth in the plane of the web', 'in'),
    theta_deg: { kind: 'number', says: 'web to bearing surface, 45 to 90', unit: 'deg' },
  },
  output: { Pn_kip: 'nominal strength, one web', Pa_kip: 'allowable strength, one web' },
  cautions: [STRUCTURE_CAUTION],
  run: (input) => {
    const web = {
      Fy: ksi(input.Fy_ksi),
      t: inches(input.t_in),
      R: inches(input.R_in),
      N: inches(input.N_in),
      h: inches(input.h_in),
      theta: degrees(input.theta_deg),
    };
    const p = deckCrippling(web, input.case);
    if (!p.ok) return p;
    const notes = [
      'support fasteners more than 18 in apart count as unfastened',
      `Table G5-5 read second-hand: ${TO_BE_CONFIRMED}`,
    ];
    return result({ Pn_kip: p.value.Pn, Pa_kip: p.value.Pa }, p.steps, notes);
  },
});

export const beam = calculator({
  name: 'beam',
  says: 'Moments, reactions and deflection of equal spans under uniform load',
  input: {
    spans: { kind: 'number', says: 'equal spans', unit: '', whole: true, least: 1, most: 20 },
    w_plf: { ...positive('uniform load', 'plf'), optional: true },
    span_ft: { ...positive('span', 'ft'), optional: true },
    EI_kipin2: { ...positive('stiffness', 'kip-in2'), optional: true },
  },
  output: {
    M_pos_wL2: 'largest moment in a span',
    M_neg_wL2: 'largest moment over a support, as a magnitude',
    R_end_wL: 'end reaction',
    R_int_wL: 'largest interior reaction; null for one span',
    V_max_wL: 'largest shear',
    delta_wL4_EI: 'largest deflection',
    M_pos_kipin: 'with w_plf and span_ft',
    M_neg_kipin: 'with w_plf and span_ft',
    R_end_lb: 'with w_plf and span_ft',
    R_int_lb: 'with w_plf and span_ft',
    V_max_lb: 'with w_plf and span_ft',
    delta_in: 'with EI_kipin2 too',
  },
  cautions: [STRUCTURE_CAUTION],
  run: ({ spans, w_plf, span_ft, EI_kipin2 }) => {
    const faults = loadFaults(w_plf, span_ft, EI_kipin2);
    if (faults.length > 0) return refused(...faults);
    const c = beamCoefficients(spans);
    const value = {
      M_pos_wL2: c.mPos,
      M_neg_wL2: c.mNeg,
      R_end_wL: c.rEnd,
      R_int_wL: c.rInt,
      V_max_wL: c.vMax,
      delta_wL4_EI: c.delta,
    };
    if (w_plf === undefined || span_ft === undefined) return result(value, beamSteps(c));
    return result({ ...value, ...loaded(c, w_plf, span_ft, EI_kipin2) }, beamSteps(c));
  },
});

function loadFaults(w?: number, span?: number, EI?: number): Fault[] {
  const faults: Fault[] = [];
  const missing = (pointer: string, why: string) => {
    faults.push({ pointer, message: `is missing: ${why}` });
  };
  if (w === undefined && (span !== undefined || EI !== undefined)) {
    missing('/w_plf', 'values need the load');
  }
  if (span === undefined && (w !== undefined || EI !== undefined)) {
    missing('/span_ft', 'values need the span');
  }
  return faults;
}

function loaded(c: BeamCoefficients, w: number, span: number, EI?: number) {
  const moment = (w * span * span * 12) / 1000;
  const force = w * span;
  return {
    M_pos_kipin: c.mPos * moment,
    M_neg_kipin: c.mNeg * moment,
    R_end_lb: c.rEnd * force,
    R_int_lb: c.rInt === null ? null : c.rInt * force,
    V_max_lb: c.vMax * force,
    ...(EI === undefined ? {} : { delta_in: ((c.delta * w) / 12000) * ((12 * span) ** 4 / EI) }),
  };
}
