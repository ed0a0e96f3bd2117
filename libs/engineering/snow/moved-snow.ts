// The loads of moved snow on one surface, with their steps: unbalanced, drifted and slid.

import { step, TO_BE_CONFIRMED, type Step } from '../check.js';
import type { Psf } from '../units.js';
import type { SnowClauses } from './clauses.js';
import { driftOnRoof, type Drift, type DriftPlace, type WindwardCap } from './drift.js';
import { ridgeDriftHeight, type DriftSite } from './drift-height.js';
import { slidingSnow, type NarrowLowerRoof, type SlidingSnow } from './sliding.js';
import { hasUnbalanced, type DriftLoad, type SnowRoof } from './snow-roof.js';
import { ridgeExtent, unbalancedSnow, type UnbalancedSnow } from './unbalanced.js';

/** Where steps and notes are gathered while one surface is worked out. */
export interface Working {
  readonly at: SnowClauses;
  readonly steps: Step[];
  readonly notes: string[];
}

export function unbalancedLoads(
  roof: SnowRoof,
  site: DriftSite,
  ps: Psf,
  { at, steps, notes }: Working,
): UnbalancedSnow | null {
  if (!hasUnbalanced(roof)) return null;
  const loads = unbalancedSnow(site, ps, roof.slope.rise, roof.W);
  const hd = ridgeDriftHeight(site, roof.W);
  const { windward_psf, leeward_psf, surcharge_psf, surcharge_width_ft } = loads;
  steps.push(
    step('h_d at the ridge', hd, 'ft', 'drift height with l_u = W', at.driftHeight),
    step('windward', windward_psf, 'psf', '0.3 p_s', at.unbalanced),
    step('leeward', leeward_psf, 'psf', 'p_s', at.unbalanced),
    step('surcharge', surcharge_psf, 'psf', 'h_d gamma / sqrt(S)', at.unbalanced),
    step('extent', surcharge_width_ft, 'ft', '8/3 h_d sqrt(S), not past the eave', at.unbalanced),
  );
  if (ridgeExtent(hd, 12 / roof.slope.rise) > roof.W) {
    notes.push(`the unbalanced surcharge is cut at the eave; ${TO_BE_CONFIRMED}`);
  }
  return loads;
}

export function driftLoads(
  roof: SnowRoof,
  site: DriftSite,
  ps: Psf,
  cap: WindwardCap,
  { at, steps, notes }: Working,
): DriftLoad | null {
  if (roof.drift === undefined) return null;
  const place: DriftPlace =
    roof.lowerRoof === undefined ? roof.drift : { ...roof.drift, lowerRoof: roof.lowerRoof };
  const { required, ...load } = driftOnRoof(site, place, ps, cap);
  const clause = place.kind === 'parapet' ? at.projection : at.drift;
  const wide = site.edition === '7-22' && place.kind !== 'leeward';
  const width = wide ? '8 h' : '4 h, or 4 h^2 / h_c up to 8 h_c where h passes h_c';
  const height = place.kind === 'leeward' ? 'h_d' : '0.75 h_d';
  steps.push(step('h_b', load.hb_ft, 'ft', 'p_s / gamma', clause));
  if (load.hc_ft !== null) steps.push(step('h_c', load.hc_ft, 'ft', 'clear height - h_b', clause));
  steps.push(
    step('h_d', load.hd_ft, 'ft', 'drift height for the fetch l_u', at.driftHeight),
    step('h', load.height_ft, 'ft', wide ? height : `${height}, at most h_c`, clause),
    step('p_d', load.pd_psf, 'psf', 'h gamma, on top of p_s', clause),
    step('w', load.width_ft, 'ft', width, clause),
  );
  if (required) noteDrift(roof, load, place, notes);
  else notes.push('no drift: no snow, or h_c / h_b is under 0.2');
  return load;
}

function noteDrift(
  roof: SnowRoof,
  load: Omit<Drift, 'required'>,
  place: DriftPlace,
  notes: string[],
): void {
  if (load.hc_ft === null) notes.push('no clear height is entered: the drift is not capped by it');
  const windward722 = roof.edition === '7-22' && place.kind !== 'leeward';
  if (windward722 && load.hc_ft !== null && 0.75 * load.hd_ft > load.hc_ft) {
    notes.push(
      'sources differ on whether a windward drift of 7-22 stops at the clear height; ' +
        `not stopped, the larger, is the standing choice; ${TO_BE_CONFIRMED}`,
    );
  }
  if (roof.lowerRoof !== undefined && load.width_ft > roof.lowerRoof) {
    notes.push(
      'the drift is wider than the lower roof: cut at its end, not squeezed or tapered; ' +
        TO_BE_CONFIRMED,
    );
  }
}

export function slidingLoads(
  roof: SnowRoof,
  pf: Psf,
  narrow: NarrowLowerRoof,
  { at, steps, notes }: Working,
): SlidingSnow | null {
  if (roof.slidingFrom === undefined) return null;
  const load = slidingSnow(pf, roof.slidingFrom, roof.lowerRoof, narrow);
  steps.push(
    step('sliding', load.plf, 'plf', '0.4 p_f W of the upper roof', at.sliding),
    step('sliding width', load.width_ft, 'ft', '15 ft, or the lower roof', at.sliding),
  );
  notes.push(
    'sliding snow: the upper roof is taken to shed (slippery over 1/4:12, other over 2:12) and ' +
      'to have the p_f found here; not combined with drift, unbalanced or rain on snow',
  );
  if (load.width_ft < 15) {
    notes.push(
      'the lower roof is narrower than 15 ft: the whole sliding load on it, the larger, is the ' +
        `standing choice; ${TO_BE_CONFIRMED}`,
    );
  }
  return load;
}
