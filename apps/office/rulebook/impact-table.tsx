// Only what differs, before and after: filtered by answer, rule and job, the filter in the address;
// downloaded as it is filtered.

import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import { useEffect, useState } from 'react';
import { ANSWERS, ANSWER_WORDS, label } from '#jobs/contract';
import { SelectField, TextField } from '../parts/fields.js';
import { Failure, Loading, counting } from '../parts/states.js';
import { Heads, ScrollTable, Tag, type Tone } from '../parts/table.js';
import { useLater } from '../parts/use-later.js';
import { capital, prose } from '../parts/words.js';
import { rowsQuery, type ImpactRows, type Preview } from './reading.js';

interface Search {
  readonly answer?: string;
  readonly rule?: string;
  readonly find?: string;
  readonly page?: string;
}

export function ImpactTable({ preview }: { readonly preview: Preview }) {
  const search = useSearch({ strict: false }) as Search;
  const { answer = '', rule = '', find = '', page = '' } = search;
  const navigate = useNavigate();
  const put = (change: Search) =>
    void navigate({
      to: '.',
      replace: true,
      search: (before: object) =>
        Object.fromEntries(
          Object.entries({ ...before, page: '', ...change }).filter(([, value]) => value),
        ),
    });
  const filter = queryOf({ answer, rule, find });
  const rows = useQuery(rowsQuery(preview.id, queryOf({ answer, rule, find, page })));
  return (
    <>
      <Filters {...{ answer, rule, find, put, preview }} />
      <div className="row ends">
        <p role="status" className="quiet">
          {rows.data ? rangeOf(rows.data) : counting(rows)}
          {preview.unlisted > 0 && `; ${preview.unlisted.toLocaleString('en-US')} more not listed`}
        </p>
        <a className="button" href={`/api/rulebook/previews/${preview.id}/rows.csv${filter}`}>
          Download these rows (CSV)
        </a>
      </div>
      {rows.isPending && <Loading what="the rows" />}
      {rows.error && <Failure error={rows.error} />}
      {rows.data && rows.data.rows.length > 0 && <Rows rows={rows.data.rows} />}
      {rows.data && <Pages rows={rows.data} put={put} />}
    </>
  );
}

function queryOf(given: Search): string {
  const named = Object.entries(given).filter(([, value]) => value);
  const text = new URLSearchParams(named as [string, string][]).toString();
  return text && `?${text}`;
}

function rangeOf({ total, page, size }: ImpactRows): string {
  if (total === 0) return 'No row matches';
  const first = (page - 1) * size + 1;
  const last = Math.min(total, page * size);
  return `${first} to ${last} of ${total.toLocaleString('en-US')} that differ`;
}

function Filters({
  answer,
  rule,
  find,
  put,
  preview,
}: Required<Pick<Search, 'answer' | 'rule' | 'find'>> & {
  readonly put: (change: Search) => void;
  readonly preview: Preview;
}) {
  const [typed, setTyped] = useState({ rule, find });
  const late = useLater(typed, 400);
  useEffect(() => {
    if (late.rule !== rule || late.find !== find) put(late);
    // Only what was typed moves the address, not the other way round.
  }, [late]);
  const found = ANSWERS.filter((each) => each !== 'same' && preview.counts[each] > 0);
  return (
    <div className="filters">
      <SelectField
        id="answer"
        label="Answer"
        empty="Any that differs"
        options={found.map((value) => ({ value, label: capital(ANSWER_WORDS[value]) }))}
        value={answer}
        onChange={(value) => put({ answer: value })}
      />
      <TextField
        id="rule"
        label="Rule, like GAUGE-05"
        value={typed.rule}
        onChange={(value) => setTyped({ ...typed, rule: value.trim().toUpperCase() })}
      />
      <TextField
        id="find"
        label="Job or surface"
        value={typed.find}
        onChange={(value) => setTyped({ ...typed, find: value })}
      />
    </div>
  );
}

const TONES: Readonly<Record<string, Tone>> = { 'now-blocked': 'blocked', 'now-free': 'ready' };

const Rows = ({ rows }: Pick<ImpactRows, 'rows'>) => (
  <ScrollTable caption="What differs under the draft">
    <Heads names={['Job', 'Surface', 'Stage', 'Answer', 'Before', 'After', 'Why']} />
    <tbody>
      {rows.map((row, i) => (
        <tr key={i}>
          <th scope="row">
            <Link className="row-link" to="/jobs/$job" params={{ job: row.job }}>
              {row.number}
            </Link>
            <br />
            <span className="quiet small">{row.job_name}</span>
          </th>
          <td>{row.surface_name}</td>
          <td>{capital(row.stage.split(', ').map(label).join(', '))}</td>
          <td>
            <Tag tone={TONES[row.answer] ?? 'waiting'}>{capital(ANSWER_WORDS[row.answer])}</Tag>
          </td>
          <td>{row.before}</td>
          <td>{row.after}</td>
          <td>
            <span className="small">{capital(prose(row.words))}</span>
          </td>
        </tr>
      ))}
    </tbody>
  </ScrollTable>
);

function Pages({
  rows: { total, page, size },
  put,
}: {
  readonly rows: ImpactRows;
  readonly put: (change: Search) => void;
}) {
  if (total <= size) return null;
  return (
    <nav className="row" aria-label="Pages of what differs">
      <button type="button" disabled={page === 1} onClick={() => put({ page: String(page - 1) })}>
        Page before
      </button>
      <span>
        Page {page} of {Math.ceil(total / size)}
      </span>
      <button
        type="button"
        disabled={page * size >= total}
        onClick={() => put({ page: String(page + 1) })}
      >
        Next page
      </button>
    </nav>
  );
}
