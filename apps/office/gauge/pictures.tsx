// The diagrams of the gauge stage: every gauge side by side, and load against span with the demand.

import { useQuery } from '@tanstack/react-query';
import { gaugeComparison, loadAgainstSpan, type Drawing as Picture } from '#drawings';
import type { Catalogue, Evaluation, LoadChart, OptionResult } from '#jobs/contract';
import { catalogueQuery } from '../api/queries.js';
import { Drawing } from '../parts/drawing.js';
import { amount, prose } from '../parts/words.js';
import { governingCheck, inOrder, optionName, outcomeWords } from './checks.js';

export function Pictures({
  evaluation,
  chosen,
}: {
  readonly evaluation: Evaluation;
  readonly chosen: string | undefined;
}) {
  const catalogue = useQuery(catalogueQuery).data;
  const taken = evaluation.options.find(
    ({ id }) => id === (chosen ?? evaluation.recommendation.option),
  );
  const span = catalogue && taken && spanPicture(evaluation, taken, catalogue);
  return (
    <>
      <Drawing figure={comparisonPicture(evaluation, taken)} />
      {span && <Drawing figure={span} />}
    </>
  );
}

function comparisonPicture(evaluation: Evaluation, taken: OptionResult | undefined): Picture {
  return gaugeComparison({
    title: 'Every gauge side by side',
    options: inOrder(evaluation.options).map((option) => ({
      name: optionName(option),
      chosen: option.id === taken?.id,
      outcome: outcomeWords(option, evaluation.recommendation.option).words.toLowerCase(),
      governs: option.governs && `zone ${option.governs.zone}, ${option.governs.limit_state}`,
      utilization: option.governs?.utilization ?? null,
      weight: amount(option.weight),
      price_difference: priceDifference(option, taken),
    })),
  });
}

function priceDifference({ price }: OptionResult, taken: OptionResult | undefined): string {
  if (!price || !taken?.price) return 'no price';
  const cents = Math.round(Number(price.v) * 100) - Math.round(Number(taken.price.v) * 100);
  if (cents === 0) return 'same';
  return `$ ${(Math.abs(cents) / 100).toFixed(2)} ${cents > 0 ? 'more' : 'less'} a square`;
}

/** Only where a load chart governs and every number of the picture is in the catalogue. */
function spanPicture(
  evaluation: Evaluation,
  taken: OptionResult,
  catalogue: Catalogue,
): Picture | undefined {
  const check = governingCheck(taken);
  const chart = catalogue.charts.find(({ id }) => check?.source.includes(id));
  const demand = evaluation.demands.find(({ zone }) => zone === taken.governs?.zone);
  if (!check || !chart || !demand?.support_spacing) return undefined;
  const uplift = check.direction === 'outward';
  const charts = catalogue.charts
    .filter(
      (each) =>
        each.profile === chart.profile &&
        each.width.v === chart.width.v &&
        each.spans === chart.spans,
    )
    .sort((a, b) => Number(b.thickness.v) - Number(a.thickness.v));
  try {
    return loadAgainstSpan({
      title: `Load against span, ${uplift ? 'uplift' : 'inward'}`,
      direction: uplift ? 'uplift' : 'inward',
      gauges: charts.map((each) => ({
        gauge: chartName(each),
        points: each.rows.map((row) => ({
          span_in: Number(row.span.v),
          load_psf: Math.abs(Number(uplift ? row.outward.v : row.inward.v)),
        })),
      })),
      demand_psf: Math.abs(Number(check.demand.v)),
      chosen: { gauge: chartName(chart), span_in: Number(demand.support_spacing.v) },
      interpolation: chart.interpolation,
      source: prose(`${chart.source.document}, ${chart.source.edition}`),
    });
  } catch {
    return undefined;
  }
}

const chartName = (chart: LoadChart): string =>
  `${chart.gauge ? `${chart.gauge} gauge ` : ''}(${amount(chart.thickness)}, ${chart.grade})`;
