// Thermal movement of metal panels.

import { feet, inches, type Fahrenheit, type Feet, type Inches } from '../units.js';
import { EXPANSION_PER_F, type RoofMetal } from './metals.table.js';

/**
 * dL = alpha L dT, in. L: free length from the line where the panel is fixed, ft; end laps tie
 * panels into one run. dT: difference of temperature, °F, at most 400 here.
 */
export const thermalMovement = (metal: RoofMetal, length: Feet, dT: Fahrenheit): Inches =>
  expansion(EXPANSION_PER_F[metal], length, dT);

/** dL = alpha L dT with an alpha per °F of one's own. */
export const expansion = (alphaPerF: number, length: Feet, dT: Fahrenheit): Inches =>
  inches(alphaPerF * length * 12 * dT);

/** A difference in °C of one in °F: 5/9 of it, with nothing taken off. */
export const celsiusDifference = (dT: Fahrenheit): number => (dT * 5) / 9;

export type FixedLine = 'eave' | 'ridge' | 'mid-slope';

/**
 * The longest free length of a run fixed along one line. Exactly one line is fixed; a curb, pipe or
 * snow retention that pins the panel to the frame makes a second one, and then nothing may move.
 */
export const freeLength = (run: Feet, fixed: FixedLine): Feet =>
  feet(fixed === 'mid-slope' ? run / 2 : run);
