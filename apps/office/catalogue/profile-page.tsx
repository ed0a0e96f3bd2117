// One profile of a catalogue edition: what it is, and its load charts beside the calculation from its
// outline as a second opinion.

import { queryOptions, useQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { label } from '#jobs/contract';
import type { Catalogue, ComparedSheet, LoadComparison, Profile } from '#jobs/contract';
import { ask } from '../api/client.js';
import { editionQuery } from '../api/queries.js';
import { Cautions, LOAD_CAUTIONS } from '../parts/cautions.js';
import { Failure, Loading } from '../parts/states.js';
import { TabSet } from '../parts/tabs.js';
import { amount, capital } from '../parts/words.js';
import { Page } from '../shell/page.js';
import { ComparedCondition, SPANS } from './load-comparison.js';

const loadsQuery = (edition: number, profile: string) =>
  queryOptions({
    queryKey: ['catalogue', 'edition', edition, 'loads', profile],
    queryFn: async ({ signal }) => {
      const path = `/catalogue/editions/${edition}/profiles/${profile}/loads`;
      return (await ask<LoadComparison>(path, { signal })).value;
    },
    staleTime: Infinity,
  });

export function ProfilePage() {
  const { edition = '', profile: id = '' } = useParams({ strict: false });
  const catalogue = useQuery(editionQuery<Catalogue>('catalogue', Number(edition)));
  const loads = useQuery(loadsQuery(Number(edition), id));
  const profile = catalogue.data?.profiles.find((each) => each.id === id);
  const error = catalogue.error ?? loads.error;
  return (
    <Page
      wide
      title={profile?.name ?? 'Profile'}
      section="Catalogue"
      crumbs={[
        { name: 'Catalogue', to: '/catalogue' },
        { name: `Edition ${edition}`, to: '/catalogue/$edition', params: { edition } },
      ]}
    >
      {!error && (catalogue.isPending || loads.isPending) && <Loading what="the profile" />}
      {error && (
        <Failure error={error} retry={() => void (catalogue.error ? catalogue : loads).refetch()} />
      )}
      {catalogue.data?.invented && (
        <p className="notice waiting">
          This catalogue is invented, for demonstration. None of its numbers may be used on a roof.
        </p>
      )}
      {profile && <About profile={profile} />}
      {loads.data && <Loads loads={loads.data} />}
      <Cautions lines={[...LOAD_CAUTIONS, ...(loads.data?.cautions.slice(1) ?? [])]} />
    </Page>
  );
}

const About = ({ profile }: { readonly profile: Profile }) => (
  <dl className="facts">
    {[
      ['Family', capital(label(profile.family))],
      ['Fastening', capital(profile.fastening)],
      ['Seam', capital(label(profile.seam))],
      ['Spans', profile.structural ? 'Open framing' : 'Solid deck only'],
      ['Widths', profile.widths.map(amount).join(', ')],
      ['Rib height', amount(profile.rib_height)],
      ['Least slope', amount(profile.least_slope)],
    ].map(([name, value]) => (
      <div key={name}>
        <dt>{name}</dt>
        <dd>{value}</dd>
      </div>
    ))}
  </dl>
);

function Loads({ loads: { sheets, notes } }: { readonly loads: LoadComparison }) {
  const conditions = (Object.keys(SPANS) as ComparedSheet['spans'][]).filter((spans) =>
    sheets.some((each) => each.spans === spans),
  );
  return (
    <section className="stack" aria-labelledby="loads-title">
      <h2 id="loads-title">Load charts beside the calculation</h2>
      {conditions.length === 0 ? (
        <p>
          This profile has no load chart, and none is calculated for it. What it bears comes from
          its tested assemblies.
        </p>
      ) : (
        <>
          <p>
            The calculation is a second opinion, not a chart. Where the two differ, the chart
            counts, and the difference is worth a question to whoever made it.
          </p>
          <ul>
            {notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
          <TabSet
            label="Number of spans"
            tabs={conditions.map((spans) => ({
              name: SPANS[spans],
              content: <ComparedCondition sheets={sheets.filter((each) => each.spans === spans)} />,
            }))}
          />
        </>
      )}
    </section>
  );
}
