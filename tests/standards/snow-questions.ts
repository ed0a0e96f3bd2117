// How a snow case of the file is put to the calculator or to the formulas.

import type { Calculator } from '../../libs/engineering/calculator.js';
import type { AsceEdition } from '../../libs/engineering/sources.js';
import { snowCalculators } from '../../libs/engineering/snow/calculators.js';
import type { DriftSite } from '../../libs/engineering/snow/drift-height.js';
import * as drift from '../../libs/engineering/snow/drift.js';
import type * as snowTables from '../../libs/engineering/snow/factors.table.js';
import * as flat from '../../libs/engineering/snow/flat-roof.js';
import { feet, pcf, psf } from '../../libs/engineering/units.js';

export type Values = Record<string, unknown>;

/** The inputs of every case here, under the names the case file gives them. */
export interface Inputs {
  readonly edition: AsceEdition;
  readonly risk_category?: snowTables.RiskCategory;
  readonly pg_psf: number;
  readonly pf_psf?: number;
  readonly ps_psf: number;
  readonly Ce?: number;
  readonly Ct?: number;
  readonly Is?: number;
  readonly W2?: number;
  readonly gamma_pcf?: number;
  readonly R_roof?: number;
  readonly R_gate_met?: boolean;
  readonly slope_rise_in12: number;
  readonly theta_deg?: number;
  readonly W_ft: number;
  readonly slippery?: boolean;
  readonly surface?: string;
  readonly lu_ft: number;
  readonly step_ft?: number;
  readonly parapet_ft?: number;
  readonly lower_roof_ft?: number;
  readonly type?: 'leeward' | 'windward' | 'parapet';
}

export const [snow] = snowCalculators as [Calculator];

/** A calculator's output, or the test fails with its faults. */
export function ask<T = Values>(calculator: Calculator, input: Values): T {
  const made = calculator.calculate(input);
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return made.value as T;
}

const CATEGORY_OF_IS = new Map([
  [0.8, 'I'],
  [1, 'II'],
  [1.1, 'III'],
  [1.2, 'IV'],
]);

/** A case as the calculator's question; what a case leaves out does not reach what it expects. */
export function question(i: Inputs, more: { readonly drift?: Values } = {}): Values {
  const gate = i.R_gate_met === undefined ? {} : { R_roof: i.R_gate_met ? 30 : 10 };
  const roof =
    i.theta_deg === undefined || i.slope_rise_in12 !== undefined
      ? { rise_per_12: i.slope_rise_in12 ?? 0 }
      : { theta_deg: i.theta_deg };
  const slippery = i.slippery ?? i.surface === 'slippery';
  return {
    edition: i.edition,
    pg_psf: i.pg_psf ?? 30,
    pg_basis: i.edition === '7-22' ? 'strength' : 'service-50yr',
    risk_category: i.risk_category ?? CATEGORY_OF_IS.get(i.Is ?? 1),
    Ce: i.Ce ?? 1,
    ...(i.R_roof === undefined ? { Ct: i.Ct } : { thermal: 'heated', R_roof: i.R_roof }),
    ...gate,
    ventilated: false,
    surface: slippery ? 'slippery-unobstructed' : 'other',
    roof: { shape: 'gable', ...roof, W_ft: i.W_ft ?? 30 },
    ...more,
    ...(i.W2 !== undefined && more.drift === undefined ? { drift: { W2: i.W2 } } : {}),
  };
}

/** What the calculator gives, with the sums the sources print. */
export function roofOutput(i: Inputs): Values {
  const out = ask(snow, question(i));
  const u = out['unbalanced'] as Record<string, number> | null;
  const ps = out['ps_psf'] as number;
  const rain = out['rain_on_snow_psf'] as number;
  return {
    ...out,
    theta_deg: (Math.atan(i.slope_rise_in12 / 12) * 180) / Math.PI,
    hb_ft: ps / (out['gamma_pcf'] as number),
    pm_applies: out['pm_psf'] !== null,
    unbalanced_applies: u !== null,
    rain_on_snow_total_psf: ps + rain,
    ...(u !== null && {
      windward_psf: u['windward_psf'],
      leeward_surcharge_psf: u['surcharge_psf'],
      extent_from_ridge_ft: u['surcharge_width_ft'],
      leeward_peak_psf: ps + (u['surcharge_psf'] ?? NaN),
      hd_ft: heightAtRidge(i),
    }),
  };
}

function heightAtRidge(i: Inputs): number {
  const made = snow.calculate(question(i));
  const found = made.ok ? made.steps.find((s) => s.symbol === 'h_d at the ridge') : undefined;
  return found === undefined ? NaN : Number(found.value);
}

/** A drift case through the formulas, since cases enter p_f and heights as they have them. */
export function driftOutput(kind: 'leeward' | 'windward' | 'parapet', cap?: drift.WindwardCap) {
  return (i: Inputs): Values => {
    const category = i.risk_category ?? 'II';
    const Ct =
      i.Ct ?? (i.R_roof === undefined ? 1 : flat.thermalFactorByR(psf(i.pg_psf), i.R_roof));
    const gamma = i.gamma_pcf === undefined ? flat.snowDensity(psf(i.pg_psf)) : pcf(i.gamma_pcf);
    const pf = i.pf_psf ?? flat.flatRoofSnow(psf(i.pg_psf), i.Ce ?? 1, Ct, i.Is ?? 1);
    const clear = i.step_ft ?? i.parapet_ft;
    const d = drift.driftOnRoof(
      siteOf(i),
      {
        kind: i.type ?? kind,
        lu: feet(i.lu_ft),
        ...(clear !== undefined && { clear: feet(clear) }),
        ...(i.lower_roof_ft !== undefined && { lowerRoof: feet(i.lower_roof_ft) }),
      },
      psf(pf),
      cap,
    );
    const hc = d.hc_ft ?? NaN;
    return {
      Ct,
      pf_psf: pf,
      gamma_pcf: gamma,
      pm_psf: flat.leastRoofSnow(i.edition, psf(i.pg_psf), category),
      hb_ft: d.hb_ft,
      hc_ft: hc,
      hc_over_hb: hc / d.hb_ft,
      hd_ft: d.hd_ft,
      hd_printed_ft: d.hd_ft,
      height_before_hc_ft: 0.75 * d.hd_ft,
      drift_height_ft: d.height_ft,
      w_ft: d.width_ft,
      pd_psf: d.pd_psf,
      peak_total_psf: pf + d.pd_psf,
    };
  };
}

export function siteOf(i: Inputs): DriftSite {
  const pg = psf(i.pg_psf);
  const gamma = i.gamma_pcf === undefined ? flat.snowDensity(pg) : pcf(i.gamma_pcf);
  return i.edition === '7-22'
    ? { edition: '7-22', pg, gamma, W2: i.W2 ?? NaN }
    : { edition: i.edition, pg, gamma, Is: i.Is ?? 1 };
}

export const Cs = (i: Inputs): Values => ({ Cs: ask(snow, question(i))['Cs'] });
export const CtOf = (i: Inputs): Values => {
  const Ct = ask(snow, { ...question(i), roof: { shape: 'flat', W_ft: 30 } })['Ct'];
  return { Ct, Ct_printed: Ct };
};
