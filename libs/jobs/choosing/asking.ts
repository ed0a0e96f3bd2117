// From a surface's record to the question of a choosing. It reads through a lookup alone, so that
// the recorded facts of an old decision ask the same question again.

import { factsReadBy, type Edition, type RuleBook, type Substrate } from '#rules';
import type { Catalogue } from '../contract/catalogue.js';
import type { Attachment } from '../contract/commands.js';
import type { SnowContent, WindContent } from '../contract/events.js';
import {
  contentPath,
  factPath,
  type FactName,
  type Path,
  type Spacing,
} from '../contract/fact-dictionary.js';
import { kindPath, pathsOf, type Where } from '../fact-paths.js';
import type { Lookup } from '../lookup.js';
import { surfaceFacts } from '../reading.js';
import type { Question } from './question.js';

/** The editions a question is asked under, and the day. */
export interface Under {
  readonly book: RuleBook;
  readonly edition: Edition;
  readonly editionDigest: string;
  readonly catalogue: Catalogue;
  readonly catalogueDigest: string;
  readonly day: string;
}

/** Undefined where the profile does not stand in the catalogue edition. */
export function questionAt(
  at: Lookup,
  where: Where,
  attachment: Attachment,
  under: Under,
): Question | undefined {
  const { book, edition, editionDigest, catalogue, catalogueDigest, day } = under;
  const content = (stage: string, field: string): unknown =>
    at(contentPath(where.id, stage, field));
  const profile = catalogue.profiles.find(({ id }) => id === content('style', 'profile'));
  if (!profile) return undefined;
  const clip = catalogue.fasteners.find(({ id }) => id === attachment.fastener)?.clip_movement;
  const facts = { ...surfaceFacts(at, where, catalogue), clip_kind: clip };
  const fact = (name: FactName): unknown => at(factPath('surface', where.id, name));
  const number = (name: FactName): number | undefined => {
    const value = fact(name) as { v: string } | null;
    return value === null ? undefined : Number(value.v);
  };
  return {
    facts,
    profile,
    width: content('style', 'width') as string,
    wind: content('hazards', 'wind') as WindContent,
    snow: content('hazards', 'snow') as SnowContent,
    roof_live_psf: content('hazards', 'roof_live_psf') as string | null,
    substrate: facts.substrate as Substrate,
    open_framing: facts.open_framing === true,
    spacings: (fact('support-spacings') ?? []) as readonly Spacing[],
    deck_thickness_in: number('deck-thickness'),
    support_thickness_in: number('support-thickness'),
    support_tensile_ksi: number('support-tensile-strength'),
    wood_specific_gravity: number('wood-specific-gravity'),
    bite_in: number('fastener-bite'),
    longest_piece_ft: number('longest-piece'),
    attachment,
    catalogue,
    catalogueDigest,
    edition,
    editionDigest,
    book,
    day,
  };
}

/** Facts the checks read beside those the rules declare. */
const CHECKED_FACTS = [
  'support-spacings',
  'deck-thickness',
  'support-thickness',
  'support-tensile-strength',
  'wood-specific-gravity',
  'fastener-bite',
  'longest-piece',
  'substrate',
] as const satisfies readonly FactName[];

/** All that an evaluation reads: a change of any of it puts the gauge up for re-check. */
export function pathsRead(
  where: Where,
  { edition, book }: Pick<Under, 'edition' | 'book'>,
): readonly Path[] {
  const declared = [
    ...factsReadBy(edition, book, 'gauge'),
    ...factsReadBy(edition, book, 'sign-off'),
  ];
  return [
    ...pathsOf(declared, where),
    kindPath(where.id),
    ...CHECKED_FACTS.map((fact) => factPath('surface', where.id, fact)),
    ...['profile', 'width'].map((field) => contentPath(where.id, 'style', field)),
    ...['metal', 'metallic_coating', 'paint_system', 'color_group'].map((field) =>
      contentPath(where.id, 'coating', field),
    ),
    ...['wind', 'snow', 'roof_live_psf'].map((field) => contentPath(where.id, 'hazards', field)),
  ];
}

/**
 * What only the explanation reads: it asks the earlier stages' rules about other choices of make.
 */
export function pathsOfExplanation(
  where: Where,
  { edition, book }: Pick<Under, 'edition' | 'book'>,
): readonly Path[] {
  return pathsOf(
    (['style', 'coating', 'substrate'] as const).flatMap((stage) =>
      factsReadBy(edition, book, stage),
    ),
    where,
  );
}
