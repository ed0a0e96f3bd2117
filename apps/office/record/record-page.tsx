// The decision record as of any moment: the timeline, and for each surface what was chosen at each
// stage, on which facts, what the rules said, every option's outcome, who signed.

import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate, useParams, useSearch } from '@tanstack/react-router';
import { useState } from 'react';
import { problemFrom } from '../api/client.js';
import { momentsIn, recordQuery, type Moments } from '../api/queries.js';
import type { DecisionRecord } from '#jobs/contract';
import { jobCrumbs } from '../jobs/use-job.js';
import { Cautions } from '../parts/cautions.js';
import { Empty, Failure, Loading } from '../parts/states.js';
import { moment } from '../parts/words.js';
import { Page } from '../shell/page.js';
import { AsOf } from './as-of.js';
import { SurfaceRecord } from './surface-record.js';
import { Timeline } from './timeline.js';
import { UnderToday } from './under-today.js';

export function RecordPage() {
  const { job: id = '' } = useParams({ strict: false });
  const at = useSearch({ strict: false }) as Moments;
  const navigate = useNavigate();
  const [failed, setFailed] = useState(false);
  const record = useQuery(recordQuery<DecisionRecord>(id, at));
  const go = (picked: Moments) =>
    void navigate({ to: '/jobs/$job/record', params: { job: id }, search: { ...picked } });
  const job = record.data?.job;
  return (
    <Page
      title="Decision record"
      failed={failed}
      section={job ? `Job ${job.number}` : 'Jobs'}
      crumbs={job ? jobCrumbs(job) : [{ name: 'Jobs', to: '/jobs' }]}
      lead={
        job && (
          <p>
            {job.name}; {job.customer}; {job.site}
          </p>
        )
      }
      actions={
        <>
          <a className="button" href={`/api/jobs/${id}/decision-record.pdf${pdfQuery(at)}`}>
            PDF
          </a>
          <Link className="button" to="/jobs/$job/compare" params={{ job: id }}>
            Compare two moments
          </Link>
        </>
      }
    >
      <AsOf picked={at} go={go} failed={setFailed} />
      {record.isPending && <Loading what="the record" />}
      {record.error && before(record.error, at) && (
        <Empty title="Nothing was recorded by then">
          <p>The job was opened later. Choose a later moment, or now.</p>
        </Empty>
      )}
      {record.error && !before(record.error, at) && (
        <Failure error={record.error} retry={() => void record.refetch()} />
      )}
      {record.data && <Record record={record.data} />}
      {record.data && <UnderToday job={id} at={at} />}
    </Page>
  );
}

/** A job is not found as of a moment before it was opened. */
const before = (error: unknown, { asOf }: Moments): boolean =>
  asOf !== undefined && problemFrom(error).status === 404;

const pdfQuery = (at: Moments): string =>
  `${momentsIn(at) || '?'}${momentsIn(at) ? '&' : ''}size=letter`;

function Record({ record }: { readonly record: DecisionRecord }) {
  return (
    <>
      <p>
        Version {record.as_of.version} of the job, last entry {moment(record.as_of.recorded)}; it
        stood at: {record.stands_at}.
      </p>
      {record.surfaces.map((surface) => (
        <SurfaceRecord key={surface.id} surface={surface} />
      ))}
      <section className="stack" aria-labelledby="timeline-title">
        <h2 id="timeline-title">Timeline</h2>
        <Timeline entries={record.timeline} />
      </section>
      <Cautions lines={record.cautions} />
    </>
  );
}
