// Reading one option of an evaluation: what governs, what it weighs, its outcome in words.

import type { CheckRecord, OptionResult, WhyNotClass, ZoneResult } from '#jobs/contract';
import { amount } from '../parts/words.js';

/** "24 gauge, 0.0236 in, grade 50": a gauge number means nothing without its thickness. */
export const optionName = ({ gauge, thickness, grade }: OptionResult): string =>
  `${gauge === null ? '' : `${gauge} gauge, `}${amount(thickness)}, ${grade}`;

export function governingCheck(option: OptionResult): CheckRecord | undefined {
  const { governs } = option;
  if (governs === null) return undefined;
  const zone = option.zones.find((each) => each.zone === governs.zone);
  return (
    zone &&
    checksOf(zone).find(
      ({ limit_state, direction, utilization }) =>
        utilization === governs.utilization &&
        governs.limit_state === `${limit_state} (${direction})`,
    )
  );
}

export const checksOf = (zone: ZoneResult): readonly CheckRecord[] => [
  ...zone.panel,
  ...zone.attachment,
];

export const WHY_NOT: Readonly<Record<WhyNotClass, string>> = {
  'ruled-out': 'Ruled out',
  dominated: 'Passes, another is better',
  'not-stocked': 'Not stocked',
  'not-made': 'Not made',
  'no-test': 'No test, so no number',
};

export interface OutcomeWords {
  readonly words: string;
  readonly tone: 'ready' | 'blocked' | 'waiting' | 'plain';
}

export function outcomeWords(option: OptionResult, recommended: string | null): OutcomeWords {
  if (option.id === recommended) return { words: 'Recommended', tone: 'ready' };
  if (option.admissible) return { words: 'Passes', tone: 'plain' };
  const of = option.why_not?.class ?? 'ruled-out';
  return { words: WHY_NOT[of], tone: of === 'ruled-out' ? 'blocked' : 'waiting' };
}

/** Ranked options first, the rest by thickness, heaviest first. */
export const inOrder = (options: readonly OptionResult[]): readonly OptionResult[] =>
  [...options].sort(
    (a, b) => (a.rank ?? 1e6) - (b.rank ?? 1e6) || Number(b.thickness.v) - Number(a.thickness.v),
  );
