// Two moments beside each other: a table of what differs only, with the words added, removed,
// changed. Both moments stand in the address.

import { useQuery } from '@tanstack/react-query';
import { useNavigate, useParams, useSearch } from '@tanstack/react-router';
import { useState, type FormEvent } from 'react';
import { problemFrom } from '../api/client.js';
import { catalogueQuery, jobQuery } from '../api/queries.js';
import { jobCrumbs } from '../jobs/use-job.js';
import { ErrorSummary } from '../parts/errors.js';
import type { FieldErrors } from '../parts/fields.js';
import { Failure, Loading } from '../parts/states.js';
import { PlainTable } from '../parts/table.js';
import { moment } from '../parts/words.js';
import { Page } from '../shell/page.js';
import { faults, Moment, momentOf, useTyped } from './as-of.js';
import { differences } from './differences.js';

export function ComparePage() {
  const { job: id = '' } = useParams({ strict: false });
  const search = useSearch({ strict: false }) as { first?: string; second?: string };
  const now = useQuery(jobQuery(id));
  const before = useQuery(jobQuery(id, { asOf: search.first }));
  const after = useQuery(jobQuery(id, { asOf: search.second }));
  const { data: catalogue } = useQuery(catalogueQuery);
  const [failed, setFailed] = useState(false);
  const early = (error: unknown) =>
    error !== null && problemFrom(error).status === 404 && now.data !== undefined;
  const error = [before.error, after.error].find((each) => each !== null && !early(each));
  const ready = [before, after].every((each) => each.data !== undefined || early(each.error));
  return (
    <Page
      title="Compare two moments"
      section={now.data ? `Job ${now.data.job.number}` : 'Jobs'}
      crumbs={now.data ? jobCrumbs(now.data.job) : [{ name: 'Jobs', to: '/jobs' }]}
      failed={failed}
    >
      <Moments {...search} failed={setFailed} id={id} />
      {!search.first && (
        <p className="quiet">Choose the first moment; the second is now unless another is given.</p>
      )}
      {search.first && error && <Failure error={error} />}
      {search.first && !error && !ready && <Loading what="both moments" />}
      {search.first && !error && ready && (
        <Table
          rows={differences(before.data?.job, after.data?.job, catalogue)}
          first={moment(search.first)}
          second={search.second ? moment(search.second) : 'now'}
        />
      )}
    </Page>
  );
}

function Moments({
  first: firstAt,
  second: secondAt,
  failed,
  id,
}: {
  readonly first?: string;
  readonly second?: string;
  readonly failed: (failed: boolean) => void;
  readonly id: string;
}) {
  const [first, setFirst] = useTyped(firstAt);
  const [second, setSecond] = useTyped(secondAt);
  const [errors, setErrors] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  const navigate = useNavigate();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const found = [
      ...(first.date.trim() ? [] : [{ field: 'first-date', message: 'Enter the first date' }]),
      ...faults('first', first),
      ...faults('second', second),
    ];
    setErrors(found);
    setAttempt((n) => n + 1);
    failed(found.length > 0);
    if (found.length > 0) return;
    const search = { first: momentOf(first), second: momentOf(second) };
    void navigate({ to: '/jobs/$job/compare', params: { job: id }, search });
  };
  return (
    <form className="sheet stack no-print" noValidate onSubmit={submit}>
      <ErrorSummary errors={errors} attempt={attempt} />
      <div className="columns">
        <Moment id="first" legend="First moment" typed={first} set={setFirst} errors={errors} />
        <Moment
          id="second"
          legend="Second moment (empty for now)"
          typed={second}
          set={setSecond}
          errors={errors}
        />
      </div>
      <div>
        <button type="submit" className="main">
          Compare
        </button>
      </div>
    </form>
  );
}

function Table({
  rows,
  first,
  second,
}: {
  readonly rows: ReturnType<typeof differences>;
  readonly first: string;
  readonly second: string;
}) {
  return (
    <>
      <p role="status">
        {rows.length === 0
          ? 'Nothing differs between these moments.'
          : `${rows.length} ${rows.length === 1 ? 'thing differs' : 'things differ'}.`}
      </p>
      {rows.length > 0 && (
        <PlainTable
          caption="What differs"
          columns={[
            'What',
            'How',
            `Known on ${first}`,
            `Known ${second === 'now' ? 'now' : `on ${second}`}`,
          ]}
          rows={rows.map((row) => [row.what, row.how, row.before, row.after])}
        />
      )}
    </>
  );
}
