// The roof of the house taken off once the deck was seen: a gable of 48 by 34 ft with 0.4 ft of overhang
// and a chimney on the street side. Invented, the trims' weights too.

import type { CommandInput } from '#jobs/contract';

type TakeOff = Extract<CommandInput, { type: 'record-take-off' }>;

export const HOUSE_TAKE_OFF: TakeOff = {
  type: 'record-take-off',
  surface: 'main',
  measured_from: 'Measured on the bare deck by the crew lead; sketch of the roof (invented)',
  drawn: {
    by: 'shape',
    shape: 'gable',
    along_ft: '48',
    across_ft: '34',
    overhang_ft: '0.4',
    rise_per_12: '6',
    start: 'left',
    openings: [
      {
        plane: 'front',
        name: 'chimney',
        x_ft: '30',
        y_ft: '9',
        width_ft: '3.5',
        height_ft: '2.5',
      },
    ],
  },
  panel: { round_up_in: '0.25', ends: [{ edge: 'eave', add_in: '0.5' }] },
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
    {
      name: 'Rake trim',
      edges: ['rake'],
      stock_in: '126',
      lap_in: '2',
      weight_plf: '0.9',
      screw_spacing_in: '12',
    },
    { name: 'Ridge cap', edges: ['ridge'], stock_in: '126', lap_in: '2', weight_plf: '1.2' },
    {
      name: 'Chimney flashing',
      edges: ['endwall', 'sidewall', 'high-side'],
      stock_in: '126',
      lap_in: '4',
      weight_plf: '0.8',
    },
  ],
  closures: [{ name: 'Ridge closure, 16 in', edges: ['ridge'], length_in: '16' }],
  sealants: [
    {
      name: 'Butyl tape',
      edges: ['ridge', 'endwall', 'sidewall', 'high-side'],
      end_laps: false,
      side_laps: false,
      roll_ft: '40',
    },
  ],
  underlayments: [
    {
      name: 'Self-adhered membrane, high temperature',
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
      { plane: 'front', place: 'driveway, on blocking' },
      { plane: 'back', place: 'back yard, on blocking' },
    ],
  },
  spares: { panels: 1, fastener_percent: 5, touch_up: 1 },
};
