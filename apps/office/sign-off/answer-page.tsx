// A sign-off request: the packet frozen when it was asked, and the engineer's answer to it.

import { useQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import type { JobView, RequestView } from '#jobs/contract';
import { packetQuery, sessionQuery, useNames } from '../api/queries.js';
import { idsIn, jobCrumbs, WithJob } from '../jobs/use-job.js';
import { Cautions } from '../parts/cautions.js';
import { Failure, Loading } from '../parts/states.js';
import { capital, day, moment } from '../parts/words.js';
import { has } from '../shell/home.js';
import { NotFound } from '../shell/inside.js';
import { Page } from '../shell/page.js';
import { AnswerForm } from './answer-form.js';
import { MakeLink } from './make-link.js';
import { PacketBody } from './packet-body.js';
import { Reaffirm, Revoke } from './after-answer.js';
import { Differences } from './sign-off-stage.js';

export const AnswerPage = () => <WithJob>{({ job }) => <Found job={job} />}</WithJob>;

function Found({ job }: { readonly job: JobView }) {
  const { request } = useParams({ strict: false });
  const found = job.requests.find((each) => each.request === request);
  return found ? <RequestPage job={job} request={found} /> : <NotFound />;
}

function RequestPage({ job, request }: { readonly job: JobView; readonly request: RequestView }) {
  const nameOf = useNames(idsIn(job));
  const session = useQuery(sessionQuery).data;
  const me = session?.person;
  const received = request.standing === 'design received';
  const packet = useQuery({ ...packetQuery(job.id, request.request), enabled: !received });
  const mine = me?.id === request.engineer;
  const surfaces = job.surfaces.filter(({ id }) => request.surfaces.includes(id));
  const sign = surfaces
    .map(({ sign_off }) => sign_off)
    .find(({ differences }) => differences.length > 0);
  const approved =
    request.standing === 'approved' || request.standing === 'approved with conditions';
  return (
    <Page
      title={`Sign-off: ${surfaces.map(({ name }) => name).join(', ')}`}
      section={`Job ${job.number}`}
      crumbs={jobCrumbs(job)}
      lead={
        <p>
          {job.name}: {request.standing}
        </p>
      }
    >
      {sign && <Differences sign={sign} />}
      <section className="sheet stack">
        <h2>What was asked</h2>
        <dl className="facts">
          <dt>Engineer</dt>
          <dd>{request.license?.name ?? nameOf(request.engineer)}</dd>
          <dt>To review</dt>
          <dd>{request.scope}</dd>
          {request.exclusions && (
            <>
              <dt>Not asked</dt>
              <dd>{request.exclusions}</dd>
            </>
          )}
          <dt>Asked by</dt>
          <dd>
            {nameOf(request.asked.by)}, {moment(request.asked.at)}
          </dd>
          <dt>Answer until</dt>
          <dd>{day(request.expires)}</dd>
          <dt>Standing</dt>
          <dd>
            {capital(request.standing)}
            {request.words && `: ${request.words}`}
          </dd>
          {request.license && (
            <>
              <dt>License</dt>
              <dd>
                {request.license.number}, {request.license.jurisdiction}, until{' '}
                {day(request.license.expires)}
              </dd>
            </>
          )}
        </dl>
      </section>
      {packet.isLoading && <Loading what="the packet" />}
      {packet.error && <Failure error={packet.error} retry={() => void packet.refetch()} />}
      {packet.data && <PacketBody packet={packet.data} nameOf={nameOf} />}
      <Cautions />
      {mine && request.standing === 'waiting' && packet.data && (
        <AnswerForm job={job} request={request} digest={packet.data.digest} />
      )}
      {request.standing === 'waiting' && has(session, 'project-manager') && (
        <MakeLink job={job.id} request={request.request} />
      )}
      {mine && approved && sign && <Reaffirm job={job} request={request} sign={sign} />}
      {mine && approved && <Revoke job={job} request={request} />}
      {!mine && request.standing === 'waiting' && (
        <p className="quiet">Only the engineer who was asked can answer.</p>
      )}
    </Page>
  );
}
