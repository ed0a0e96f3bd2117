// One job at a glance: what each surface waits for, who and where, documents, notes.

import { Link } from '@tanstack/react-router';
import { useQuery } from '@tanstack/react-query';
import { label, STAGES } from '#jobs/contract';
import type { JobView } from '#jobs/contract';
import { OrderAndAfter } from '../after/order-and-after.js';
import { sessionQuery, useNames } from '../api/queries.js';
import { Cautions, ROOF_CAUTIONS } from '../parts/cautions.js';
import { Heads, ScrollTable, Tag } from '../parts/table.js';
import { Empty } from '../parts/states.js';
import { capital, day, moment } from '../parts/words.js';
import { has, OFFICE } from '../shell/home.js';
import { Page } from '../shell/page.js';
import { openStage, stagesDone, stageStates, surfaceState } from '../stages/stage-state.js';
import { Notes } from './notes.js';
import { idsIn, WithJob } from './use-job.js';

export const JobPage = () => <WithJob>{({ job }) => <Job job={job} />}</WithJob>;

function Job({ job }: { readonly job: JobView }) {
  const nameOf = useNames(idsIn(job));
  const session = useQuery(sessionQuery).data;
  const params = { job: job.id };
  const office = has(session, ...OFFICE);
  return (
    <Page
      title={`Job ${job.number}`}
      section="Jobs"
      crumbs={[{ name: 'Jobs', to: '/jobs' }]}
      lead={<p>{job.name}</p>}
      actions={
        office && (
          <>
            <Link to="/jobs/$job/facts" params={params} className="button">
              Record facts
            </Link>
            <Link to="/jobs/$job/change" params={params} className="button">
              Change the job
            </Link>
          </>
        )
      }
    >
      <Surfaces job={job} />
      <div className="columns">
        <People job={job} nameOf={nameOf} />
        <Documents job={job} />
      </div>
      <Requests job={job} nameOf={nameOf} />
      <OrderAndAfter job={job} nameOf={nameOf} />
      <Notes job={job} nameOf={nameOf} may={office || has(session, 'crew-lead')} />
      <Cautions title="Cautions for roof work" lines={ROOF_CAUTIONS} />
    </Page>
  );
}

function Surfaces({ job }: { readonly job: JobView }) {
  if (job.surfaces.length === 0) {
    return (
      <Empty title="No surface yet">
        <p>
          Add a building and its surfaces:{' '}
          <Link to="/jobs/$job/change" params={{ job: job.id }}>
            change the job
          </Link>
          .
        </p>
      </Empty>
    );
  }
  const buildingOf = (id: string) => job.buildings.find((each) => each.id === id)?.name ?? id;
  return (
    <ScrollTable caption="Surfaces" note={`${job.surfaces_done} of ${job.surfaces.length} done`}>
      <Heads names={['Surface', 'Building', 'Kind', 'Stage', 'State', 'Next']} />
      <tbody>
        {job.surfaces.map((surface) => {
          const state = surfaceState(surface);
          const stage = openStage(surface);
          const now = stageStates(surface).find((each) => each.stage === stage);
          return (
            <tr key={surface.id}>
              <th scope="row">
                <Link
                  className="row-link"
                  to="/jobs/$job/surfaces/$surface/$stage"
                  params={{ job: job.id, surface: surface.id, stage }}
                >
                  {surface.name}
                </Link>
              </th>
              <td>{buildingOf(surface.building)}</td>
              <td>{label(surface.kind)}</td>
              <td className="tight-column">
                {stagesDone(surface)}/{STAGES.length}
              </td>
              <td>
                <Tag tone={state.tone}>{state.words}</Tag>
              </td>
              <td>
                {surface.withdrawn ??
                  (surface.stage === 'done'
                    ? 'All six stages done'
                    : `${now?.name}: ${now?.words}`)}
                {surface.tear_off === 'due' && '; tear-off checkpoint due'}
                {surface.on_hold && '; panel laying on hold'}
              </td>
            </tr>
          );
        })}
      </tbody>
    </ScrollTable>
  );
}

type Named = { readonly job: JobView; readonly nameOf: (id: string) => string };

const People = ({ job, nameOf }: Named) => (
  <section className="sheet stack">
    <h2>Who and where</h2>
    <dl className="facts">
      <dt>Site</dt>
      <dd>{nameOf(job.site)}</dd>
      {Object.entries(job.parties).flatMap(([role, id]) => [
        <dt key={role}>{capital(role.replaceAll('_', ' '))}</dt>,
        <dd key={`${role} name`}>{nameOf(id)}</dd>,
      ])}
      <dt>Due</dt>
      <dd>{day(job.due) || 'no date'}</dd>
      <dt>Worked by</dt>
      <dd>{job.assigned ? nameOf(job.assigned) : 'nobody yet'}</dd>
      <dt>The owner wants</dt>
      <dd>{job.priorities.map(label).join(', then ') || 'not asked yet'}</dd>
      <dt>State or territory</dt>
      <dd>{job.jurisdiction ?? 'not known'}</dd>
    </dl>
  </section>
);

const Documents = ({ job }: { readonly job: JobView }) => {
  const params = { job: job.id };
  return (
    <section className="sheet stack">
      <h2>Record and documents</h2>
      <ul className="surface-list">
        <li>
          <Link to="/jobs/$job/record" params={params}>
            Decision record
          </Link>
          , as of any moment
        </li>
        <li>
          <Link to="/jobs/$job/history" params={params}>
            History
          </Link>
          , every entry in order
        </li>
        <li>
          <Link to="/jobs/$job/compare" params={params}>
            Compare two moments
          </Link>
        </li>
        <li>
          <Link to="/jobs/$job/proof" params={params}>
            Proof and evidence
          </Link>
          , and how to check it elsewhere
        </li>
        <li>
          <a href={`/api/jobs/${job.id}/decision-record.pdf?size=letter`}>
            Decision record, PDF, US Letter
          </a>
        </li>
        <li>
          <a href={`/api/jobs/${job.id}/decision-record.pdf?size=a4`}>Decision record, PDF, A4</a>
        </li>
      </ul>
    </section>
  );
};

function Requests({ job, nameOf }: Named) {
  if (job.requests.length === 0) return null;
  const names = (ids: readonly string[]) =>
    ids.map((id) => job.surfaces.find((each) => each.id === id)?.name ?? id).join(', ');
  return (
    <ScrollTable caption="Sign-off requests">
      <Heads names={['Surfaces', 'Engineer', 'Asked', 'Until', 'Standing']} />
      <tbody>
        {job.requests.map((each) => (
          <tr key={each.request}>
            <th scope="row">
              <Link
                className="row-link"
                to="/jobs/$job/requests/$request"
                params={{ job: job.id, request: each.request }}
              >
                {names(each.surfaces)}
              </Link>
            </th>
            <td>{each.license?.name ?? nameOf(each.engineer)}</td>
            <td>{moment(each.asked.at)}</td>
            <td>{day(each.expires)}</td>
            <td>{each.standing}</td>
          </tr>
        ))}
      </tbody>
    </ScrollTable>
  );
}
