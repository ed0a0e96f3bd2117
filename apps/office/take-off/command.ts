// From what is typed to the command. A field's id is the command's own pointer with dashes, so that
// what the service refuses is shown where it was typed.

import type { CommandInput } from '#jobs/contract';
import { decimal } from '../stages/hazards-entry.js';
import { takeOffFaults } from './faults.js';
import { edgesOf, planeNames, type TakeOffTyped } from './typed.js';

export type RecordTakeOff = Extract<CommandInput, { type: 'record-take-off' }>;

export const place = (pointer: string): string => {
  const parts = pointer
    .split('/')
    .slice(1)
    .filter((part) => part !== 'drawn');
  const id = parts.join('-');
  if (/^openings-\d+$/.test(id)) return `${id}-x_ft`;
  if (/^planes-\d+$/.test(id)) return `${id}-name`;
  if (/^planes-\d+-outline$/.test(id)) return `${id}-0-x_ft`;
  if (/^planes-\d+-outline-\d+$/.test(id)) return `${id}-x_ft`;
  if (id.startsWith('bundles-landings')) return 'bundles-landings-0';
  const known: Readonly<Record<string, string>> = {
    '': 'by-0',
    panel: 'panel-round_up_in',
    'panel-ends': 'ends-0',
    'panel-longest_ft': 'panel-end_lap_in',
    fastening: 'measured_from',
    surface: 'measured_from',
    planes: 'by-0',
  };
  return known[id] ?? id;
};

const optional = <K extends string>(key: K, text: string): Partial<Record<K, string>> =>
  text.trim() ? ({ [key]: decimal(text) ?? '' } as Record<K, string>) : {};
const num = (text: string): string => decimal(text) ?? '';

export function takeOffCommand(surface: string, typed: TakeOffTyped): RecordTakeOff {
  const { panel, fastening, spares } = typed;
  const edges = edgesOf(typed);
  return {
    type: 'record-take-off',
    surface,
    measured_from: typed.measured_from.trim(),
    drawn: drawnOf(typed),
    panel: {
      round_up_in: num(panel.round_up_in),
      ...optional('end_lap_in', panel.end_lap_in),
      ...optional('least_piece_in', panel.least_piece_in),
      ends: edges.flatMap((edge) =>
        typed.ends[edge]?.trim() ? [{ edge, add_in: num(typed.ends[edge] ?? '') }] : [],
      ),
    },
    fastening: {
      ...(fastening.screws_each.trim() ? { screws_each: Number(fastening.screws_each) } : {}),
      ...optional('stitch_spacing_in', fastening.stitch_spacing_in),
    },
    trims: typed.trims.map(
      ({ name, edges: of, stock_in, lap_in, weight_plf, screw_spacing_in }) => ({
        name: name.trim(),
        edges: of as typeof edges as never,
        stock_in: num(stock_in),
        lap_in: num(lap_in),
        weight_plf: num(weight_plf),
        ...optional('screw_spacing_in', screw_spacing_in),
      }),
    ),
    closures: typed.closures.map((each) => ({
      name: each.name.trim(),
      edges: each.edges as never,
      length_in: num(each.length_in),
    })),
    sealants: typed.sealants.map((each) => ({
      ...each,
      name: each.name.trim(),
      edges: each.edges as never,
      roll_ft: num(each.roll_ft),
    })),
    underlayments: typed.underlayments.map(({ edges: along, courses, ...each }) => ({
      name: each.name.trim(),
      roll_width_in: num(each.roll_width_in),
      roll_length_ft: num(each.roll_length_ft),
      side_lap_in: num(each.side_lap_in),
      end_lap_in: num(each.end_lap_in),
      ...(along.length > 0 ? { along: { edges: along as never, courses: Number(courses) } } : {}),
    })),
    ...bundlesOf(typed),
    spares: {
      panels: Number(spares.panels),
      fastener_percent: Number(spares.fastener_percent),
      touch_up: Number(spares.touch_up),
    },
  };
}

const bundlesOf = (typed: TakeOffTyped): Pick<RecordTakeOff, 'bundles'> =>
  typed.bundles.most_lb.trim()
    ? {
        bundles: {
          most_lb: num(typed.bundles.most_lb),
          most_pieces: Number(typed.bundles.most_pieces),
          landings: planeNames(typed).map((name) => ({
            plane: name,
            place: typed.landings[name]?.trim() ?? '',
          })),
        },
      }
    : {};

function drawnOf({ by, shape, planes, openings }: TakeOffTyped): RecordTakeOff['drawn'] {
  const rectangles = openings.map((each) => ({
    plane: each.plane,
    name: each.name.trim(),
    x_ft: num(each.x_ft),
    y_ft: num(each.y_ft),
    width_ft: num(each.width_ft),
    height_ft: num(each.height_ft),
  }));
  if (by === 'shape') {
    return {
      by: 'shape',
      shape: shape.shape as 'gable',
      along_ft: num(shape.along_ft),
      across_ft: num(shape.across_ft),
      overhang_ft: num(shape.overhang_ft),
      rise_per_12: num(shape.rise_per_12),
      start: shape.start as 'left',
      openings: rectangles,
    };
  }
  return {
    by: 'planes',
    openings: rectangles,
    planes: planes.map((each) => ({
      name: each.name.trim(),
      lies: each.lies as 'roof',
      ...(each.lies === 'roof' ? { rise_per_12: num(each.rise_per_12) } : {}),
      measured: (each.lies === 'wall' ? 'on-slope' : each.measured) as 'in-plan',
      start: each.start as 'left',
      outline: each.outline.map(({ x_ft, y_ft, edge, joint }) => ({
        x_ft: num(x_ft),
        y_ft: num(y_ft),
        edge: edge as 'eave',
        ...(joint.trim() ? { joint: joint.trim() } : {}),
      })),
      openings: each.openings as [],
    })),
  };
}

/** Asked while it is typed: what is not complete yet is left out, where the planes are. */
export function askedTakeOff(surface: string, typed: TakeOffTyped): RecordTakeOff | null {
  const faults = takeOffFaults({ ...typed, measured_from: typed.measured_from || 'not said yet' });
  const wrong = (start: string): boolean => faults.some(({ field }) => field.startsWith(start));
  const kept = <T>(name: string, list: readonly T[]): readonly T[] =>
    list.filter((_, i) => !wrong(`${name}-${i}-`));
  const whole: TakeOffTyped = {
    ...typed,
    measured_from: typed.measured_from.trim() || 'not said yet',
    trims: kept('trims', typed.trims),
    closures: kept('closures', typed.closures),
    sealants: kept('sealants', typed.sealants),
    underlayments: kept('underlayments', typed.underlayments),
    openings: kept('openings', typed.openings),
    bundles: wrong('bundles-') ? { most_lb: '', most_pieces: '' } : typed.bundles,
  };
  return takeOffFaults(whole).length > 0 ? null : takeOffCommand(surface, whole);
}
