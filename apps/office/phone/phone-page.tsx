// The crew lead's pages: pick a surface; then tear-off, spacings bay by bay, photos, receipt, stop.

import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import type { JobView, SurfaceView } from '#jobs/contract';
import { jobQuery, jobsQuery, sessionQuery } from '../api/queries.js';
import { WithJob } from '../jobs/use-job.js';
import { Cautions, ROOF_CAUTIONS } from '../parts/cautions.js';
import { TextField } from '../parts/fields.js';
import { Empty, Failure, Loading } from '../parts/states.js';
import { useLater } from '../parts/use-later.js';
import { count } from '../parts/words.js';
import { NotFound } from '../shell/inside.js';
import { Page } from '../shell/page.js';
import { Outbox } from './outbox-list.js';
import { Bays, Measure } from './measure.js';
import { PhotoNote, Receipt, Stop, TearOffCheck } from './roof-forms.js';
import { useKeptOnPhone } from './without-signal.js';

export function PhoneListPage() {
  const session = useQuery(sessionQuery).data;
  const [find, setFind] = useState('');
  const asked = useLater(find.trim(), 350);
  const jobs = useQuery(jobsQuery(`sort=due${asked && `&find=${encodeURIComponent(asked)}`}`));
  const shown = jobs.data?.rows.length ?? 0;
  const kept = useKeptOnPhone(session?.person.id ?? '');
  return (
    <Page title="On the roof">
      <div className="phone stack wide">
        {session && <Outbox person={session.person.id} />}
        <KeptOnPhone kept={kept} />
        <TextField
          id="find"
          label="Find: number, name, client or site"
          value={find}
          onChange={setFind}
        />
        {jobs.data && (
          <p role="status" className="quiet">
            {count(jobs.data.total, 'job')}
            {shown < jobs.data.total && `; the ${shown} due first are here, find the others`}
          </p>
        )}
        {jobs.isPending && <Loading what="the jobs" />}
        {jobs.error && <Failure error={jobs.error} retry={() => void jobs.refetch()} />}
        {jobs.data?.rows.length === 0 && (
          <Empty title={asked ? 'No job is found' : 'No job is open'} />
        )}
        {jobs.data?.rows.map((row) => (
          <details key={row.id} className="sheet">
            <summary>
              {row.number}, {row.name}
            </summary>
            <p className="quiet">{row.site}</p>
            <SurfacesOf job={row.id} />
          </details>
        ))}
        <Cautions title="Cautions for roof work" lines={ROOF_CAUTIONS} />
      </div>
    </Page>
  );
}

function SurfacesOf({ job }: { readonly job: string }) {
  const { data, error, refetch } = useQuery(jobQuery(job));
  if (error) return <Failure error={error} retry={() => void refetch()} />;
  if (!data) return <Loading what="its surfaces" />;
  return (
    <ul className="surface-list">
      {data.job.surfaces
        .filter(({ withdrawn }) => withdrawn === null)
        .map((surface) => (
          <li key={surface.id}>
            <Link
              to="/phone/$job/$surface"
              params={{ job, surface: surface.id }}
              className="button wide-button"
            >
              {surface.name}
            </Link>
          </li>
        ))}
    </ul>
  );
}

export const PhonePage = () => <WithJob>{({ job }) => <Found job={job} />}</WithJob>;

function Found({ job }: { readonly job: JobView }) {
  const { surface: id } = useParams({ strict: false });
  const surface = job.surfaces.find((each) => each.id === id);
  return surface ? <Roof job={job} surface={surface} /> : <NotFound />;
}

function Roof({ job, surface }: { readonly job: JobView; readonly surface: SurfaceView }) {
  const person = useQuery(sessionQuery).data?.person.id ?? '';
  const given = { job, surface, person };
  const kept = useKeptOnPhone(person);
  return (
    <Page
      title={surface.name}
      section={`Job ${job.number}`}
      crumbs={[{ name: 'On the roof', to: '/phone' }]}
      lead={<p>{job.name}</p>}
    >
      <div className="phone stack wide">
        {surface.on_hold && (
          <p className="notice blocked">
            <strong>Panel laying is on hold.</strong> Dry-in is allowed.
          </p>
        )}
        <Outbox person={person} />
        <KeptOnPhone kept={kept} />
        <Stop {...given} />
        {surface.tear_off === 'due' && <TearOffCheck {...given} />}
        <Bays {...given} />
        <Measure {...given} />
        <PhotoNote {...given} />
        <Receipt {...given} />
        <Cautions title="Cautions for roof work" lines={ROOF_CAUTIONS} />
      </div>
    </Page>
  );
}

const KeptOnPhone = ({ kept }: { readonly kept: boolean }) => (
  <p className="quiet small">
    {kept
      ? 'This page opens without a signal too. What it last read stays on this phone until you sign out.'
      : 'Open this page once with a signal: then it opens without one too.'}
  </p>
);
