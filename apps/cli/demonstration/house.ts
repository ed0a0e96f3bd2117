// A standing-seam house roof over a plywood deck near the coast; the old roof came off and the deck
// was as assumed. Invented.

import { HOUSE_TAKE_OFF } from './house-take-off.js';
import { amount, demonstrationId, facts, spaced, zone, type InventedJob } from './steps.js';

const SITE = demonstrationId(201);
const CUSTOMER = demonstrationId(202);
const MAP = 'Wind map of the authority (invented)';

export const HOUSE: InventedJob = {
  id: demonstrationId(200),
  parties: [
    {
      id: CUSTOMER,
      kind: 'person',
      details: { name: 'Marlow household', phone: '+1 555 0101', email: 'roof@marlow.example' },
    },
    {
      id: SITE,
      kind: 'site',
      details: { name: 'House at Sandpiper Lane', address: '2 Sandpiper Lane, Coastville' },
    },
  ],
  steps: [
    [
      'office',
      {
        type: 'open-job',
        number: '2026-0102',
        name: 'House reroof, standing seam',
        site: { id: SITE },
        parties: { customer: { id: CUSTOMER }, owner: { id: CUSTOMER } },
        priorities: ['long-life', 'best-appearance'],
        due: '2026-12-04',
        jurisdiction: 'NC',
        buildings: [{ id: 'house', name: 'House' }],
        surfaces: [{ id: 'main', building: 'house', name: 'Main roof', kind: 'roof' }],
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
            MAP,
            ['exposure', 'D'],
            ['wind-speed', amount(140, 'mph')],
            ['ground-snow', amount(5, 'psf')],
            ['ground-snow-basis', 'service-50yr'],
          ),
          ...facts(
            null,
            'measured',
            undefined,
            ['water', 'breaking-surf'],
            ['water-distance', amount(2900, 'ft')],
          ),
          ...facts(
            null,
            'told',
            undefined,
            ['corrosivity', 'C4'],
            ['animals-or-fertilizer', false],
            ['permit-asked', true],
          ),
          ...facts(
            'house',
            'measured',
            undefined,
            ['mean-roof-height', amount(22, 'ft')],
            ['width', amount(34, 'ft')],
            ['length', amount(48, 'ft')],
          ),
          ...facts(
            'house',
            'told',
            undefined,
            ['roof-shape', 'gable'],
            ['risk-category', 'II'],
            ['residential', true],
            ['inside-air', 'heated'],
            ['enclosure', 'enclosed'],
            ['any-side-open', false],
            ['doors-open-in-storms', false],
          ),
          ...facts(
            'main',
            'measured',
            undefined,
            ['slope', amount(6, 'per-12')],
            ['area', amount('20.4', 'squares')],
            ['longest-piece', amount('19.5', 'ft')],
            ['eave-to-ridge', amount(17, 'ft')],
          ),
          ...facts(
            'main',
            'told',
            undefined,
            ['reroof', true],
            ['weathertightness-asked', false],
            ['substrate', 'plywood'],
            ['over-doors-or-walks', true],
            ['copper-or-lead-above', false],
            ['asked-term-years', amount(30, 'years')],
          ),
          ...facts(
            'main',
            'document',
            'Proposal: old shingles off to the deck, new flashings before the panels (invented)',
            ['shingle-layers', amount(0, 'layers')],
            ['old-roof-left', 'none'],
            ['masonry-after-panels', false],
            ['fastener-metal', 'galvanized'],
          ),
        ],
      },
    ],
    [
      'office',
      { type: 'choose-style', surface: 'main', profile: 'snap-16', width: amount(16, 'in') },
    ],
    [
      'office',
      {
        type: 'choose-coating',
        surface: 'main',
        metal: 'steel',
        metallic_coating: 'AZ50',
        paint_system: 'PVDF',
        color_group: 'light',
        color: 'Sea mist',
      },
    ],
    [
      'office',
      {
        type: 'assess-hazards',
        surface: 'main',
        hazards: {
          wind: {
            method: 'entered',
            basis: 'ASD',
            by_engineer: false,
            source: {
              document: "Pressures of the authority's table for houses (invented)",
              date: '2026-10-12',
            },
            zones: [
              zone('1', 'roof', '22', '-36'),
              zone('2', 'roof', '22', '-62'),
              zone('3', 'roof', '22', '-94'),
            ],
          },
          snow: {
            method: 'entered',
            basis: 'ASD',
            by_engineer: false,
            roof: amount(5, 'psf'),
            source: { document: MAP, date: '2026-10-12' },
          },
        },
      },
    ],
    [
      'office',
      {
        type: 'record-facts',
        facts: facts(
          'main',
          'measured',
          'seen from the attic at three places',
          ['substrate', 'plywood'],
          ['deck-thickness', amount('0.5', 'in')],
          ['fastener-bite', amount('0.5', 'in')],
          ['underlayment', 'self-adhered membrane, high temperature'],
          ['condensation-control', 'vented-deck'],
          ['treated-lumber-contact', 'none'],
        ),
      },
    ],
    ['office', { type: 'confirm-substrate', surface: 'main', provisional: true }],
    [
      'office',
      {
        type: 'select-gauge',
        surface: 'main',
        option: 'steel-0.0239-ss-50-class-1',
        attachment: {
          fastener: 'clip-fixed',
          zones: [spaced('1', '24'), spaced('2', '12'), spaced('3', '6')],
        },
      },
    ],
    [
      'crew',
      {
        type: 'record-tear-off',
        surface: 'main',
        finding: 'as-assumed',
        words: 'Old shingles off; 1/2 in plywood throughout, dry, two sheets replaced.',
      },
    ],
    ['office', HOUSE_TAKE_OFF],
  ],
};
