// The take-off of one surface: what is drawn, live what it comes to, recorded once it is right, and
// used in the order.

import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import type { JobView, SurfaceView, TakeOffSheet } from '#jobs/contract';
import { catalogueQuery, sessionQuery, takeOffQuery, useNames } from '../api/queries.js';
import { idsIn, jobCrumbs, WithJob } from '../jobs/use-job.js';
import { Cautions, LOAD_CAUTIONS, ROOF_CAUTIONS } from '../parts/cautions.js';
import { Empty, Failure, Loading } from '../parts/states.js';
import { Tag } from '../parts/table.js';
import { capital, moment } from '../parts/words.js';
import { has, OFFICE } from '../shell/home.js';
import { NotFound } from '../shell/inside.js';
import { Page } from '../shell/page.js';
import { Taken } from './taken.js';
import { TakeOffForm } from './take-off-form.js';

export const TakeOffPage = () => (
  <WithJob>{({ job, version }) => <TakeOff job={job} version={version} />}</WithJob>
);

function TakeOff({ job, version }: { readonly job: JobView; readonly version: number }) {
  const { surface: id } = useParams({ strict: false });
  const surface = job.surfaces.find((each) => each.id === id);
  if (!surface) return <NotFound />;
  return (
    <Page
      title={`${surface.name}: take-off`}
      section={`Job ${job.number}`}
      crumbs={jobCrumbs(job)}
      lead={
        <p>
          Planes as they are drawn become strips, piece lengths, trims and fasteners. The panel, the
          sheet and the attachment are those that the stages settled.
        </p>
      }
    >
      <Body key={surface.id} job={job} version={version} surface={surface} />
      <Cautions lines={[...LOAD_CAUTIONS, ...ROOF_CAUTIONS]} />
    </Page>
  );
}

interface Given {
  readonly job: JobView;
  readonly version: number;
  readonly surface: SurfaceView;
}

function Body({ job, version, surface }: Given) {
  const office = has(useQuery(sessionQuery).data, ...OFFICE);
  const summary = job.take_offs.find((each) => each.surface === surface.id);
  const sheet = useQuery({
    ...takeOffQuery(job.id, surface.id, summary?.number ?? 0, summary?.stands ?? ''),
    enabled: summary !== undefined,
  });
  const catalogue = useQuery(catalogueQuery).data;
  /** One that counts needs no form, and the form shows what it would come to in its place. */
  const [again, setAgain] = useState<number | undefined>();
  const folded = summary?.stands === 'current' && again !== summary.number;
  const open = (['style', 'gauge'] as const).find(
    (stage) => surface.stages[stage].status !== 'confirmed',
  );
  if (summary && sheet.isPending) return <Loading what="the take-off" />;
  if (summary && !sheet.data)
    return <Failure error={sheet.error} retry={() => void sheet.refetch()} />;
  const fastener = surface.stages.gauge.content?.attachment.fastener;
  const clips = catalogue?.fasteners.find((each) => each.id === fastener)?.kind !== 'screw';
  return (
    <>
      {sheet.data && (
        <Recorded
          job={job}
          sheet={sheet.data}
          office={office}
          whole={folded || open !== undefined}
        />
      )}
      {!office ? (
        !summary && <Empty title="Not taken off yet">Your role may read it once it is.</Empty>
      ) : open || surface.withdrawn !== null ? (
        <Empty title="Not yet">
          <p>
            {surface.withdrawn !== null
              ? 'This surface was withdrawn.'
              : `A take-off counts what the style and the gauge settled; the ${open} is not confirmed. `}
            {open && (
              <Link
                to="/jobs/$job/surfaces/$surface/$stage"
                params={{ job: job.id, surface: surface.id, stage: open }}
              >
                {capital(open)} of {surface.name}
              </Link>
            )}
          </p>
        </Empty>
      ) : folded ? (
        <p className="no-print">
          <button type="button" onClick={() => setAgain(summary?.number)}>
            Take off again
          </button>
        </p>
      ) : (
        <TakeOffForm
          key={summary?.number ?? 0}
          {...{ job, version, surface, clips }}
          before={sheet.data}
        />
      )}
    </>
  );
}

function Recorded({
  job,
  sheet,
  office,
  whole,
}: {
  readonly job: JobView;
  readonly sheet: TakeOffSheet;
  readonly office: boolean;
  /** Whether what was counted is shown too. */
  readonly whole: boolean;
}) {
  const nameOf = useNames([...idsIn(job), sheet.recorded.by]);
  const stale = sheet.stands === 'stale';
  return (
    <section className="stack wide" aria-label={`Take-off ${sheet.number}`}>
      <h2>Take-off {sheet.number}</h2>
      <p>
        <Tag tone={stale ? 'blocked' : 'ready'}>{stale ? 'Out of date' : 'Up to date'}</Tag>{' '}
        Recorded by {nameOf(sheet.recorded.by)}, {moment(sheet.recorded.at)}, from{' '}
        {sheet.measured_from}.
      </p>
      {stale && (
        <div className="notice">
          <p>What it was made from has changed; an order cannot name it. Record it again.</p>
          <ul>
            {sheet.stale_because.map((each) => (
              <li key={each}>{capital(each)}.</li>
            ))}
          </ul>
        </div>
      )}
      {office && !stale && (
        <p className="no-print">
          <Link
            to="/jobs/$job/order"
            params={{ job: job.id }}
            search={{ take_off: sheet.surface }}
            className="button"
          >
            Use in the order
          </Link>
        </p>
      )}
      {(whole || !office) && <Taken result={sheet.result} />}
    </section>
  );
}
