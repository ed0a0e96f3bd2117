// Who read or exported what is sensitive, newest first.

import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import { readingsQuery, type Reading } from '../api/log.js';
import { sessionQuery } from '../api/queries.js';
import { SelectField } from '../parts/fields.js';
import { Empty, Failure, Loading } from '../parts/states.js';
import { PlainTable } from '../parts/table.js';
import { moment } from '../parts/words.js';
import { has } from '../shell/home.js';
import { Page } from '../shell/page.js';
import { AdminNav } from './admin-nav.js';

interface Search {
  readonly what?: string;
  readonly before?: string;
}
const PAGE = 100;

export const WHATS: readonly (readonly [string, string])[] = [
  ['', 'Everything'],
  ['party-details', 'Details of a person or a site'],
  ['accounts', 'Accounts of the company'],
  ['job-list-export', 'Exports of the job list'],
  ['order-export', 'Exports of order lines'],
  ['decision-record', 'Decision records'],
  ['decision-record-print', 'Prints of decision records'],
  ['paper', 'Issued papers, with names'],
  ['paper-print', 'Prints of issued papers'],
  ['paper-record', 'Records of issued papers'],
  ['evidence', 'Exports of evidence'],
  ['event-feed', 'The feed of events'],
  ['event', 'Single entries of the record'],
  ['readings', 'This list'],
];

export function ReadingsPage() {
  const search = useSearch({ strict: false }) as Search;
  const navigate = useNavigate();
  const session = useQuery(sessionQuery).data;
  const what = WHATS.some(([name]) => name === search.what) ? (search.what ?? '') : '';
  const query = new URLSearchParams({ limit: String(PAGE) });
  if (what) query.set('what', what);
  if (search.before) query.set('before', search.before);
  const found = useQuery(readingsQuery(query.toString()));
  const rows = found.data?.readings ?? [];
  const last = rows.at(-1);
  return (
    <Page
      title="Who read what"
      section="Admin"
      lead={
        <p>
          Reads of sensitive records and exports. Reading the same again within the hour counts
          once; an export counts each time. Kept for {found.data?.kept_years ?? 6} years, changed by
          nobody.
        </p>
      }
    >
      {has(session, 'administrator') && <AdminNav />}
      <SelectField
        id="what"
        label="Show"
        value={what}
        options={WHATS.map(([value, label]) => ({ value, label }))}
        onChange={(next) =>
          void navigate({ to: '/admin/readings', search: next ? { what: next } : {} })
        }
      />
      {found.isPending && <Loading what="the readings" />}
      {found.error && <Failure error={found.error} retry={() => void found.refetch()} />}
      {found.data && rows.length === 0 && (
        <Empty title="Nothing was read">
          <p>Nothing of this kind is noted{search.before ? ' before that' : ''}.</p>
        </Empty>
      )}
      {rows.length > 0 && <Readings rows={rows} />}
      {rows.length === PAGE && last && (
        <p>
          <Link
            to="/admin/readings"
            search={{ ...(what && { what }), before: last.id }}
            className="button"
          >
            Earlier ones
          </Link>
        </p>
      )}
    </Page>
  );
}

const Readings = ({ rows }: { readonly rows: readonly Reading[] }) => (
  <PlainTable
    caption="Readings"
    note={<span role="status">{rows.length} shown, newest first</span>}
    columns={['When', 'Who', 'What', 'About', 'Why']}
    rows={rows.map(({ at, reader, what, words, about, why }) => [
      moment(at),
      reader.kind === 'feed' ? `${reader.name} (token of the feed)` : reader.name,
      words,
      JOB_THINGS.has(what) ? (
        <Link key="job" className="row-link" to="/jobs/$job" params={{ job: about }}>
          The job
        </Link>
      ) : (
        <span key="about" className="digest">
          {about}
        </span>
      ),
      why ?? '',
    ])}
  />
);

/** What is about a job. */
const JOB_THINGS = new Set([
  'order-export',
  'decision-record',
  'decision-record-print',
  'paper',
  'paper-print',
  'paper-record',
  'evidence',
]);
