// A load chart and the calculation beside it: the difference in percent of the chart against span, one
// line per gauge. The chart is the level line at 0; above it the calculation bears more, below less.

import { scaleLinear } from 'd3-scale';
import { line as lineThrough, symbol, symbolCircle, symbolDiamond, symbolSquare } from 'd3-shape';
import { spanAxes, type Frame, type Scale } from './span-axes.js';
import { FILLS, line, n, path, sheet, STROKES, text, wrapped, type Drawing } from './svg.js';

export interface ChartDifferenceFacts {
  readonly title: string;
  readonly direction: 'inward' | 'uplift';
  /** Thickest first; magnitudes in psf, by rising span. */
  readonly gauges: readonly ComparedGauge[];
}

export interface ComparedGauge {
  /** "24 gauge (0.0236 in, SS 50 Class 1)". */
  readonly gauge: string;
  readonly points: readonly {
    readonly span_in: number;
    readonly chart_psf: number;
    readonly calculated_psf: number;
    /** Calculated against chart, percent of the chart. */
    readonly difference: number;
    /** What governs the calculation. */
    readonly limit_state: string;
  }[];
}

const FRAME: Frame = [760, 380, 64, 230, 30, 56];
const [WIDTH, HEIGHT, LEFT, RIGHT, TOP, BOTTOM] = FRAME;
const DASHES = ['', '9 4', '3 3', '11 3 3 3', '1.5 3'];
const SHAPES = [symbolCircle, symbolSquare, symbolDiamond];

/** Undefined where nothing can be compared. */
export function chartDifference(facts: ChartDifferenceFacts): Drawing | undefined {
  const { title, gauges, direction } = facts;
  const points = gauges.flatMap((each) => each.points);
  if (points.length === 0) return undefined;
  const spans = [...new Set(points.map(({ span_in }) => span_in))].sort((a, b) => a - b);
  const differences = points.map(({ difference }) => difference);
  const [low, high] = [Math.min(-5, ...differences), Math.max(5, ...differences)];
  const x = scaleLinear([spans[0]!, spans.at(-1)!], [LEFT + 16, WIDTH - RIGHT - 16]);
  const y = scaleLinear([low, high], [HEIGHT - BOTTOM, TOP]).nice(6);
  const finding = findingOf(facts);
  const body = [
    ...spanAxes(FRAME, x, spans, {
      scale: y,
      ticks: 6,
      words: 'calculated against chart, %',
      said: signed,
    }),
    line([LEFT, y(0)], [WIDTH - RIGHT, y(0)], STROKES.bold),
    text([LEFT + 6, y(0) - 6], 'the chart', { size: 12, bold: true, rim: true }),
    ...gauges.flatMap(({ points: own }, i) => gaugeLine(own, i, x, y)),
    ...legend(gauges),
  ];
  return {
    svg: sheet(title, finding, WIDTH, HEIGHT, body),
    title,
    finding,
    table: {
      columns: [
        'Gauge',
        'Span, in',
        `Chart ${direction}, psf`,
        `Calculated ${direction}, psf`,
        'Difference, %',
        'Smaller',
        'Governs the calculation',
      ],
      rows: gauges.flatMap(({ gauge, points: own }) =>
        own.map((each) => [
          gauge,
          n(each.span_in),
          n(each.chart_psf),
          n(each.calculated_psf),
          signed(each.difference),
          each.difference === 0 ? 'neither' : each.difference > 0 ? 'chart' : 'calculated',
          each.limit_state,
        ]),
      ),
    },
  };
}

/** "-12.3", "+4", "0". */
const signed = (percent: number): string => `${percent > 0 ? '+' : ''}${n(percent)}`;

function findingOf({ gauges, direction }: ChartDifferenceFacts): string {
  const all = gauges.flatMap(({ gauge, points }) => points.map((each) => ({ gauge, ...each })));
  const [first = all[0]!] = all;
  const least = all.reduce((a, b) => (b.difference < a.difference ? b : a), first);
  const most = all.reduce((a, b) => (b.difference > a.difference ? b : a), first);
  const at = ({ gauge, span_in, difference }: typeof first): string =>
    `${n(Math.abs(difference))} % (${gauge.split(' (')[0]} at ${n(span_in)} in)`;
  const under = least.difference < 0 ? `up to ${at(least)} under the chart` : '';
  const over = most.difference > 0 ? `up to ${at(most)} over it` : '';
  if (!under && !over) return `The calculated ${direction} load is the chart's at every span.`;
  if (!under) return `The calculated ${direction} load is ${over.replace('it', 'the chart')}.`;
  return `The calculated ${direction} load is ${under}${over ? `, and ${over}` : ''}.`;
}

type Compared = ComparedGauge['points'][number];

function gaugeLine(points: readonly Compared[], i: number, x: Scale, y: Scale): readonly string[] {
  const at = points.map(
    ({ span_in, difference }) => [x(span_in), y(difference)] as [number, number],
  );
  return [
    path(lineThrough().digits(2)(at) ?? '', STROKES.ink, DASHES[i % DASHES.length]),
    ...at.map((point) => marker(i, point)),
  ];
}

function marker(i: number, [x, y]: readonly [number, number]): string {
  const d = symbol(SHAPES[i % SHAPES.length], 38).digits(2)() ?? '';
  return `<path transform="translate(${n(x)} ${n(y)})" d="${d}" style="${FILLS.paper}"/>`;
}

function legend(gauges: readonly ComparedGauge[]): readonly string[] {
  const left = WIDTH - RIGHT + 18;
  return gauges.flatMap(({ gauge }, i) => {
    const top = TOP + 12 + i * 46;
    const [name = gauge, rest = ''] = gauge.split(' (');
    return [
      path(`M${left} ${top}H${left + 40}`, STROKES.ink, DASHES[i % DASHES.length]),
      marker(i, [left + 20, top]),
      text([left + 48, top + 4], name, { size: 12 }),
      ...wrapped(rest.replace(')', ''), 26).map((words, k) =>
        text([left + 48, top + 18 + k * 12], words, { size: 11, quiet: true }),
      ),
    ];
  });
}
