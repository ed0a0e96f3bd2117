// The rulebook: its editions, and each edition's rules with words, class, severity, settings, source.

import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate, useParams, useSearch } from '@tanstack/react-router';
import { label, RUNNING_JOBS_WORDS } from '#jobs/contract';
import { editionQuery, editionsQuery, rulebookQuery, sessionQuery } from '../api/queries.js';
import { Cautions } from '../parts/cautions.js';
import { EditionTable, editionState } from '../parts/edition-table.js';
import { SelectField } from '../parts/fields.js';
import { Failure, Loading } from '../parts/states.js';
import { Heads, ScrollTable } from '../parts/table.js';
import { capital, day, moment, number } from '../parts/words.js';
import { has } from '../shell/home.js';
import { Page } from '../shell/page.js';
import { ChangesTable } from './changes-table.js';
import { draftsQuery, type Draft, type Edition, type KnownRule } from './reading.js';

export function RulebookPage() {
  const editions = useQuery(editionsQuery('rulebook'));
  const current = useQuery(rulebookQuery);
  const drafts = useQuery(draftsQuery);
  const session = useQuery(sessionQuery).data;
  return (
    <Page
      wide
      title="Rules"
      actions={
        has(session, 'standards-manager') && (
          <Link className="button main" to="/rules/drafts/new">
            Draft the next edition
          </Link>
        )
      }
      lead={
        current.data && (
          <p>
            Edition {current.data.number}, in force from {day(current.data.in_force_from)}
          </p>
        )
      }
    >
      {editions.error && <Failure error={editions.error} retry={() => void editions.refetch()} />}
      {editions.data && (
        <EditionTable caption="Rules editions" to="/rules/$edition" rows={editions.data.editions} />
      )}
      {drafts.data && drafts.data.length > 0 && <Drafts drafts={drafts.data} />}
      {current.isPending && <Loading what="the rules in force" />}
      {current.error && <Failure error={current.error} retry={() => void current.refetch()} />}
      {current.data && <Rules book={current.data as Edition} />}
      <Cautions />
    </Page>
  );
}

export function RulebookEditionPage() {
  const { edition = '' } = useParams({ strict: false });
  const book = useQuery(editionQuery<Edition>('rulebook', Number(edition)));
  return (
    <Page
      wide
      title={`Rules edition ${edition}`}
      section="Rules"
      crumbs={[{ name: 'Rules', to: '/rules' }]}
      lead={book.data && <p>{book.data.summary}</p>}
    >
      {book.isPending && <Loading what="the edition" />}
      {book.error && <Failure error={book.error} retry={() => void book.refetch()} />}
      {book.data && <Whole book={book.data} />}
      <Cautions />
    </Page>
  );
}

const Whole = ({ book }: { readonly book: Edition }) => (
  <>
    <dl className="facts">
      <dt>In force from</dt>
      <dd>{day(book.in_force_from)}</dd>
      <dt>State</dt>
      <dd>{editionState(book)}</dd>
      <dt>Published</dt>
      <dd>
        {moment(book.published_at)} by {book.by}
      </dd>
      <dt>Reason</dt>
      <dd>{book.reason ?? 'none given'}</dd>
      {book.running_jobs && (
        <>
          <dt>Jobs under way then</dt>
          <dd>{RUNNING_JOBS_WORDS[book.running_jobs]}</dd>
        </>
      )}
      {book.impact && (
        <>
          <dt>The preview had found</dt>
          <dd>{book.impact}</dd>
        </>
      )}
      <dt>Digest</dt>
      <dd className="digest">{book.digest}</dd>
    </dl>
    {book.changes.length > 0 && (
      <ChangesTable caption={`What edition ${book.number} changed`} changes={book.changes} />
    )}
    <Rules book={book} />
  </>
);

const Drafts = ({ drafts }: { readonly drafts: readonly Draft[] }) => (
  <ScrollTable caption="Drafts">
    <Heads names={['Draft', 'State', 'Would be in force from', 'Summary', 'Saved']} />
    <tbody>
      {drafts.map((draft) => (
        <tr key={draft.id}>
          <th scope="row">
            <Link className="row-link" to="/rules/drafts/$draft" params={{ draft: draft.id }}>
              Draft of edition {draft.number}
            </Link>
          </th>
          <td>{draft.base === draft.newest ? 'Draft' : 'Draft, out of date'}</td>
          <td>{day(draft.in_force_from)}</td>
          <td>{draft.summary}</td>
          <td>
            {moment(draft.at)} by {draft.by}
          </td>
        </tr>
      ))}
    </tbody>
  </ScrollTable>
);

function Rules({ book }: { readonly book: Edition }) {
  const search = useSearch({ strict: false }) as { stage?: string; class?: string };
  const navigate = useNavigate();
  const put = (name: 'stage' | 'class') => (value: string) => {
    const next = { ...search, [name]: value };
    void navigate({
      to: '.',
      search: Object.fromEntries(Object.entries(next).filter(([, v]) => v)),
    });
  };
  const rules = book.rules.filter(
    (rule) =>
      (!search.stage || rule.stage === search.stage) &&
      (!search.class || rule.class === search.class),
  );
  const options = (name: 'stage' | 'class') =>
    [...new Set(book.rules.map((rule) => rule[name]))].map((value) => ({
      value,
      label: capital(label(value)),
    }));
  return (
    <>
      <div className="filters">
        <SelectField
          id="stage"
          label="Stage"
          empty="Any stage"
          options={options('stage')}
          value={search.stage ?? ''}
          onChange={put('stage')}
        />
        <SelectField
          id="class"
          label="Class"
          empty="Any class"
          options={options('class')}
          value={search.class ?? ''}
          onChange={put('class')}
        />
      </div>
      <p role="status" className="quiet">
        {rules.length} of {book.rules.length} rules
      </p>
      <ScrollTable
        caption={`Rules of edition ${book.number}`}
        note="Guidance and house policy may be set aside by the roles the policy names, with a reason; the others may not. Cases are the tests that hold a rule."
      >
        <thead>
          <tr>
            {['Rule', 'Says', 'Stage', 'Class', 'Severity', 'Settings', 'Source', 'Cases'].map(
              (name) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ),
            )}
          </tr>
        </thead>
        <tbody>
          {rules.map((rule) => (
            <Row key={rule.rule} rule={rule} />
          ))}
        </tbody>
      </ScrollTable>
    </>
  );
}

const Row = ({ rule }: { readonly rule: KnownRule }) => (
  <tr>
    <th scope="row" className="tight-column">
      {rule.rule}
      <br />
      <span className="quiet small">version {rule.version}</span>
    </th>
    <td>
      <strong>{rule.title}.</strong> {rule.says}
    </td>
    <td>{capital(label(rule.stage))}</td>
    <td>{capital(label(rule.class))}</td>
    <td>{rule.severity}</td>
    <td>
      {Object.entries(rule.settings)
        .map(([name, v]) => `${name.replaceAll('_', ' ')}: ${number(String(v))}`)
        .join('; ') || 'none'}
    </td>
    <td>{rule.cites.join('; ')}</td>
    <td>{casesWords(rule)}</td>
  </tr>
);

const casesWords = ({ cases }: KnownRule): string =>
  `${cases.passes} pass, ${cases.fails} refuse` +
  (cases.others > 0 ? `, ${cases.others} others` : '');
