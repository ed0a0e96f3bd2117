// Importing jobs from a CSV file: every bad row is named first; nothing is written until it is
// confirmed, and then all of the file or none of it, once.

import { useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useRef, useState } from 'react';
import { ask, problemFrom } from '../api/client.js';
import { sessionQuery } from '../api/queries.js';
import { Empty } from '../parts/states.js';
import { PlainTable } from '../parts/table.js';
import { count } from '../parts/words.js';
import { has, OFFICE } from '../shell/home.js';
import { Page } from '../shell/page.js';
import { ImportColumns } from './import-columns.js';

interface Checked {
  readonly digest: string;
  readonly jobs: number;
  readonly faults: readonly {
    readonly row: number;
    readonly column: string;
    readonly message: string;
  }[];
}
type State =
  | { readonly is: 'idle' | 'checking' }
  | { readonly is: 'failed'; readonly words: string }
  | {
      readonly is: 'checked';
      readonly name: string;
      readonly text: string;
      readonly checked: Checked;
    }
  | { readonly is: 'done'; readonly jobs: number };

export function ImportPage() {
  const session = useQuery(sessionQuery).data;
  return (
    <Page
      title="Import jobs"
      section="Jobs"
      crumbs={[{ name: 'Jobs', to: '/jobs' }]}
      lead={<p>Open many jobs from one CSV file. The file is checked first, row by row.</p>}
    >
      {has(session, ...OFFICE) ? (
        <Import />
      ) : (
        <Empty title="Not for your role">
          <p>The office and project managers import jobs.</p>
        </Empty>
      )}
    </Page>
  );
}

function Import() {
  const [state, setState] = useState<State>({ is: 'idle' });
  const check = async (file: File | undefined) => {
    if (!file) return;
    setState({ is: 'checking' });
    try {
      const text = await file.text();
      const checked = await post<Checked>('/jobs/import/check', text);
      setState({ is: 'checked', name: file.name, text, checked });
    } catch (error) {
      setState({ is: 'failed', words: wordsOf(error) });
    }
  };
  return (
    <>
      <div className="sheet stack">
        <div className="field">
          <label htmlFor="import-file">Jobs, CSV</label>
          <span className="hint" id="import-file-hint">
            At most 500 jobs in one file; choosing it only checks it
          </span>
          <input
            id="import-file"
            type="file"
            accept=".csv,text/csv"
            aria-describedby="import-file-hint"
            onClick={(event) => {
              // The same file, corrected, can be chosen again.
              event.currentTarget.value = '';
            }}
            onChange={(event) => void check(event.target.files?.[0])}
          />
        </div>
        <p role="status">{saidOf(state)}</p>
        {state.is === 'failed' && (
          <p role="alert" className="problem">
            {state.words}
          </p>
        )}
      </div>
      {state.is === 'checked' && (
        <Preview
          key={state.checked.digest}
          {...state}
          done={(jobs) => setState({ is: 'done', jobs })}
          cancel={() => setState({ is: 'idle' })}
        />
      )}
      {state.is === 'done' && (
        <div className="notice ready">
          <p>
            {count(state.jobs, 'job')} imported. <Link to="/jobs">Go to the jobs</Link>
          </p>
        </div>
      )}
      <ImportColumns />
    </>
  );
}

const saidOf = (state: State): string =>
  state.is === 'checking'
    ? 'Checking the file…'
    : state.is === 'done'
      ? `${count(state.jobs, 'job')} imported.`
      : state.is === 'checked'
        ? `${state.name} is checked. Nothing is written yet.`
        : '';

function Preview({
  text,
  checked,
  done,
  cancel,
}: {
  readonly text: string;
  readonly checked: Checked;
  readonly done: (jobs: number) => void;
  readonly cancel: () => void;
}) {
  const { jobs, faults, digest } = checked;
  const client = useQueryClient();
  const sending = useRef(false);
  const [busy, setBusy] = useState(false);
  const [words, setWords] = useState('');
  const confirm = async () => {
    if (sending.current) return;
    sending.current = true;
    setBusy(true);
    setWords('');
    try {
      const made = await post<{ jobs: number }>('/jobs/import', text, digest);
      void client.invalidateQueries({ queryKey: ['jobs'] });
      done(made.jobs);
    } catch (error) {
      setWords(wordsOf(error));
    } finally {
      sending.current = false;
      setBusy(false);
    }
  };
  if (faults.length > 0) {
    const rows = new Set(faults.map(({ row }) => row)).size;
    return (
      <section className="stack" aria-labelledby="faults-title">
        <h2 id="faults-title">This file cannot be imported yet</h2>
        <p>
          {count(rows, 'row')} cannot be taken, {count(jobs, 'row')} could be read. Nothing is
          written: a file goes in whole or not at all. Correct these and choose the file again.
        </p>
        <PlainTable
          caption="What to correct"
          note="Rows as a spreadsheet counts them: the head is row 1"
          columns={[{ name: 'Row', num: true }, 'Column', 'What is wrong']}
          rows={faults.map(({ row, column, message }) => [row || 'file', column || 'row', message])}
        />
      </section>
    );
  }
  return (
    <section className="sheet stack" aria-labelledby="preview-title">
      <h2 id="preview-title">{count(jobs, 'job')} can be opened</h2>
      <p>
        No fault in any row. Importing opens them all in your name; a job that is open stays, and
        can be changed like any other.
      </p>
      {words && (
        <p role="alert" className="problem">
          {words}
        </p>
      )}
      <div className="row">
        <button type="button" className="main" aria-disabled={busy} onClick={() => void confirm()}>
          {busy ? 'Importing…' : `Import ${count(jobs, 'job')}`}
        </button>
        <button type="button" onClick={cancel}>
          Cancel
        </button>
      </div>
    </section>
  );
}

const post = async <T,>(path: string, bytes: string, checked?: string): Promise<T> =>
  (
    await ask<T>(path, {
      method: 'POST',
      raw: { bytes, type: 'text/csv' },
      ...(checked === undefined ? {} : { headers: { 'x-checked-digest': checked } }),
    })
  ).value;

const wordsOf = (error: unknown): string => {
  const { title, detail, faults = [] } = problemFrom(error);
  return [detail ?? title, ...faults.map(({ pointer, message }) => `${pointer}: ${message}`)].join(
    ' ',
  );
};
