// Clips and screws of the demonstration's catalogue, invented like the rest of it.

import { invented } from './invented.js';
import { amount } from './steps.js';

const STEEL_SCREWS = invented('Screw tests');
const intoSteel = (into: 'purlins' | 'girts') => ({
  into,
  least_thickness: amount('0.060', 'in'),
  allowable: amount('265', 'lb'),
  source: STEEL_SCREWS,
});

const clip = (id: string, name: string, clip_movement: 'fixed' | 'floating', metal: string) => ({
  id,
  name,
  kind: 'clip',
  clip_movement,
  metal,
});
const screw = (id: string, name: string, metal: string, shank: string, washer: string) => ({
  id,
  name,
  kind: 'screw',
  metal,
  diameter: amount(shank, 'in'),
  washer_diameter: amount(washer, 'in'),
});

export const FASTENERS = [
  clip('clip-fixed', 'Fixed clip 1-3/4, two screws', 'fixed', 'galvanized'),
  clip('clip-floating', 'Floating clip 2, two screws', 'floating', 'galvanized'),
  clip('clip-stainless', 'Floating clip, stainless, two screws', 'floating', 'stainless'),
  clip('clip-copper', 'Fixed cleat, copper alloy, two nails', 'fixed', 'copper-alloy'),
  {
    ...screw(
      'screw-pancake-10',
      'No. 10 pancake-head wood screw, 1 in',
      'galvanized',
      '0.190',
      '0.435',
    ),
    thread_bite: amount('0.75', 'in'),
  },
  {
    ...screw(
      'screw-stainless-10',
      'No. 10 pancake-head screw, stainless, 1 in',
      'stainless',
      '0.190',
      '0.435',
    ),
    thread_bite: amount('0.75', 'in'),
  },
  {
    ...screw(
      'screw-wood-10',
      'No. 10 wood screw with sealing washer, 1-1/2 in',
      'galvanized',
      '0.190',
      '0.563',
    ),
    thread_bite: amount('1.25', 'in'),
  },
  {
    ...screw(
      'screw-steel-12',
      'No. 12 self-drilling screw with sealing washer, 1-1/4 in',
      'galvanized',
      '0.216',
      '0.5',
    ),
    tested: [intoSteel('purlins'), intoSteel('girts')],
  },
  screw(
    'screw-steel-14',
    'No. 14 self-drilling screw with sealing washer, 1-1/4 in',
    'galvanized',
    '0.250',
    '0.625',
  ),
];
