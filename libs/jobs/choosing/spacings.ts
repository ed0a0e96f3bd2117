// The spacings that may change in one zone: attachment, rows of screws, supports. Each moves by
// whole inches, closer where the option is to pass and wider where it is to fail.

import type { LoadChart, TestedAssembly } from '../contract/catalogue.js';
import type { Frame } from './choices.js';
import type { Local } from './cells.js';
import type { Zone } from './demand.js';
import { attachmentIn } from './question.js';

export type Target = 'passes' | 'fails';
export type Kind = keyof Local;

export interface Spacing {
  readonly kind: Kind;
  /** As proposed or measured, inches; infinite where nothing is proposed. */
  readonly now: number;
  /**
   * The whole inches it may take, nearest to today's first, in stretches within which no other row
   * of a chart and no other test comes into play: within one, closer never bears less.
   */
  readonly stretches: readonly Stretch[];
}
export interface Stretch {
  readonly near: number;
  readonly far: number;
}

/** Least and greatest spacing that is tried, inches. */
const BOUNDS: Readonly<Record<Kind, readonly [number, number]>> = {
  spacing: [3, 60],
  rows: [3, 60],
  supports: [6, 120],
};

/** With other choices of make the attachment may move too; the supports stay where they are. */
export function spacingsIn(frame: Frame, zone: Zone, target: Target): readonly Spacing[] {
  const { question } = frame;
  const concealed = question.profile.fastening === 'concealed';
  const at = attachmentIn(question, zone.zone);
  const proposed = (amount: { readonly v: string } | undefined): number =>
    amount ? Number(amount.v) : Infinity;
  const supports = zone.spacing_in;
  const kinds: readonly (readonly [Kind, number])[] = question.open_framing
    ? [
        // A concealed clip sits on its support and moves with it.
        ...(concealed ? [] : [['spacing', proposed(at?.spacing)] as const]),
        ...(supports === null ? [] : [['supports', supports] as const]),
      ]
    : [
        ['spacing', proposed(at?.spacing)],
        ...(concealed ? [] : [['rows', proposed(at?.rows)] as const]),
      ];
  const asMade = frame.changes.length > 0;
  return kinds
    .filter(([kind]) => !(asMade && kind === 'supports'))
    .flatMap(([kind, now]) => {
      const stretches = stretchesOf(kind, now, breaksOf(frame, kind), target);
      return stretches.length > 0 ? [{ kind, now, stretches }] : [];
    });
}

/** Where another test or chart row, or another number of spans, comes into play. */
function breaksOf({ question, option }: Frame, kind: Kind): readonly number[] {
  const { catalogue, profile, width, attachment, longest_piece_ft } = question;
  const own = (each: TestedAssembly | LoadChart): boolean =>
    each.profile === profile.id &&
    each.width.v === width &&
    each.metal === option.metal &&
    Number(each.thickness.v) === option.thickness_in;
  const tests = catalogue.assemblies.filter(
    (each) => each.fastener === attachment.fastener && own(each),
  );
  if (kind === 'spacing')
    return tests.map(({ attachment_spacing }) => Number(attachment_spacing.v));
  const charts = catalogue.charts.filter((each) => each.grade === option.grade && own(each));
  const piece = (longest_piece_ft ?? 0) * 12;
  return [
    ...charts.flatMap(({ rows }) => rows.map(({ span }) => Number(span.v))),
    ...tests.flatMap(({ support_spacing, attachment_spacing }) => [
      Number(attachment_spacing.v),
      ...(support_spacing ? [Number(support_spacing.v)] : []),
    ]),
    piece / 2,
    piece / 3,
  ];
}

function stretchesOf(
  kind: Kind,
  now: number,
  breaks: readonly number[],
  target: Target,
): readonly Stretch[] {
  const [least, most] = BOUNDS[kind];
  const closer = target === 'passes';
  const low = closer ? least : Math.max(least, Math.floor(now) + 1);
  const high = closer ? Math.min(most, Math.ceil(now) - 1) : most;
  if (!(low <= high)) return [];
  const ends = [
    ...new Set(breaks.map(Math.floor).filter((each) => each >= low && each < high)),
  ].sort((a, b) => a - b);
  const lows = [low, ...ends.map((each) => each + 1)];
  const highs = [...ends, high];
  const stretches = lows.map((from, i) => ({ from, to: highs[i]! }));
  return closer
    ? stretches.reverse().map(({ from, to }) => ({ near: to, far: from }))
    : stretches.map(({ from, to }) => ({ near: from, far: to }));
}
