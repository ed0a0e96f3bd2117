// The wind zones under a built shape, where the building is recorded as it is drawn and every zone has
// a spacing. Without them the closest spacing counts everywhere, which is never short.

import {
  ASCE_EDITIONS,
  degreesOfRise,
  feet,
  per12,
  zoneLayout,
  type AsceEdition,
  type ZonePiece,
} from '#engineering';
import type { Drawn } from '../contract/take-off.js';
import type { HazardsContent } from '../contract/events.js';
import { contentPath, factPath, type FactName, type Path } from '../contract/fact-dictionary.js';
import type { Surface } from '../job.js';
import type { Lookup } from '../lookup.js';
import type { ZoneRow } from './setting.js';

export interface Layout {
  readonly pieces: readonly ZonePiece[];
  readonly edition: AsceEdition | null;
  readonly paths: readonly Path[];
}
const NONE: Layout = { pieces: [], edition: null, paths: [] };
const SAME_FT = 0.01;

export function layoutFor(
  at: Lookup,
  surface: Surface,
  drawn: Drawn,
  rows: readonly ZoneRow[],
): Layout {
  if (drawn.by !== 'shape' || rows.every(({ zone }) => zone === 'all')) return NONE;
  const paths = (['width', 'length', 'mean-roof-height'] as const).map((fact) =>
    factPath('building', surface.building, fact),
  );
  const [width = NaN, length = NaN, h = NaN] = (
    ['width', 'length', 'mean-roof-height'] as const
  ).map((fact) => numberAt(at, surface, fact));
  const [along, across] = [Number(drawn.along_ft), Number(drawn.across_ft)];
  const fits =
    Math.abs(Math.max(width, length) - Math.max(along, across)) <= SAME_FT &&
    Math.abs(Math.min(width, length) - Math.min(along, across)) <= SAME_FT;
  if (!fits || !(h > 0)) return NONE;
  const wind = at(contentPath(surface.id, 'hazards', 'wind')) as HazardsContent['wind'] | null;
  const editions = wind?.edition ? [wind.edition as AsceEdition] : ASCE_EDITIONS;
  const named = new Set(rows.map(({ zone }) => zone));
  for (const edition of editions) {
    const pieces = laid(drawn, edition, h);
    if (pieces.length > 0 && (named.has('all') || pieces.every(({ zone }) => named.has(zone))))
      return { pieces, edition, paths };
  }
  return NONE;
}

const numberAt = (at: Lookup, surface: Surface, fact: FactName): number =>
  Number((at(factPath('building', surface.building, fact)) as { v?: string } | null)?.v ?? NaN);

const SHAPE = { shed: 'monoslope', gable: 'gable', hip: 'hip' } as const;

function laid(
  drawn: Extract<Drawn, { by: 'shape' }>,
  edition: AsceEdition,
  h: number,
): readonly ZonePiece[] {
  const [along, across, rise] = [
    Number(drawn.along_ft),
    Number(drawn.across_ft),
    Number(drawn.rise_per_12),
  ];
  try {
    return zoneLayout({
      edition,
      h: feet(h),
      roof: {
        shape: SHAPE[drawn.shape],
        theta: degreesOfRise(per12(rise)),
        width: feet(Math.min(along, across)),
        length: feet(Math.max(along, across)),
        falls: across <= along ? 'along-width' : 'along-length',
        overhang: feet(Number(drawn.overhang_ft)),
      },
      eaveHeight: feet(Math.max(1, h - (across * rise) / 48)),
    }).filter(({ part }) => part !== 'wall');
  } catch {
    // Outside the layouts of this edition: there are no zones to lay.
    return [];
  }
}
