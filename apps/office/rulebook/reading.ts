// What the pages of the rulebook read: drafts, the rules an edition may name, previews and their rows.

import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import type { Answer, Counts, Edit, ImpactScope, RuleChange, RunningJobs } from '#jobs/contract';
import type { EditionRule, Rulebook } from '../api/answers.js';
import { ask } from '../api/client.js';

export interface Draft {
  readonly id: string;
  readonly version: number;
  readonly number: number;
  readonly base: number;
  readonly newest: number;
  readonly in_force_from: string;
  readonly summary: string;
  readonly edits: readonly Edit[];
  readonly changes: readonly RuleChange[];
  readonly by: string;
  readonly at: string;
}

export interface KnownRule extends EditionRule {
  readonly may_be_changed: boolean;
  readonly cases: { readonly passes: number; readonly fails: number; readonly others: number };
}

export interface Edition extends Rulebook {
  readonly rules: readonly KnownRule[];
  readonly retired_on: string | null;
  readonly published_at: string;
  readonly reason: string | null;
  readonly by: string;
  readonly changes: readonly RuleChange[];
  readonly running_jobs: RunningJobs | null;
  readonly impact: string | null;
}

export interface Preview {
  readonly id: string;
  readonly draft: string;
  readonly draft_version: number;
  readonly edition: number;
  readonly scope: ImpactScope;
  readonly state: 'waiting' | 'running' | 'done' | 'cancelled' | 'failed';
  readonly asked_at: string;
  readonly read: number;
  readonly of: number;
  readonly done: number;
  readonly counts: Counts;
  readonly words: string;
  readonly position: number;
  readonly differing: number;
  readonly unlisted: number;
  readonly failure: string | null;
}

export interface ImpactRows {
  readonly rows: readonly {
    readonly job: string;
    readonly number: string;
    readonly job_name: string;
    readonly surface: string;
    readonly surface_name: string;
    readonly stage: string;
    readonly answer: Answer;
    readonly before: string;
    readonly after: string;
    readonly words: string;
    readonly rules: readonly string[];
  }[];
  readonly total: number;
  readonly page: number;
  readonly size: number;
}

const read = async <T>(path: string, signal: AbortSignal): Promise<T> =>
  (await ask<T>(`/rulebook${path}`, { signal })).value;

export const draftsQuery = queryOptions({
  queryKey: ['rules drafts'],
  queryFn: async ({ signal }) =>
    (await read<{ drafts: readonly Draft[] }>('/drafts', signal)).drafts,
});

export const draftQuery = (id: string) =>
  queryOptions({
    queryKey: ['rules drafts', id],
    queryFn: ({ signal }) => read<Draft>(`/drafts/${id}`, signal),
    retry: false,
  });

export const knownRulesQuery = queryOptions({
  queryKey: ['known rules'],
  queryFn: async ({ signal }) =>
    (await read<{ rules: readonly KnownRule[] }>('/rules', signal)).rules,
  staleTime: Infinity,
});

export const previewsQuery = (draft: string) =>
  queryOptions({
    queryKey: ['rules drafts', draft, 'previews'],
    queryFn: async ({ signal }) =>
      (await read<{ previews: readonly Preview[] }>(`/drafts/${draft}/previews`, signal)).previews,
    retry: false,
    staleTime: 0,
  });

const ASKED_EVERY_MS = 700;
export const isUnfinished = (preview: Preview | undefined): boolean =>
  preview?.state === 'waiting' || preview?.state === 'running';

/** Asked again and again until it is finished. */
export const previewQuery = (id: string) =>
  queryOptions({
    queryKey: ['rules preview', id],
    queryFn: ({ signal }) => read<Preview>(`/previews/${id}`, signal),
    enabled: id !== '',
    retry: false,
    refetchInterval: ({ state }) => (isUnfinished(state.data) ? ASKED_EVERY_MS : false),
  });

export const rowsQuery = (id: string, query: string) =>
  queryOptions({
    queryKey: ['rules preview', id, 'rows', query],
    queryFn: ({ signal }) => read<ImpactRows>(`/previews/${id}/rows${query}`, signal),
    placeholderData: keepPreviousData,
    staleTime: Infinity,
  });
