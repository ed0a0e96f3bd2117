// Markdown of the coverage page from the topics' lists and the case files.

import type { Covered } from '#engineering';

const LABELS = ['published', 'second-hand', 'derived', 'from memory'] as const;
type Label = (typeof LABELS)[number];

export interface CaseLine {
  readonly id: string;
  readonly topic: string;
  readonly provenance: Label;
}

/** `cases` by the name of their file; a topic's cases stand under its own name. */
export function coveragePage(
  coverage: Readonly<Record<string, readonly Covered[]>>,
  cases: Readonly<Record<string, readonly CaseLine[]>>,
): string {
  const topics = Object.keys(coverage);
  return [
    '# What the engineering covers',
    '',
    'Generated from the lists beside the code and the cases of `tests/standards/cases`.',
    'Only cases labeled *published* and *second-hand* are outside checks; *derived* proves only',
    'that a formula agrees with itself worked another way, *from memory* says that no page was read.',
    'Every case runs in `tests/standards`; one that is not met stands there by name with its reason.',
    '',
    '## Cases by label',
    '',
    ...table(
      ['topic', ...LABELS, 'all'],
      [
        ...topics.map((topic) => [topic, ...counts(cases[topic] ?? [])]),
        ['**all**', ...counts(topics.flatMap((topic) => cases[topic] ?? []))],
      ],
    ),
    ...topics.flatMap((topic) => section(topic, coverage[topic] ?? [], cases[topic] ?? [])),
  ].join('\n');
}

function section(topic: string, rows: readonly Covered[], cases: readonly CaseLine[]): string[] {
  const groups = [...new Set(cases.map((each) => each.topic))].sort();
  return [
    `## ${topic}`,
    '',
    ...table(
      ['clause', 'does', 'function', 'left out', 'not yet confirmed'],
      rows.map((row) => [
        row.clause,
        row.does,
        code(row.function),
        row.left_out ?? '',
        row.unconfirmed ?? '',
      ]),
    ),
    ...table(
      ['cases', ...LABELS, 'all'],
      groups.map((group) => [group, ...counts(cases.filter((each) => each.topic === group))]),
    ),
  ];
}

function counts(cases: readonly CaseLine[]): string[] {
  const of = (label: Label): number => cases.filter((each) => each.provenance === label).length;
  return [...LABELS.map((label) => String(of(label))), String(cases.length)];
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
