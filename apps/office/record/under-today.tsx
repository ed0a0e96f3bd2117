// What today's rules edition would say: asked for, and labeled, so that nobody takes it for the record.

import { queryOptions, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { ANSWER_WORDS, label, type Answer } from '#jobs/contract';
import { ask } from '../api/client.js';
import { momentsIn, type Moments } from '../api/queries.js';
import { Failure, Loading } from '../parts/states.js';
import { PlainTable } from '../parts/table.js';
import { capital, prose } from '../parts/words.js';

interface UnderToday {
  readonly label: string;
  readonly edition: number;
  readonly decisions: readonly {
    readonly surface: string;
    readonly surface_name: string;
    readonly stage: string;
    readonly own_edition: number;
    readonly answer: Answer;
    readonly before: string;
    readonly after: string;
    readonly words: string;
  }[];
}

const underTodayQuery = (job: string, at: Moments) =>
  queryOptions({
    queryKey: ['job', job, 'under today', at],
    queryFn: async ({ signal }) =>
      (await ask<UnderToday>(`/jobs/${job}/under-today${momentsIn(at)}`, { signal })).value,
  });

export function UnderToday({ job, at }: { readonly job: string; readonly at: Moments }) {
  const [asked, setAsked] = useState(false);
  const answer = useQuery({ ...underTodayQuery(job, at), enabled: asked });
  return (
    <section className="sheet stack no-print" aria-labelledby="under-today">
      <h2 id="under-today">Under today’s edition</h2>
      <p>
        Not part of the record: what the rules in force today would say of the same decisions, on
        the facts recorded then.
      </p>
      {!asked && (
        <div className="row">
          <button type="button" onClick={() => setAsked(true)}>
            Ask today’s edition
          </button>
        </div>
      )}
      {asked && answer.isPending && <Loading what="the answer" />}
      {answer.error && <Failure error={answer.error} retry={() => void answer.refetch()} />}
      {answer.data && <Answers found={answer.data} />}
    </section>
  );
}

const Answers = ({ found }: { readonly found: UnderToday }) => (
  <>
    <p role="status" className="notice waiting">
      {found.label}
    </p>
    {found.decisions.length === 0 ? (
      <p className="quiet">Nothing is decided that stands.</p>
    ) : (
      <PlainTable
        caption={`The same decisions under edition ${found.edition}`}
        columns={['Surface', 'Stage', 'Decided under', 'Answer', 'Before', 'After', 'Why']}
        rows={found.decisions.map((each) => [
          each.surface_name,
          capital(label(each.stage)),
          `Edition ${each.own_edition}`,
          capital(ANSWER_WORDS[each.answer]),
          each.before,
          each.after,
          capital(prose(each.words)),
        ])}
      />
    )}
  </>
);
