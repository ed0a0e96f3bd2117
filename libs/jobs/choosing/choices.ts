// The frames of an option: the question as it is, and as it would be with other choices of make
// that the stages before the gauge allow.

import { bookKey, refusing, type EditionEntry, type FactKey, type SurfaceFacts } from '#rules';
import { productFacts, profileFacts } from '../reading.js';
import { catalogueOf } from './catalogue-of.js';
import { makeKeys, makesOf, type Change, type Make } from './makes.js';
import { optionsOf, type Option } from './options.js';
import type { Question } from './question.js';

/** A question with other choices of make, and the option as it is there. */
export interface Frame {
  readonly question: Question;
  readonly option: Option;
  readonly options: readonly Option[];
  readonly changes: readonly Change[];
}

/**
 * Frames of an option, fewest changes first, then the cheaper, then by name; built as they are
 * asked for.
 */
export type Frames = (
  option: Option,
  skips?: (keys: readonly string[]) => boolean,
) => Generator<Frame>;

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

/**
 * Each make is asked about once, whatever the thickness; undefined where a stage before the gauge
 * refuses it.
 */
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
