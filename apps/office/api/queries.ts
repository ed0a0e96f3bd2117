// What pages read, each under one key, so that a save refreshes what it changed.

import { keepPreviousData, queryOptions, useQuery } from '@tanstack/react-query';
import type { Catalogue, JobView, TakeOffSheet } from '#jobs/contract';
import type {
  Colleague,
  EditionRow,
  Health,
  HistoryEntry,
  JobPage,
  Packet,
  Party,
  Rulebook,
  Session,
  SigningStanding,
  SignOffs,
  User,
} from './answers.js';
import { ask, keepToken } from './client.js';

const read = async <T>(path: string, signal: AbortSignal): Promise<T> =>
  (await ask<T>(path, { signal })).value;

export const sessionQuery = queryOptions({
  queryKey: ['session'],
  queryFn: async ({ signal }) => {
    const session = await read<Session>('/session', signal);
    keepToken(session);
    return session;
  },
  retry: false,
  staleTime: Infinity,
});

export interface Moments {
  /** What was recorded by then. */
  readonly asOf?: string | undefined;
  /** What was true then. */
  readonly effective?: string | undefined;
}

export interface JobAnswer {
  readonly job: JobView;
  readonly version: number;
}

export const jobQuery = (id: string, at: Moments = {}) =>
  queryOptions({
    queryKey: ['job', id, at],
    queryFn: async ({ signal }): Promise<JobAnswer> => {
      const { value, version } = await ask<JobView>(`/jobs/${id}${momentsIn(at)}`, { signal });
      return { job: value, version: version ?? value.version };
    },
  });

export const momentsIn = ({ asOf, effective }: Moments): string => {
  const query = new URLSearchParams();
  if (asOf) query.set('asOf', asOf);
  if (effective) query.set('effective', effective);
  const text = query.toString();
  return text && `?${text}`;
};

export const jobsQuery = (query: string) =>
  queryOptions({
    queryKey: ['jobs', query],
    queryFn: ({ signal }) => read<JobPage>(`/jobs${query && `?${query}`}`, signal),
    placeholderData: keepPreviousData,
  });

export const historyQuery = (id: string) =>
  queryOptions({
    queryKey: ['job', id, 'history'],
    queryFn: async ({ signal }) =>
      (await read<{ entries: readonly HistoryEntry[] }>(`/jobs/${id}/history`, signal)).entries,
  });

/** Read anew where the job says that it is another, or that it counts no longer. */
export const takeOffQuery = (job: string, surface: string, number: number, stands: string) =>
  queryOptions({
    queryKey: ['job', job, 'take-off', surface, number, stands],
    queryFn: ({ signal }) => read<TakeOffSheet>(`/jobs/${job}/take-offs/${surface}`, signal),
    staleTime: 60_000,
  });

export const packetQuery = (job: string, request: string) =>
  queryOptions({
    queryKey: ['job', job, 'packet', request],
    queryFn: ({ signal }) => read<Packet>(`/jobs/${job}/requests/${request}/packet`, signal),
    staleTime: Infinity,
  });

export const recordQuery = <T>(id: string, at: Moments) =>
  queryOptions({
    queryKey: ['job', id, 'record', at],
    queryFn: ({ signal }) => read<T>(`/jobs/${id}/decision-record${momentsIn(at)}`, signal),
  });

const whole = <T>(name: string, path: string, staleTime = 60_000) =>
  queryOptions({
    queryKey: [name],
    queryFn: ({ signal }) => read<T>(path, signal),
    staleTime,
  });

export const catalogueQuery = whole<Catalogue>('catalogue', '/catalogue/current');
export const rulebookQuery = whole<Rulebook>('rulebook', '/rulebook/current');
export const signOffsQuery = whole<SignOffs>('sign-offs', '/sign-offs', 0);
export const mailQuery = whole<{ reminders: boolean; sends: boolean }>('mail', '/session/mail', 0);
export const signingQuery = whole<SigningStanding>('signing', '/session/signing', 0);
export const healthQuery = whole<Health>('health', '/health', 0);
export const usersQuery = whole<{ users: readonly User[] }>('users', '/users', 0);
export const peopleQuery = whole<{ people: readonly Colleague[] }>('people', '/people');

export const editionsQuery = (of: 'rulebook' | 'catalogue') =>
  whole<{ editions: readonly EditionRow[] }>(`${of} editions`, `/${of}/editions`);

export const editionQuery = <T>(of: 'rulebook' | 'catalogue', number: number) =>
  queryOptions({
    queryKey: [of, 'edition', number],
    queryFn: ({ signal }) => read<T>(`/${of}/editions/${number}`, signal),
    staleTime: Infinity,
  });

export const partiesQuery = (ids: readonly string[]) =>
  queryOptions({
    queryKey: ['parties', ...ids],
    queryFn: async ({ signal }) =>
      (
        await read<{ parties: readonly Party[] }>(
          `/parties?only=names&ids=${ids.join(',')}`,
          signal,
        )
      ).parties,
    enabled: ids.length > 0,
    staleTime: 60_000,
  });

/** Shows a name for an id; where nothing is known the id itself, so that nothing is invented. */
export function useNames(ids: readonly string[]): (id: string) => string {
  const people = useQuery({ ...peopleQuery, retry: false });
  const wanted = [...new Set(ids.filter((id) => UUID.test(id)))].sort();
  const parties = useQuery(partiesQuery(wanted));
  const names = new Map<string, string>();
  for (const each of people.data?.people ?? []) names.set(each.id, each.name);
  for (const each of parties.data ?? []) {
    names.set(each.id, each.details?.['name'] ?? `details erased ${each.erased ?? ''}`.trim());
  }
  const waiting = people.isLoading || parties.isLoading;
  return (id) => names.get(id) ?? (waiting && UUID.test(id) ? '…' : id);
}

const UUID = /^[0-9a-f]{8}-[0-9a-f-]{27}$/;
