// What pages read of the log's own care: verification, who read what, tokens of the feed.

import { queryOptions } from '@tanstack/react-query';
import { ask } from './client.js';

export interface VerificationRun {
  readonly run: string;
  readonly asked_by: string | null;
  readonly started_at: string;
  readonly finished_at: string | null;
  readonly result: 'sound' | 'damaged' | null;
  readonly positions: number;
  readonly of: number;
  readonly checkpoint: number | null;
  readonly checkpoints_met: number;
  readonly first_bad: { readonly position: number | null; readonly says: string } | null;
  readonly trouble: string | null;
}

export interface Verification {
  readonly state: 'sound' | 'damaged' | 'never';
  readonly words: string;
  readonly overdue: boolean;
  readonly last: VerificationRun | null;
  readonly running: VerificationRun | null;
}

export interface TimeStamp {
  /** Whether a time-stamping authority is set up. */
  readonly asks: boolean;
  readonly stamp: { readonly at: string; readonly by: string; readonly size: number } | null;
  readonly fault: string | null;
  readonly trouble: string | null;
  /** Size of a newer checkpoint without one. */
  readonly untimed: number | null;
}

export interface Reading {
  readonly id: string;
  readonly at: string;
  readonly reader: {
    readonly id: string;
    readonly kind: 'person' | 'feed';
    readonly name: string;
  };
  readonly what: string;
  readonly words: string;
  readonly about: string;
  readonly why: string | null;
}

export interface FeedToken {
  readonly id: string;
  readonly name: string;
  readonly made_by: string;
  readonly made_at: string;
  readonly ended_at: string | null;
}

export const runsQuery = queryOptions({
  queryKey: ['verifications'],
  queryFn: async ({ signal }) =>
    (await ask<{ runs: readonly VerificationRun[] }>('/log/verifications', { signal })).value.runs,
});

export const readingsQuery = (query: string) =>
  queryOptions({
    queryKey: ['readings', query],
    queryFn: async ({ signal }) =>
      (
        await ask<{ kept_years: number; readings: readonly Reading[] }>(
          `/log/readings${query && `?${query}`}`,
          { signal },
        )
      ).value,
  });

export const tokensQuery = queryOptions({
  queryKey: ['feed tokens'],
  queryFn: async ({ signal }) =>
    (await ask<{ tokens: readonly FeedToken[] }>('/log/feed-tokens', { signal })).value.tokens,
});
