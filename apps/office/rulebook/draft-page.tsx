// One draft: what it changes, whether it is up to date, and the way on to preview and publishing.

import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { ask, problemFrom } from '../api/client.js';
import { sessionQuery } from '../api/queries.js';
import { Cautions } from '../parts/cautions.js';
import { Dialog } from '../parts/dialog.js';
import { errorsOf, ErrorSummary } from '../parts/errors.js';
import { LongField } from '../parts/fields.js';
import { Failure, Loading } from '../parts/states.js';
import { day, moment } from '../parts/words.js';
import { has } from '../shell/home.js';
import { Page } from '../shell/page.js';
import { ChangesTable } from './changes-table.js';
import { draftQuery, type Draft } from './reading.js';

export function DraftPage() {
  const { draft: id = '' } = useParams({ strict: false });
  const draft = useQuery(draftQuery(id));
  const keeper = has(useQuery(sessionQuery).data, 'standards-manager');
  const { data } = draft;
  return (
    <Page
      wide
      title={data ? `Draft of edition ${data.number}` : 'Draft'}
      section="Rules"
      crumbs={[{ name: 'Rules', to: '/rules' }]}
      lead={data && <p>{data.summary}</p>}
      actions={
        data &&
        keeper && (
          <>
            <Link className="button" to="/rules/drafts/$draft/change" params={{ draft: id }}>
              Change the draft
            </Link>
            <Link className="button" to="/rules/drafts/$draft/impact" params={{ draft: id }}>
              What would it change?
            </Link>
            <Link className="button main" to="/rules/drafts/$draft/publish" params={{ draft: id }}>
              Publish…
            </Link>
          </>
        )
      }
    >
      {draft.isPending && <Loading what="the draft" />}
      {draft.error && <Failure error={draft.error} retry={() => void draft.refetch()} />}
      {data && <Body draft={data} keeper={keeper} />}
      <Cautions />
    </Page>
  );
}

const Body = ({ draft, keeper }: { readonly draft: Draft; readonly keeper: boolean }) => (
  <>
    {draft.base !== draft.newest && <OutOfDate draft={draft} keeper={keeper} />}
    <dl className="facts">
      <dt>State</dt>
      <dd>Draft: nothing is judged by it before it is published</dd>
      <dt>Would be in force from</dt>
      <dd>{day(draft.in_force_from)}</dd>
      <dt>Changes edition</dt>
      <dd>{draft.base}</dd>
      <dt>Saved</dt>
      <dd>
        {moment(draft.at)} by {draft.by}
      </dd>
    </dl>
    <ChangesTable caption={`What it changes of edition ${draft.base}`} changes={draft.changes} />
    {keeper && <Withdraw draft={draft} />}
  </>
);

/** Another edition was published since: the same changes are laid over that one. */
function OutOfDate({ draft, keeper }: { readonly draft: Draft; readonly keeper: boolean }) {
  const client = useQueryClient();
  const { id, version, in_force_from, summary, edits } = draft;
  const save = useMutation({
    mutationFn: () =>
      ask<Draft>(`/rulebook/drafts/${id}`, {
        method: 'PUT',
        version,
        body: { in_force_from, summary, edits },
      }),
    onSuccess: ({ value }) => client.setQueryData(draftQuery(id).queryKey, value),
  });
  return (
    <div className="notice waiting stack tight">
      <p>
        Out of date: edition {draft.newest} was published since. This draft changes edition{' '}
        {draft.base} and cannot be published as it is.{' '}
        <Link to="/rules/$edition" params={{ edition: String(draft.newest) }}>
          See what edition {draft.newest} changed
        </Link>
      </p>
      {save.error && (
        <ErrorSummary errors={errorsOf(problemFrom(save.error), () => '')} attempt={1} />
      )}
      {keeper && (
        <div className="row">
          <button type="button" onClick={() => save.mutate()} aria-disabled={save.isPending}>
            Lay its changes over edition {draft.newest}
          </button>
        </div>
      )}
    </div>
  );
}

function Withdraw({ draft }: { readonly draft: Draft }) {
  const [open, setOpen] = useState(false);
  const [reason, setReason] = useState('');
  const [attempt, setAttempt] = useState(0);
  const client = useQueryClient();
  const navigate = useNavigate();
  const send = useMutation({
    mutationFn: () =>
      ask(`/rulebook/drafts/${draft.id}/withdrawal`, { method: 'POST', body: { reason } }),
    onSuccess: () => {
      void navigate({ to: '/rules' });
      void client.invalidateQueries({ queryKey: ['rules drafts'], exact: true });
    },
    onSettled: () => setAttempt((n) => n + 1),
  });
  return (
    <div className="row">
      <button type="button" onClick={() => setOpen(true)}>
        Withdraw the draft…
      </button>
      <Dialog title="Withdraw the draft" open={open} close={() => setOpen(false)}>
        <div className="stack">
          {send.error && (
            <ErrorSummary
              errors={errorsOf(problemFrom(send.error), () => 'withdraw-reason')}
              attempt={attempt}
            />
          )}
          <p>It leaves the list and cannot be published any more; the record keeps it.</p>
          <LongField id="withdraw-reason" label="Reason" value={reason} onChange={setReason} />
          <div className="row">
            <button type="button" onClick={() => setOpen(false)}>
              Keep it
            </button>
            <button type="button" onClick={() => send.mutate()} aria-disabled={send.isPending}>
              Withdraw it
            </button>
          </div>
        </div>
      </Dialog>
    </div>
  );
}
