// Wood as calculators take it: its specific gravity or its species, C_D or the shortest load.

import { refused, result, type Outcome } from '../check.js';
import type { Shape } from '../input.js';
import {
  DURATION_FACTORS,
  WOOD_SPECIES,
  WOOD_TABLES_NOTE,
  type LoadDuration,
  type WoodSpecies,
} from './wood.table.js';

export const WOOD = {
  G: { kind: 'number', says: 'specific gravity, 0.31 to 0.73', unit: '', optional: true },
  species: {
    kind: 'choice',
    of: Object.keys(WOOD_SPECIES) as readonly WoodSpecies[],
    says: 'species instead of G (NDS-2018 Table 12.3.3A, from memory)',
    optional: true,
  },
} as const satisfies Shape;

export const DURATION = {
  duration_factor: {
    kind: 'number',
    says: 'C_D, 0.9 to 1.6; 1.6 for wind',
    unit: '',
    optional: true,
  },
  load_duration: {
    kind: 'choice',
    of: Object.keys(DURATION_FACTORS) as readonly LoadDuration[],
    says: 'shortest load instead of C_D (NDS-2018 Table 2.3.2, from memory)',
    optional: true,
  },
} as const satisfies Shape;

export const gravityOf = (given: {
  readonly G?: number | undefined;
  readonly species?: WoodSpecies | undefined;
}): Outcome<number> => eitherOf(given, 'G', 'species', WOOD_SPECIES);

export const durationOf = (given: {
  readonly duration_factor?: number | undefined;
  readonly load_duration?: LoadDuration | undefined;
}): Outcome<number> => eitherOf(given, 'duration_factor', 'load_duration', DURATION_FACTORS);

/** The number itself, or the table's by name with the note that goes with it; never both. */
function eitherOf<N extends string, T extends string, K extends string>(
  given: { readonly [key in N]?: number | undefined } & { readonly [key in T]?: K | undefined },
  number: N,
  name: T,
  table: Readonly<Record<K, number>>,
): Outcome<number> {
  const value: number | undefined = given[number];
  const key: K | undefined = given[name];
  if (value !== undefined && key === undefined) return result(value);
  if (value !== undefined || key === undefined) {
    return refused({
      pointer: `/${number}`,
      message: `needs exactly one of ${number} and ${name}`,
    });
  }
  return result(table[key], [], [WOOD_TABLES_NOTE]);
}
