// Publishing a draft: the reason and what becomes of jobs under way, then all of it in words, then one
// explicit confirmation.

import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate, useParams } from '@tanstack/react-router';
import { useRef, useState } from 'react';
import { RUNNING_JOBS, RUNNING_JOBS_WORDS, type RunningJobs } from '#jobs/contract';
import { Review } from '../after/review.js';
import { ask, problemFrom } from '../api/client.js';
import { sessionQuery } from '../api/queries.js';
import { Cautions } from '../parts/cautions.js';
import { useDraft } from '../parts/draft.js';
import { errorsOf, ErrorSummary } from '../parts/errors.js';
import { LongField, RadioField, type FieldErrors } from '../parts/fields.js';
import { Empty, Failure, Loading } from '../parts/states.js';
import { day } from '../parts/words.js';
import { has } from '../shell/home.js';
import { useAnnounce } from '../shell/live.js';
import { Page } from '../shell/page.js';
import { ChangesTable } from './changes-table.js';
import { draftQuery, previewsQuery, type Draft, type Preview } from './reading.js';

export function PublishPage() {
  const { draft: id = '' } = useParams({ strict: false });
  const draft = useQuery(draftQuery(id));
  const previews = useQuery(previewsQuery(id));
  const session = useQuery(sessionQuery).data;
  const [failed, setFailed] = useState(false);
  const keeper = !session || has(session, 'standards-manager');
  return (
    <Page
      title={draft.data ? `Publish edition ${draft.data.number}` : 'Publish'}
      section="Rules"
      failed={failed}
      crumbs={[
        { name: 'Rules', to: '/rules' },
        {
          name: draft.data ? `Draft of edition ${draft.data.number}` : 'Draft',
          to: '/rules/drafts/$draft',
          params: { draft: id },
        },
      ]}
      lead={draft.data && <p>{draft.data.summary}</p>}
    >
      {!keeper && <Empty title="The rulebook is for the standards manager" />}
      {draft.isPending && <Loading what="the draft" />}
      {draft.error && <Failure error={draft.error} retry={() => void draft.refetch()} />}
      {keeper && draft.data && (
        <Publishing
          draft={draft.data}
          preview={newestOf(previews.data ?? [], draft.data)}
          setFailed={setFailed}
        />
      )}
      <Cautions />
    </Page>
  );
}

const newestOf = (previews: readonly Preview[], { version }: Draft): Preview | undefined =>
  previews.filter((each) => each.state === 'done' && each.draft_version === version).at(-1);

interface Props {
  readonly draft: Draft;
  readonly preview: Preview | undefined;
  readonly setFailed: (failed: boolean) => void;
}

function Publishing({ draft, preview, setFailed }: Props) {
  const typed = useDraft(`publish ${draft.id}`, { running: '', reason: '' });
  const { running, reason } = typed.value;
  const [reviewed, setReviewed] = useState(false);
  const [faults, setFaults] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  const publishing = usePublish(draft, preview, typed, setFailed);
  const review = () => {
    const found = [
      ...(running ? [] : [{ field: 'running', message: 'Say what becomes of jobs under way' }]),
      ...(reason.trim() ? [] : [{ field: 'reason', message: 'Say why it is published' }]),
    ];
    setFaults(found);
    setFailed(found.length > 0);
    setAttempt((n) => n + 1);
    setReviewed(found.length === 0);
  };
  if (reviewed) {
    return (
      <Review
        title={`Publish edition ${draft.number}?`}
        words={wordsOf(draft, preview, running as RunningJobs, reason)}
        correct="An edition is never changed or taken back. Another one that follows it can set things right, and is published the same way."
        button={`Publish edition ${draft.number}`}
        form={publishing.form}
        sent={publishing.form.attempt > 0}
        back={() => setReviewed(false)}
        confirm={publishing.send}
      >
        <ChangesTable caption={`What changes`} changes={draft.changes} />
      </Review>
    );
  }
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        review();
      }}
    >
      <ErrorSummary errors={faults} attempt={attempt} />
      <Found draft={draft} preview={preview} />
      <RadioField
        id="running"
        label="What becomes of jobs under way"
        hint="No decision is changed by publishing, in either case"
        options={RUNNING_JOBS.map((value) => ({ value, label: RUNNING_JOBS_WORDS[value] }))}
        errors={faults}
        value={running}
        onChange={(value) => typed.set({ running: value })}
      />
      <LongField
        id="reason"
        label="Why it is published"
        errors={faults}
        value={reason}
        onChange={(value) => typed.set({ reason: value })}
      />
      <div className="row">
        <button type="submit" className="main">
          Review before publishing
        </button>
      </div>
    </form>
  );
}

const Found = ({ draft, preview }: Omit<Props, 'setFailed'>) =>
  preview ? (
    <p className="notice">
      The preview found: {preview.words}.{' '}
      <Link
        to="/rules/drafts/$draft/impact"
        params={{ draft: draft.id }}
        search={{ preview: preview.id }}
      >
        See what differs
      </Link>
    </p>
  ) : (
    <p className="notice waiting">
      What this draft would change was not worked out as it stands.{' '}
      <Link to="/rules/drafts/$draft/impact" params={{ draft: draft.id }}>
        Work it out first
      </Link>
    </p>
  );

function wordsOf(
  draft: Draft,
  preview: Preview | undefined,
  running: RunningJobs,
  reason: string,
): readonly (readonly [string, string])[] {
  return [
    ['Edition', String(draft.number)],
    ['In force from', day(draft.in_force_from)],
    ['What it changes', draft.summary],
    ['Differences', String(draft.changes.length)],
    ['The preview found', preview?.words ?? 'not worked out'],
    ['Jobs under way', RUNNING_JOBS_WORDS[running]],
    ['Reason', reason],
  ];
}

function usePublish(
  draft: Draft,
  preview: Preview | undefined,
  typed: {
    readonly value: { readonly running: string; readonly reason: string };
    readonly clear: () => void;
  },
  setFailed: (failed: boolean) => void,
) {
  const client = useQueryClient();
  const navigate = useNavigate();
  const say = useAnnounce();
  const [attempt, setAttempt] = useState(0);
  const key = useRef(crypto.randomUUID());
  const { running, reason } = typed.value;
  const send = useMutation({
    mutationFn: async () =>
      (
        await ask<{ number: number }>(`/rulebook/drafts/${draft.id}/publication`, {
          method: 'POST',
          version: draft.version,
          key: key.current,
          body: {
            reason: reason.trim(),
            running_jobs: running,
            ...(preview ? { preview: preview.id } : {}),
          },
        })
      ).value,
    onSuccess: ({ number }) => {
      typed.clear();
      say(`Edition ${number} is published.`);
      void navigate({ to: '/rules/$edition', params: { edition: String(number) } });
      for (const queryKey of [['rulebook'], ['rulebook editions'], ['rules drafts']])
        void client.invalidateQueries({ queryKey });
    },
    onError: () => {
      key.current = crypto.randomUUID();
      setFailed(true);
    },
    onSettled: () => setAttempt((n) => n + 1),
  });
  const problem = send.error ? problemFrom(send.error) : null;
  const errors = errorsOf(problem, () => '');
  const form = { errors, problem, attempt, busy: send.isPending, submit: () => undefined };
  return { form, send: () => !send.isPending && send.mutate() };
}
