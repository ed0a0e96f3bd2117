// From what a person described to what the calculation is asked, and from its faults back to the
// places that were filled in.

import type { Fault, PlaneRequest, TakeOffRequest } from '#engineering';
import type { CommandOf } from '../contract/commands.js';
import { asNumbers } from './decimals.js';
import { placeInDrawn, planesOf } from './drawn.js';
import type { Setting } from './setting.js';

export type RecordTakeOff = CommandOf<'record-take-off'>;
type Asked =
  | { readonly ok: true; readonly request: TakeOffRequest }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** More than these are two take-offs, or a slip of the pen. */
const MOST_STRIPS = 3000;
const MOST_CORNERS = 1200;

export function requestOf(command: RecordTakeOff, setting: Setting): Asked {
  const planes = planesOf(command.drawn);
  if (!planes.ok) return planes;
  const { panel, fastening, ...rest } = asNumbers(command) as NumbersOf;
  const twice = command.panel.ends.filter(
    ({ edge }, i) => command.panel.ends.findIndex((each) => each.edge === edge) < i,
  );
  const faults = [
    ...tooMuch(planes.planes, setting),
    ...twice.map(({ edge }) => ({ pointer: '/panel/ends', message: `${edge} is given twice` })),
  ];
  if (faults.length > 0) return { ok: false, faults };
  const { ends, ...lengths } = panel;
  return {
    ok: true,
    request: {
      planes: planes.planes,
      panel: {
        ...lengths,
        coverage_in: setting.coverage_in,
        weight_psf: setting.weight_psf,
        longest_ft: setting.longest.ft,
        ends_in: Object.fromEntries(ends.map(({ edge, add_in }) => [edge, add_in])),
      },
      attachment: { fastener: setting.fastener.name, zones: setting.rows, ...fastening },
      trims: rest.trims,
      closures: rest.closures,
      sealants: rest.sealants,
      underlayments: rest.underlayments,
      ...(rest.bundles === undefined ? {} : { bundles: rest.bundles }),
    },
  };
}

type NumbersOf = Pick<
  TakeOffRequest,
  'trims' | 'closures' | 'sealants' | 'underlayments' | 'bundles'
> & {
  readonly panel: Omit<
    TakeOffRequest['panel'],
    'coverage_in' | 'weight_psf' | 'longest_ft' | 'ends_in'
  > & {
    readonly ends: readonly { readonly edge: string; readonly add_in: number }[];
  };
  readonly fastening: { readonly screws_each?: number; readonly stitch_spacing_in?: number };
};

function tooMuch(planes: readonly PlaneRequest[], { coverage_in }: Setting): readonly Fault[] {
  const corners = planes.reduce(
    (sum, { outline, openings }) =>
      sum + outline.length + openings.reduce((n, each) => n + each.outline.length, 0),
    0,
  );
  const strips = planes.reduce((sum, { outline }) => {
    const xs = outline.map(({ x_ft }) => x_ft);
    return sum + Math.ceil((12 * (Math.max(...xs) - Math.min(...xs))) / coverage_in);
  }, 0);
  return [
    ...(strips > MOST_STRIPS
      ? [
          {
            pointer: '/planes',
            message: `would be ${strips} strips; one take-off holds ${MOST_STRIPS}: take the surface off in parts`,
          },
        ]
      : []),
    ...(corners > MOST_CORNERS
      ? [
          {
            pointer: '/planes',
            message: `have ${corners} corners; one take-off holds ${MOST_CORNERS}`,
          },
        ]
      : []),
  ];
}

/** Where in the command a fault of the calculation belongs. */
export function placeOf(pointer: string, { drawn }: RecordTakeOff): string {
  const [, top = ''] = pointer.split('/');
  if (top === 'attachment') return '/fastening';
  if (top === 'panel') return pointer.startsWith('/panel/ends_in') ? '/panel/ends' : pointer;
  if (top === 'planes') return placeInDrawn(pointer, drawn);
  return ['trims', 'closures', 'sealants', 'underlayments', 'bundles'].includes(top)
    ? pointer
    : `/drawn${pointer}`;
}
