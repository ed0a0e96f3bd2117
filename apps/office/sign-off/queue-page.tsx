// The sign-off queue: surfaces waiting for an engineer, oldest first.

import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import type { WaitingRequest } from '../api/answers.js';
import { sessionQuery, signOffsQuery } from '../api/queries.js';
import { Empty, Failure, Loading, counting } from '../parts/states.js';
import { Heads, ScrollTable } from '../parts/table.js';
import { day, moment, today } from '../parts/words.js';
import { has } from '../shell/home.js';
import { Page } from '../shell/page.js';
import { GiveCode } from './give-code.js';

export function QueuePage() {
  const queue = useQuery(signOffsQuery);
  const session = useQuery(sessionQuery).data;
  const engineer = has(session, 'engineer');
  const rows = queue.data?.requests ?? [];
  return (
    <Page
      wide
      title="Sign-off queue"
      lead={
        <p role="status" className="quiet">
          {queue.data
            ? `${rows.length} ${rows.length === 1 ? 'request waits' : 'requests wait'}, oldest first`
            : counting(queue)}
        </p>
      }
    >
      {queue.isPending && <Loading what="the queue" />}
      {queue.error && <Failure error={queue.error} retry={() => void queue.refetch()} />}
      {queue.data && rows.length === 0 && (
        <Empty title="Nothing waits for an engineer">
          <p>
            {engineer
              ? 'What is asked of you appears here.'
              : 'Requests are made on the sign-off stage of a surface.'}
          </p>
        </Empty>
      )}
      {rows.length > 0 && (
        <ScrollTable caption="Waiting for an engineer">
          <Heads names={['Job', 'Surfaces', 'Engineer', 'Asked', 'Answer until', 'Job due']} />
          <tbody>
            {rows.map((row) => (
              <Row key={`${row.job} ${row.request}`} row={row} />
            ))}
          </tbody>
        </ScrollTable>
      )}
      {has(session, 'project-manager', 'administrator') && <GiveCode />}
    </Page>
  );
}

function Row({ row }: { readonly row: WaitingRequest }) {
  return (
    <tr>
      <th scope="row">
        <Link
          className="row-link"
          to="/jobs/$job/requests/$request"
          params={{ job: row.job, request: row.request }}
        >
          {row.number}
        </Link>
        <br />
        <span className="quiet small">{row.name}</span>
      </th>
      <td>{row.surfaces.map(({ name }) => name).join(', ')}</td>
      <td>{row.engineer.name}</td>
      <td>
        {moment(row.asked_at)}
        <br />
        <span className="quiet small">{row.asked_by}</span>
      </td>
      <td>
        {day(row.expires)}
        {row.expires < today() && <strong> over</strong>}
      </td>
      <td>{day(row.due) || <span className="quiet">no date</span>}</td>
    </tr>
  );
}
