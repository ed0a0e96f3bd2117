// The history of a job: every entry in order, filtered by surface, each opened to what it holds.

import { useQuery } from '@tanstack/react-query';
import { useNavigate, useSearch } from '@tanstack/react-router';
import { label } from '#jobs/contract';
import type { JobView } from '#jobs/contract';
import type { HistoryEntry } from '../api/answers.js';
import { historyQuery } from '../api/queries.js';
import { jobCrumbs, WithJob } from '../jobs/use-job.js';
import { SelectField } from '../parts/fields.js';
import { Failure, Loading, counting } from '../parts/states.js';
import { moment, pathWords, value } from '../parts/words.js';
import { Page } from '../shell/page.js';

export const HistoryPage = () => <WithJob>{({ job }) => <History job={job} />}</WithJob>;

function History({ job }: { readonly job: JobView }) {
  const history = useQuery(historyQuery(job.id));
  const { surface = '' } = useSearch({ strict: false }) as { surface?: string };
  const navigate = useNavigate();
  const entries = (history.data ?? []).filter((each) => surface === '' || touches(each, surface));
  return (
    <Page
      title="History"
      section={`Job ${job.number}`}
      crumbs={jobCrumbs(job)}
      lead={
        <p role="status" className="quiet">
          {history.data ? `${entries.length} entries, oldest first` : counting(history)}
        </p>
      }
    >
      <SelectField
        id="surface"
        label="Surface"
        empty="The whole job"
        value={surface}
        options={job.surfaces.map(({ id, name }) => ({ value: id, label: name }))}
        onChange={(chosen) =>
          void navigate({
            to: '/jobs/$job/history',
            params: { job: job.id },
            search: chosen ? { surface: chosen } : {},
          })
        }
      />
      {history.isPending && <Loading what="the history" />}
      {history.error && <Failure error={history.error} retry={() => void history.refetch()} />}
      <ol className="timeline">
        {entries.map((each) => (
          <li key={each.id}>
            <OneEntry entry={each} />
          </li>
        ))}
      </ol>
    </Page>
  );
}

const touches = ({ surface }: HistoryEntry, id: string): boolean =>
  surface === undefined || surface === id || (Array.isArray(surface) && surface.includes(id));

function OneEntry({ entry }: { readonly entry: HistoryEntry }) {
  return (
    <>
      <p>
        <strong>{entry.words}</strong>
      </p>
      <p className="quiet small">
        Entry {entry.version}; {entry.by.name} ({label(entry.by.role)}); recorded{' '}
        {moment(entry.recordedAt)}
        {entry.effectiveAt !== entry.recordedAt && `; true since ${moment(entry.effectiveAt)}`}
      </p>
      <details>
        <summary>
          What was recorded<span className="visually-hidden"> in entry {entry.version}</span>
        </summary>
        <dl className="facts">
          {lines(entry.data).flatMap(([name, words]) => [
            <dt key={name}>{name}</dt>,
            <dd key={`${name} is`}>{words}</dd>,
          ])}
        </dl>
        <p className="quiet small">
          {entry.type}, log position {entry.pos}
        </p>
      </details>
    </>
  );
}

/** The entry's data as words beside words; whole evaluations are read on the decision record. */
function lines(data: unknown): readonly (readonly [string, string])[] {
  return Object.entries((data ?? {}) as Record<string, unknown>).flatMap(([name, given]) => {
    const title = name.replaceAll('_', ' ');
    if (given === null || name === 'evaluation' || name === 'findings') return [];
    if (name === 'facts' && Array.isArray(given)) {
      return (given as { path: string; value: unknown; how: string; source?: string }[]).map(
        (fact) =>
          [
            pathWords(fact.path),
            `${value(fact.value)} (${fact.how}${fact.source ? `: ${fact.source}` : ''})`,
          ] as const,
      );
    }
    if (name === 'reads')
      return [
        [
          title,
          `${Object.keys(given as object).length} facts, listed on the decision record`,
        ] as const,
      ];
    if (name === 'content') return lines(given);
    return [
      [
        title,
        typeof given === 'object'
          ? Array.isArray(given) && given.length === 0
            ? 'none'
            : value(given)
          : String(given),
      ] as const,
    ];
  });
}
