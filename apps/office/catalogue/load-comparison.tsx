// One span condition of a profile: its load charts beside the calculation, drawn and in tables.

import { chartDifference, type ComparedGauge } from '#drawings';
import type { ComparedLoad, ComparedSheet } from '#jobs/contract';
import { Drawing } from '../parts/drawing.js';
import { PlainTable } from '../parts/table.js';

type Direction = 'inward' | 'outward';

export const SPANS: Readonly<Record<ComparedSheet['spans'], string>> = {
  '1': 'One span',
  '2': 'Two spans',
  '3+': 'Three spans or more',
};

export function ComparedCondition({ sheets }: { readonly sheets: readonly ComparedSheet[] }) {
  const figures = (['outward', 'inward'] as const).flatMap((direction) => {
    const figure = figureOf(sheets, direction);
    return figure ? [figure] : [];
  });
  return (
    <div className="stack">
      {figures.map((figure) => (
        <Drawing key={figure.title} figure={figure} />
      ))}
      {sheets.map((sheet) => (
        <Sheet key={sheetName(sheet)} sheet={sheet} />
      ))}
    </div>
  );
}

export const sheetName = ({ gauge, thickness, metal, grade, width }: ComparedSheet): string =>
  `${gauge ? `${gauge} gauge` : metal} (${thickness.v} in, ${grade}), ${width.v} in cover`;

function figureOf(sheets: readonly ComparedSheet[], direction: Direction) {
  const uplift = direction === 'outward';
  const [first] = sheets;
  return chartDifference({
    title: `${uplift ? 'Uplift' : 'Inward load'}, ${SPANS[first?.spans ?? '1'].toLowerCase()}: calculation against chart`,
    direction: uplift ? 'uplift' : 'inward',
    gauges: sheets
      .map((sheet) => ({
        gauge: sheetName(sheet).replace(/, [^,]*$/, ''),
        points: points(sheet, direction),
      }))
      .filter((each) => each.points.length > 0),
  });
}

const points = ({ rows }: ComparedSheet, direction: Direction): ComparedGauge['points'] =>
  rows.flatMap(({ span, [direction]: { chart, calculated, difference, limit_state } }) =>
    chart && calculated && difference && limit_state
      ? [
          {
            span_in: Number(span.v),
            chart_psf: Math.abs(Number(chart.v)),
            calculated_psf: Number(calculated.v),
            difference: Number(difference.v),
            limit_state,
          },
        ]
      : [],
  );

function Sheet({ sheet }: { readonly sheet: ComparedSheet }) {
  const { chart, deflection_limit, not_calculated, source, rows } = sheet;
  if (not_calculated.length > 0) {
    return (
      <p>
        {sheetName(sheet)}: nothing stands beside chart {chart}; {not_calculated.join('; ')}.
      </p>
    );
  }
  const head = (name: string) => ({ name, num: true }) as const;
  return (
    <PlainTable
      caption={sheetName(sheet)}
      note={
        source
          ? `In psf. Chart ${chart}, ${source}; deflection ${deflection_limit}; attachment ${sheet.attachment_included ? 'included in the chart, not in the calculation' : 'not included'}`
          : `In psf. No chart: only calculated, deflection ${deflection_limit}; an engineer signs for whatever rests on it`
      }
      columns={[
        head('Span, in'),
        head('Inward: chart'),
        head('Calculated'),
        head('Against it'),
        head('Uplift: chart'),
        head('Calculated'),
        head('Against it'),
        head('Deflection: chart'),
        head('Calculated'),
        head('Against it'),
        'Governs the calculation',
      ]}
      rows={rows.map(({ span, inward, outward, deflection }) => [
        span.v,
        ...cells(inward),
        ...cells(outward),
        ...cells(deflection),
        governs(inward.limit_state, outward.limit_state),
      ])}
    />
  );
}

/** The chart's load, the calculated one, and "4.2 % less" or "more" than the chart. */
const cells = ({ chart, calculated, difference, smaller }: ComparedLoad) => [
  chart ? chart.v.replace(/^-/, '') : 'none',
  calculated ? calculated.v : 'none',
  difference ? differenceWords(difference.v.replace(/^-/, ''), smaller) : '—',
];

const differenceWords = (percent: string, smaller: ComparedLoad['smaller']): string =>
  smaller === 'neither' ? 'alike' : `${percent} % ${smaller === 'chart' ? 'more' : 'less'}`;

const governs = (inward: string | null, uplift: string | null): string =>
  inward === uplift ? `Both: ${inward}` : `Inward: ${inward}; uplift: ${uplift}`;
