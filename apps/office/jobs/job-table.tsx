// The jobs as a native table: sortable heads, one link a row, the next action and whose it is.

import { useNavigate } from '@tanstack/react-router';
import { memo, useCallback, type Dispatch, type MouseEvent, type SetStateAction } from 'react';
import type { JobRow } from '#jobs/contract';
import { ScrollTable, Tag, type Tone } from '../parts/table.js';
import { day, today } from '../parts/words.js';
import type { Filter } from './query.js';

const TONES: Readonly<Record<JobRow['state'], Tone>> = {
  Ready: 'ready',
  Blocked: 'blocked',
  Waiting: 'waiting',
  Done: 'plain',
};

interface Props {
  readonly rows: readonly JobRow[];
  readonly filter: Filter;
  readonly go: (next: Filter) => void;
  readonly busy: boolean;
  readonly selected?: readonly string[];
  readonly setSelected?: Dispatch<SetStateAction<readonly string[]>>;
}

export function JobTable({ rows, filter, go, busy, selected = [], setSelected }: Props) {
  const sort = filter.sort ?? 'due';
  const choose = useCallback(
    (id: string) => setSelected?.((list) => toggle(list, id)),
    [setSelected],
  );
  const head = { sort, change: (next: string) => go({ ...filter, sort: next, page: '' }) };
  return (
    <ScrollTable
      caption="Jobs of this page"
      className="job-list"
      note={busy ? 'Loading…' : undefined}
    >
      <thead>
        <tr>
          {setSelected && (
            <th scope="col">
              <span className="visually-hidden">Select</span>
            </th>
          )}
          <SortHead name="number" words="Job" {...head} />
          <th scope="col">Client</th>
          <th scope="col">Site</th>
          <SortHead name="stage" words="Stage" {...head} />
          <th scope="col">State</th>
          <th scope="col" className="num">
            Surfaces done
          </th>
          <th scope="col">Next action, and whose</th>
          <SortHead name="due" words="Due" {...head} />
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <Row
            key={row.id}
            row={row}
            chosen={selected.includes(row.id)}
            {...(setSelected ? { choose } : {})}
          />
        ))}
      </tbody>
    </ScrollTable>
  );
}

const toggle = (list: readonly string[], id: string): readonly string[] =>
  list.includes(id) ? list.filter((each) => each !== id) : [...list, id];

interface RowProps {
  readonly row: JobRow;
  readonly chosen: boolean;
  readonly choose?: (id: string) => void;
}

/** Drawn again only when its job or its choice changes, not with every change of the filter. */
const Row = memo(function Row({ row, chosen, choose }: RowProps) {
  const late = row.due !== null && row.due < today() && row.state !== 'Done';
  return (
    <tr>
      {choose && (
        <td>
          <input
            type="checkbox"
            checked={chosen}
            onChange={() => choose(row.id)}
            aria-label={`Select ${row.number}`}
          />
        </td>
      )}
      <th scope="row">
        <JobLink id={row.id} number={row.number} />
        <br />
        <span className="quiet small">{row.name}</span>
      </th>
      <td>{row.customer}</td>
      <td>{row.site}</td>
      <td className="tight-column">{row.stage_words}</td>
      <td>
        <Tag tone={TONES[row.state]}>{row.state}</Tag>
      </td>
      <td className="num">
        {row.surfaces_done} of {row.surfaces}
      </td>
      <td className="next">
        {row.next_action}
        {row.on && <span className="quiet"> ({row.on})</span>}
      </td>
      <td className="tight-column">
        {day(row.due) || <span className="quiet">no date</span>}
        {late && <strong> overdue</strong>}
      </td>
    </tr>
  );
});

/** A plain link: one of the router's would be worked out anew, for every row, at each change of address. */
function JobLink({ id, number }: { readonly id: string; readonly number: string }) {
  const navigate = useNavigate();
  const follow = (event: MouseEvent) => {
    if (event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
    event.preventDefault();
    void navigate({ to: '/jobs/$job', params: { job: id } });
  };
  return (
    <a href={`/jobs/${id}`} className="row-link" onClick={follow}>
      {number}
    </a>
  );
}

/** A head that sorts: a button in the cell; aria-sort on the sorted column only. */
function SortHead({
  name,
  words,
  sort,
  change,
}: {
  readonly name: string;
  readonly words: string;
  readonly sort: string;
  readonly change: (next: string) => void;
}) {
  const order = sort === name ? 'ascending' : sort === `-${name}` ? 'descending' : undefined;
  return (
    <th scope="col" {...(order ? { 'aria-sort': order } : {})}>
      <button
        type="button"
        className="sort"
        onClick={() => change(order === 'ascending' ? `-${name}` : name)}
      >
        {words}
        <svg viewBox="0 0 12 12" aria-hidden="true" fill="currentColor">
          <path d={SHAPES[order ?? 'none']} />
        </svg>
      </button>
    </th>
  );
}

const SHAPES = {
  ascending: 'M6 1 11 10H1z',
  descending: 'M6 11 1 2h10z',
  none: 'M1 2h10v2H1zM1 8h10v2H1z',
} as const;
