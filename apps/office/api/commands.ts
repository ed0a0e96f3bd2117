// Sending commands of one job: rehearsed first, recorded once, and told what changed meanwhile.

import {
  useMutation,
  useQuery,
  useQueryClient,
  type UseMutationResult,
} from '@tanstack/react-query';
import { useRef } from 'react';
import type { CommandInput, JobView, Rehearsal } from '#jobs/contract';
import { ask, problemFrom, ServiceProblem, type Answer } from './client.js';
import type { Problem } from './answers.js';
import { jobQuery } from './queries.js';

export interface Sending {
  readonly save: UseMutationResult<Answer<JobView>, unknown, CommandInput>;
  /** null where the last try went well or none was made. */
  readonly problem: Problem | null;
}

/** One try keeps one key until what is sent changes, so that a lost answer is not a second entry. */
export function useCommand(jobId: string): Sending {
  const client = useQueryClient();
  const last = useRef({ text: '', key: '' });
  const save = useMutation({
    mutationFn: (command: CommandInput) => {
      const text = JSON.stringify(command);
      if (last.current.text !== text) last.current = { text, key: crypto.randomUUID() };
      return sendCommand(jobId, command, seen(), last.current.key);
    },
    onSuccess: ({ value, version }) => {
      client.setQueryData(jobQuery(jobId).queryKey, {
        job: value,
        version: version ?? value.version,
      });
      void client.invalidateQueries({
        predicate: ({ queryKey: [first, id, rest] }) =>
          first === 'jobs' ||
          first === 'sign-offs' ||
          (first === 'job' && id === jobId && rest === 'history'),
      });
      void client.invalidateQueries({ queryKey: ['rehearsal', jobId] });
    },
    onError: (error) => {
      if (!(error instanceof ServiceProblem) || error.problem.status !== 412) return;
      last.current = { text: '', key: '' };
      void client.invalidateQueries({ queryKey: ['job', jobId] });
    },
  });
  const seen = () => client.getQueryData(jobQuery(jobId).queryKey)?.version;
  return { save, problem: save.error ? problemFrom(save.error) : null };
}

export const sendCommand = (
  jobId: string,
  command: CommandInput,
  version: number | undefined,
  key: string,
): Promise<Answer<JobView>> =>
  ask<JobView>(`/jobs/${jobId}/commands`, {
    method: 'POST',
    body: command,
    key,
    ...(version === undefined ? {} : { version }),
  });

/** What the rules would say now; nothing is recorded. null: not enough is filled in to ask. */
export function useRehearsal(jobId: string, version: number, command: CommandInput | null) {
  return useQuery({
    queryKey: ['rehearsal', jobId, version, command],
    queryFn: ({ signal }) => rehearse(jobId, command as CommandInput, signal),
    enabled: command !== null,
    placeholderData: (previous) => (command === null ? undefined : previous),
    retry: false,
    staleTime: 30_000,
  });
}

export async function rehearse(
  jobId: string,
  command: CommandInput,
  signal?: AbortSignal,
): Promise<Rehearsal> {
  const answer = await ask<Rehearsal>(`/jobs/${jobId}/rehearsals`, {
    method: 'POST',
    body: command,
    ...(signal === undefined ? {} : { signal }),
  });
  return answer.value;
}
