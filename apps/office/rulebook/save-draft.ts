// Saving a draft: the page's own faults first, then the service's; over a newer save only when asked.

import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useRef, useState } from 'react';
import type { DraftedEdits } from '#jobs/contract';
import { ask, problemFrom } from '../api/client.js';
import type { Draft as Typed } from '../parts/draft.js';
import { errorsOf } from '../parts/errors.js';
import type { FieldErrors } from '../parts/fields.js';
import { useAnnounce } from '../shell/live.js';
import { draftOf, fieldOf, type Entry } from './draft-entry.js';
import { draftQuery, type Draft, type KnownRule } from './reading.js';

interface Sent {
  readonly body: DraftedEdits;
  readonly version: number;
}

export function useSaveDraft(
  draft: Draft | null,
  known: readonly KnownRule[],
  typed: Typed<Entry>,
  setFailed: (failed: boolean) => void,
) {
  const client = useQueryClient();
  const navigate = useNavigate();
  const say = useAnnounce();
  const [faults, setFaults] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  /** The version this form began with, also after others saved theirs. */
  const seen = useRef(draft?.version ?? 0);
  const keys = useRef({ text: '', key: '' });
  const save = useMutation({
    mutationFn: async ({ body, version }: Sent) => {
      const text = JSON.stringify([body, version]);
      if (keys.current.text !== text) keys.current = { text, key: crypto.randomUUID() };
      const { key } = keys.current;
      const path = `/rulebook/drafts${draft ? `/${draft.id}` : ''}`;
      const request = draft ? ({ method: 'PUT', version } as const) : ({ method: 'POST' } as const);
      return (await ask<Draft>(path, { ...request, body, key })).value;
    },
    onSuccess: (saved) => {
      typed.clear();
      client.setQueryData(draftQuery(saved.id).queryKey, saved);
      void client.invalidateQueries({ queryKey: ['rules drafts'] });
      say('The draft is saved.');
      void navigate({ to: '/rules/drafts/$draft', params: { draft: saved.id } });
    },
    onError: () => {
      setFailed(true);
      setAttempt((n) => n + 1);
    },
  });
  const send = (version: number) => {
    const made = draftOf(typed.value, known);
    setFaults(made.ok ? [] : made.errors);
    setFailed(!made.ok);
    setAttempt((n) => n + 1);
    if (made.ok && !save.isPending) save.mutate({ body: made.body, version });
  };
  const problem = save.error ? problemFrom(save.error) : null;
  const overIt = async () => {
    if (!draft) return;
    const newest = await client.fetchQuery({ ...draftQuery(draft.id), staleTime: 0 });
    seen.current = newest.version;
    send(newest.version);
  };
  return {
    errors: faults.length > 0 ? faults : errorsOf(problem, fieldOf),
    attempt,
    busy: save.isPending,
    overtaken: draft !== null && problem?.status === 412 && faults.length === 0,
    submit: () => send(seen.current),
    overIt: () => void overIt(),
  };
}
