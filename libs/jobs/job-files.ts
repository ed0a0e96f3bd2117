// For tests: three job files. A barn roof on purlins that an engineer signs, a house roof on plywood,
// and a reroof; each as the commands that bring it to a stage.

import type { CommandInput, FactEntry } from './contract/commands.js';
import type { Stage } from '#rules';
import { CUSTOMER, ENGINEER, SITE, story, type Story } from './given.js';

const v = <U extends string>(value: string, u: U) => ({ v: value, u });
type Given = {
  readonly on: string | null;
  readonly fact: FactEntry['fact'];
  readonly value: FactEntry['value'];
};
const measured = (facts: readonly Given[]): CommandInput => ({
  type: 'record-facts',
  facts: facts.map((each) => ({ ...each, how: 'measured' })),
});

export const SOURCE = { document: 'letter of the building department', date: '2026-02-20' };

const opened = (kind: 'roof' | 'wall', name: string): CommandInput => ({
  type: 'open-job',
  number: '2026-0142',
  name,
  site: { id: SITE },
  parties: { customer: { id: CUSTOMER } },
  priorities: ['value'],
  jurisdiction: 'KS',
  due: '2026-05-01',
  buildings: [{ id: 'b1', name: 'Main building' }],
  surfaces: [{ id: 's1', building: 'b1', name: 'South', kind }],
});

/** A barn: ribbed panel on steel purlins at 46 to 48 in, three zones, entered pressures. */
export const BARN: Readonly<Record<Exclude<Stage, 'sign-off'> | 'open' | 'facts', CommandInput>> = {
  open: opened('roof', 'Hay barn'),
  facts: measured([
    { on: 's1', fact: 'slope', value: v('4', 'per-12') },
    { on: 's1', fact: 'longest-piece', value: v('20', 'ft') },
    { on: 's1', fact: 'area', value: v('24', 'squares') },
    { on: 's1', fact: 'substrate', value: 'purlins' },
    { on: 's1', fact: 'support-thickness', value: v('0.0598', 'in') },
    {
      on: 's1',
      fact: 'support-spacings',
      value: [{ v: '47.5' }, { v: '48' }, { v: '46' }, { zone: '3', v: '24' }],
    },
    { on: 's1', fact: 'condensation-control', value: 'none' },
    { on: 's1', fact: 'framing-sound', value: true },
    { on: 's1', fact: 'fastener-metal', value: 'galvanized' },
    { on: 's1', fact: 'underlayment', value: 'none' },
    { on: 's1', fact: 'support-tensile-strength', value: v('65', 'ksi') },
    { on: 'b1', fact: 'inside-air', value: 'unheated' },
    { on: 'b1', fact: 'enclosure', value: 'partially-enclosed' },
    { on: 'b1', fact: 'any-side-open', value: true },
    { on: 'b1', fact: 'doors-open-in-storms', value: true },
    { on: 'b1', fact: 'mean-roof-height', value: v('18', 'ft') },
    { on: 'b1', fact: 'risk-category', value: 'I' },
    { on: 'b1', fact: 'residential', value: false },
    { on: null, fact: 'wind-speed', value: v('105', 'mph') },
    { on: null, fact: 'ground-snow', value: v('20', 'psf') },
    { on: null, fact: 'water', value: 'none' },
    { on: null, fact: 'design-stone', value: v('1', 'in') },
  ]),
  style: { type: 'choose-style', surface: 's1', profile: 'rib-36', width: v('36', 'in') },
  coating: {
    type: 'choose-coating',
    surface: 's1',
    metal: 'steel',
    metallic_coating: 'AZ50',
    paint_system: 'SMP',
    color_group: 'earth-tone',
  },
  hazards: {
    type: 'assess-hazards',
    surface: 's1',
    hazards: {
      wind: {
        method: 'entered',
        basis: 'strength',
        by_engineer: false,
        source: SOURCE,
        zones: [
          { zone: '1', part: 'roof', inward: v('16', 'psf'), outward: v('-30', 'psf') },
          { zone: '2', part: 'roof', inward: v('16', 'psf'), outward: v('-40', 'psf') },
          { zone: '3', part: 'roof', inward: v('16', 'psf'), outward: v('-60', 'psf') },
        ],
      },
      snow: {
        method: 'entered',
        basis: 'ASD',
        roof: v('18', 'psf'),
        by_engineer: false,
        source: SOURCE,
      },
    },
  },
  substrate: { type: 'confirm-substrate', surface: 's1' },
  gauge: {
    type: 'select-gauge',
    surface: 's1',
    option: 'steel-0.0187-ss-80',
    attachment: {
      fastener: 'screw-14',
      zones: [
        { zone: '1', spacing: v('9', 'in') },
        { zone: '2', spacing: v('9', 'in') },
        { zone: '3', spacing: v('9', 'in') },
      ],
    },
  },
};

/** A house: snap seam on plywood. */
export const HOUSE: typeof BARN = {
  open: opened('roof', 'House on the ridge'),
  facts: measured([
    { on: 's1', fact: 'slope', value: v('6', 'per-12') },
    { on: 's1', fact: 'longest-piece', value: v('24', 'ft') },
    { on: 's1', fact: 'area', value: v('30', 'squares') },
    { on: 's1', fact: 'substrate', value: 'plywood' },
    { on: 's1', fact: 'deck-thickness', value: v('0.594', 'in') },
    { on: 's1', fact: 'reroof', value: false },
    { on: 's1', fact: 'weathertightness-asked', value: false },
    { on: 's1', fact: 'fastener-bite', value: v('0.5', 'in') },
    { on: 's1', fact: 'underlayment', value: 'high-temperature self-adhered' },
    { on: 's1', fact: 'fastener-metal', value: 'galvanized' },
    { on: 's1', fact: 'condensation-control', value: 'vented-deck' },
    { on: 'b1', fact: 'inside-air', value: 'heated' },
    { on: 'b1', fact: 'enclosure', value: 'enclosed' },
    { on: 'b1', fact: 'any-side-open', value: false },
    { on: 'b1', fact: 'doors-open-in-storms', value: false },
    { on: 'b1', fact: 'mean-roof-height', value: v('22', 'ft') },
    { on: 'b1', fact: 'risk-category', value: 'II' },
    { on: 'b1', fact: 'residential', value: true },
    { on: null, fact: 'wind-speed', value: v('115', 'mph') },
    { on: null, fact: 'ground-snow', value: v('20', 'psf') },
    { on: null, fact: 'water', value: 'breaking-surf' },
    { on: null, fact: 'water-distance', value: v('9000', 'ft') },
    { on: null, fact: 'design-stone', value: v('1', 'in') },
  ]),
  style: { type: 'choose-style', surface: 's1', profile: 'seam-16', width: v('16', 'in') },
  coating: {
    type: 'choose-coating',
    surface: 's1',
    metal: 'steel',
    metallic_coating: 'AZ50',
    paint_system: 'PVDF',
    color_group: 'dark',
    color: 'slate',
  },
  hazards: {
    type: 'assess-hazards',
    surface: 's1',
    hazards: {
      wind: {
        method: 'entered',
        basis: 'ASD',
        by_engineer: false,
        source: SOURCE,
        zones: [
          { zone: '1', part: 'roof', inward: v('10', 'psf'), outward: v('-22', 'psf') },
          { zone: '2e', part: 'roof', inward: v('10', 'psf'), outward: v('-38', 'psf') },
        ],
      },
      snow: {
        method: 'entered',
        basis: 'ASD',
        roof: v('14', 'psf'),
        by_engineer: false,
        source: SOURCE,
      },
    },
  },
  substrate: BARN.substrate,
  gauge: {
    type: 'select-gauge',
    surface: 's1',
    option: 'steel-0.0236-ss-50-class-1',
    attachment: { fastener: 'clip-s', zones: [{ zone: 'all', spacing: v('24', 'in') }] },
  },
};

/** A workshop wall: ribbed panel on steel girts, one zone with closer girts, no snow. */
export const WALL: typeof BARN = {
  open: opened('wall', 'Workshop'),
  facts: measured([
    { on: 's1', fact: 'longest-piece', value: v('14', 'ft') },
    { on: 's1', fact: 'area', value: v('16', 'squares') },
    { on: 's1', fact: 'slope', value: v('60', 'per-12') },
    { on: 's1', fact: 'substrate', value: 'girts' },
    { on: 's1', fact: 'support-thickness', value: v('0.0598', 'in') },
    { on: 's1', fact: 'support-tensile-strength', value: v('65', 'ksi') },
    {
      on: 's1',
      fact: 'support-spacings',
      value: [{ v: '36' }, { v: '35.5' }, { zone: '5', v: '24' }],
    },
    { on: 's1', fact: 'condensation-control', value: 'blanket-with-retarder' },
    { on: 's1', fact: 'framing-sound', value: true },
    { on: 's1', fact: 'fastener-metal', value: 'galvanized' },
    { on: 's1', fact: 'underlayment', value: 'none' },
    { on: 'b1', fact: 'inside-air', value: 'heated' },
    { on: 'b1', fact: 'enclosure', value: 'enclosed' },
    { on: 'b1', fact: 'any-side-open', value: false },
    { on: 'b1', fact: 'doors-open-in-storms', value: false },
    { on: 'b1', fact: 'mean-roof-height', value: v('20', 'ft') },
    { on: 'b1', fact: 'risk-category', value: 'II' },
    { on: 'b1', fact: 'residential', value: false },
    { on: null, fact: 'wind-speed', value: v('115', 'mph') },
    { on: null, fact: 'ground-snow', value: v('20', 'psf') },
    { on: null, fact: 'water', value: 'none' },
    { on: null, fact: 'design-stone', value: v('1', 'in') },
  ]),
  style: BARN.style,
  coating: BARN.coating,
  hazards: {
    type: 'assess-hazards',
    surface: 's1',
    hazards: {
      wind: {
        method: 'entered',
        basis: 'strength',
        by_engineer: false,
        source: SOURCE,
        zones: [
          { zone: '4', part: 'wall', inward: v('30', 'psf'), outward: v('-33', 'psf') },
          { zone: '5', part: 'wall', inward: v('30', 'psf'), outward: v('-41', 'psf') },
        ],
      },
      snow: { method: 'not-applicable', why: 'a wall carries no snow' },
    },
  },
  substrate: BARN.substrate,
  gauge: {
    type: 'select-gauge',
    surface: 's1',
    option: 'steel-0.0187-ss-80',
    attachment: { fastener: 'screw-14', zones: [{ zone: 'all', spacing: v('9', 'in') }] },
  },
};

const ORDER = ['open', 'facts', 'style', 'coating', 'hazards', 'substrate', 'gauge'] as const;

/** Plays a job file up to and with a step; cautions that it meets are acknowledged. */
export function playUpTo(file: typeof BARN, last: (typeof ORDER)[number]): Story {
  return ORDER.slice(0, ORDER.indexOf(last) + 1).reduce(
    (told, step) => playReading(told, file[step]),
    story(),
  );
}

/** Plays a command after acknowledging the cautions it meets, as a person would who read them. */
export function playReading(told: Story, command: CommandInput): Story {
  const made = told.decision(command);
  if (made.ok) return told.play(command);
  const cautions = made.refusals
    .filter(({ code }) => code === 'MOVE-05')
    .map(({ words }) => words.split(' ')[0] ?? '');
  return told.play({ ...command, acknowledges: cautions } as CommandInput);
}

export const ASK: CommandInput = {
  type: 'request-sign-off',
  request: 'r1',
  surfaces: ['s1'],
  engineer: { id: ENGINEER },
  scope: 'panel and attachment of the south roof',
  expires: '2026-04-01',
};
export const LICENSE = {
  name: 'Avery Stone, PE (invented)',
  number: 'KS-00001',
  jurisdiction: 'KS',
  expires: '2027-06-30',
};
export const APPROVE: CommandInput = {
  type: 'answer-sign-off',
  request: 'r1',
  answer: 'approve',
  license: LICENSE,
  statement: 'I reviewed the packet.',
  packet: 'a'.repeat(64),
};
