// Load charts and tested assemblies, each with its source document.

import { label } from '#jobs/contract';
import type { Catalogue, LoadChart } from '#jobs/contract';
import { PlainTable } from '../parts/table.js';
import { amount, capital, day } from '../parts/words.js';

type Part = { readonly catalogue: Catalogue };

export const Charts = ({ catalogue }: Part) => (
  <div className="stack">
    {catalogue.charts.length === 0 && <p>This edition has no load chart.</p>}
    {catalogue.charts.map((chart) => (
      <details key={chart.id}>
        <summary>{chartName(chart, catalogue)}</summary>
        <ChartTable chart={chart} />
      </details>
    ))}
  </div>
);

const chartName = (chart: LoadChart, { profiles }: Catalogue): string =>
  `${profiles.find(({ id }) => id === chart.profile)?.name ?? chart.profile}, ${chart.gauge ? `${chart.gauge} gauge, ` : ''}${amount(chart.thickness)}, grade ${chart.grade}, ${chart.spans} spans`;

export function ChartTable({ chart }: { readonly chart: LoadChart }) {
  return (
    <PlainTable
      caption={`Chart ${chart.id}, allowable loads`}
      note={`${chart.basis}; deflection ${chart.deflection_limit}; attachment ${chart.attachment_included ? 'included' : 'not included'}; ${chart.interpolation ? 'may be interpolated' : 'the next longer span counts between rows'}. Source: ${chart.source.document}, ${chart.source.edition}, ${day(chart.source.date)}`}
      columns={[
        { name: 'Span', num: true },
        { name: 'Inward', num: true },
        { name: 'Uplift', num: true },
        { name: 'Deflection', num: true },
      ]}
      rows={chart.rows.map((row) => [
        amount(row.span),
        amount(row.inward),
        amount(row.outward),
        row.deflection ? amount(row.deflection) : '—',
      ])}
    />
  );
}

export const Assemblies = ({ catalogue }: Part) => (
  <PlainTable
    caption="Tested assemblies"
    note="Good for what each names, and no further"
    columns={[
      'Number',
      'Profile',
      { name: 'Base thickness', num: true },
      'On',
      'Fastener',
      { name: 'Spacing', num: true },
      { name: 'Uplift', num: true },
      'Basis',
      'Standard',
      'Expires',
    ]}
    rows={catalogue.assemblies.map((each) => [
      each.number,
      catalogue.profiles.find(({ id }) => id === each.profile)?.name ?? each.profile,
      amount(each.thickness),
      each.substrates.map((on) => capital(label(on))).join(', '),
      catalogue.fasteners.find(({ id }) => id === each.fastener)?.name ?? each.fastener,
      amount(each.attachment_spacing),
      amount(each.outward),
      each.basis === 'ultimate' ? `Ultimate, over ${each.safety_factor}` : 'ASD',
      each.standard,
      day(each.expires) || 'no date',
    ])}
  />
);
