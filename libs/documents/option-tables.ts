// The options of a choosing, side by side: as a picture and as tables.

import { gaugeComparison, type Drawing, type GaugeOption } from '#drawings';
import { prose, type Evaluation, type OptionResult } from '#jobs';
import { citationText } from '#engineering';
import { CHECK_COLUMNS, checkRows } from './check-tables.js';
import { column, numbers, type PrintTable } from './print.js';
import { amountWords, momentWords, spaced } from './words.js';

/** "24 gauge (0.0236 in, SS 50 Class 1)"; metals without gauge by their thickness. */
export function optionName(option: OptionResult): string {
  const thickness = amountWords(option.thickness);
  if (option.gauge === null) return `${thickness} (${option.grade})`;
  return `${option.gauge} gauge (${thickness}, ${option.grade})`;
}

export function comparison(where: string, evaluation: Evaluation, picked: OptionResult): Drawing {
  return gaugeComparison({
    title: `Every gauge compared, ${where}`,
    options: evaluation.options.map((each): GaugeOption => ({
      name: optionName(each),
      chosen: each === picked,
      outcome: outcomeOf(each, picked),
      governs: each.governs ? `zone ${each.governs.zone}, ${each.governs.limit_state}` : null,
      utilization: each.governs?.utilization ?? null,
      weight: amountWords(each.weight),
      price_difference: priceDifference(each, picked),
    })),
  });
}

function outcomeOf(option: OptionResult, picked: OptionResult | undefined): string {
  if (option === picked) return 'chosen';
  const { why_not } = option;
  return why_not?.class === 'dominated' ? 'would pass' : spaced(why_not?.class ?? 'not judged');
}

function priceDifference(option: OptionResult, picked: OptionResult): string {
  if (!option.price) return 'no price';
  if (option === picked || !picked.price) return amountWords(option.price);
  const cents = Math.round(Number(option.price.v) * 100) - Math.round(Number(picked.price.v) * 100);
  if (cents === 0) return 'same price';
  return `$ ${(Math.abs(cents) / 100).toFixed(2)} ${cents > 0 ? 'more' : 'less'} per square`;
}

export function demandTable(where: string, { demands }: Evaluation): PrintTable {
  return {
    caption: `What each zone asks of the panel, ${where} (service level, ASD)`,
    columns: [
      column('Zone'),
      column('Part'),
      numbers('Inward'),
      numbers('Uplift'),
      numbers('Support spacing'),
      column('Source of the loads', 1),
    ],
    rows: demands.map((each) => [
      each.zone,
      each.part,
      amountWords(each.inward),
      amountWords(each.outward),
      each.support_spacing ? amountWords(each.support_spacing) : 'solid',
      prose([...new Set(each.source.split('; '))].join('; ')),
    ]),
  };
}

export const zoneTable = (caption: string, option: OptionResult): PrintTable => ({
  caption: `${caption}: ${optionName(option)}`,
  columns: CHECK_COLUMNS,
  rows: checkRows(option),
});

export function optionsTable(
  where: string,
  evaluation: Evaluation,
  picked?: OptionResult,
): PrintTable {
  return {
    caption: `Every option and what became of it, ${where}`,
    columns: [
      column('Option', 1.3),
      column('Outcome'),
      numbers('Rank'),
      numbers('Utilization'),
      numbers('Weight'),
      numbers('Per square'),
      column('How it is had', 1),
      column('Why not', 2.6),
    ],
    rows: evaluation.options.map((each) => [
      optionName(each),
      outcomeOf(each, picked),
      each.rank === null ? 'none' : String(each.rank),
      each.governs?.utilization ?? 'no number',
      amountWords(each.weight),
      each.price ? `$ ${each.price.v}` : 'no price',
      availability(each),
      each.why_not?.words ?? 'It was chosen.',
    ]),
  };
}

function availability({ availability: had, lead_days, least_order }: OptionResult): string {
  const lead = lead_days === null ? '' : `, ${lead_days} days`;
  return `${spaced(had)}${lead}${least_order ? `, least order ${amountWords(least_order)}` : ''}`;
}

/** What the rules held against each option that was not chosen, or could not judge. */
export function againstTable(
  where: string,
  evaluation: Evaluation,
  picked?: OptionResult,
): PrintTable {
  const others = evaluation.options.filter((each) => each !== picked);
  return {
    caption: `What rules held against the other options, ${where}`,
    columns: [
      column('Option', 1),
      column('Rule'),
      column('If not met'),
      column('Outcome'),
      column('Words', 2.4),
      column('Source', 1),
    ],
    rows: others.flatMap((option) =>
      option.findings
        .filter(({ outcome }) => outcome !== 'pass' && outcome !== 'not-applicable')
        .map(({ rule, severity, outcome, words, cites }) => [
          optionName(option),
          rule,
          severity,
          spaced(outcome),
          words,
          cites.map(citationText).join('; '),
        ]),
    ),
  };
}

/** What would turn an outcome; a site fact is only a "what if". */
export function changesTable(where: string, evaluation: Evaluation): PrintTable {
  return {
    caption: `What would change the outcome, ${where}`,
    columns: [
      column('Option', 1),
      column('Becomes'),
      column('Change', 1.4),
      column('Kind'),
      column('In words', 2),
    ],
    rows: evaluation.what_would_change.map(({ option, becomes, changes, site_fact, words }) => [
      nameIn(evaluation, option),
      spaced(becomes),
      changes.map(({ what, from, to }) => `${what}: ${from} to ${to}`).join('; '),
      site_fact ? 'what if' : 'design choice',
      words,
    ]),
  };
}

/** Choices that settle an option's outcome whatever else is chosen. */
export const reasonsTable = (where: string, evaluation: Evaluation): PrintTable => ({
  caption: `What settles each outcome, ${where}`,
  columns: [column('Option', 1), column('Because of', 2), column('In words', 2)],
  rows: evaluation.reasons.map(({ option, because, words }) => [
    nameIn(evaluation, option),
    because.map(({ what, value }) => `${what}: ${value}`).join('; '),
    words,
  ]),
});

/** An option that is not among them stays its id. */
export function nameIn({ options }: Evaluation, id: string): string {
  const named = options.find((each) => each.id === id);
  return named ? optionName(named) : id;
}

/** How the choosing went, in sentences: recommendation, the rule of ranking, and what made it. */
export function choosingWords(evaluation: Evaluation): readonly string[] {
  const { engine, day, rules_edition, catalogue_edition, recommendation, ranking, searched } =
    evaluation;
  const editions = `rules edition ${rules_edition.number}, catalogue edition ${catalogue_edition.number}`;
  const search = searched
    ? `The search for changes made ${searched.judgements} of at most ${searched.budget} judgements; ${searched.not_reproduced} findings were not borne out and are left out.`
    : 'No search for changes was made.';
  return [
    recommendation.sentence,
    `How options are ranked: ${ranking.by}`,
    `${search}${evaluation.budget_reached ? ' It ended early: there may be more changes than are listed.' : ''}`,
    `Worked out by ${engine} for ${momentWords(day)}, ${editions}.`,
    ...evaluation.cautions,
  ];
}
