// The papers of a job: issued once, printed the same each time, with what happened since.

import { queryOptions, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { JobView } from '#jobs/contract';
import { ask, problemFrom } from '../api/client.js';
import { sessionQuery } from '../api/queries.js';
import { Failure, Loading } from '../parts/states.js';
import { Heads, ScrollTable } from '../parts/table.js';
import { capital, moment, prose } from '../parts/words.js';
import { has, OFFICE } from '../shell/home.js';
import { useAnnounce } from '../shell/live.js';
import { CustomerLink } from './customer-link.js';

interface Paper {
  readonly paper: string;
  readonly about: string;
  readonly issued_at: string | null;
  readonly pdf_digest: string | null;
  readonly acknowledged: readonly { readonly at: string; readonly name: string }[];
  readonly notices: readonly {
    readonly at: string;
    readonly entry: string;
    readonly words: string;
  }[];
}

const papersQuery = (job: JobView) =>
  queryOptions({
    queryKey: ['job', job.id, 'papers', job.version],
    queryFn: async ({ signal }) =>
      (await ask<{ papers: readonly Paper[] }>(`/jobs/${job.id}/papers`, { signal })).value.papers,
  });

export function Papers({ job }: { readonly job: JobView }) {
  const papers = useQuery(papersQuery(job));
  const issue = useIssue(job);
  const session = useQuery(sessionQuery).data;
  const may = has(session, ...OFFICE, 'warranty-reviewer');
  const issued = (papers.data ?? []).filter(({ issued_at }) => issued_at !== null);
  if (papers.isPending) return <Loading what="the papers" />;
  if (papers.data === undefined)
    return <Failure error={papers.error} retry={() => void papers.refetch()} />;
  if (papers.data.length === 0) return <p>There is no paper to print yet.</p>;
  return (
    <>
      {issue.error && (
        <p role="alert">{problemFrom(issue.error).detail ?? problemFrom(issue.error).title}</p>
      )}
      <ScrollTable caption="Papers" note="Issued once; the print is the same each time">
        <Heads names={['Paper', 'Issued', 'Print', 'Since then']} />
        <tbody>
          {papers.data.map((paper) => (
            <tr key={`${paper.paper} ${paper.about}`}>
              <th scope="row">{nameOf(paper)}</th>
              <td>{moment(paper.issued_at) || 'not yet'}</td>
              <td>
                <Print
                  job={job}
                  paper={paper}
                  may={may}
                  busy={issue.isPending}
                  issue={() => issue.mutate(paper)}
                />
              </td>
              <td>{since(paper)}</td>
            </tr>
          ))}
        </tbody>
      </ScrollTable>
      {issued.length > 0 && has(session, 'office', 'project-manager') && (
        <CustomerLink job={job} papers={issued.map((each) => ({ ...each, name: nameOf(each) }))} />
      )}
    </>
  );
}

function useIssue(job: JobView) {
  const client = useQueryClient();
  const say = useAnnounce();
  return useMutation({
    mutationFn: (paper: Paper) => ask(addressOf(job, paper), { method: 'POST', body: {} }),
    onSuccess: () => {
      say('The paper was issued.');
      return client.invalidateQueries({ queryKey: ['job', job.id, 'papers'] });
    },
  });
}

const addressOf = (job: JobView, { paper, about }: Paper) =>
  `/jobs/${job.id}/papers/${paper}/${about}`;
const nameOf = ({ paper, about }: Paper): string =>
  `${capital(paper.replaceAll('-', ' '))} ${about}`;

const Print = ({
  job,
  paper,
  may,
  busy,
  issue,
}: {
  readonly job: JobView;
  readonly paper: Paper;
  readonly may: boolean;
  readonly busy: boolean;
  readonly issue: () => void;
}) => {
  if (paper.issued_at) {
    return (
      <a className="row-link" href={`/api${addressOf(job, paper)}/print.pdf`}>
        PDF<span className="visually-hidden"> of {nameOf(paper)}</span>
      </a>
    );
  }
  if (!may) return 'not issued';
  return (
    <button
      type="button"
      aria-disabled={busy}
      onClick={() => {
        if (!busy) issue();
      }}
    >
      Issue<span className="visually-hidden"> {nameOf(paper)}</span>
    </button>
  );
};

const since = ({ acknowledged, notices }: Paper): string =>
  [
    ...acknowledged.map(({ at, name }) => `acknowledged by ${name}, ${moment(at)}`),
    ...notices.map(({ at, words }) => `${prose(words)} (${moment(at)})`),
  ].join('; ') || 'nothing';
