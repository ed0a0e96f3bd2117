// The rulebook: its editions, and each edition's rules with words, class, severity, settings, source.

import { useQuery } from '@tanstack/react-query';
import { useNavigate, useParams, useSearch } from '@tanstack/react-router';
import { label } from '#jobs/contract';
import type { EditionRule, Rulebook } from '../api/answers.js';
import { editionQuery, editionsQuery, rulebookQuery } from '../api/queries.js';
import { EditionTable } from '../parts/edition-table.js';
import { SelectField } from '../parts/fields.js';
import { Failure, Loading } from '../parts/states.js';
import { ScrollTable } from '../parts/table.js';
import { capital, day, number } from '../parts/words.js';
import { Page } from '../shell/page.js';

export function RulebookPage() {
  const editions = useQuery(editionsQuery('rulebook'));
  const current = useQuery(rulebookQuery);
  return (
    <Page
      wide
      title="Rules"
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
      {current.isPending && <Loading what="the rules in force" />}
      {current.error && <Failure error={current.error} retry={() => void current.refetch()} />}
      {current.data && <Rules book={current.data} />}
    </Page>
  );
}

export function RulebookEditionPage() {
  const { edition = '' } = useParams({ strict: false });
  const book = useQuery(editionQuery<Rulebook>('rulebook', Number(edition)));
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
      {book.data && (
        <>
          <dl className="facts">
            <dt>In force from</dt>
            <dd>{day(book.data.in_force_from)}</dd>
            <dt>State</dt>
            <dd>{book.data.state ?? 'published'}</dd>
            <dt>Digest</dt>
            <dd className="digest">{book.data.digest}</dd>
          </dl>
          <Rules book={book.data} />
        </>
      )}
    </Page>
  );
}

function Rules({ book }: { readonly book: Rulebook }) {
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
        note="Guidance and house policy may be set aside by the roles the policy names, with a reason; the others may not."
      >
        <thead>
          <tr>
            {['Rule', 'Says', 'Stage', 'Class', 'Severity', 'Settings', 'Source'].map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
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

const Row = ({ rule }: { readonly rule: EditionRule }) => (
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
  </tr>
);
