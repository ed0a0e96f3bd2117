// Every fault of what is typed, at its field, before the service is asked.

import type { FieldError, FieldErrors } from '../parts/fields.js';
import { decimal } from '../stages/hazards-entry.js';
import { edgesOf, planeNames, type TakeOffTyped } from './typed.js';

type Need = 'needed' | 'optional';

/** A fault where the text is no number of this field. */
function check(
  field: string,
  words: string,
  text: string,
  need: Need,
  least: 'any' | 'zero' | 'over',
): FieldErrors {
  if (!text.trim()) return need === 'optional' ? [] : [{ field, message: `Enter ${words}` }];
  const n = Number(decimal(text) ?? NaN);
  if (Number.isNaN(n)) return [{ field, message: `Enter ${words} in digits, like 252.5` }];
  if (least === 'over' && n <= 0) return [{ field, message: `Enter ${words} over 0` }];
  return least === 'zero' && n < 0 ? [{ field, message: `Enter ${words}, 0 or more` }] : [];
}

const named = (field: string, what: string, name: string): FieldErrors =>
  name.trim() ? [] : [{ field, message: `Enter the name of ${what}` }];
const whole = (field: string, words: string, text: string, need: Need): FieldErrors =>
  !text.trim() && need === 'optional'
    ? []
    : /^\d{1,4}$/.test(text.trim())
      ? []
      : [{ field, message: `Enter ${words} as a whole number` }];
const covers = (field: string, what: string, edges: readonly string[]): FieldErrors =>
  edges.length > 0 ? [] : [{ field, message: `Choose the edges of ${what}` }];

export const takeOffFaults = (typed: TakeOffTyped): FieldErrors => [
  ...(typed.measured_from.trim()
    ? []
    : [{ field: 'measured_from', message: 'Say what was measured from' } satisfies FieldError]),
  ...drawnFaults(typed),
  ...panelFaults(typed),
  ...typed.trims.flatMap(trimFaults),
  ...typed.closures.flatMap((each, i) => [
    ...named(`closures-${i}-name`, `closure ${i + 1}`, each.name),
    ...covers(`closures-${i}-edges`, `closure ${i + 1}`, each.edges),
    ...check(
      `closures-${i}-length_in`,
      `the length of closure ${i + 1}`,
      each.length_in,
      'needed',
      'over',
    ),
  ]),
  ...typed.sealants.flatMap((each, i) => [
    ...named(`sealants-${i}-name`, `sealant ${i + 1}`, each.name),
    ...check(
      `sealants-${i}-roll_ft`,
      `the roll of sealant ${i + 1}`,
      each.roll_ft,
      'needed',
      'over',
    ),
  ]),
  ...typed.underlayments.flatMap(underlaymentFaults),
  ...bundleFaults(typed),
  ...whole('spares-panels', 'spare panels', typed.spares.panels, 'needed'),
  ...whole(
    'spares-fastener_percent',
    'the share of spare fasteners',
    typed.spares.fastener_percent,
    'needed',
  ),
  ...whole('spares-touch_up', 'touch-up paint', typed.spares.touch_up, 'needed'),
];

function drawnFaults({ by, shape, planes, openings }: TakeOffTyped): FieldErrors {
  const own =
    by === 'shape'
      ? [
          ...check('along_ft', 'the length along the eave', shape.along_ft, 'needed', 'over'),
          ...check('across_ft', 'the width across', shape.across_ft, 'needed', 'over'),
          ...check('overhang_ft', 'the overhang', shape.overhang_ft, 'needed', 'zero'),
          ...check('rise_per_12', 'the rise', shape.rise_per_12, 'needed', 'over'),
        ]
      : planes.flatMap((each, i) => [
          ...named(`planes-${i}-name`, `plane ${i + 1}`, each.name),
          ...(each.lies === 'roof'
            ? check(
                `planes-${i}-rise_per_12`,
                `the rise of plane ${i + 1}`,
                each.rise_per_12,
                'needed',
                'over',
              )
            : []),
          ...each.outline.flatMap((one, j) =>
            (['x_ft', 'y_ft'] as const).flatMap((key) =>
              check(
                `planes-${i}-outline-${j}-${key}`,
                `${key.charAt(0)} of corner ${j + 1} of plane ${i + 1}`,
                one[key],
                'needed',
                'any',
              ),
            ),
          ),
        ]);
  return [...own, ...openings.flatMap(openingFaults)];
}

const openingFaults = (each: TakeOffTyped['openings'][number], i: number): FieldErrors => [
  ...named(`openings-${i}-name`, `opening ${i + 1}`, each.name),
  ...(each.plane
    ? []
    : [{ field: `openings-${i}-plane`, message: `Choose the plane of opening ${i + 1}` }]),
  ...(['x_ft', 'y_ft'] as const).flatMap((key) =>
    check(
      `openings-${i}-${key}`,
      `${key.charAt(0)} of opening ${i + 1}`,
      each[key],
      'needed',
      'any',
    ),
  ),
  ...check(
    `openings-${i}-width_ft`,
    `the width of opening ${i + 1}`,
    each.width_ft,
    'needed',
    'over',
  ),
  ...check(
    `openings-${i}-height_ft`,
    `the length of opening ${i + 1}`,
    each.height_ft,
    'needed',
    'over',
  ),
];

const panelFaults = (typed: TakeOffTyped): FieldErrors => [
  ...check(
    'panel-round_up_in',
    'the multiple that lengths are ordered in',
    typed.panel.round_up_in,
    'needed',
    'over',
  ),
  ...check('panel-end_lap_in', 'the end lap', typed.panel.end_lap_in, 'optional', 'zero'),
  ...check(
    'panel-least_piece_in',
    'the shortest piece',
    typed.panel.least_piece_in,
    'optional',
    'over',
  ),
  ...edgesOf(typed).flatMap((edge, i) =>
    check(`ends-${i}`, `what is added at the ${edge}`, typed.ends[edge] ?? '', 'optional', 'any'),
  ),
  ...whole(
    'fastening-screws_each',
    'the screws in a clip',
    typed.fastening.screws_each,
    'optional',
  ),
  ...check(
    'fastening-stitch_spacing_in',
    'the spacing of stitch screws',
    typed.fastening.stitch_spacing_in,
    'optional',
    'over',
  ),
];

const trimFaults = (each: TakeOffTyped['trims'][number], i: number): FieldErrors => [
  ...named(`trims-${i}-name`, `trim ${i + 1}`, each.name),
  ...covers(`trims-${i}-edges`, each.name || `trim ${i + 1}`, each.edges),
  ...check(
    `trims-${i}-stock_in`,
    `the stock length of ${each.name || `trim ${i + 1}`}`,
    each.stock_in,
    'needed',
    'over',
  ),
  ...check(
    `trims-${i}-lap_in`,
    `the lap of ${each.name || `trim ${i + 1}`}`,
    each.lap_in,
    'needed',
    'zero',
  ),
  ...check(
    `trims-${i}-weight_plf`,
    `the weight of ${each.name || `trim ${i + 1}`}`,
    each.weight_plf,
    'needed',
    'zero',
  ),
  ...check(
    `trims-${i}-screw_spacing_in`,
    `the screw spacing of ${each.name || `trim ${i + 1}`}`,
    each.screw_spacing_in,
    'optional',
    'over',
  ),
];

const underlaymentFaults = (
  each: TakeOffTyped['underlayments'][number],
  i: number,
): FieldErrors => [
  ...named(`underlayments-${i}-name`, `underlayment ${i + 1}`, each.name),
  ...check(
    `underlayments-${i}-roll_width_in`,
    `the roll width of underlayment ${i + 1}`,
    each.roll_width_in,
    'needed',
    'over',
  ),
  ...check(
    `underlayments-${i}-roll_length_ft`,
    `the roll length of underlayment ${i + 1}`,
    each.roll_length_ft,
    'needed',
    'over',
  ),
  ...check(
    `underlayments-${i}-side_lap_in`,
    `the side lap of underlayment ${i + 1}`,
    each.side_lap_in,
    'needed',
    'zero',
  ),
  ...check(
    `underlayments-${i}-end_lap_in`,
    `the end lap of underlayment ${i + 1}`,
    each.end_lap_in,
    'needed',
    'zero',
  ),
  ...(each.edges.length > 0
    ? whole(
        `underlayments-${i}-courses`,
        `the courses of underlayment ${i + 1}`,
        each.courses,
        'needed',
      )
    : []),
];

function bundleFaults(typed: TakeOffTyped): FieldErrors {
  const { most_lb, most_pieces } = typed.bundles;
  if (!most_lb.trim() && !most_pieces.trim()) return [];
  return [
    ...check('bundles-most_lb', 'the heaviest bundle', most_lb, 'needed', 'over'),
    ...whole('bundles-most_pieces', 'the most pieces in a bundle', most_pieces, 'needed'),
    ...planeNames(typed).flatMap((name, i) =>
      typed.landings[name]?.trim()
        ? []
        : [{ field: `bundles-landings-${i}`, message: `Say where the bundles of ${name} land` }],
    ),
  ];
}
