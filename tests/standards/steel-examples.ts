// Worked examples of effective sections, step by step as their sources print them.

import { effectiveSection } from '../../libs/engineering/panel/effective-section.js';
import { pieceOf } from '../../libs/engineering/panel/moments.js';
import { sheetShape, type SheetShape } from '../../libs/engineering/panel/outline.js';
import {
  effectiveWidth,
  S100_RULES,
  stiffenedGradient,
  type PlateRules,
} from '../../libs/engineering/panel/plate.js';
import { lippedFlange } from '../../libs/engineering/panel/stiffener.js';
import { inches } from '../../libs/engineering/units.js';
import { channel, slitBox } from './steel-shapes.js';

type Values = Record<string, unknown>;
type Inputs = Record<string, number>;

/** The stainless rule of 1991: k_u 0.5 throughout, lip constant 0.33, exponent 1/2 to w/t = S. */
export const RULES_1991: PlateRules = {
  unstiffened: 0.5,
  fixedUnstiffened: true,
  lipConstant: 0.33,
  lipExponent: (relative) => (relative < 1 ? 1 / 2 : 1 / 3),
};

function shapeOf(outcome: ReturnType<typeof sheetShape>): SheetShape {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
  return outcome.value;
}

/** First round of a box in bending: flange first, then the web at the center of gravity found. */
export function boxFirstRound(i: Inputs): Values {
  const { H_in: H = 0, t_in: t = 0, R_inside_in: R = 0, Fy_MPa: F = 0, E_MPa: E = 0 } = i;
  const shape = shapeOf(sheetShape(slitBox(i), inches(t)));
  const flange = effectiveSection(shape, F, E).elements.find((e) => e.kind === 'stiffened')!;
  const sum = { area: 0, first: 0, second: 0 };
  shape.flats.forEach((flat, at) => {
    if (at !== flange.flat) return pieceOf(flat, t, 0, flat.w, sum);
    const width = effectiveWidth(flat.w, t, F, E, 4).b;
    return pieceOf(flat, t, 0, width, sum);
  });
  for (const b of shape.bends) {
    sum.area += b.area;
    sum.first += b.first;
  }
  const fromTop = H / 2 - sum.first / sum.area;
  const h = H - 2 * (R + t);
  const f1 = (F * (fromTop - R - t)) / fromTop;
  const f2 = (-F * (H - R - t - fromTop)) / fromTop;
  const web = stiffenedGradient(h, t, f1, f2, E);
  return {
    w_in: flange.w,
    w_over_t: flange.w / t,
    k_flange: flange.k,
    lambda_flange: flange.lambda,
    rho_flange: flange.rho,
    b_flange_in: flange.b,
    corner_length_in: shape.bends[0]!.length,
    sum_Ly_in2: (sum.area * fromTop) / t,
    ycg_first_in: fromTop,
    f1_MPa: f1,
    f2_MPa: f2,
    psi: web.psi,
    k_web: web.k,
    h_over_t: h / t,
    lambda_web: web.lambda,
    rho_web: web.rho,
    h_comp_in: (h * f1) / (f1 - f2),
  };
}

/** A channel to the rule of its source: S100, or 1991 where the source gives k_u = 0.5. */
export function channelExample(i: Inputs): Values {
  const rules = i['k_unstiffened'] === 0.5 ? RULES_1991 : S100_RULES;
  const { Fy_ksi: Fy = 0, E_ksi: E = 0, t_in: t = 0 } = i;
  const shape = shapeOf(sheetShape(channel(i), inches(t)));
  const section = effectiveSection(shape, Fy, E, rules);
  const web = section.elements.find((e) => e.kind === 'web')!;
  return {
    Se_in3: section.S,
    Mn_kipin: section.S * Fy,
    h_in: web.w,
    f1_ksi: web.f1,
    f2_ksi: web.f2,
    psi: web.f2 / web.f1,
    k_web: web.k,
    be_in: web.b,
    b1_in: web.b1,
    b2_in: web.b2,
    ...((i['lip_in'] ?? 0) > 0 ? { Ae_in2: compressedArea(shape, i, rules) } : {}),
  };
}

/** Effective area of a lipped channel with every flat at F_y. */
function compressedArea(shape: SheetShape, i: Inputs, rules: PlateRules): number {
  const { Fy_ksi: f = 0, E_ksi: E = 0, t_in: t = 0, lip_in: D = 0 } = i;
  const [lip, flange, web] = [shape.flats[0]!, shape.flats[1]!, shape.flats[2]!];
  const theta = Math.PI / 2;
  const lipped = lippedFlange({ w: flange.w, t, d: lip.w, D, theta, f, E }, rules);
  const ds = effectiveWidth(lip.w, t, f, E, rules.unstiffened).b * lipped.RI;
  const b = effectiveWidth(web.w, t, f, E, 4).b;
  const bends = shape.bends.reduce((sum, each) => sum + each.length, 0);
  return t * (b + 2 * lipped.b + 2 * ds + bends);
}

/** A flange and its lip; the stainless examples have an inside radius of 3/16 in. */
export function lipExample(i: Inputs): Values {
  const { w_in: w = 0, t_in: t = 0, d_in: d = 0, f_ksi: f = 0, E_ksi: E = 0 } = i;
  const rules = E === 27000 ? RULES_1991 : S100_RULES;
  const D = i['lip_overall_in'] ?? d + 0.1875 + t;
  const theta = (i['theta_deg']! * Math.PI) / 180;
  const flange = lippedFlange({ w, t, d, D, theta, f, E }, rules);
  const ds = effectiveWidth(d, t, f, E, rules.unstiffened).b * flange.RI;
  return {
    b_in: flange.b,
    ds_in: ds,
    S: flange.S,
    Is_in4: flange.Is,
    Ia_in4: flange.Ia,
    As_in2: ds * t,
    k: flange.k,
  };
}
