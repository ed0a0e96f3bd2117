// What one choosing is about: a surface as its record tells it, the catalogue edition, the rules
// edition, and the attachment proposed for each zone.

import type { Edition, RuleBook, Substrate, SurfaceFacts } from '#rules';
import type { Catalogue, Profile } from '../contract/catalogue.js';
import type { Attachment } from '../contract/commands.js';
import type { SnowContent, WindContent } from '../contract/events.js';
import type { Spacing } from '../contract/fact-dictionary.js';

export interface Question {
  readonly facts: SurfaceFacts;
  readonly profile: Profile;
  readonly width: string;
  readonly wind: WindContent;
  readonly snow: SnowContent;
  readonly roof_live_psf: string | null;
  readonly substrate: Substrate;
  readonly open_framing: boolean;
  readonly spacings: readonly Spacing[];
  readonly deck_thickness_in: number | undefined;
  readonly support_thickness_in: number | undefined;
  readonly support_tensile_ksi: number | undefined;
  readonly wood_specific_gravity: number | undefined;
  readonly bite_in: number | undefined;
  readonly longest_piece_ft: number | undefined;
  readonly attachment: Attachment;
  readonly catalogue: Catalogue;
  readonly catalogueDigest: string;
  readonly edition: Edition;
  readonly editionDigest: string;
  readonly book: RuleBook;
  /** The day of the decision: tests that have expired by then do not count. */
  readonly day: string;
}

/** Stands for every zone that is not named by itself. */
export const EVERY_ZONE = 'all';

export function attachmentIn(question: Question, zone: string) {
  const { zones } = question.attachment;
  return zones.find((each) => each.zone === zone) ?? zones.find((each) => each.zone === EVERY_ZONE);
}

/** The worst measured support spacing in a zone, inches; null on a solid substrate or where unknown. */
export function spacingIn(question: Question, zone: string): number | null {
  if (!question.open_framing) return null;
  const own = question.spacings.filter((each) => each.zone === zone);
  const used =
    own.length > 0
      ? own
      : question.spacings.filter((each) => each.zone === undefined || each.zone === EVERY_ZONE);
  return used.length === 0 ? null : Math.max(...used.map(({ v }) => Number(v)));
}
