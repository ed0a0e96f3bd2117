// Decisions: find a job and open its decision record, history, or a comparison.

import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import { useEffect, useState, type FormEvent } from 'react';
import { jobsQuery } from '../api/queries.js';
import { TextField } from '../parts/fields.js';
import { Empty, Failure, Loading, counting } from '../parts/states.js';
import { Heads, ScrollTable } from '../parts/table.js';
import { Page } from '../shell/page.js';

export function DecisionsPage() {
  const { find = '' } = useSearch({ strict: false }) as { find?: string };
  const navigate = useNavigate();
  const [typed, setTyped] = useState(find);
  useEffect(() => setTyped(find), [find]);
  const query = new URLSearchParams({ ...(find ? { find } : {}), sort: '-updated' }).toString();
  const jobs = useQuery(jobsQuery(query));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void navigate({ to: '/decisions', search: typed.trim() ? { find: typed.trim() } : {} });
  };
  return (
    <Page
      wide
      title="Decisions"
      lead={<p className="quiet">Why this gauge? Open the record of a job, as of any moment.</p>}
    >
      <form role="search" aria-label="Decisions" className="filters" onSubmit={submit}>
        <TextField
          id="find"
          label="Find: number, name, client or site"
          type="search"
          value={typed}
          onChange={setTyped}
        />
        <button type="submit">Find</button>
      </form>
      <p role="status" className="quiet">
        {jobs.data
          ? `${jobs.data.total.toLocaleString('en-US')} jobs match; the latest changed come first`
          : counting(jobs)}
      </p>
      {jobs.isPending && <Loading what="the jobs" />}
      {jobs.error && <Failure error={jobs.error} retry={() => void jobs.refetch()} />}
      {jobs.data?.rows.length === 0 && <Empty title="No job matches" />}
      {jobs.data && jobs.data.rows.length > 0 && (
        <ScrollTable caption="Jobs and their records">
          <Heads names={['Job', 'Client', 'Site', 'Stage', 'Open']} />
          <tbody>
            {jobs.data.rows.map((row) => (
              <tr key={row.id}>
                <th scope="row">
                  <Link className="row-link" to="/jobs/$job/record" params={{ job: row.id }}>
                    {row.number}
                  </Link>
                  <br />
                  <span className="quiet small">{row.name}</span>
                </th>
                <td>{row.customer}</td>
                <td>{row.site}</td>
                <td className="tight-column">{row.stage_words}</td>
                <td>
                  <Link
                    className="row-link"
                    to="/jobs/$job/history"
                    params={{ job: row.id }}
                    aria-label={`History of ${row.number}`}
                  >
                    History
                  </Link>
                  {' · '}
                  <Link
                    className="row-link"
                    to="/jobs/$job/compare"
                    params={{ job: row.id }}
                    aria-label={`Compare two moments of ${row.number}`}
                  >
                    Compare
                  </Link>
                </td>
              </tr>
            ))}
          </tbody>
        </ScrollTable>
      )}
    </Page>
  );
}
