// The job list: what is stuck, on whom, until when. Filter, order and page live in the address.

import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import { useState } from 'react';
import { jobsQuery, sessionQuery } from '../api/queries.js';
import { counting, Empty, Failure, Loading } from '../parts/states.js';
import { count } from '../parts/words.js';
import { has, OFFICE } from '../shell/home.js';
import { Page } from '../shell/page.js';
import { BulkAssign } from './bulk-assign.js';
import { FilterRow } from './filter-row.js';
import { JobTable } from './job-table.js';
import { Paging } from './paging.js';
import { FILTERS, queryOf, type Filter } from './query.js';
import { QuickKeys } from './quick-keys.js';
import { Views } from './views.js';

export function JobListPage() {
  const filter = useSearch({ strict: false }) as Filter;
  const navigate = useNavigate();
  const session = useQuery(sessionQuery).data;
  const jobs = useQuery(jobsQuery(queryOf(filter)));
  const [selected, setSelected] = useState<readonly string[]>([]);
  const go = (next: Filter) =>
    void navigate({ to: '/jobs', search: next as Record<string, string> });
  const office = has(session, ...OFFICE);
  const total = jobs.data?.total;
  return (
    <Page
      wide
      title="Jobs"
      lead={<Count total={total} words={counting(jobs)} />}
      actions={
        office && (
          <>
            <Link to="/jobs/import" className="button">
              Import jobs
            </Link>
            <Link to="/jobs/new" className="button main">
              Open a new job
            </Link>
          </>
        )
      }
    >
      <Views filter={filter} go={go} me={session?.person.id ?? ''} />
      <FilterRow filter={filter} go={go} />
      {jobs.isPending && <Loading what="the jobs" />}
      {jobs.error && <Failure error={jobs.error} retry={() => void jobs.refetch()} />}
      {jobs.data && !jobs.error && (
        <>
          {office && (
            <BulkAssign selected={selected} clear={() => setSelected([])} rows={jobs.data.rows} />
          )}
          {jobs.data.rows.length === 0 ? (
            <NoJobs filtered={Object.keys(filter).length > 0} />
          ) : (
            <JobTable
              rows={jobs.data.rows}
              filter={filter}
              go={go}
              busy={jobs.isPlaceholderData}
              {...(office ? { selected, setSelected } : {})}
            />
          )}
          <div className="row ends">
            <Paging
              total={jobs.data.total}
              page={jobs.data.page}
              size={jobs.data.size}
              filter={filter}
            />
            <Exports filter={filter} total={jobs.data.total} />
          </div>
        </>
      )}
      <QuickKeys />
    </Page>
  );
}

const Count = ({
  total,
  words,
}: {
  readonly total: number | undefined;
  readonly words: string;
}) => (
  <p role="status" className="quiet">
    {total === undefined
      ? words
      : `${total.toLocaleString('en-US')} ${total === 1 ? 'job matches' : 'jobs match'}`}
  </p>
);

const NoJobs = ({ filtered }: { readonly filtered: boolean }) => (
  <Empty title={filtered ? 'No job matches these filters' : 'No job has been opened yet'}>
    <p>
      {filtered ? (
        <Link to="/jobs">Show all jobs</Link>
      ) : (
        <Link to="/jobs/new">Open the first one</Link>
      )}
    </p>
  </Empty>
);

function Exports({ filter, total }: { readonly filter: Filter; readonly total: number }) {
  const query = queryOf(filter, false);
  const filtered = FILTERS.some((name) => filter[name]);
  return (
    <p className="no-print">
      Export {filtered ? 'what these filters show' : 'all jobs'}, {count(total, 'job')}:{' '}
      <a href={`/api/jobs.csv?${query}`}>CSV</a>, <a href={`/api/jobs.xlsx?${query}`}>XLSX</a>
    </p>
  );
}
