// The manager's page: every surface on open framing that is not signed, and what it waits for.

import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { signOffsQuery } from '../api/queries.js';
import { Empty, Failure, Loading, counting } from '../parts/states.js';
import { ScrollTable } from '../parts/table.js';
import { day, today } from '../parts/words.js';
import { Page } from '../shell/page.js';

export function SpanningPage() {
  const query = useQuery(signOffsQuery);
  const rows = [...(query.data?.spanning ?? [])].sort(
    (a, b) => (a.due ?? '9999').localeCompare(b.due ?? '9999') || a.since.localeCompare(b.since),
  );
  return (
    <Page
      wide
      title="Spanning surfaces not signed"
      section="Spanning"
      lead={
        <p role="status" className="quiet">
          {query.data
            ? `${rows.length} on open framing; none may be ordered unsigned`
            : counting(query)}
        </p>
      }
    >
      {query.isPending && <Loading what="the surfaces" />}
      {query.error && <Failure error={query.error} retry={() => void query.refetch()} />}
      {query.data && rows.length === 0 && <Empty title="Every spanning surface is signed" />}
      {rows.length > 0 && (
        <ScrollTable caption="Open framing, not signed" note="By due date, then by age">
          <thead>
            <tr>
              {['Job', 'Surface', 'Waits for', 'Engineer', 'Asked', 'Open since', 'Job due'].map(
                (name) => (
                  <th key={name} scope="col">
                    {name}
                  </th>
                ),
              )}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={`${row.job} ${row.surface.id}`}>
                <th scope="row">
                  <Link className="row-link" to="/jobs/$job" params={{ job: row.job }}>
                    {row.number}
                  </Link>
                  <br />
                  <span className="quiet small">{row.name}</span>
                </th>
                <td>
                  <Link
                    className="row-link"
                    to="/jobs/$job/surfaces/$surface/$stage"
                    params={{ job: row.job, surface: row.surface.id, stage: 'sign-off' }}
                  >
                    {row.surface.name}
                  </Link>
                </td>
                <td>{row.waits_for}</td>
                <td>{row.engineer ?? <span className="quiet">nobody asked</span>}</td>
                <td>{day(row.asked_at) || <span className="quiet">not asked</span>}</td>
                <td>
                  {day(row.since)} <span className="quiet">({age(row.since)})</span>
                </td>
                <td>
                  {day(row.due) || <span className="quiet">no date</span>}
                  {row.due !== null && row.due < today() && <strong> overdue</strong>}
                </td>
              </tr>
            ))}
          </tbody>
        </ScrollTable>
      )}
    </Page>
  );
}

function age(since: string): string {
  const days = Math.max(0, Math.floor((Date.now() - new Date(since).getTime()) / 86_400_000));
  return days === 1 ? '1 day' : `${days} days`;
}
