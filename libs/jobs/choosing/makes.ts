// What else the catalogue edition makes of the same metal and thickness (profile, grade, coating,
// system, color group), and the fasteners that fit it.

import type { SurfaceFacts } from '#rules';
import type { Catalogue, Fastener, MadeRow, Profile } from '../contract/catalogue.js';
import type { Option } from './options.js';
import type { Question } from './question.js';

/** How many choices of make may change together; spacings change in any number. */
export const MOST_CHOICES = 2;

/** One thing changed. `key` names the variable; of two changes of one key only one can stand. */
export interface Change {
  readonly key: string;
  readonly what: string;
  readonly from: string;
  readonly to: string;
}

/** What else could be ordered, and what of it differs from today's choice. */
export interface Make {
  readonly row: MadeRow | null;
  readonly profile: Profile;
  readonly color: SurfaceFacts['color_group'];
  readonly fastener: string;
  readonly changes: readonly Change[];
}

/** The variables of these changes; grade goes with the profile and is none of its own. */
export const makeKeys = (changes: readonly Change[]): readonly string[] =>
  changes.map(({ key }) => key).filter((key) => key !== 'grade');

/** Fewest changes first, then the cheaper, then by name. */
export function makesOf(base: Question, option: Option): readonly Make[] {
  const { catalogue, facts } = base;
  const rows = catalogue.made.filter(
    ({ metal, thickness, status }) =>
      metal === option.metal &&
      Number(thickness.v) === option.thickness_in &&
      status !== 'not-stocked',
  );
  const makes = rows.flatMap((row) => {
    const profile = catalogue.profiles.find(({ id }) => id === row.profile);
    if (!profile) return [];
    return row.color_groups.flatMap((color) =>
      withFasteners(base, option, {
        row,
        profile,
        color,
        fastener: base.attachment.fastener,
        changes: [],
      }),
    );
  });
  const asIs = {
    row: null,
    profile: base.profile,
    color: facts.color_group,
    fastener: base.attachment.fastener,
    changes: [],
  };
  return [...makes, ...withFasteners(base, option, asIs)]
    .filter(({ changes }) => changes.length > 0)
    .map((make) => ({ make, order: orderOf(make) }))
    .sort(
      (a, b) =>
        a.make.changes.length - b.make.changes.length ||
        priceOf(a.make) - priceOf(b.make) ||
        (a.order < b.order ? -1 : 1),
    )
    .map(({ make }) => make);
}

const orderOf = ({ row, profile, color, fastener }: Make): string =>
  [
    profile.id,
    row?.width.v,
    row?.grade,
    row?.metallic_coating,
    row?.paint_system,
    color,
    fastener,
  ].join(' ');
const priceOf = ({ row }: Make): number =>
  row ? Number(row.price.v) + Number(row.upcharge?.v ?? 0) : 0;

function withFasteners(base: Question, option: Option, make: Make): readonly Make[] {
  const own = changesOf(base, option, make);
  if (counted(own) > MOST_CHOICES) return [];
  const current = base.attachment.fastener;
  const same = { ...make, changes: own };
  if (counted(own) === MOST_CHOICES) return [same];
  const others = base.catalogue.fasteners.filter(
    (each) => each.id !== current && fits(each, make.profile, base.catalogue),
  );
  return [
    same,
    ...others.map(({ id, name }) => ({
      ...make,
      fastener: id,
      changes: [
        ...own,
        { key: 'fastener', what: 'fastener', from: nameOf(base, current), to: name },
      ],
    })),
  ];
}

const counted = (changes: readonly Change[]): number => makeKeys(changes).length;
const nameOf = ({ catalogue }: Question, id: string): string =>
  catalogue.fasteners.find((each) => each.id === id)?.name ?? id;

function fits(fastener: Fastener, profile: Profile, { assemblies }: Catalogue): boolean {
  if (profile.fastening === 'exposed') return fastener.kind === 'screw';
  return (
    fastener.kind === 'clip' ||
    assemblies.some((each) => each.profile === profile.id && each.fastener === fastener.id)
  );
}

function changesOf(
  { profile, width, facts }: Question,
  option: Option,
  { row, profile: other, color }: Make,
): readonly Change[] {
  if (!row) return [];
  const where = (each: Profile, wide: string): string => `${each.name}, ${wide} in`;
  const change = (
    key: string,
    what: string,
    from: string | undefined,
    to: string | undefined,
  ): readonly Change[] =>
    from === to ? [] : [{ key, what, from: from ?? 'none', to: to ?? 'none' }];
  return [
    ...change('profile', 'profile', where(profile, width), where(other, row.width.v)),
    ...change('grade', 'grade', option.grade, row.grade),
    ...change('metallic_coating', 'metallic coating', facts.metallic_coating, row.metallic_coating),
    ...change('paint_system', 'paint system', facts.paint_system, row.paint_system),
    ...change('color_group', 'color group', facts.color_group, color),
  ];
}
