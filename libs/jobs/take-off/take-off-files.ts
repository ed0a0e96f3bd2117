// For tests: the take-off of the house's roof. A gable of 40 by 30 ft with 1 ft of overhang at 6 in 12:
// 16 ft of run to a ridge of 42 ft, so 17.8885 ft of slope, 31.5 strips of 16 in on each side.

import type { CommandInput } from '../contract/commands.js';

export type TakeOffInput = Extract<CommandInput, { readonly type: 'record-take-off' }>;

export const HOUSE_TAKE_OFF: TakeOffInput = {
  type: 'record-take-off',
  surface: 's1',
  measured_from: 'Roof plan, sheet A2 (invented)',
  drawn: {
    by: 'shape',
    shape: 'gable',
    along_ft: '40',
    across_ft: '30',
    overhang_ft: '1',
    rise_per_12: '6',
    start: 'left',
    openings: [],
  },
  panel: { round_up_in: '1', ends: [{ edge: 'eave', add_in: '1' }] },
  fastening: { screws_each: 2 },
  trims: [
    {
      name: 'Eave trim',
      edges: ['eave'],
      stock_in: '126',
      lap_in: '2',
      weight_plf: '0.75',
      screw_spacing_in: '12',
    },
    { name: 'Rake trim', edges: ['rake'], stock_in: '126', lap_in: '2', weight_plf: '0.9' },
    { name: 'Ridge cap', edges: ['ridge'], stock_in: '126', lap_in: '2', weight_plf: '1.2' },
  ],
  closures: [{ name: 'Ridge closure, 16 in', edges: ['ridge'], length_in: '16' }],
  sealants: [
    { name: 'Butyl tape', edges: ['ridge'], end_laps: false, side_laps: false, roll_ft: '40' },
  ],
  underlayments: [
    {
      name: 'High-temperature membrane',
      roll_width_in: '36',
      roll_length_ft: '65',
      side_lap_in: '4',
      end_lap_in: '6',
    },
  ],
  bundles: {
    most_lb: '1500',
    most_pieces: 20,
    landings: [
      { plane: 'front', place: 'driveway' },
      { plane: 'back', place: 'back yard, on blocking' },
    ],
  },
  spares: { panels: 1, fastener_percent: 5, touch_up: 2 },
};
