// Drafting the next rules edition: from which day, what it is about, and change by change.

import { useQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { editionQuery, editionsQuery, sessionQuery } from '../api/queries.js';
import { useDraft } from '../parts/draft.js';
import { ErrorSummary } from '../parts/errors.js';
import { DateField, LongField } from '../parts/fields.js';
import { Empty, Failure, Loading } from '../parts/states.js';
import { day } from '../parts/words.js';
import { has } from '../shell/home.js';
import { Page } from '../shell/page.js';
import { EMPTY, entryOf, NO_CHANGE, type Change, type Entry } from './draft-entry.js';
import { EditFields } from './edit-fields.js';
import {
  draftQuery,
  knownRulesQuery,
  type Draft,
  type Edition,
  type KnownRule,
} from './reading.js';
import { useSaveDraft } from './save-draft.js';

const RULES = { name: 'Rules', to: '/rules' };

export function NewDraftPage() {
  const [failed, setFailed] = useState(false);
  return (
    <Page
      title="Draft the next edition"
      section="Rules"
      crumbs={[RULES]}
      failed={failed}
      lead={<p className="quiet">Nothing takes force before it is published.</p>}
    >
      <Ready>{(base, known) => <DraftForm {...{ base, known, setFailed }} draft={null} />}</Ready>
    </Page>
  );
}

export function ChangeDraftPage() {
  const { draft: id = '' } = useParams({ strict: false });
  const draft = useQuery(draftQuery(id));
  const [failed, setFailed] = useState(false);
  return (
    <Page
      title="Change the draft"
      section="Rules"
      failed={failed}
      crumbs={[
        RULES,
        ...(draft.data
          ? [
              {
                name: `Draft of edition ${draft.data.number}`,
                to: '/rules/drafts/$draft',
                params: { draft: id },
              },
            ]
          : []),
      ]}
    >
      {draft.isPending && <Loading what="the draft" />}
      {draft.error && <Failure error={draft.error} retry={() => void draft.refetch()} />}
      {draft.data && (
        <Ready>
          {(base, known) => <DraftForm {...{ base, known, setFailed }} draft={draft.data} />}
        </Ready>
      )}
    </Page>
  );
}

/** The newest edition, which a draft changes, and all rules there are. */
function Ready({
  children,
}: {
  readonly children: (base: Edition, known: readonly KnownRule[]) => React.ReactNode;
}) {
  const session = useQuery(sessionQuery).data;
  const editions = useQuery(editionsQuery('rulebook'));
  const newest = editions.data?.editions.at(-1)?.number ?? 0;
  const base = useQuery({ ...editionQuery<Edition>('rulebook', newest), enabled: newest > 0 });
  const known = useQuery(knownRulesQuery);
  if (session && !has(session, 'standards-manager')) {
    return (
      <Empty title="The rulebook is for the standards manager">
        <p>You may read every edition and every draft; drafting is for that role.</p>
      </Empty>
    );
  }
  const error = editions.error ?? base.error ?? known.error;
  if (error) return <Failure error={error} />;
  if (!base.data || !known.data) return <Loading what="the rules" />;
  return children(base.data, known.data);
}

interface FormProps {
  readonly base: Edition;
  readonly known: readonly KnownRule[];
  readonly draft: Draft | null;
  readonly setFailed: (failed: boolean) => void;
}

function DraftForm({ base, known, draft, setFailed }: FormProps) {
  const initial = draft ? entryOf({ ...draft, in_force_from: day(draft.in_force_from) }) : EMPTY;
  const typed = useDraft<Entry>(`rules ${draft?.id ?? 'new'}`, initial);
  const { value, set } = typed;
  const saving = useSaveDraft(draft, known, typed, setFailed);
  const put = (i: number) => (change: Partial<Change>) =>
    set({ changes: value.changes.map((each, at) => (at === i ? { ...each, ...change } : each)) });
  const remove = (i: number) => set({ changes: value.changes.filter((_, at) => at !== i) });
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        saving.submit();
      }}
    >
      <ErrorSummary {...saving} />
      {saving.overtaken && (
        <div className="row">
          <button type="button" onClick={saving.overIt}>
            Save mine over it
          </button>
        </div>
      )}
      {typed.restored && <p className="quiet">What you typed before is still here.</p>}
      <p>
        It changes edition {base.number}, in force from {day(base.in_force_from)}. What is not named
        here stays as it is.
      </p>
      <DateField
        id="from"
        label="In force from"
        hint={`Today or later, like 14 Feb 2027; not before ${day(base.in_force_from)}`}
        errors={saving.errors}
        value={value.from}
        onChange={(from) => set({ from })}
      />
      <LongField
        id="summary"
        label="What it changes, in a sentence"
        errors={saving.errors}
        value={value.summary}
        onChange={(summary) => set({ summary })}
      />
      {value.changes.map((change, i) => (
        <EditFields
          key={i}
          {...{ i, change, known, base }}
          errors={saving.errors}
          put={put(i)}
          remove={value.changes.length > 1 ? () => remove(i) : undefined}
        />
      ))}
      <div className="row">
        <button type="button" onClick={() => set({ changes: [...value.changes, NO_CHANGE] })}>
          Add another change
        </button>
        <button type="submit" className="main" aria-disabled={saving.busy}>
          {saving.busy ? 'Saving…' : 'Save the draft'}
        </button>
      </div>
    </form>
  );
}
