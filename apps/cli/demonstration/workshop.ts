// Two walls of a workshop on girts, left in the middle: the spacing is only told. Invented.

import { amount, demonstrationId, facts, zone, type InventedJob } from './steps.js';

const SITE = demonstrationId(301);
const CUSTOMER = demonstrationId(302);
const BUILDER = demonstrationId(303);

const hazards = {
  wind: {
    method: 'entered' as const,
    basis: 'strength' as const,
    by_engineer: true,
    source: { document: 'Cladding pressures, structural notes S-2 (invented)', date: '2026-09-30' },
    zones: [zone('4', 'wall', '27', '-29'), zone('5', 'wall', '27', '-36')],
  },
  snow: { method: 'not-applicable' as const, why: 'a wall carries no snow' },
};

export const WORKSHOP: InventedJob = {
  id: demonstrationId(300),
  parties: [
    {
      id: CUSTOMER,
      kind: 'person',
      details: { name: 'Northfield Workshops', email: 'walls@northfield.example' },
    },
    {
      id: BUILDER,
      kind: 'person',
      details: { name: 'Example Builders', email: 'site@builders.example' },
    },
    {
      id: SITE,
      kind: 'site',
      details: { name: 'Workshop 3, Northfield', address: '3 Sample Park, Northfield' },
    },
  ],
  steps: [
    [
      'manager',
      {
        type: 'open-job',
        number: '2026-0103',
        name: 'Workshop walls',
        site: { id: SITE },
        parties: {
          customer: { id: CUSTOMER },
          owner: { id: CUSTOMER },
          general_contractor: { id: BUILDER },
        },
        priorities: ['value', 'quick-delivery'],
        due: '2027-01-22',
        jurisdiction: 'MI',
        buildings: [{ id: 'w3', name: 'Workshop 3' }],
        surfaces: [
          { id: 'front', building: 'w3', name: 'Front wall', kind: 'wall' },
          { id: 'side', building: 'w3', name: 'Side wall', kind: 'wall' },
        ],
      },
    ],
    [
      'office',
      {
        type: 'record-facts',
        facts: [
          ...facts(
            null,
            'document',
            'Structural notes S-1 (invented)',
            ['exposure', 'B'],
            ['wind-speed', amount(110, 'mph')],
            ['ground-snow', amount(30, 'psf')],
            ['ground-snow-basis', 'service-50yr'],
          ),
          ...facts(
            null,
            'told',
            undefined,
            ['water', 'none'],
            ['corrosivity', 'C3'],
            ['animals-or-fertilizer', false],
          ),
          ...facts(
            'w3',
            'document',
            'Structural notes S-1 (invented)',
            ['mean-roof-height', amount(26, 'ft')],
            ['width', amount(80, 'ft')],
            ['length', amount(140, 'ft')],
            ['roof-shape', 'gable'],
            ['roof-slope', amount(1, 'per-12')],
            ['risk-category', 'II'],
            ['enclosure', 'enclosed'],
            ['any-side-open', false],
            ['doors-open-in-storms', false],
          ),
          ...['front', 'side'].flatMap((wall) =>
            facts(
              wall,
              'document',
              'Elevations A-4 (invented)',
              ['copper-or-lead-above', false],
              ['masonry-after-panels', false],
              ['fastener-metal', 'galvanized'],
            ),
          ),
          ...facts('w3', 'told', undefined, ['inside-air', 'heated']),
          ...facts(
            'front',
            'told',
            undefined,
            ['slope', amount(60, 'per-12')],
            ['area', amount(18, 'squares')],
            ['reroof', false],
            ['weathertightness-asked', false],
            ['substrate', 'girts'],
            ['support-spacings', [{ v: '60' }]],
          ),
          ...facts(
            'side',
            'told',
            undefined,
            ['slope', amount(60, 'per-12')],
            ['area', amount(32, 'squares')],
            ['reroof', false],
            ['weathertightness-asked', false],
            ['substrate', 'girts'],
          ),
        ],
      },
    ],
    [
      'office',
      { type: 'choose-style', surface: 'front', profile: 'flush-12', width: amount(12, 'in') },
    ],
    [
      'office',
      { type: 'choose-style', surface: 'side', profile: 'deep-36', width: amount(36, 'in') },
    ],
    [
      'office',
      {
        type: 'choose-coating',
        surface: 'front',
        metal: 'steel',
        metallic_coating: 'AZ50',
        paint_system: 'PVDF',
        color_group: 'dark',
      },
    ],
    [
      'office',
      {
        type: 'choose-coating',
        surface: 'side',
        metal: 'steel',
        metallic_coating: 'AZ50',
        paint_system: 'SMP',
        color_group: 'white',
      },
    ],
    ['office', { type: 'assess-hazards', surface: 'front', hazards }],
    [
      'office',
      {
        type: 'add-note',
        about: 'front',
        words:
          'The builder says girts stand at 5 ft; they are measured before the substrate counts.',
      },
    ],
  ],
};
