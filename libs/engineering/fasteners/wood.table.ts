// Wood for withdrawal: specific gravity by species combination (NDS-2018 Table 12.3.3A) and load
// duration factors (Table 2.3.2). Both from memory.

import { TO_BE_CONFIRMED } from '../check.js';

/** Oven-dry specific gravity G. */
export const WOOD_SPECIES = {
  'douglas-fir-larch': 0.5,
  'douglas-fir-south': 0.46,
  'hem-fir': 0.43,
  'southern-pine': 0.55,
  'spruce-pine-fir': 0.42,
  'spruce-pine-fir-south': 0.36,
  'eastern-hemlock': 0.41,
  'red-oak': 0.67,
  'western-cedars': 0.36,
} as const;

export type WoodSpecies = keyof typeof WOOD_SPECIES;

/** C_D by the shortest load of a combination. */
export const DURATION_FACTORS = {
  permanent: 0.9,
  'ten-years': 1,
  'two-months-snow': 1.15,
  'seven-days-construction': 1.25,
  'ten-minutes-wind': 1.6,
} as const;

export type LoadDuration = keyof typeof DURATION_FACTORS;

export const WOOD_TABLES_NOTE = `species and duration tables from memory: ${TO_BE_CONFIRMED}`;
