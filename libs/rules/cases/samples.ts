// Invented profiles, options and zones that the cases are made of.

import type { OptionFacts, ProfileFacts, ZoneFacts } from '../facts.js';

export const STANDING_SEAM: ProfileFacts = {
  id: 'ss-16',
  name: 'Sample seam 16',
  family: 'standing-seam',
  fastening: 'concealed',
  seam: 'mechanical',
  structural: true,
  least_slope_per_12: 0.5,
  flat_width_in: 16,
  striated: true,
  listed: true,
};

export const SNAP_LOCK: ProfileFacts = {
  ...STANDING_SEAM,
  id: 'sl-16',
  name: 'Sample snap 16',
  seam: 'snap-lock',
  structural: false,
  least_slope_per_12: 3,
};

export const RIBBED: ProfileFacts = {
  ...STANDING_SEAM,
  id: 'rib-36',
  name: 'Sample rib 36',
  family: 'ribbed',
  fastening: 'exposed',
  seam: 'screw-down',
  least_slope_per_12: 1,
  flat_width_in: 9,
};

export const SHINGLE: ProfileFacts = {
  ...STANDING_SEAM,
  id: 'sh-1',
  name: 'Sample shingle',
  family: 'metal-shingle',
  structural: false,
  least_slope_per_12: 3,
};

const steel = (gauge: string, thickness_in: number): OptionFacts => ({
  gauge,
  thickness_in,
  availability: 'stock',
});

export const G20 = steel('20', 0.0359);
export const G22 = steel('22', 0.0299);
export const G24 = steel('24', 0.0239);
export const G26 = steel('26', 0.0179);
export const G29 = steel('29', 0.0135);
export const ALUMINUM_032: OptionFacts = { thickness_in: 0.032, availability: 'special-run' };

/** A zone with both checks. */
export const zone = (name: string, panel: number, attachment: number): ZoneFacts => ({
  zone: name,
  panel: { utilization: panel, limit_state: 'outward bending' },
  attachment: { utilization: attachment, limit_state: 'pull-out' },
  missing: [],
  calculated_only: false,
});

export const gap = (name: string, ...missing: readonly string[]): ZoneFacts => ({
  zone: name,
  missing,
  calculated_only: false,
});
