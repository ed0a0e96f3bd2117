// The places of the snow chapter in each edition, made once so that a step costs no text.

import { cite, type AsceEdition, type Citation } from '../sources.js';

export interface SnowClauses {
  readonly importance: Citation;
  readonly exposure: Citation;
  readonly thermal: Citation;
  readonly thermalByR: Citation;
  readonly flat: Citation;
  readonly least: Citation;
  readonly slope: Citation;
  readonly unbalanced: Citation;
  readonly drift: Citation;
  readonly driftHeight: Citation;
  readonly density: Citation;
  readonly projection: Citation;
  readonly sliding: Citation;
  readonly rainOnSnow: Citation;
  readonly eaveIce: Citation;
}

export const SNOW_CLAUSES: { readonly [edition in AsceEdition]: SnowClauses } = {
  '7-10': {
    importance: cite('asce-7-10', 'Table 1.5-2'),
    exposure: cite('asce-7-10', '7.3.1, Table 7-2'),
    thermal: cite('asce-7-10', '7.3.2, Table 7-3'),
    thermalByR: cite('asce-7-10', '7.3.2, Table 7-3'),
    flat: cite('asce-7-10', '7.3, Eq. 7.3-1'),
    least: cite('asce-7-10', '7.3.4'),
    slope: cite('asce-7-10', '7.4, Fig. 7-2'),
    unbalanced: cite('asce-7-10', '7.6.1, Fig. 7-5'),
    drift: cite('asce-7-10', '7.7.1, Fig. 7-8'),
    driftHeight: cite('asce-7-10', 'Fig. 7-9'),
    density: cite('asce-7-10', '7.7.1, Eq. 7.7-1'),
    projection: cite('asce-7-10', '7.8'),
    sliding: cite('asce-7-10', '7.9'),
    rainOnSnow: cite('asce-7-10', '7.10'),
    eaveIce: cite('asce-7-10', '7.4.5'),
  },
  '7-16': {
    importance: cite('asce-7-16', 'Table 1.5-2'),
    exposure: cite('asce-7-16', '7.3.1, Table 7.3-1'),
    thermal: cite('asce-7-16', '7.3.2, Table 7.3-2'),
    thermalByR: cite('asce-7-16', '7.3.2, Table 7.3-2'),
    flat: cite('asce-7-16', '7.3, Eq. 7.3-1'),
    least: cite('asce-7-16', '7.3.4'),
    slope: cite('asce-7-16', '7.4, Fig. 7.4-1'),
    unbalanced: cite('asce-7-16', '7.6.1'),
    drift: cite('asce-7-16', '7.7.1'),
    driftHeight: cite('asce-7-16', 'Fig. 7.6-1'),
    density: cite('asce-7-16', '7.7.1, Eq. 7.7-1'),
    projection: cite('asce-7-16', '7.8'),
    sliding: cite('asce-7-16', '7.9'),
    rainOnSnow: cite('asce-7-16', '7.10'),
    eaveIce: cite('asce-7-16', '7.4.5'),
  },
  '7-22': {
    importance: cite('asce-7-22', '7.2 (no importance factor: pg by risk category)'),
    exposure: cite('asce-7-22', '7.3.1, Table 7.3-1'),
    thermal: cite('asce-7-22', '7.3.2, Table 7.3-2'),
    thermalByR: cite('asce-7-22', '7.3.2, Table 7.3-3'),
    flat: cite('asce-7-22', '7.3, flat roof snow load'),
    least: cite('asce-7-22', '7.3, minimum snow load for low-slope roofs'),
    slope: cite('asce-7-22', '7.4'),
    unbalanced: cite('asce-7-22', '7.6.1'),
    drift: cite('asce-7-22', '7.7.1'),
    driftHeight: cite('asce-7-22', 'Eq. 7.6-1'),
    density: cite('asce-7-22', '7.7.1'),
    projection: cite('asce-7-22', '7.8'),
    sliding: cite('asce-7-22', '7.9'),
    rainOnSnow: cite('asce-7-22', '7.10'),
    eaveIce: cite('asce-7-22', '7.4.4'),
  },
};
