// Bringing parts of the catalogue from a file: checked first, with every bad cell and then every
// difference to the newest edition; recorded only when a person publishes the next edition.

import { useMutation, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { PART_NAMES, PART_WORDS, PARTS, type Part } from '#jobs/contract';
import { ask, problemFrom } from '../api/client.js';
import { sessionQuery } from '../api/queries.js';
import { Cautions } from '../parts/cautions.js';
import { ErrorSummary } from '../parts/errors.js';
import { DateField, LongField, SelectField, type FieldError } from '../parts/fields.js';
import { Empty } from '../parts/states.js';
import { PlainTable } from '../parts/table.js';
import { parseDay } from '../parts/words.js';
import { has } from '../shell/home.js';
import { Page } from '../shell/page.js';
import { Faults } from './import-faults.js';
import { ImportReview, type Checked } from './import-review.js';

export function CatalogueImportPage() {
  const session = useQuery(sessionQuery).data;
  const [failed, setFailed] = useState(false);
  return (
    <Page
      wide
      title="Bring a file into the catalogue"
      section="Catalogue"
      failed={failed}
      crumbs={[{ name: 'Catalogue', to: '/catalogue' }]}
      lead={<p className="quiet">Checked first. Nothing is recorded before you publish it.</p>}
    >
      {session && !has(session, 'standards-manager') ? (
        <Empty title="The catalogue is kept by the standards manager" />
      ) : (
        <Import setFailed={setFailed} />
      )}
      <Cautions />
    </Page>
  );
}

interface Entry {
  readonly file: File | null;
  readonly part: string;
  readonly from: string;
  readonly summary: string;
}
const EMPTY: Entry = { file: null, part: '', from: '', summary: '' };
const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
const isCsv = (file: File | null): boolean => file === null || /\.csv$/i.test(file.name);

function faultsOf({ file, part, from, summary }: Entry): readonly FieldError[] {
  const fault = (field: string, message: string) => [{ field, message }];
  return [
    ...(file ? [] : fault('file', 'Choose a CSV file or a workbook')),
    ...(file && isCsv(file) && !part ? fault('part', 'Say what the file holds') : []),
    ...(parseDay(from) ? [] : fault('from', 'Enter the day like 14 Feb 2027')),
    ...(summary.trim() ? [] : fault('summary', 'Say in a sentence what is new')),
  ];
}

function Import({ setFailed }: { readonly setFailed: (failed: boolean) => void }) {
  const [entry, setEntry] = useState(EMPTY);
  const [faults, setFaults] = useState<readonly FieldError[]>([]);
  const [attempt, setAttempt] = useState(0);
  const put = (change: Partial<Entry>) => setEntry({ ...entry, ...change });
  const check = useMutation({
    mutationFn: () => checked(entry),
    onError: () => {
      setFailed(true);
      setAttempt((n) => n + 1);
    },
  });
  const submit = () => {
    const found = faultsOf(entry);
    setFaults(found);
    setFailed(found.length > 0);
    setAttempt((n) => n + 1);
    check.reset();
    if (found.length === 0 && !check.isPending) check.mutate();
  };
  if (check.data) return <ImportReview checked={check.data} back={() => check.reset()} />;
  return (
    <>
      <form
        className="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          submit();
        }}
      >
        <ErrorSummary errors={faults} attempt={attempt} />
        {check.error && <Faults problem={problemFrom(check.error)} attempt={attempt} />}
        <FilePick entry={entry} put={put} faults={faults} />
        <DateField
          id="from"
          label="In force from"
          errors={faults}
          value={entry.from}
          onChange={(from) => put({ from })}
        />
        <LongField
          id="summary"
          label="What is new, in a sentence"
          errors={faults}
          value={entry.summary}
          onChange={(summary) => put({ summary })}
        />
        <div className="row">
          <button type="submit" className="main" aria-disabled={check.isPending}>
            {check.isPending ? 'Checking…' : 'Check the file'}
          </button>
        </div>
      </form>
      <Columns />
    </>
  );
}

async function checked({ file, part, from, summary }: Entry): Promise<Checked> {
  const csv = isCsv(file);
  const query = new URLSearchParams({
    in_force_from: parseDay(from) ?? '',
    summary: summary.trim(),
    ...(csv ? { part } : {}),
  });
  const bytes = file ?? '';
  return (
    await ask<Checked>(`/catalogue/import/check?${query.toString()}`, {
      method: 'POST',
      raw: { bytes, type: csv ? 'text/csv' : XLSX },
    })
  ).value;
}

function FilePick({
  entry,
  put,
  faults,
}: {
  readonly entry: Entry;
  readonly put: (change: Partial<Entry>) => void;
  readonly faults: readonly FieldError[];
}) {
  const wrong = faults.find(({ field }) => field === 'file');
  return (
    <>
      <div className={wrong ? 'field wrong' : 'field'}>
        <label htmlFor="file">File</label>
        <span className="hint" id="file-hint">
          CSV of one part, or a workbook (.xlsx) with a sheet for each; at most 8 MB and 20,000 rows
        </span>
        {wrong && (
          <span className="error" id="file-error">
            {wrong.message}
          </span>
        )}
        <input
          id="file"
          type="file"
          accept={`.csv,.xlsx,text/csv,${XLSX}`}
          aria-describedby={wrong ? 'file-hint file-error' : 'file-hint'}
          aria-invalid={wrong ? true : undefined}
          onChange={(event) => put({ file: event.target.files?.[0] ?? null })}
        />
      </div>
      {isCsv(entry.file) && (
        <SelectField
          id="part"
          label="What the CSV file holds"
          empty="Choose one"
          options={PART_NAMES.map((value) => ({ value, label: PART_WORDS[value] }))}
          errors={faults}
          value={entry.part}
          onChange={(part) => put({ part })}
        />
      )}
    </>
  );
}

const Columns = () => (
  <details>
    <summary>Sheets and columns</summary>
    <PlainTable
      caption="Sheets and their columns"
      note="Rows replace those of the profiles and fasteners they name; others stay. Dates as 2027-02-14, yes or no for what is or is not, an outline as points: 0 0; 1 0.75 0.125; 2 0."
      columns={['Sheet', 'Holds', 'Columns, in any order']}
      rows={PART_NAMES.map((part: Part) => [part, PART_WORDS[part], PARTS[part].join(', ')])}
    />
  </details>
);
