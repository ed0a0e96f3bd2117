// One job for a page: loading and failure are shown the same way everywhere.

import { useQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import type { JobView } from '#jobs/contract';
import { jobQuery, type JobAnswer, type Moments } from '../api/queries.js';
import { FailedPage, Loading } from '../parts/states.js';
import { Page, type Crumb } from '../shell/page.js';

export function WithJob({
  at = {},
  children,
}: {
  readonly at?: Moments;
  readonly children: (answer: JobAnswer) => ReactNode;
}) {
  const { job: id = '' } = useParams({ strict: false });
  const job = useQuery(jobQuery(id, at));
  if (job.isPending) {
    return (
      <Page title="Job" section="Jobs">
        <Loading what="the job" />
      </Page>
    );
  }
  if (job.data === undefined) {
    return <FailedPage error={job.error} retry={() => void job.refetch()} />;
  }
  return children(job.data);
}

export const jobCrumbs = (job: Pick<JobView, 'id' | 'number'>): readonly Crumb[] => [
  { name: 'Jobs', to: '/jobs' },
  { name: `Job ${job.number}`, to: '/jobs/$job', params: { job: job.id } },
];

/** Every id in a job whose name a page may want to show. */
export const idsIn = (job: JobView): readonly string[] => [
  job.site,
  ...Object.values(job.parties),
  ...(job.assigned ? [job.assigned] : []),
  ...job.facts.map(({ by }) => by),
  ...job.notes.map(({ by }) => by),
  ...job.take_offs.map(({ recorded }) => recorded.by),
  ...job.requests.flatMap(({ engineer, asked }) => [engineer, asked.by]),
  ...job.surfaces.flatMap(({ stages }) =>
    Object.values(stages).flatMap(({ confirmed, causes }) => [
      ...(confirmed ? [confirmed.by] : []),
      ...causes.map(({ by }) => by),
    ]),
  ),
];
