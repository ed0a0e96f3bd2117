// Markdown of the coverage page from the topics' lists, the case files and the cases known not to be
// met: clause by clause what is calculated, by which function, and what outside values check it.

import type { Covered } from '#engineering';

const OUTSIDE = ['published', 'second-hand'] as const;
const OWN = ['derived', 'from memory'] as const;
type Label = (typeof OUTSIDE | typeof OWN)[number];

export interface CaseLine {
  readonly id: string;
  readonly topic: string;
  readonly provenance: Label;
}

/** By the name of a case file, the cases of it that are not met, with the reason. */
export type NotMet = Readonly<Record<string, Readonly<Record<string, string>>>>;

/** `cases` by the name of their file; a topic's cases stand under its own name. */
export function coveragePage(
  coverage: Readonly<Record<string, readonly Covered[]>>,
  cases: Readonly<Record<string, readonly CaseLine[]>>,
  notMet: NotMet = {},
): string {
  const topics = Object.keys(coverage);
  const all = topics.flatMap((topic) => cases[topic] ?? []);
  const missed = new Map(Object.values(notMet).flatMap((each) => Object.entries(each)));
  return [
    '# What the engineering covers',
    '',
    'Generated from the lists beside the code and the cases of `tests/standards/cases`.',
    'Only cases labeled *published* and *second-hand* are outside checks. *Derived* proves only',
    'that a formula agrees with itself worked another way, *from memory* says that no page was read:',
    'they are counted apart. Every case runs in `tests/standards` at its own tolerance; one that is',
    'not met is listed at the end with its reason.',
    '',
    '## Cases by label',
    '',
    ...table(
      ['topic', ...heads(OUTSIDE), '**outside**', ...heads(OWN), 'not met'],
      [
        ...topics.map((topic) => [topic, ...counts(cases[topic] ?? [], missed)]),
        ['**all**', ...counts(all, missed)],
      ],
    ),
    ...topics.flatMap((topic) => section(topic, coverage[topic] ?? [], all, missed)),
    ...notMetSection(all, missed),
  ].join('\n');
}

const heads = (labels: readonly Label[]): readonly string[] => labels;
type Missed = ReadonlyMap<string, string>;

function section(
  topic: string,
  rows: readonly Covered[],
  all: readonly CaseLine[],
  missed: Missed,
): string[] {
  return [
    `## ${topic}`,
    '',
    'A case that goes through several clauses is counted at each of them.',
    '',
    ...table(
      [
        'clause',
        'does',
        'function',
        ...heads(OUTSIDE),
        '**outside**',
        ...heads(OWN),
        'not met',
        'left out',
        'not yet confirmed',
      ],
      rows.map((row) => [
        row.clause,
        row.does,
        code(row.function),
        ...counts(
          all.filter((each) => row.cases?.includes(each.topic)),
          missed,
        ),
        row.left_out ?? '',
        row.unconfirmed ?? '',
      ]),
    ),
  ];
}

function notMetSection(all: readonly CaseLine[], missed: Missed): string[] {
  const rows = all.flatMap(({ id, topic, provenance }) => {
    const reason = missed.get(id);
    return reason === undefined ? [] : [[id, topic, provenance, reason]];
  });
  return [
    '## Cases not met',
    '',
    'Each fails its test as soon as it is met.',
    '',
    ...table(['case', 'cases of', 'label', 'reason'], rows),
  ];
}

/** Published, second-hand, both together; derived, from memory; not met among all of them. */
function counts(cases: readonly CaseLine[], missed: Missed): string[] {
  const of = (...labels: readonly Label[]): number =>
    cases.filter(({ provenance }) => labels.includes(provenance)).length;
  return [
    ...OUTSIDE.map((label) => of(label)),
    of(...OUTSIDE),
    ...OWN.map((label) => of(label)),
    cases.filter(({ id }) => missed.has(id)).length,
  ].map(String);
}

/** A Markdown table and an empty line; nothing where there are no rows. */
function table(head: readonly string[], rows: readonly (readonly string[])[]): string[] {
  if (rows.length === 0) return [];
  const line = (cells: readonly string[]): string => `| ${cells.map(escaped).join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line), ''];
}

const escaped = (cell: string): string => cell.replaceAll('|', '\\|');
const code = (names: string): string =>
  names
    .split(', ')
    .map((name) => `\`${name}\``)
    .join(', ');
