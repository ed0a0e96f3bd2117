// What a take-off rests on besides what a person draws: panel, sheet and attachment as the stages
// settled them, the longest piece that can come to the site, and the paths that were read for it.

import { isOpenFraming, type Substrate } from '#rules';
import type { Catalogue, Fastener, Profile } from '../contract/catalogue.js';
import type { Attachment } from '../contract/commands.js';
import type { Reads } from '../contract/events.js';
import {
  contentPath,
  factPath,
  type FactName,
  type Path,
  type Spacing,
} from '../contract/fact-dictionary.js';
import type { Job, Surface } from '../job.js';
import { lookupIn, type Lookup } from '../lookup.js';
import { refuse, type Refusal } from '../refusal.js';

export interface ZoneRow {
  readonly zone: string;
  readonly spacing_in: number;
  readonly per_row: number;
}

export interface Setting {
  readonly profile: Profile;
  readonly fastener: Fastener;
  readonly coverage_in: number;
  readonly weight_psf: number;
  readonly sheet: string;
  readonly longest: { readonly ft: number; readonly by: string };
  readonly rows: readonly ZoneRow[];
  readonly reads: Reads;
}

const LIMITS = [
  ['truck-limit', 'the truck'],
  ['site-limit', 'the way to the site'],
  ['handling-limit', 'handling on the roof'],
] as const satisfies readonly (readonly [FactName, string])[];

/** Everything that is missing at once. */
export function settingOf(
  job: Job,
  surface: Surface,
  catalogue: Catalogue,
): Setting | readonly Refusal[] {
  const { style, gauge } = surface.stages;
  const open = (['style', 'gauge'] as const).filter(
    (stage) => surface.stages[stage].status !== 'confirmed',
  );
  if (open.length > 0 || !style.record || !gauge.record) {
    return [
      refuse(
        'MOVE-01',
        `${surface.name}: a take-off counts what the style and the gauge settled; not confirmed: ${open.join(', ')}.`,
      ),
    ];
  }
  const at = lookupIn(job);
  const profile = catalogue.profiles.find(({ id }) => id === style.record?.content.profile);
  const fastener = catalogue.fasteners.find(
    ({ id }) => id === gauge.record?.content.attachment.fastener,
  );
  const { option, gauge: label, thickness_in, grade, attachment } = gauge.record.content;
  const chosen = gauge.record.evaluation?.options.find(({ id }) => id === option);
  if (!profile || !fastener || !chosen) {
    const gone = [
      profile ? [] : ['the profile'],
      fastener ? [] : ['the fastener'],
      chosen ? [] : ['the weight of the sheet'],
    ].flat();
    return [
      refuse(
        'MOVE-11',
        `${surface.name}: ${gone.join(' and ')} is not in catalogue edition ${catalogue.edition}.`,
      ),
    ];
  }
  const coverage_in = Number(style.record.content.width);
  const rows = rowsFor(at, surface, attachment, fastener, coverage_in);
  if (typeof rows === 'string') return [refuse('MOVE-10', `${surface.name}: ${rows}`)];
  return {
    profile,
    fastener,
    coverage_in,
    weight_psf: Number(chosen.weight.v),
    sheet: `${label === null ? '' : `${label} gauge, `}${thickness_in} in, ${grade}`,
    longest: longestOf(at, profile),
    rows,
    reads: Object.fromEntries(pathsRead(surface).map((path) => [path, at(path)])),
  };
}

const pathsRead = (surface: Surface): readonly Path[] => [
  contentPath(surface.id, 'style', 'profile'),
  contentPath(surface.id, 'style', 'width'),
  contentPath(surface.id, 'coating', 'metal'),
  contentPath(surface.id, 'gauge', 'thickness_in'),
  contentPath(surface.id, 'gauge', 'grade'),
  contentPath(surface.id, 'gauge', 'attachment'),
  ...(['slope', 'substrate', 'support-spacings'] as const).map((fact) =>
    factPath('surface', surface.id, fact),
  ),
  ...LIMITS.map(([fact]) => factPath('job', null, fact)),
];

function longestOf(at: Lookup, profile: Profile): Setting['longest'] {
  const limits = LIMITS.flatMap(([fact, by]) => {
    const found = at(factPath('job', null, fact)) as { readonly v: string } | null;
    return found === null ? [] : [{ ft: Number(found.v), by }];
  });
  return limits.reduce((least, each) => (each.ft < least.ft ? each : least), {
    ft: Number(profile.longest_piece.v),
    by: 'the profile',
  });
}

/**
 * Rows along a panel, by zone. On open framing fasteners stand at the supports: a clip each, screws
 * as many as their spacing asks across the panel. Of several measured supports the closest counts, so
 * that the count is never short.
 */
function rowsFor(
  at: Lookup,
  surface: Surface,
  attachment: Attachment,
  fastener: Fastener,
  cover: number,
): readonly ZoneRow[] | string {
  const substrate = at(factPath('surface', surface.id, 'substrate')) as Substrate | null;
  const framing = substrate !== null && isOpenFraming(substrate);
  const supports = (at(factPath('surface', surface.id, 'support-spacings')) ??
    []) as readonly Spacing[];
  if (framing && supports.length === 0)
    return 'the supports are not measured, so their rows cannot be counted.';
  return attachment.zones.map(({ zone, spacing, rows }) => {
    const across = Math.ceil(cover / Number(spacing.v) - 1e-9);
    if (framing)
      return {
        zone,
        spacing_in: closest(supports, zone),
        per_row: fastener.kind === 'clip' ? 1 : across,
      };
    if (fastener.kind === 'screw' && rows)
      return { zone, spacing_in: Number(rows.v), per_row: across };
    return { zone, spacing_in: Number(spacing.v), per_row: 1 };
  });
}

function closest(supports: readonly Spacing[], zone: string): number {
  const own = supports.filter((each) => each.zone === zone);
  const unnamed = supports.filter((each) => each.zone === undefined);
  const counted = [own, unnamed, supports].find((each) => each.length > 0) ?? [];
  return Math.min(...counted.map(({ v }) => Number(v)));
}
