// The proof of a job as the service gives it, and who exported its evidence.

import { queryOptions } from '@tanstack/react-query';
import { ask } from './client.js';
import type { TimeStamp } from './answers.js';

export interface SigningKey {
  readonly name: string;
  readonly id: string;
  readonly text: string;
  readonly fingerprint: string;
  readonly in_use: boolean;
}

export interface JobProof {
  readonly signs: boolean;
  readonly refused: string | null;
  readonly checkpoint: {
    readonly origin: string;
    readonly size: number;
    readonly root: string;
    readonly note: string;
  } | null;
  readonly keys: readonly SigningKey[];
  readonly entries: {
    readonly count: number;
    readonly first: number;
    readonly last: number;
    readonly last_at: string;
  };
  /** How many hashes lead from the last entry to the root; checked when it was asked. */
  readonly path: number | null;
  readonly time_stamp: TimeStamp;
}

export interface Reading {
  readonly id: string;
  readonly at: string;
  readonly reader: { readonly name: string };
  readonly why: string | null;
}

export const proofQuery = (job: string, version: number) =>
  queryOptions({
    queryKey: ['job', job, 'proof', version],
    queryFn: async ({ signal }) => (await ask<JobProof>(`/jobs/${job}/proof`, { signal })).value,
  });

export const exportsQuery = (job: string) =>
  queryOptions({
    queryKey: ['job', job, 'exports'],
    queryFn: async ({ signal }) => {
      const query = new URLSearchParams({ what: 'evidence', about: job });
      const path = `/log/readings?${query.toString()}`;
      return (await ask<{ readings: readonly Reading[] }>(path, { signal })).value.readings;
    },
  });
