// An exposed-fastener barn roof on purlins, new, signed off by an engineer. Invented.

import { ENGINEER, MANAGER } from './people.js';
import { amount, demonstrationId, facts, spaced, zone, type InventedJob } from './steps.js';

const LETTER = 'Letter of the county building department (invented)';
const SITE = demonstrationId(101);
const CUSTOMER = demonstrationId(102);

export const BARN: InventedJob = {
  id: demonstrationId(100),
  parties: [
    {
      id: CUSTOMER,
      kind: 'person',
      details: {
        name: 'Hollow Creek Farm',
        phone: '+1 555 0100',
        email: 'barn@hollow-creek.example',
      },
    },
    {
      id: SITE,
      kind: 'site',
      details: { name: 'Hay barn, Hollow Creek', address: '1 Example Road, Sampleton' },
    },
  ],
  steps: [
    [
      'office',
      {
        type: 'open-job',
        number: '2026-0101',
        name: 'Hay barn roof',
        site: { id: SITE },
        parties: { customer: { id: CUSTOMER }, owner: { id: CUSTOMER } },
        priorities: ['value'],
        due: '2026-12-18',
        jurisdiction: 'OH',
        buildings: [{ id: 'barn', name: 'Hay barn' }],
        surfaces: [{ id: 'roof', building: 'barn', name: 'Barn roof', kind: 'roof' }],
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
            LETTER,
            ['exposure', 'C'],
            ['wind-speed', amount(105, 'mph')],
            ['ground-snow', amount(20, 'psf')],
            ['ground-snow-basis', 'service-50yr'],
            ['permit-asked', true],
          ),
          ...facts(
            null,
            'told',
            undefined,
            ['water', 'none'],
            ['animals-or-fertilizer', false],
            ['corrosivity', 'C2'],
          ),
          ...facts(
            'barn',
            'document',
            'Barn drawings (invented)',
            ['mean-roof-height', amount(19, 'ft')],
            ['width', amount(40, 'ft')],
            ['length', amount(72, 'ft')],
            ['roof-shape', 'gable'],
            ['risk-category', 'I'],
          ),
          ...facts(
            'barn',
            'told',
            undefined,
            ['enclosure', 'enclosed'],
            ['any-side-open', false],
            ['doors-open-in-storms', false],
            ['inside-air', 'unheated'],
          ),
          ...facts(
            'roof',
            'told',
            undefined,
            ['reroof', false],
            ['over-doors-or-walks', false],
            ['weathertightness-asked', false],
          ),
          ...facts(
            'roof',
            'document',
            "Proposal and the owner's answers (invented)",
            ['copper-or-lead-above', false],
            ['masonry-after-panels', false],
            ['snow-retention', 'none'],
            ['fastener-metal', 'galvanized'],
          ),
        ],
      },
    ],
    [
      'crew',
      {
        type: 'record-facts',
        facts: facts(
          'roof',
          'measured',
          undefined,
          ['slope', amount(4, 'per-12')],
          ['area', amount('31.5', 'squares')],
          ['longest-piece', amount(22, 'ft')],
          ['eave-to-ridge', amount('20.9', 'ft')],
          ['substrate', 'purlins'],
          ['support-spacings', [{ v: '24' }, { v: '23.5' }, { v: '24' }, { v: '24.25' }]],
          ['wood-specific-gravity', amount('0.42', 'G')],
          ['fastener-bite', amount('1.25', 'in')],
          ['condensation-control', 'absorbing-fleece'],
          ['underlayment', 'none'],
          ['framing-sound', true],
          ['treated-lumber-contact', 'none'],
        ),
      },
    ],
    [
      'office',
      { type: 'choose-style', surface: 'roof', profile: 'rib-36', width: amount(36, 'in') },
    ],
    [
      'office',
      {
        type: 'choose-coating',
        surface: 'roof',
        metal: 'steel',
        metallic_coating: 'AZ50',
        paint_system: 'SMP',
        color_group: 'earth-tone',
        color: 'Barn brown',
      },
    ],
    [
      'office',
      {
        type: 'assess-hazards',
        surface: 'roof',
        acknowledges: ['HAZ-05'],
        hazards: {
          wind: {
            method: 'entered',
            basis: 'strength',
            by_engineer: false,
            source: {
              document: "Pressures read from the county's table for enclosed barns (invented)",
              date: '2026-11-02',
            },
            zones: [
              zone('1', 'roof', '16', '-24'),
              zone('2', 'roof', '16', '-38'),
              zone('3', 'roof', '16', '-55'),
            ],
          },
          snow: {
            method: 'entered',
            basis: 'ASD',
            by_engineer: false,
            roof: amount(18, 'psf'),
            source: { document: LETTER, date: '2026-11-02' },
          },
        },
      },
    ],
    ['office', { type: 'confirm-substrate', surface: 'roof', acknowledges: ['SUB-12'] }],
    [
      'office',
      {
        type: 'select-gauge',
        surface: 'roof',
        option: 'steel-0.0179-ss-80',
        attachment: {
          fastener: 'screw-wood-10',
          zones: [spaced('1', '9'), spaced('2', '9'), spaced('3', '6')],
        },
      },
    ],
    ['manager', { type: 'describe-job', assigned: MANAGER.id }],
    [
      'manager',
      {
        type: 'request-sign-off',
        request: 'barn-1',
        surfaces: ['roof'],
        engineer: { id: ENGINEER.id },
        scope: 'Roof panels and their screws on the purlins, zones 1 to 3.',
        exclusions: 'The purlins themselves, the frame and its bracing.',
        expires: '2027-06-30',
      },
    ],
    [
      'engineer',
      {
        type: 'answer-sign-off',
        request: 'barn-1',
        answer: 'approve',
        license: {
          name: 'Edda (invented)',
          number: 'EX-00001',
          jurisdiction: 'OH',
          expires: '2028-12-31',
        },
        statement:
          'I reviewed the packet named by its digest and approve panels and screws as listed.',
      },
    ],
  ],
};
