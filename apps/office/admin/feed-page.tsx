// Tokens with which another program of the company follows the record.

import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState, type FormEvent } from 'react';
import { ask, problemFrom } from '../api/client.js';
import { tokensQuery, type FeedToken } from '../api/log.js';
import { useNames } from '../api/queries.js';
import { ErrorSummary } from '../parts/errors.js';
import { TextField, type FieldErrors } from '../parts/fields.js';
import { Empty, Failure, Loading } from '../parts/states.js';
import { PlainTable, Tag } from '../parts/table.js';
import { moment } from '../parts/words.js';
import { useAnnounce } from '../shell/live.js';
import { Page } from '../shell/page.js';
import { AdminNav } from './admin-nav.js';

export function FeedPage() {
  const tokens = useQuery(tokensQuery);
  return (
    <Page
      title="Feed of events"
      section="Admin"
      lead={
        <p>
          Another program can follow the record at <span className="digest">/api/log/events</span>:
          every entry once, in order, as CloudEvents. It sees ids and kinds of entries, never names
          or what an entry says.
        </p>
      }
    >
      <AdminNav />
      {tokens.isPending && <Loading what="the tokens" />}
      {tokens.error && <Failure error={tokens.error} retry={() => void tokens.refetch()} />}
      {tokens.data?.length === 0 && (
        <Empty title="No program follows the record">
          <p>Make a token for each program, so that one can be ended without the others.</p>
        </Empty>
      )}
      {tokens.data && tokens.data.length > 0 && <Tokens tokens={tokens.data} />}
      <NewToken />
    </Page>
  );
}

function Tokens({ tokens }: { readonly tokens: readonly FeedToken[] }) {
  const client = useQueryClient();
  const say = useAnnounce();
  const nameOf = useNames(tokens.map(({ made_by }) => made_by));
  const end = useMutation({
    mutationFn: (id: string) => ask(`/log/feed-tokens/${id}`, { method: 'DELETE' }),
    onSuccess: async () => {
      await client.invalidateQueries({ queryKey: tokensQuery.queryKey });
      say('The token opens nothing any more.');
    },
  });
  return (
    <>
      <PlainTable
        caption="Tokens"
        columns={['For', 'Made', 'By', 'State', 'End']}
        rows={tokens.map(({ id, name, made_at, made_by, ended_at }) => [
          name,
          moment(made_at),
          nameOf(made_by),
          ended_at === null ? (
            <Tag key="s" tone="ready">
              Works
            </Tag>
          ) : (
            <Tag key="s" tone="plain">
              Ended {moment(ended_at)}
            </Tag>
          ),
          ended_at === null && (
            <button key="e" type="button" className="danger" onClick={() => end.mutate(id)}>
              End<span className="visually-hidden"> the token for {name}</span>
            </button>
          ),
        ])}
      />
      {end.error && (
        <p role="alert">{problemFrom(end.error).detail ?? problemFrom(end.error).title}</p>
      )}
    </>
  );
}

function NewToken() {
  const client = useQueryClient();
  const [name, setName] = useState('');
  const [errors, setErrors] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  const make = useMutation({
    mutationFn: async () =>
      (await ask<{ token: string }>('/log/feed-tokens', { method: 'POST', body: { name } })).value
        .token,
    onSuccess: async () => {
      setName('');
      await client.invalidateQueries({ queryKey: tokensQuery.queryKey });
    },
    onError: (error) => {
      const { detail, title } = problemFrom(error);
      setErrors([{ field: '', message: detail ?? title }]);
      setAttempt((n) => n + 1);
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (make.isPending) return;
    const missing =
      name.trim() === '' ? [{ field: 'token-name', message: 'Say what it is for' }] : [];
    setErrors(missing);
    setAttempt((n) => n + 1);
    if (missing.length === 0) make.mutate();
  };
  return (
    <form className="sheet stack" noValidate onSubmit={submit}>
      <h2>Make a token</h2>
      <ErrorSummary errors={errors} attempt={attempt} />
      <TextField
        id="token-name"
        label="Program"
        hint="Who or what will read with it"
        errors={errors}
        value={name}
        onChange={setName}
      />
      <div>
        <button type="submit" className="main" aria-disabled={make.isPending}>
          Make the token
        </button>
      </div>
      <div role="status">
        {make.data && (
          <p>
            Shown once: <span className="digest">{make.data}</span>. The program sends it as{' '}
            <span className="digest">Authorization: Bearer …</span>
          </p>
        )}
      </div>
    </form>
  );
}
