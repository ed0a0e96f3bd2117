// The catalogue: profiles, what is made, load charts, tested assemblies, fasteners, by edition; and
// the check of a chart file before it goes into the next edition.

import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { label } from '#jobs/contract';
import type { Catalogue } from '#jobs/contract';
import { catalogueQuery, editionQuery, editionsQuery, sessionQuery } from '../api/queries.js';
import { Cautions } from '../parts/cautions.js';
import { EditionTable } from '../parts/edition-table.js';
import { Failure, Loading } from '../parts/states.js';
import { PlainTable } from '../parts/table.js';
import { TabSet } from '../parts/tabs.js';
import { amount, capital, day } from '../parts/words.js';
import { has } from '../shell/home.js';
import { Page } from '../shell/page.js';
import { ChartCheck } from './chart-check.js';
import { Assemblies, Charts } from './capacities.js';

export function CataloguePage() {
  const editions = useQuery(editionsQuery('catalogue'));
  const current = useQuery(catalogueQuery);
  const session = useQuery(sessionQuery).data;
  return (
    <Page
      wide
      title="Catalogue"
      actions={
        has(session, 'standards-manager') && (
          <Link className="button main" to="/catalogue/import">
            Bring a file
          </Link>
        )
      }
      lead={
        current.data && (
          <p>
            Edition {current.data.edition}: {current.data.summary}
          </p>
        )
      }
    >
      {editions.data && (
        <EditionTable
          caption="Catalogue editions"
          to="/catalogue/$edition"
          rows={editions.data.editions}
        />
      )}
      {current.isPending && <Loading what="the catalogue" />}
      {current.error && <Failure error={current.error} retry={() => void current.refetch()} />}
      {current.data && <Whole catalogue={current.data} />}
      {has(session, 'standards-manager', 'project-manager') && <ChartCheck />}
      <Cautions />
    </Page>
  );
}

export function CatalogueEditionPage() {
  const { edition = '' } = useParams({ strict: false });
  const catalogue = useQuery(editionQuery<Catalogue>('catalogue', Number(edition)));
  return (
    <Page
      wide
      title={`Catalogue edition ${edition}`}
      section="Catalogue"
      crumbs={[{ name: 'Catalogue', to: '/catalogue' }]}
    >
      {catalogue.isPending && <Loading what="the edition" />}
      {catalogue.error && (
        <Failure error={catalogue.error} retry={() => void catalogue.refetch()} />
      )}
      {catalogue.data && <Whole catalogue={catalogue.data} />}
      <Cautions />
    </Page>
  );
}

function Whole({ catalogue }: { readonly catalogue: Catalogue }) {
  return (
    <>
      {catalogue.invented && (
        <p className="notice waiting">
          This catalogue is invented, for demonstration. None of its numbers may be used on a roof.
        </p>
      )}
      <p className="quiet">In force from {day(catalogue.in_force_from)}</p>
      <TabSet
        label="Parts of the catalogue"
        tabs={[
          { name: 'Profiles', content: <Profiles catalogue={catalogue} /> },
          { name: 'What is made', content: <Made catalogue={catalogue} /> },
          { name: 'Load charts', content: <Charts catalogue={catalogue} /> },
          { name: 'Tested assemblies', content: <Assemblies catalogue={catalogue} /> },
          { name: 'Fasteners', content: <Fasteners catalogue={catalogue} /> },
          { name: 'Coating terms', content: <CoatingTerms catalogue={catalogue} /> },
          { name: 'Warrantors', content: <Warrantors catalogue={catalogue} /> },
        ]}
      />
    </>
  );
}

type Part = { readonly catalogue: Catalogue };

const Profiles = ({ catalogue }: Part) => (
  <PlainTable
    caption="Profiles"
    columns={[
      'Profile',
      'Family',
      'Fastening',
      'Seam',
      { name: 'Widths, in', num: true },
      { name: 'Rib, in', num: true },
      { name: 'Least slope, in 12', num: true },
      'Spans',
    ]}
    rows={catalogue.profiles.map((each) => [
      <Link
        to="/catalogue/$edition/$profile"
        params={{ edition: String(catalogue.edition), profile: each.id }}
      >
        {each.name}
      </Link>,
      capital(label(each.family)),
      capital(each.fastening),
      capital(label(each.seam)),
      each.widths.map(({ v }) => v).join(', '),
      each.rib_height.v,
      each.least_slope.v,
      each.structural ? 'Open framing' : 'Solid deck only',
    ])}
  />
);

const Made = ({ catalogue }: Part) => (
  <PlainTable
    caption="What is made"
    note="A combination with no row here is not made"
    columns={[
      'Profile',
      { name: 'Width, in', num: true },
      'Metal',
      { name: 'Base thickness, in', num: true },
      'Gauge',
      'Grade',
      'Coating',
      'Paint',
      'Color groups',
      'Had',
      { name: 'Lead, days', num: true },
      { name: 'Price', num: true },
    ]}
    rows={catalogue.made.map((each) => [
      catalogue.profiles.find(({ id }) => id === each.profile)?.name ?? each.profile,
      each.width.v,
      capital(each.metal),
      each.thickness.v,
      each.gauge ?? 'none',
      each.grade,
      each.metallic_coating,
      capital(label(each.paint_system)),
      each.color_groups.map(label).join(', '),
      capital(label(each.status)),
      each.lead_days,
      amount(each.price),
    ])}
  />
);

const Fasteners = ({ catalogue }: Part) => (
  <PlainTable
    caption="Fasteners"
    columns={['Fastener', 'Kind', 'Metal', { name: 'Diameter', num: true }, 'Tested']}
    rows={catalogue.fasteners.map((each) => [
      each.name,
      capital(each.kind),
      capital(label(each.metal)),
      each.diameter ? amount(each.diameter) : '—',
      each.tested
        ?.map((test) => `${label(test.into)}: ${amount(test.allowable)} (${test.source.document})`)
        .join('; ') ?? 'no test: calculated where it can be',
    ])}
  />
);

const CoatingTerms = ({ catalogue }: Part) => (
  <PlainTable
    caption="Coating terms"
    note="What the supplier's document promises; the document itself governs"
    columns={[
      'Metal and its coating',
      'Paint system',
      'Colors',
      { name: 'Finish, years', num: true },
      'Fade',
      'Chalk',
      'From salt water',
      'Document',
    ]}
    rows={catalogue.terms.map((each) => [
      `${capital(label(each.metal))}, ${label(each.metallic_coating)}`,
      capital(label(each.paint_system)),
      capital(label(each.color_group)),
      each.finish_years,
      each.fade
        ? `at most ${each.fade.limit} units (${each.fade.scale}) in ${each.fade.years} years`
        : '—',
      each.chalk ? `at least ${each.chalk.least} after ${each.chalk.years} years` : '—',
      each.water_distance ? `${amount(each.water_distance)} or more` : '—',
      each.document,
    ])}
  />
);

/** Their documents are put before a customer as they came; here stands which there are. */
const Warrantors = ({ catalogue }: Part) => (
  <PlainTable
    caption="Warrantors and their documents"
    note="A document without a text of its own must be attached where it is issued"
    columns={[
      'Warrantor',
      'Claims are mailed to',
      'Document',
      'Version',
      'Text',
      { name: 'Register within, days', num: true },
      { name: 'Full cover, years', num: true },
    ]}
    rows={(catalogue.warrantors ?? []).flatMap(({ name, address, documents }) =>
      documents.map((each) => [
        name,
        address,
        capital(label(each.kind)),
        each.version,
        each.text?.name ?? 'none kept',
        each.registration_days ?? '—',
        each.full_years ?? 'does not fall',
      ]),
    )}
  />
);
