// What a draft would change, before it is published: worked out in the background, with progress; then
// counts in a sentence, and only what differs in a table.

import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate, useParams, useSearch } from '@tanstack/react-router';
import { useState } from 'react';
import type { ImpactScope } from '#jobs/contract';
import { ask } from '../api/client.js';
import { Cautions } from '../parts/cautions.js';
import { RadioField } from '../parts/fields.js';
import { Empty, Failure, Loading } from '../parts/states.js';
import { moment } from '../parts/words.js';
import { Page } from '../shell/page.js';
import { ImpactTable } from './impact-table.js';
import { draftQuery, isUnfinished, previewQuery, previewsQuery, type Preview } from './reading.js';

export function ImpactPage() {
  const { draft: id = '' } = useParams({ strict: false });
  const { preview: picked } = useSearch({ strict: false }) as { preview?: string };
  const draft = useQuery(draftQuery(id));
  const kept = useQuery(previewsQuery(id));
  const current = picked ?? kept.data?.at(-1)?.id ?? '';
  return (
    <Page
      wide
      title="What the draft would change"
      section="Rules"
      crumbs={[
        { name: 'Rules', to: '/rules' },
        {
          name: draft.data ? `Draft of edition ${draft.data.number}` : 'Draft',
          to: '/rules/drafts/$draft',
          params: { draft: id },
        },
      ]}
      lead={draft.data && <p>{draft.data.summary}</p>}
      actions={
        <Link className="button" to="/rules/drafts/$draft/publish" params={{ draft: id }}>
          Publish…
        </Link>
      }
    >
      {draft.error && <Failure error={draft.error} />}
      {kept.error && !draft.error && <Failure error={kept.error} />}
      {draft.data && !kept.error && <Start draft={id} />}
      {draft.data && current !== '' && <Shown id={current} version={draft.data.version} />}
      {draft.data && kept.data?.length === 0 && !picked && (
        <Empty title="Nothing worked out yet">
          <p>Choose what to ask, and start. Nothing is recorded by it.</p>
        </Empty>
      )}
      <Cautions />
    </Page>
  );
}

const SCOPES = [
  {
    value: 'open',
    label: 'Open surfaces',
    hint: 'Every surface that is not ordered yet, with all of its stages that stand',
  },
  {
    value: 'all',
    label: 'Every past decision',
    hint: 'Each confirmed stage since the record began, on the facts recorded then; takes longer',
  },
] as const;

function Start({ draft }: { readonly draft: string }) {
  const [scope, setScope] = useState<ImpactScope>('open');
  const navigate = useNavigate();
  const client = useQueryClient();
  const start = useMutation({
    mutationFn: async () =>
      (
        await ask<Preview>(`/rulebook/drafts/${draft}/previews`, {
          method: 'POST',
          body: { scope },
        })
      ).value,
    onSuccess: (preview) => {
      client.setQueryData(previewQuery(preview.id).queryKey, preview);
      void client.invalidateQueries({ queryKey: previewsQuery(draft).queryKey });
      const params = { draft };
      void navigate({ to: '/rules/drafts/$draft/impact', params, search: { preview: preview.id } });
    },
  });
  return (
    <form
      className="sheet stack"
      onSubmit={(event) => {
        event.preventDefault();
        start.mutate();
      }}
    >
      <RadioField
        id="scope"
        label="What to ask again under the draft"
        options={SCOPES}
        value={scope}
        onChange={(value) => setScope(value as ImpactScope)}
      />
      {start.error && <Failure error={start.error} />}
      <div className="row">
        <button type="submit" className="main" aria-disabled={start.isPending}>
          Work it out
        </button>
      </div>
    </form>
  );
}

function Shown({ id, version }: { readonly id: string; readonly version: number }) {
  const preview = useQuery(previewQuery(id));
  const client = useQueryClient();
  const cancel = useMutation({
    mutationFn: async () =>
      (await ask<Preview>(`/rulebook/previews/${id}`, { method: 'DELETE' })).value,
    onSuccess: (value) => client.setQueryData(previewQuery(id).queryKey, value),
  });
  const { data } = preview;
  if (preview.error) {
    return (
      <Empty title="This preview is not kept any more">
        <p>Previews are kept while the service runs. Start it again above.</p>
      </Empty>
    );
  }
  if (!data) return <Loading what="the preview" />;
  return (
    <section className="stack wide" aria-labelledby="found-title">
      <h2 id="found-title">{HEADINGS[data.state]}</h2>
      {isUnfinished(data) ? (
        <Progress preview={data} cancel={() => cancel.mutate()} />
      ) : (
        <Found preview={data} version={version} />
      )}
    </section>
  );
}

const HEADINGS: Readonly<Record<Preview['state'], string>> = {
  waiting: 'Waiting for another preview to finish',
  running: 'Working it out',
  done: 'What differs',
  cancelled: 'Cancelled',
  failed: 'It did not finish',
};

function Progress({ preview, cancel }: { readonly preview: Preview; readonly cancel: () => void }) {
  const { read, of, words, scope, state } = preview;
  const share = of > 0 ? Math.floor((100 * read) / of) : 0;
  return (
    <>
      <label htmlFor="preview-progress">
        {scope === 'open' ? 'Open jobs read' : 'Of the record read'}: {share} %
      </label>
      <progress id="preview-progress" max={100} value={share} />
      <p>{state === 'waiting' ? 'It starts by itself.' : `So far: ${words}`}</p>
      <div className="row">
        <button type="button" onClick={cancel}>
          Cancel
        </button>
      </div>
    </>
  );
}

function Found({ preview, version }: { readonly preview: Preview; readonly version: number }) {
  const { state, words, failure, differing, asked_at } = preview;
  const old = preview.draft_version !== version;
  return (
    <>
      <p role="status">
        {state === 'done' && <strong>{words}.</strong>}
        {state === 'cancelled' && `Stopped before the end. Until then: ${words}.`}
        {state === 'failed' && `Start it again. ${failure ?? ''}`}
      </p>
      <p className="quiet small">
        Asked {moment(asked_at)}, of the record up to entry{' '}
        {preview.position.toLocaleString('en-US')}. Decisions stand under the edition they name;
        this is what the draft would say of them.
      </p>
      {old && (
        <p className="notice waiting">
          The draft was saved again since. Start the preview again for the draft as it stands.
        </p>
      )}
      {state === 'done' && differing === 0 && <p>Nothing differs.</p>}
      {state === 'done' && differing > 0 && <ImpactTable preview={preview} />}
    </>
  );
}
