// The kinds of surface that the large demonstration's jobs are about, with their facts, loads and the
// attachments that the office tries, from the widest to the closest. Invented.

import type { Attachment, CommandInput, FactEntry } from '#jobs/contract';
import { amount, spaced, zone } from '../demonstration/steps.js';
import type { Dice } from './dice.js';

export type Told = readonly [fact: FactEntry['fact'], value: FactEntry['value']];
type Given<T extends CommandInput['type']> = Omit<
  Extract<CommandInput, { type: T }>,
  'type' | 'surface'
>;

export interface Kind {
  readonly id: string;
  readonly surface: 'roof' | 'wall';
  readonly names: readonly string[];
  readonly profile: string;
  readonly width: string;
  readonly coating: (dice: Dice) => Given<'choose-coating'>;
  readonly substrate: (dice: Dice) => readonly Told[];
  /** Wind zone and the share of the job's own pressure that acts on it. */
  readonly zones: readonly (readonly [name: string, share: number])[];
  readonly pressure: readonly [least: number, most: number];
  readonly attachments: readonly Attachment[];
  readonly fastenerMetal: 'galvanized' | 'stainless';
  readonly overOldRoof: boolean;
  readonly dwelling: boolean;
}

const attachments = (
  fastener: string,
  names: readonly string[],
  ...steps: readonly (readonly number[])[]
): readonly Attachment[] =>
  steps.map((step) => ({ fastener, zones: names.map((name, i) => spaced(name, String(step[i]))) }));

const painted =
  (
    paint_system: 'PVDF' | 'SMP',
    groups: readonly ('white' | 'light' | 'earth-tone' | 'dark' | 'bright')[],
  ) =>
  (dice: Dice): Given<'choose-coating'> => {
    const color_group = dice.pick(groups);
    return {
      metal: 'steel',
      metallic_coating: 'AZ50',
      paint_system,
      color_group,
      color: `${color_group} ${dice.whole(1, 9)} (invented)`,
    };
  };

const STEEL_FRAME: readonly Told[] = [
  ['support-thickness', amount('0.0598', 'in')],
  ['support-tensile-strength', amount(65, 'ksi')],
  ['fastener-bite', amount('0.0598', 'in')],
  ['framing-sound', true],
  ['underlayment', 'none'],
];
const DECK: readonly Told[] = [
  ['fastener-bite', amount('0.5', 'in')],
  ['condensation-control', 'vented-deck'],
];
const spacings = (dice: Dice, about: number) =>
  Array.from({ length: 4 }, () => ({ v: String(about - dice.whole(0, 3) / 4) }));

const ROOF = ['1', '2', '3'] as const;
const WALL = ['4', '5'] as const;
const ROOF_SHARES = [
  ['1', 1],
  ['2', 1.5],
  ['3', 2.2],
] as const;
const WALL_SHARES = [
  ['4', 1],
  ['5', 1.25],
] as const;

export const KINDS: readonly Kind[] = [
  {
    id: 'barn',
    surface: 'roof',
    names: ['Hay barn', 'Machine shed', 'Pole barn', 'Sheep shed'],
    profile: 'rib-36',
    width: '36',
    coating: painted('SMP', ['white', 'light', 'earth-tone']),
    substrate: (dice) => [
      ['substrate', 'purlins'],
      ['support-spacings', spacings(dice, 24)],
      ['wood-specific-gravity', amount('0.42', 'G')],
      ['fastener-bite', amount('1.25', 'in')],
      ['condensation-control', 'absorbing-fleece'],
      ['underlayment', 'none'],
      ['framing-sound', true],
    ],
    zones: ROOF_SHARES,
    pressure: [18, 30],
    fastenerMetal: 'galvanized',
    overOldRoof: false,
    dwelling: false,
    attachments: attachments('screw-wood-10', ROOF, [12, 12, 9], [9, 9, 6], [6, 6, 4]),
  },
  {
    id: 'house',
    surface: 'roof',
    names: ['House reroof', 'Cottage roof', 'Farmhouse roof', 'Porch and main roof'],
    profile: 'snap-16',
    width: '16',
    coating: painted('PVDF', ['white', 'light', 'earth-tone', 'dark']),
    substrate: (dice) => [
      ['substrate', 'plywood'],
      ['deck-thickness', amount(dice.pick(['0.5', '0.594']), 'in')],
      ['underlayment', 'self-adhered membrane'],
      ...DECK,
    ],
    zones: ROOF_SHARES,
    pressure: [16, 40],
    fastenerMetal: 'galvanized',
    overOldRoof: true,
    dwelling: true,
    attachments: attachments('clip-fixed', ROOF, [24, 24, 12], [24, 12, 6], [12, 6, 6]),
  },
  {
    id: 'garage',
    surface: 'roof',
    names: ['Garage roof', 'Workshop reroof', 'Row of garages'],
    profile: 'nail-16',
    width: '16',
    coating: painted('SMP', ['white', 'light', 'earth-tone', 'bright']),
    substrate: () => [
      ['substrate', 'osb'],
      ['deck-thickness', amount('0.5', 'in')],
      ['underlayment', 'synthetic sheet'],
      ...DECK,
    ],
    zones: ROOF_SHARES,
    pressure: [12, 24],
    fastenerMetal: 'galvanized',
    overOldRoof: true,
    dwelling: true,
    attachments: attachments('screw-pancake-10', ROOF, [12, 12, 12], [12, 12, 6], [6, 6, 6]),
  },
  {
    id: 'hall',
    surface: 'roof',
    names: ['Store hall', 'School gym', 'Warehouse roof'],
    profile: 'mech-24',
    width: '24',
    coating: painted('PVDF', ['white', 'light', 'earth-tone']),
    substrate: (dice) => [
      ['substrate', 'purlins'],
      ['support-spacings', [...spacings(dice, 60), { zone: '3', v: '30' }]],
      ['condensation-control', 'blanket-with-retarder'],
      ...STEEL_FRAME,
    ],
    zones: ROOF_SHARES,
    pressure: [14, 26],
    fastenerMetal: 'stainless',
    overOldRoof: false,
    dwelling: false,
    attachments: attachments('clip-floating', ROOF, [60, 60, 30], [48, 48, 30], [30, 30, 30]),
  },
  {
    id: 'plant',
    surface: 'wall',
    names: ['Plant wall', 'Cold store wall', 'Depot wall'],
    profile: 'deep-36',
    width: '36',
    coating: painted('SMP', ['white', 'light', 'earth-tone']),
    substrate: (dice) => [
      ['substrate', 'girts'],
      ['support-spacings', spacings(dice, dice.pick([48, 60, 72]))],
      ['condensation-control', 'blanket-with-retarder'],
      ...STEEL_FRAME,
    ],
    zones: WALL_SHARES,
    pressure: [16, 28],
    fastenerMetal: 'galvanized',
    overOldRoof: false,
    dwelling: false,
    attachments: attachments('screw-steel-12', WALL, [12, 12], [9, 6], [6, 4]),
  },
  {
    id: 'front',
    surface: 'wall',
    names: ['Shop front', 'Clinic wall', 'Library wall'],
    profile: 'flush-12',
    width: '12',
    coating: painted('PVDF', ['white', 'light', 'dark', 'bright']),
    substrate: () => [
      ['substrate', 'plywood'],
      ['deck-thickness', amount('0.594', 'in')],
      ['underlayment', 'building wrap'],
      ...DECK,
    ],
    zones: WALL_SHARES,
    pressure: [16, 30],
    fastenerMetal: 'galvanized',
    overOldRoof: false,
    dwelling: false,
    attachments: attachments('screw-pancake-10', WALL, [24, 24], [24, 12], [12, 12]),
  },
];

/** Pressures of the kind's zones at the job's own level, psf. */
export const pressures = (kind: Kind, level: number) =>
  kind.zones.map(([name, share]) => zone(name, kind.surface, '16', (-level * share).toFixed(1)));
