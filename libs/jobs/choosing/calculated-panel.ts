// The strength of a profile in one sheet by effective width, from its outline: a second opinion beside
// charts and tests, for through-fastened steel panels in bending only. Never for standing seam uplift.

import {
  beamCoefficients,
  designStresses,
  E_STEEL,
  feet,
  governing,
  inches,
  outlineOf,
  panelStrength,
  refused,
  spanLimits,
  steelGrade,
  type DemandBothWays,
  type Outcome,
  type PanelStrength,
} from '#engineering';
import type { Metal } from '#rules';
import type { Profile } from '../contract/catalogue.js';
import type { CheckRecord } from '../contract/evaluation.js';
import { record } from './check-record.js';
import { keptForQuestion } from './kept.js';
import type { Option } from './options.js';
import type { Question } from './question.js';
import { stepRecord } from './step-record.js';

/** A panel on purlins bears on at least this much of each, and is screwed to every one. */
export const BEARING_IN = 2;
const EDITION = 'S100-16';
export const CALCULATED_SOURCE = `calculated from the outline, AISI ${EDITION}`;
const DEFLECTION_N = 180;

export interface SheetOfPanel {
  readonly metal: Metal;
  readonly thickness_in: number;
  readonly grade: string;
}

/** The strength, or every reason why none is calculated. */
export function calculatedStrength(
  profile: Profile,
  width_in: number,
  sheet: SheetOfPanel,
): Outcome<PanelStrength> {
  const { outline } = profile;
  if (profile.fastening !== 'exposed') {
    const message = 'uplift of a concealed-fastener panel is known by test only';
    return refused({ pointer: '/fastening', message });
  }
  if (sheet.metal !== 'steel') {
    const message = `the calculation is for steel sheet, not ${sheet.metal}`;
    return refused({ pointer: '/metal', message });
  }
  if (!outline) {
    const message = 'the catalogue edition holds no outline of this profile';
    return refused({ pointer: '/outline', message });
  }
  const grade = steelGrade(sheet.grade);
  if (!grade.ok) return grade;
  const cover = (outline.at(-1)?.x_in ?? 0) - (outline[0]?.x_in ?? 0);
  if (!(cover > 0) || Math.abs(width_in / cover - Math.round(width_in / cover)) > 0.01) {
    const message = `the outline covers ${cover} in, which does not repeat into ${width_in} in`;
    return refused({ pointer: '/outline', message });
  }
  return panelStrength({
    outline: outlineOf(outline),
    cover: inches(cover),
    t: inches(sheet.thickness_in),
    Fy: designStresses(grade.value).Fy,
    E: E_STEEL,
    edition: EDITION,
    bearing: inches(BEARING_IN),
    fastened: true,
  });
}

const kept = keptForQuestion<Outcome<PanelStrength>>();

/** The checks of one zone from the calculated strength; undefined where none is calculated. */
export function calculatedPanel(
  question: Question,
  option: Option,
  span_in: number,
  demand: DemandBothWays,
): readonly CheckRecord[] | undefined {
  const { profile, width, longest_piece_ft = 0 } = question;
  const strength = kept(question, option.id, () =>
    calculatedStrength(profile, Number(width), option),
  );
  if (!strength.ok) return undefined;
  const whole = Math.floor((longest_piece_ft * 12) / span_in + 1e-9);
  const beam = beamCoefficients(Math.max(1, Math.min(3, whole)));
  return (['inward', 'outward'] as const).map((direction) => {
    const limits = spanLimits(strength.value, beam, feet(span_in / 12), direction, DEFLECTION_N);
    const { limitState, load, steps } = governing(limits);
    return record(
      `${limitState}, calculated`,
      direction,
      demand[direction],
      load,
      CALCULATED_SOURCE,
      true,
      steps.map(stepRecord),
    );
  });
}
