// Markdown of the rulebook: every rule with what it says, its source, its settings, the facts it
// reads, the editions that name it, and how many cases hold it.

import { citationText } from '#engineering';
import { GATES, label, type Edition, type Gate, type Rule, type RuleCases } from '#rules';

export interface Rulebook {
  readonly rules: readonly Rule[];
  readonly cases: Readonly<Record<string, RuleCases>>;
  readonly editions: readonly Edition[];
}

export function rulebookPage(book: Rulebook): string {
  const cases = sum(book.rules.map((rule) => all(casesOf(book, rule))));
  return [
    '# The rulebook',
    '',
    `${book.rules.length} rules, held by ${cases} cases. A rule`,
    'without a case that passes and one that fails does not compile; every case runs in the tests.',
    'A source "from memory" names a clause whose page was not read. Local code and the authority',
    'having jurisdiction govern; what spans needs a licensed engineer.',
    '',
    '| stage or gate | rules | refuse | require | caution | note | cases |',
    '| --- | --- | --- | --- | --- | --- | --- |',
    ...GATES.map((gate) => summary(gate, book)),
    '',
    ...GATES.flatMap((gate) => section(gate, book)),
  ].join('\n');
}

function summary(gate: Gate, book: Rulebook): string {
  const rules = at(gate, book);
  const of = (severity: Rule['severity']) =>
    rules.filter((rule) => rule.severity === severity).length;
  const cases = sum(rules.map((rule) => all(casesOf(book, rule))));
  return row([
    label(gate),
    rules.length,
    of('refuse'),
    of('require'),
    of('caution'),
    of('note'),
    cases,
  ]);
}

function section(gate: Gate, book: Rulebook): readonly string[] {
  const heading = label(gate);
  return [
    `## ${heading.charAt(0).toUpperCase()}${heading.slice(1)}`,
    '',
    ...at(gate, book).flatMap((rule) => entry(rule, book)),
  ];
}

function entry(rule: Rule, book: Rulebook): readonly string[] {
  const count = casesOf(book, rule);
  const settings = Object.entries(rule.settings).map(([name, value]) => `${name} = ${value}`);
  const editions = book.editions
    .filter(({ entries }) => entries.some((e) => e.rule === rule.id && e.version === rule.version))
    .map(({ number }) => number);
  return [
    `### ${rule.id} version ${rule.version}: ${rule.title}`,
    '',
    `*${label(rule.class)}, ${rule.severity}.* ${rule.says}`,
    '',
    `- Source: ${rule.cites.map(citationText).join('; ')}`,
    ...(settings.length > 0 ? [`- Settings: ${settings.join(', ')}`] : []),
    `- Reads: ${rule.reads.join(', ')}`,
    `- Editions: ${editions.join(', ') || 'none'}`,
    `- Cases: ${count.passes} pass, ${count.fails} fail, ${count.silent} not applicable, ` +
      `${count.unknown} not evaluated, ${count.settings} with other settings`,
    '',
  ];
}

interface Count {
  readonly passes: number;
  readonly fails: number;
  readonly silent: number;
  readonly unknown: number;
  readonly settings: number;
}

function casesOf({ cases }: Rulebook, { id }: Rule): Count {
  const own = cases[id];
  if (own === undefined) throw new Error(`${id} has no cases`);
  return {
    passes: own.passes.length,
    fails: own.refuses.length,
    silent: own.notApplicable?.length ?? 0,
    unknown: own.unknown?.length ?? 0,
    settings: own.withSettings?.length ?? 0,
  };
}

const at = (gate: Gate, { rules }: Rulebook): readonly Rule[] =>
  rules.filter(({ stage }) => stage === gate).sort((a, b) => (a.id < b.id ? -1 : 1));
const all = (count: Count): number => sum(Object.values(count));
const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);
const row = (cells: readonly (string | number)[]): string => `| ${cells.join(' | ')} |`;
