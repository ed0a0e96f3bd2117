// Snow loads against outside values, each with its source and label beside it.

import { describe, expect, test } from '@jest/globals';
import { citationText } from '../../libs/engineering/sources.js';
import { driftHeight, type DriftSite } from '../../libs/engineering/snow/drift-height.js';
import * as drift from '../../libs/engineering/snow/drift.js';
import * as snowTables from '../../libs/engineering/snow/factors.table.js';
import * as flat from '../../libs/engineering/snow/flat-roof.js';
import { retentionDrag } from '../../libs/engineering/snow/sliding.js';
import * as unbalanced from '../../libs/engineering/snow/unbalanced.js';
import { degrees, feet, inches, pcf, per12, psf } from '../../libs/engineering/units.js';
import { readCases, runCases, type StandardCase } from './cases.js';
import { ask, Cs, CtOf, driftOutput, question, roofOutput, snow } from './snow-questions.js';
import type { Inputs, Values } from './snow-questions.js';

/** Old tables and examples of one case each, by its id. */
const BY_ID: Record<string, (i: Inputs) => Values> = {
  'snow-710-comm-ex3-low': (i) => {
    const { lu_upper_ft, lu_lower_ft } = i as unknown as Record<string, number>;
    const leeward = driftOutput('leeward')({ ...i, lu_ft: lu_upper_ft ?? NaN });
    const windward = driftOutput('windward')({ ...i, lu_ft: lu_lower_ft ?? NaN });
    return {
      ...leeward,
      hd_leeward_ft: leeward['drift_height_ft'],
      hd_windward_ft: windward['drift_height_ft'],
      governs: Number(leeward['pd_psf']) >= Number(windward['pd_psf']) ? 'leeward' : 'windward',
    };
  },
  'snow-722-comm-c710': (i) => {
    const pg = psf(i.pg_psf);
    const category = i.risk_category ?? 'II';
    const rain = flat.rainOnSnow(
      i.edition,
      pg,
      category,
      degreesOf(i.slope_rise_in12),
      feet(i.W_ft),
    );
    const pm = flat.leastRoofSnow(i.edition, pg, category);
    const total = i.ps_psf + rain;
    return {
      rain_on_snow_psf: rain,
      ps_plus_ros_psf: total,
      pm_psf: pm,
      governing_psf: Math.max(total, pm),
    };
  },
  'snow-hibbeler-1-4-erratum': (i) => ({
    pm_by_rule_psf: flat.leastRoofSnow(i.edition, psf(i.pg_psf), 'I'),
    pm_printed_psf: flat.leastRoofSnow(i.edition, psf(i.pg_psf), 'IV'),
  }),
  'snow-table-ct733': () => ({
    Ct: [20, 30, 40, 50].map((R) =>
      [10, 20, 30, 40, 50, 60, 70].map((pg) => flat.thermalFactorByR(psf(pg), R)),
    ),
    above_R50: flat.thermalFactorByR(psf(30), 51),
  }),
  'snow-table-ce': () => {
    const row = (terrain: snowTables.Terrain): unknown[] =>
      (['fully', 'partially', 'sheltered'] as const).map(
        (each) => flat.exposureFactor(terrain, each) ?? null,
      );
    return {
      B: row('B'),
      C: row('C'),
      D: row('D'),
      above_tree_line: row('above-tree-line'),
      alaska_no_trees_2mi: row('alaska-no-trees'),
    };
  },
  'snow-table-ct716': () => ({
    all_other: flat.thermalFactor716('heated'),
    just_above_freezing_or_cold_ventilated_R25: Math.max(
      flat.thermalFactor716('just-above-freezing'),
      flat.thermalFactor716('cold-ventilated', 26),
    ),
    unheated_open_air: flat.thermalFactor716('open-air'),
    freezer: flat.thermalFactor716('freezer'),
    greenhouse: flat.thermalFactor716('greenhouse'),
  }),
  'snow-table-ct722': (i) => {
    const of = (condition: snowTables.ThermalCondition): number =>
      flat.thermalFactor722(condition, psf(30), 30);
    return {
      all_other: clauseOfCt({ ...i, edition: '7-22', R_roof: 30 }),
      unheated_open_air: of('open-air'),
      just_above_freezing: of('just-above-freezing'),
      cold_ventilated: of('cold-ventilated'),
      freezer: of('freezer'),
      greenhouse: of('greenhouse'),
    };
  },
  'snow-table-is': () => ({ ...snowTables.SNOW_IMPORTANCE }),
  'snow-jl-gamma-200': (i) => ({ gamma_pcf: flat.snowDensity(psf(i.pg_psf)) }),
  'snow-jl-pf-30': (i) => ({
    pf_psf: ask(snow, { ...question(i), roof: { shape: 'flat', W_ft: 30 } })['pf_psf'],
  }),
  'snow-jl-pm-50': (i) => ({
    pm_psf: flat.leastRoofSnow(i.edition, psf(i.pg_psf), i.risk_category ?? 'I'),
  }),
  'snow-jl-gate-05': (i) => {
    const { hc_ft, hb_ft } = i as unknown as { hc_ft: number; hb_ft: number };
    return { drift_required: drift.driftRequired(hc_ft, hb_ft) };
  },
  'snow-jl-proj-clear': projection,
  'snow-jl-proj-yes': projection,
  'snow-jl-leeward-60pct': (i) => {
    const { hd_ft, lower_roof_length_ft } = i as unknown as Record<string, number>;
    return {
      hd_limited_ft: drift.leewardLimit(feet(hd_ft ?? NaN), feet(lower_roof_length_ft ?? NaN)),
    };
  },
};

const degreesOf = (rise: number) => degrees((Math.atan(rise / 12) * 180) / Math.PI);

/** The table that a heated roof's C_t is read from, as its step cites it. */
function clauseOfCt(i: Inputs): string | undefined {
  const made = snow.calculate({ ...question(i), roof: { shape: 'flat', W_ft: 30 } });
  const found = made.ok ? made.steps.find((s) => s.symbol === 'C_t') : undefined;
  return found === undefined ? undefined : citationText(found.cite).split(', ').at(-1);
}

function projection(i: Inputs): Values {
  const { side_length_ft, clear_below_ft, upwind_ft, downwind_ft } = i as unknown as {
    side_length_ft: number;
    clear_below_ft: number;
    upwind_ft?: number;
    downwind_ft?: number;
  };
  const it = {
    side: feet(side_length_ft),
    clearBelow: feet(clear_below_ft),
    upwind: feet(upwind_ft ?? 40),
    downwind: feet(downwind_ft ?? 40),
  };
  const site: DriftSite = { edition: '7-22', pg: psf(30), gamma: pcf(17.9), W2: 0.5 };
  const d = drift.driftAtProjection(site, it, psf(0));
  return {
    drift_required: d !== null,
    lu_ft: drift.projectionFetch(it),
    height_factor: d === null ? undefined : d.height_ft / driftHeight(site, feet(40)),
  };
}

const BY_TOPIC: Record<string, (i: Inputs) => Values> = {
  'unbalanced extent': (i) => {
    const { hd_ft, S_run_per_unit_rise } = i as unknown as Record<string, number>;
    return {
      extent_from_ridge_ft: unbalanced.ridgeExtent(feet(hd_ft ?? NaN), S_run_per_unit_rise ?? NaN),
    };
  },
  'complete: pg->pf->drift at roof step': driftOutput('leeward'),
  'complete: pg->pf->drift at roof step, capped by hc': driftOutput('leeward'),
  'unbalanced applicability limit': (i) => ({
    unbalanced_required: unbalanced.unbalancedRequired(per12(i.slope_rise_in12)),
  }),
  'unbalanced gable (7-22)': (i) => roofOutput({ ...i, Ct: 1.2 }),
  'Ct by Table 7.3-3': CtOf,
  'Ct Table 7.3-3 interpolation': CtOf,
  'drift height Eq. 7.6-1': driftOutput('leeward'),
  'pf, gamma, hb': driftOutput('leeward'),
  'parapet drift, lu < 20 ft': driftOutput('parapet'),
  'same roof by ASCE 7-10 form': driftOutput('parapet'),
  'parapet drift capped by hc and 8hc': driftOutput('parapet'),
  'leeward drift with sqrt(Is)': driftOutput('leeward'),
  'windward drift with sqrt(Is)': driftOutput('windward'),
  'leeward drift, 8hc cap': driftOutput('leeward'),
  'complete: pf->windward drift, Is 0.8': driftOutput('windward'),
  'flat roof, heated, R30': (i) => driftOutput('leeward')({ ...i, lu_ft: 30 }),
  'complete: pf->parapet drift': driftOutput('parapet'),
  'complete: pf->leeward drift': driftOutput('leeward'),
  'windward drift, governs over leeward': driftOutput('windward'),
  'leeward, hc cap and 8hc width': driftOutput('leeward'),
  'parapet taller drift than hc (disputed rule)': driftOutput('parapet', 'capped'),
  'minimum and rain on snow': roofOutput,
  'complete: pg->pf->ps->unbalanced, 6:12 gable': roofOutput,
  'complete: cold slippery metal, steep, no unbalanced': roofOutput,
  'narrow roof W<=20 ft': (i) => ({ ...unbalanced.unbalancedNarrow(psf(i.pg_psf), i.Is ?? 1) }),
  'Cs warm roof, metal, R below gate': Cs,
  'Cs slippery': Cs,
  'Cs other surfaces': Cs,
  'flat roof, open terrain, unheated': (i) => roofOutput({ ...i, slope_rise_in12: 0 }),
  'complete: step, upper roof': (i) => roofOutput({ ...i, slope_rise_in12: 0 }),
  'hd curve, read off a figure': (i) => {
    const { pg_kPa, lu_m } = i as unknown as { pg_kPa: number; lu_m: number };
    const site: DriftSite = {
      edition: '7-16',
      pg: psf(pg_kPa * 20.885434),
      gamma: pcf(16.7),
      Is: 1,
    };
    return { hd_m: driftHeight(site, feet(lu_m / 0.3048)) * 0.3048 };
  },
  'ground snow table': () => ({ ...snowTables.ALASKA_GROUND_SNOW_PSF }),
  'down-slope drag for snow retention': (i) => {
    const { design_roof_snow_psf } = i as unknown as { design_roof_snow_psf: number };
    return {
      ...retentionDrag(psf(design_roof_snow_psf), per12(i.slope_rise_in12), feet(40), inches(18)),
    };
  },
};

const cases = readCases('snow');
const evaluatorOf = (c: StandardCase) => BY_ID[c.id] ?? BY_TOPIC[c.topic];

describe('snow against outside values', () => {
  test('every case of the file is run', () => {
    expect(cases).toHaveLength(66);
    expect(new Set(cases.map((c) => c.id)).size).toBe(66);
    expect(cases.filter((c) => evaluatorOf(c) === undefined).map((c) => c.id)).toEqual([]);
  });

  runCases(cases, (c) => evaluatorOf(c)?.(c.inputs as unknown as Inputs) ?? {});
});
