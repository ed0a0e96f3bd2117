// All snow loads of one roof surface, with the steps that lead to them.

import type { AsceEdition } from '../sources.js';
import { refused, result, step, TO_BE_CONFIRMED, type Outcome } from '../check.js';
import { psf, type Pcf, type Psf } from '../units.js';
import { SNOW_CLAUSES } from './clauses.js';
import type { DriftSite } from './drift-height.js';
import {
  flatRoofSnow,
  leastRoofSnow,
  leastSnowApplies,
  rainOnSnow,
  snowDensity,
  snowImportance,
} from './flat-roof.js';
import { driftLoads, slidingLoads, unbalancedLoads, type Working } from './moved-snow.js';
import { insulationGate, slopeFactor, type SlopeFactorInput } from './slope-factor.js';
import { LARGER_READINGS, needsW2, W2_MISSING } from './snow-roof.js';
import type { SnowLoads, SnowReadings, SnowRoof } from './snow-roof.js';

/**
 * Chapter 7 for one surface. Loads are service level in 7-10 and 7-16 and strength level in 7-22.
 * Refuses where 7-22 needs W2 and has none. Left out: partial loading (7.5), curved, folded and
 * barrel roofs, ponding, the 7-22 exemptions at very low p_g (they would only lower the load).
 */
export function snowOnRoof(
  roof: SnowRoof,
  readings: SnowReadings = LARGER_READINGS,
): Outcome<SnowLoads> {
  if (needsW2(roof) && roof.W2 === undefined) return refused(W2_MISSING);
  const work: Working = { at: SNOW_CLAUSES[roof.edition], steps: [], notes: [] };
  const { theta } = roof.slope;
  const Is = snowImportance(roof.edition, roof.riskCategory);
  const gamma = roof.gamma ?? snowDensity(roof.pg);
  const pf = flatRoofSnow(roof.pg, roof.Ce.value, roof.Ct.value, Is);
  explainFlat(roof, Is, gamma, pf, work);
  const Cs = slopeFactor(slopeInput(roof), readings.warmRoof722);
  const ps = psf(Cs * pf);
  explainSlope(roof, Cs, ps, work);
  const pm = leastSnowApplies(theta)
    ? leastRoofSnow(roof.edition, roof.pg, roof.riskCategory)
    : null;
  const ros = rainOnSnow(roof.edition, roof.pg, roof.riskCategory, theta, roof.W);
  if (pm !== null) work.steps.push(step('p_m', pm, 'psf', LEAST[roof.edition], work.at.least));
  work.steps.push(step('rain on snow', ros, 'psf', RAIN[roof.edition], work.at.rainOnSnow));
  const site = driftSite(roof, gamma, Is);
  const loads: SnowLoads = {
    Ce: roof.Ce.value,
    Ct: roof.Ct.value,
    Is,
    Cs,
    gamma_pcf: gamma,
    pf_psf: pf,
    pm_psf: pm,
    ps_psf: ps,
    unbalanced: unbalancedLoads(roof, site, ps, work),
    drift: driftLoads(roof, site, ps, readings.windwardCap722, work),
    sliding: slidingLoads(roof, pf, readings.narrowLowerRoof, work),
    rain_on_snow_psf: ros,
  };
  return result(loads, work.steps, work.notes);
}

const LEAST_716 = 'I_s p_g where p_g is 20 psf or less, else 20 I_s; a case of its own';
const LEAST: { readonly [edition in AsceEdition]: string } = {
  '7-10': LEAST_716,
  '7-16': LEAST_716,
  '7-22': 'the smaller of p_g and p_m,max of the risk category; a case of its own',
};
const RAIN_716 = '5 psf where 0 < p_g <= 20 and the slope in degrees is under W/50';
const RAIN: { readonly [edition in AsceEdition]: string } = {
  '7-10': RAIN_716,
  '7-16': RAIN_716,
  '7-22': '8 psf where 0 < p_g <= p_m,max and the slope in degrees is under W/50',
};

const driftSite = (roof: SnowRoof, gamma: Pcf, Is: number): DriftSite =>
  roof.edition === '7-22'
    ? { edition: '7-22', pg: roof.pg, gamma, W2: roof.W2 ?? NaN }
    : { edition: roof.edition, pg: roof.pg, gamma, Is };

const slopeInput = (roof: SnowRoof): SlopeFactorInput => ({
  edition: roof.edition,
  Ct: roof.Ct.value,
  theta: roof.slope.theta,
  surface: roof.surface,
  R: roof.R,
  ventilated: roof.ventilated,
});

function explainFlat(roof: SnowRoof, Is: number, gamma: Pcf, pf: Psf, work: Working): void {
  const { at, steps } = work;
  const density = roof.gamma === undefined ? '0.13 p_g + 14, at most 30' : 'entered';
  steps.push(
    step('C_e', roof.Ce.value, '', roof.Ce.from, roof.Ce.cite),
    step('C_t', roof.Ct.value, '', roof.Ct.from, roof.Ct.cite),
    step('I_s', Is, '', 'by risk category; 1 in 7-22', at.importance),
    step('p_f', pf, 'psf', '0.7 C_e C_t I_s p_g', at.flat),
    step('gamma', gamma, 'pcf', density, at.density),
  );
}

function explainSlope(roof: SnowRoof, Cs: number, ps: Psf, work: Working): void {
  work.steps.push(
    step('C_s', Cs, '', '1 to the knee, then straight to 0 at 70 degrees', work.at.slope),
    step('p_s', ps, 'psf', 'C_s p_f, on the horizontal projection', work.at.slope),
  );
  const input = slopeInput(roof);
  if (roof.edition === '7-22') {
    const larger = slopeFactor(input, 'no-slippery-when-warm');
    const smaller = slopeFactor(input, 'slippery-when-warm');
    if (larger !== smaller) {
      const both = `${larger.toFixed(3)} or ${smaller.toFixed(3)}`;
      work.notes.push(
        `C_s: sources read 7.4 of 7-22 two ways, ${both}; the larger is the standing choice; ` +
          TO_BE_CONFIRMED,
      );
    }
  } else if (
    roof.surface === 'slippery-unobstructed' &&
    roof.Ct.value <= 1 &&
    !insulationGate(input)
  ) {
    work.notes.push(
      'slippery, but a warm roof without R 30 (R 20 where ventilated): taken as other surfaces',
    );
  }
}
