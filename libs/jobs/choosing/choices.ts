// The choices of make that stand beside an option: what the catalogue edition makes of the same metal
// and thickness (profile, grade, coating, system, color group) and the fasteners that fit it.

import { bookKey, refusing, type EditionEntry, type FactKey, type SurfaceFacts } from '#rules';
import type { Catalogue, Fastener, MadeRow, Profile } from '../contract/catalogue.js';
import { productFacts, profileFacts } from '../reading.js';
import { catalogueOf } from './catalogue-of.js';
import { optionsOf, type Option } from './options.js';
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

/** A question with other choices of make, and the option as it is there. */
export interface Frame {
  readonly question: Question;
  readonly option: Option;
  readonly options: readonly Option[];
  readonly changes: readonly Change[];
}

interface Make {
  readonly row: MadeRow | null;
  readonly profile: Profile;
  readonly color: SurfaceFacts['color_group'];
  readonly fastener: string;
  readonly changes: readonly Change[];
}

/** Frames of an option, fewest changes first, then the cheaper, then by name; built as they are asked for. */
export type Frames = (
  option: Option,
  skips?: (keys: readonly string[]) => boolean,
) => Generator<Frame>;

/** The variables of these changes; grade goes with the profile and is none of its own. */
export const makeKeys = (changes: readonly Change[]): readonly string[] =>
  changes.map(({ key }) => key).filter((key) => key !== 'grade');

export function framesOf(base: Question): Frames {
  const own = { ...base, catalogue: catalogueOf(base.catalogue, base.profile.id) };
  const optionsHere = optionsOf(own);
  const withMake = remembered(base);
  return function* (option, skips = () => false) {
    yield { question: own, option, options: optionsHere, changes: [] };
    for (const make of makesOf(base, option)) {
      if (skips(makeKeys(make.changes))) continue;
      const made = withMake(make);
      const same = made?.options.find(
        (each) =>
          each.thickness_in === option.thickness_in &&
          each.grade === (make.row?.grade ?? option.grade),
      );
      if (made && same) yield { ...made, option: same, changes: make.changes };
    }
  };
}

/** Each make is asked about once, whatever the thickness; undefined where a stage before the gauge refuses it. */
function remembered(
  base: Question,
): (make: Make) => Pick<Frame, 'question' | 'options'> | undefined {
  const allowed = upstreamOf(base);
  const known = new Map<string, Pick<Frame, 'question' | 'options'> | undefined>();
  return (make) => {
    const { profile, row, color, fastener } = make;
    const key = [
      profile.id,
      row?.width.v,
      row?.metallic_coating,
      row?.paint_system,
      color,
      fastener,
    ].join('|');
    if (!known.has(key)) {
      const question = questionWith(base, make);
      known.set(key, allowed(question) ? { question, options: optionsOf(question) } : undefined);
    }
    return known.get(key);
  };
}

function makesOf(base: Question, option: Option): readonly Make[] {
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

function questionWith(base: Question, { row, profile, color, fastener }: Make): Question {
  const { facts } = base;
  const catalogue = catalogueOf(base.catalogue, profile.id);
  const screw = catalogue.fasteners.find(({ id }) => id === fastener);
  const changed = fastener !== base.attachment.fastener;
  const chosen = {
    metal: facts.metal,
    metallic_coating: row?.metallic_coating ?? facts.metallic_coating,
    paint_system: row?.paint_system ?? facts.paint_system,
    color_group: color,
  };
  const width = row?.width.v ?? base.width;
  return {
    ...base,
    catalogue,
    profile,
    width,
    attachment: changed ? { ...base.attachment, fastener } : base.attachment,
    facts: {
      ...facts,
      ...chosen,
      ...productFacts(catalogue, profile, width, chosen),
      profile: profileFacts(profile),
      ...(changed
        ? { clip_kind: screw?.clip_movement, fastener_metal: facts.fastener_metal && screw?.metal }
        : {}),
    },
  };
}

const STAGES = ['style', 'coating', 'substrate'] as const;
/** Facts that follow from the make; a rule that reads none of them says the same of every make. */
const OF_MAKE: readonly FactKey[] = [
  'profile',
  'warranty_least_slope_per_12',
  'combination',
  'warranty_water_distance_ft',
  'finish_term_years',
  'metal',
  'metallic_coating',
  'paint_system',
  'color_group',
  'clip_kind',
  'fastener_metal',
];

/** The stages before the gauge must say no more against the other choices than against today's. */
function upstreamOf({ edition, book, facts }: Question): (other: Question) => boolean {
  const reads = ({ rule, version }: EditionEntry): readonly FactKey[] =>
    book.get(bookKey(rule, version))?.reads ?? [];
  const asked = {
    ...edition,
    entries: edition.entries.filter((entry) => reads(entry).some((key) => OF_MAKE.includes(key))),
  };
  const against = (about: SurfaceFacts): readonly string[] =>
    STAGES.flatMap((stage) => refusing(asked, book, stage, about));
  const now = against(facts);
  return (other) => against(other.facts).every((rule) => now.includes(rule));
}
