// Decisions in the order they were recorded, with the moment that is looked at: what was known then
// stands above the line, what came later below it.

import { FILLS, line, sheet, STROKES, text, wrapped, type Drawing } from './svg.js';

export interface TimelineFacts {
  readonly title: string;
  readonly decisions: readonly TimelineDecision[];
  /** The moment looked at, RFC 3339; null for now. */
  readonly as_of: string | null;
}

export interface TimelineDecision {
  /** When recorded, RFC 3339. */
  readonly at: string;
  readonly words: string;
  readonly by: string;
  /** How it stands: "stands", "needs re-check", "superseded". */
  readonly standing: string;
}

const [WIDTH, MARK, WORDS, LETTERS] = [760, 168, 190, 82];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** "2 Mar 2026, 09:05 UTC". */
export function momentWords(at: string): string {
  const [, year, month, day, time] = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}:\d{2}))?/.exec(at) ?? [];
  if (year === undefined) return at;
  return `${Number(day)} ${MONTHS[Number(month) - 1] ?? month} ${year}${time ? `, ${time} UTC` : ''}`;
}

export function timeline({ title, decisions, as_of }: TimelineFacts): Drawing {
  const known =
    as_of === null ? decisions.length : decisions.filter(({ at }) => at <= as_of).length;
  const finding = findingOf(decisions, known, as_of);
  const parts: string[] = [];
  let top = 20;
  decisions.forEach((each, i) => {
    if (i === known && as_of !== null) top = asOfLine(parts, top, as_of);
    top = decision(parts, each, top, i < known, i < decisions.length - 1);
  });
  if (known === decisions.length && as_of !== null) top = asOfLine(parts, top, as_of);
  return {
    svg: sheet(title, finding, WIDTH, top + 4, parts),
    title,
    finding,
    table: {
      columns: ['Recorded', 'Decision', 'By', 'Standing'],
      rows: decisions.map((each) => [momentWords(each.at), each.words, each.by, each.standing]),
    },
  };
}

function findingOf(
  decisions: readonly TimelineDecision[],
  known: number,
  as_of: string | null,
): string {
  const open = decisions.slice(0, known).filter(({ standing }) => standing !== 'stands').length;
  const later = decisions.length - known;
  const when = as_of === null ? '' : `, as of ${momentWords(as_of)}`;
  const rest = later === 0 ? '' : `; ${later} came later`;
  return `${known} decision${known === 1 ? '' : 's'} recorded${when}, ${open === 0 ? 'all of them standing' : `${open} not standing`}${rest}.`;
}

function decision(
  parts: string[],
  each: TimelineDecision,
  top: number,
  known: boolean,
  more: boolean,
): number {
  const lines = wrapped(each.words, LETTERS);
  const height = 36 + lines.length * 15;
  const stands = each.standing === 'stands';
  if (more) parts.push(line([MARK, top], [MARK, top + height], STROKES.line, known ? '' : '3 4'));
  const style = stands && known ? FILLS.ink : FILLS.paper;
  parts.push(
    stands
      ? `<circle cx="${MARK}" cy="${top}" r="5.5" style="${style}"/>`
      : `<path d="M${MARK} ${top - 7}L${MARK + 7} ${top}L${MARK} ${top + 7}L${MARK - 7} ${top}Z" style="${style}"/>`,
    text([MARK - 16, top + 4], momentWords(each.at), { size: 10.5, anchor: 'end' }),
    ...lines.map((words, i) => text([WORDS, top + 4 + i * 15], words, { size: 12, bold: known })),
    text(
      [WORDS, top + 4 + lines.length * 15],
      `${each.by}; ${known ? each.standing : 'after this moment'}`,
      { size: 11, quiet: true },
    ),
  );
  return top + height;
}

function asOfLine(parts: string[], top: number, as_of: string): number {
  parts.push(
    line([0, top], [WIDTH, top], STROKES.bold),
    text([WIDTH, top - 5], `as of ${momentWords(as_of)}`, { size: 11, bold: true, anchor: 'end' }),
  );
  return top + 28;
}
