// What pages read of the log's own care: verification, who read what, tokens of the feed.

import { queryOptions } from '@tanstack/react-query';
import type { VerificationRun } from './answers.js';
import { ask } from './client.js';

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
