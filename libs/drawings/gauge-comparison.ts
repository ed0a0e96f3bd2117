// Every gauge side by side: its outcome in words, the check that governs, utilization as a short bar
// with its number, weight and price difference.

import { scaleLinear } from 'd3-scale';
import { box, FILLS, line, polygon, sheet, STROKES, text, wrapped, type Drawing } from './svg.js';

export interface GaugeComparisonFacts {
  readonly title: string;
  readonly options: readonly GaugeOption[];
}

export interface GaugeOption {
  /** "24 gauge (0.0236 in, SS 50)". */
  readonly name: string;
  readonly chosen: boolean;
  /** "chosen", "would pass", "ruled out", "not made", "no test", "not stocked". */
  readonly outcome: string;
  /** "zone 3, uplift of the tested assembly". */
  readonly governs: string | null;
  /** Decimal text, 1 is the limit; null where there is no number. */
  readonly utilization: string | null;
  /** "1.234 psf". */
  readonly weight: string;
  /** "$ 65.00 more", "same", "no price". */
  readonly price_difference: string;
}

const [WIDTH, ROW, TOP, BAR, BAR_WIDTH] = [760, 66, 34, 302, 150];
const MOST = 1.5;

export function gaugeComparison({ title, options }: GaugeComparisonFacts): Drawing {
  const height = TOP + options.length * ROW + 14;
  const x = scaleLinear([0, MOST], [BAR, BAR + BAR_WIDTH]).clamp(true);
  const finding = findingOf(options);
  const body = [
    ...heads(),
    ...options.map((option, i) => row(option, TOP + i * ROW, x)),
    text([x(1), TOP - 8], 'limit 1', { size: 10, anchor: 'middle' }),
  ];
  return {
    svg: sheet(title, finding, WIDTH, height, body),
    title,
    finding,
    table: {
      columns: [
        'Option',
        'Outcome',
        'Governing check',
        'Utilization',
        'Weight',
        'Price against the choice',
      ],
      rows: options.map((each) => [
        each.name,
        each.outcome,
        each.governs ?? 'none',
        each.utilization ?? 'no number',
        each.weight,
        each.price_difference,
      ]),
    },
  };
}

function findingOf(options: readonly GaugeOption[]): string {
  const chosen = options.find((each) => each.chosen);
  const others = options
    .filter((each) => !each.chosen)
    .map(({ name, outcome }) => `${name.split(' (')[0]} ${outcome}`);
  const rest = others.length === 0 ? 'no other is offered' : others.join(', ');
  if (!chosen) return `No option is chosen; ${rest}.`;
  const used =
    chosen.utilization === null
      ? 'without a number'
      : `used to ${chosen.utilization} of its capacity`;
  return `${chosen.name.split(' (')[0]} is chosen, ${used}; ${rest}.`;
}

function heads(): readonly string[] {
  const head = (x: number, words: string) => text([x, 18], words, { size: 11, quiet: true });
  return [
    head(12, 'gauge and outcome'),
    head(BAR, 'utilization'),
    head(BAR + BAR_WIDTH + 104, 'weight, price'),
  ];
}

function row(option: GaugeOption, top: number, x: (value: number) => number): string {
  const used = option.utilization === null ? null : Number(option.utilization);
  const right = BAR + BAR_WIDTH;
  const governs = wrapped(option.governs ?? 'no test or chart gives a number', 46);
  return [
    line([0, top - 2], [WIDTH, top - 2], STROKES.faint),
    option.chosen ? box(0, top + 2, 5, ROW - 8, FILLS.ink) : '',
    text([12, top + 18], option.name, { size: 12.5, bold: option.chosen }),
    text([12, top + 37], option.outcome, { size: 12, bold: option.chosen }),
    used === null
      ? text([BAR, top + 19], 'no number', { size: 12, quiet: true })
      : bar(used, top + 8, x),
    used === null
      ? ''
      : text([right + 10, top + 19], option.utilization ?? '', { size: 13, bold: true }),
    ...governs
      .slice(0, 2)
      .map((words, i) => text([BAR, top + 37 + i * 13], words, { size: 10.5, quiet: true })),
    text([right + 104, top + 18], option.weight, { size: 12 }),
    text([right + 104, top + 37], option.price_difference, { size: 12 }),
  ].join('');
}

/** Black up to the limit; over it the rest is left white, and past the frame an arrow goes on. */
function bar(used: number, top: number, x: (value: number) => number): string {
  const within = Math.min(used, 1);
  const parts = [
    line([x(0), top + 13.5], [x(1), top + 13.5], STROKES.line),
    box(x(0), top + 1, x(within) - x(0), 12, FILLS.ink),
  ];
  if (used > 1) parts.push(box(x(1), top + 1, x(used) - x(1), 12, FILLS.paper));
  if (used > MOST) {
    const end = x(MOST);
    parts.push(
      polygon(
        [
          [end - 8, top - 2],
          [end + 3, top + 7],
          [end - 8, top + 16],
        ],
        FILLS.ink,
      ),
    );
  }
  parts.push(line([x(1), top - 4], [x(1), top + 18], STROKES.ink));
  return parts.join('');
}
