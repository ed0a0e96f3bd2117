// Whether a panel may meet a material, and which fastener suits which roof metal.

import { cite, type Citation } from '../sources.js';
import {
  INCOMPATIBILITIES,
  type Incompatibility,
  type Meeting,
  type Neighbor,
  type PanelMetal,
} from './compatibility.table.js';

export type { Incompatibility, Meeting, Neighbor, PanelMetal };

/** Everything that speaks against the meeting; empty where nothing known does. */
export function incompatibilities(
  metal: PanelMetal,
  neighbor: Neighbor,
  meeting: Meeting,
): readonly Incompatibility[] {
  return INCOMPATIBILITIES.filter(
    (each) =>
      each.neighbor === neighbor && each.metals.includes(metal) && each.meetings.includes(meeting),
  );
}

export type FastenerMetal =
  'galvanized' | 'stainless-300' | 'stainless-other' | 'copper-alloy' | 'aluminum' | 'plain-steel';

export interface FastenerFinding {
  readonly suits: boolean;
  readonly says: string;
  readonly cite: Citation;
}

const ATTACHMENT = cite('ibc-2018', '1507.4.4');

/**
 * Fastener metal by roof metal: galvanized for steel roofs, copper alloy or 300-series stainless
 * for copper roofs, stainless for any metal roof, aluminum for aluminum roofs on aluminum.
 * International Building Code 2018, 1507.4.4. Left out: finish life of heads and washers, and the
 * warranty text near salt water, which goes before this.
 */
export function fastenerSuits(
  fastener: FastenerMetal,
  roof: PanelMetal,
  support: 'aluminum' | 'other',
): FastenerFinding {
  const found = (suits: boolean, says: string): FastenerFinding => ({
    suits,
    says,
    cite: ATTACHMENT,
  });
  if (roof === 'copper') {
    return fastener === 'copper-alloy' || fastener === 'stainless-300'
      ? found(true, 'Copper alloy and 300-series stainless suit a copper roof.')
      : found(false, 'A copper roof takes copper alloy or 300-series stainless fasteners.');
  }
  if (fastener === 'stainless-300' || fastener === 'stainless-other') {
    return found(true, 'Stainless fasteners suit every metal roof.');
  }
  if (roof === 'galvanized' || roof === 'al-zn') {
    return fastener === 'galvanized'
      ? found(true, 'Galvanized fasteners suit a steel roof.')
      : found(false, 'A steel roof takes galvanized or stainless fasteners.');
  }
  if (roof === 'aluminum' && support === 'aluminum') {
    return fastener === 'aluminum'
      ? found(true, 'Aluminum fasteners suit an aluminum roof on aluminum supports.')
      : found(
          false,
          'An aluminum roof on aluminum supports takes aluminum or stainless fasteners.',
        );
  }
  return found(false, `No fastener but stainless is named for a ${roof} roof on this support.`);
}
