// Web crippling: what one web bears where a support or a load presses on it.

import { refused, result, step, type Fault, type Outcome, type Step } from '../check.js';
import { cite } from '../sources.js';
import { kips, type Degrees, type Inches, type Kips, type Ksi } from '../units.js';
import {
  CRIPPLING,
  CRIPPLING_LIMITS,
  type CripplingCase,
  type CripplingCoefficients,
} from './web-crippling.table.js';

export interface Web {
  readonly Fy: Ksi;
  readonly t: Inches;
  /** Inside bend radius, bearing length, flat depth in the web's plane. */
  readonly R: Inches;
  readonly N: Inches;
  readonly h: Inches;
  /** Between the web and the bearing surface. */
  readonly theta: Degrees;
}

export interface WebCrippling {
  readonly Pn: Kips;
  readonly Pa: Kips;
}

const G5 = cite('aisi-s100-16', 'G5');
const TABLE = cite('aisi-s100-16', 'Table G5-5');

/**
 * P_n = C t^2 F_y sin theta (1 - C_R sqrt(R/t))(1 + C_N sqrt(N/t))(1 - C_h sqrt(h/t)), kip per web
 * (AISI S100-16 Eq. G5-1) for any row of its tables.
 */
export function cripplingStrength(
  web: Web,
  c: Pick<CripplingCoefficients, 'C' | 'CR' | 'CN' | 'Ch'>,
): Kips {
  const { Fy, t, R, N, h, theta } = web;
  const bend = 1 - c.CR * Math.sqrt(R / t);
  const bearing = 1 + c.CN * Math.sqrt(N / t);
  const slender = 1 - c.Ch * Math.sqrt(h / t);
  return kips(c.C * t * t * Fy * Math.sin((theta * Math.PI) / 180) * bend * bearing * slender);
}

/**
 * Strength of one web of a multiple-web deck section (Table G5-5). Refused outside h/t 200, N/t
 * 210, N/h 3, theta 45 to 90 degrees and the row's R/t. Support fasteners more than 18 in apart
 * count as unfastened. Left out: webs with holes, other tables (hat, C and Z sections).
 */
export function deckCrippling(web: Web, which: CripplingCase): Outcome<WebCrippling> {
  const faults = cripplingFaults(web, which);
  if (faults.length > 0) return refused(...faults);
  const row = CRIPPLING[which];
  const Pn = cripplingStrength(web, row);
  const Pa = kips(Pn / row.Omega);
  return result({ Pn, Pa }, cripplingSteps(row, Pn, Pa, which));
}

function cripplingFaults(web: Web, which: CripplingCase): Fault[] {
  const { t, R, N, h, theta } = web;
  const most = CRIPPLING[which].mostROverT ?? CRIPPLING_LIMITS.ROverT;
  const faults: Fault[] = [];
  const over = (pointer: string, name: string, ratio: number, limit: number): void => {
    if (ratio <= limit * (1 + 1e-12)) return;
    faults.push({
      pointer,
      message: `${name} is ${ratio.toFixed(2)}, over ${limit} (AISI S100-16 Table G5-5)`,
    });
  };
  over('/h_in', 'h/t', h / t, CRIPPLING_LIMITS.hOverT);
  over('/N_in', 'N/t', N / t, CRIPPLING_LIMITS.NOverT);
  over('/N_in', 'N/h', N / h, CRIPPLING_LIMITS.NOverH);
  over('/R_in', 'R/t', R / t, most);
  if (theta < CRIPPLING_LIMITS.leastTheta || theta > CRIPPLING_LIMITS.mostTheta) {
    faults.push({
      pointer: '/theta_deg',
      message: `the web stands at ${theta.toFixed(1)} degrees, outside 45 to 90 (Table G5-5)`,
    });
  }
  return faults;
}

function cripplingSteps(row: CripplingCoefficients, Pn: number, Pa: number, name: string): Step[] {
  return [
    step('C', row.C, '', name, TABLE),
    step('C_R', row.CR, '', name, TABLE),
    step('C_N', row.CN, '', name, TABLE),
    step('C_h', row.Ch, '', name, TABLE),
    step(
      'P_n',
      Pn,
      'kip',
      'C t^2 F_y sin theta (1 - C_R sqrt(R/t))(1 + C_N sqrt(N/t))(1 - C_h sqrt(h/t))',
      G5,
    ),
    step('P_a', Pa, 'kip', `P_n / ${row.Omega}`, TABLE),
  ];
}

/**
 * End one-flange strength of a C or Z with an overhang L_o beyond the load: alpha =
 * 1.34 (L_o/h)^0.26/(0.009 (h/t) + 0.3), at least 1 (AISI S100-16 Eq. G5-2, from memory). Not for
 * decks.
 */
export function overhangFactor(Lo: Inches, h: Inches, t: Inches): number {
  return Math.max(1, (1.34 * (Lo / h) ** 0.26) / (0.009 * (h / t) + 0.3));
}
