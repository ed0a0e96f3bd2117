// Catalogue edition 1 of the demonstration, put together from its invented tables.

import { Catalogue } from '#jobs/contract';
import { assemblies, charts } from './capacities.js';
import { FASTENERS } from './fasteners.js';
import { made, terms } from './offers.js';
import { outlineOf } from './outlines.table.js';
import { FAMILY_OF, PROFILES } from './profiles.table.js';
import { amount } from './steps.js';
import { words } from './text-table.js';
import { WARRANTORS } from './warrantors.js';

/** Newly made at each call, so that nobody changes another's. */
export const demonstrationCatalogue = (): Catalogue =>
  Catalogue.parse({
    edition: 1,
    in_force_from: '2026-01-05',
    summary: 'First edition, invented for the demonstration: no number here is of a real product.',
    invented: true,
    profiles: profiles(),
    made: made(),
    charts: charts(),
    assemblies: assemblies(),
    fasteners: FASTENERS,
    terms: terms(),
    warrantors: WARRANTORS,
  });

function profiles() {
  return PROFILES.map((row) => ({
    id: row.id,
    name: row.name,
    family: FAMILY_OF[row.id.split('-')[0] ?? ''],
    fastening: row.seam === 'screw-down' ? 'exposed' : 'concealed',
    seam: row.seam,
    structural: row.lies === 'open',
    least_slope: amount(row.slope, 'per-12'),
    warranty_least_slope: amount(row.warranty, 'per-12'),
    widths: words(row.widths).map((width) => amount(width, 'in')),
    rib_height: amount(row.rib, 'in'),
    flat_width: amount(row.flat, 'in'),
    striated: row.look === 'striated',
    longest_piece: amount(row.longest, 'ft'),
    developed_width: amount(Number(words(row.widths)[0]) + Number(row.more), 'in'),
    ...outlined(row.id),
  }));
}

function outlined(profile: string) {
  const outline = outlineOf(profile);
  return outline ? { outline } : {};
}
