// What the page of erasures, legal holds and retention periods reads.

import { queryOptions } from '@tanstack/react-query';
import { ask } from './client.js';

export interface Act {
  readonly by: string;
  readonly at: string;
  readonly why?: string;
}

export type PartyKind = 'person' | 'site';

export interface Period {
  readonly kind: PartyKind;
  readonly years: number | null;
  readonly words: string;
}

export interface Hold {
  readonly id: string;
  readonly on: { readonly kind: 'party' | 'job'; readonly id: string; readonly name: string };
  readonly placed: Act;
  readonly released: Act | null;
}

export type Ground = 'asked-by-the-person' | 'asked-by-law' | 'no-longer-needed';

export interface Erasure {
  readonly id: string;
  readonly party: { readonly id: string; readonly name: string };
  readonly ground: Ground;
  readonly mine: boolean;
  readonly state: 'open' | 'confirmed' | 'withdrawn' | 'done';
  readonly asked: Act;
  readonly confirmed: Act | null;
  readonly withdrawn: Act | null;
}

export interface Disposal {
  readonly administrators: number;
  readonly retention: readonly Period[];
  readonly holds: readonly Hold[];
  readonly erasures: readonly Erasure[];
}

export const disposalQuery = queryOptions({
  queryKey: ['disposal'],
  queryFn: async ({ signal }) => (await ask<Disposal>('/disposal', { signal })).value,
});
