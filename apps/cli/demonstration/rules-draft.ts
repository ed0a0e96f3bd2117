// A draft of the next rules edition, invented, so that there is one to look at.

import type { RulebookCommandInput } from '#jobs/contract';

export const DRAFT = '00000000-0000-7000-8000-0000000000d1';

/** In force from the next New Year's Day, whatever the day is. */
export const rulesDraft = (today: string): RulebookCommandInput => ({
  type: 'draft-rules-edition',
  draft: DRAFT,
  seen: 0,
  in_force_from: `${Number(today.slice(0, 4)) + 1}-01-01`,
  summary: 'Sign-off from 0.80 of capacity, and hail country from 1.5 in (invented).',
  edits: [
    {
      rule: 'SIGN-01',
      settings: { utilization_limit: 0.8 },
      source: 'Talk with the engineers, 12 October 2026 (invented)',
    },
    {
      rule: 'GAUGE-07',
      settings: { hail_country_stone_in: 1.5 },
      source: 'Claims of the summer of 2026 (invented)',
    },
  ],
});
