// Allowable load against span for one profile: one line per gauge, the demand as a level line, the
// chosen point marked by its shape and in words, and for each gauge the longest span that serves.

import { scaleLinear } from 'd3-scale';
import {
  line as lineThrough,
  symbol,
  symbolCircle,
  symbolDiamond,
  symbolSquare,
  symbolTriangle,
  symbolWye,
} from 'd3-shape';
import { spanAxes, type Frame, type Scale } from './span-axes.js';
import { loadAt, longestSpan, type GaugeLine } from './span-reading.js';
import {
  FILLS,
  line,
  n,
  path,
  sheet,
  STROKES,
  text,
  widthOf,
  wrapped,
  type Drawing,
  type Point,
} from './svg.js';

export interface LoadAgainstSpanFacts {
  readonly title: string;
  readonly direction: 'inward' | 'uplift';
  /** Thickest first, each with its allowable loads in psf (magnitudes) by rising span. */
  readonly gauges: readonly GaugeLine[];
  /** Demand in psf, as a magnitude. */
  readonly demand_psf: number;
  readonly chosen: { readonly gauge: string; readonly span_in: number };
  /** Whether the chart's source permits values between its rows; else the next longer span counts. */
  readonly interpolation: boolean;
  readonly source: string;
}

const FRAME: Frame = [760, 420, 64, 210, 30, 56];
const [WIDTH, HEIGHT, LEFT, RIGHT, TOP, BOTTOM] = FRAME;
const DASHES = ['', '9 4', '3 3', '11 3 3 3', '1.5 3', '16 4'];
const SHAPES = [symbolCircle, symbolSquare, symbolTriangle, symbolDiamond, symbolWye];

export function loadAgainstSpan(facts: LoadAgainstSpanFacts): Drawing {
  const { gauges, demand_psf, chosen } = facts;
  const chosenLine = gauges.find(({ gauge }) => gauge === chosen.gauge);
  const capacity = chosenLine && loadAt(chosenLine, chosen.span_in, facts.interpolation);
  if (capacity === undefined)
    throw new Error(`no row gives ${chosen.gauge} at ${n(chosen.span_in)} in`);
  const spans = gauges.flatMap(({ points }) => points.map(({ span_in }) => span_in));
  const top = Math.max(demand_psf * 2.5, capacity * 1.25);
  const x = scaleLinear([Math.min(...spans), Math.max(...spans)], [LEFT + 16, WIDTH - RIGHT - 16]);
  const y = scaleLinear([0, top], [HEIGHT - BOTTOM, TOP]).nice(5);
  const breaks = gauges.map((each) => ({
    gauge: each.gauge,
    span: longestSpan(each, demand_psf, facts.interpolation),
  }));
  const finding = findingOf(facts, capacity);
  const load = `allowable ${facts.direction}`;
  const body = [
    ...spanAxes(FRAME, x, [...new Set(spans)], {
      scale: y,
      ticks: 5,
      words: `${load}, psf`,
      said: n,
    }),
    ...gauges.map((each, i) => gaugeLine(each, i, x, y)),
    ...legend(breaks, chosen.gauge),
    line([LEFT, y(demand_psf)], [WIDTH - RIGHT, y(demand_psf)], STROKES.bold),
    text([LEFT + 6, y(demand_psf) - 6], `demand ${n(demand_psf)} psf`, {
      size: 12,
      bold: true,
      rim: true,
    }),
    ...breakpoints(breaks, x, y(demand_psf)),
    chosenMark([x(chosen.span_in), y(capacity)]),
    text([x(chosen.span_in), y(capacity) - 16], 'chosen', {
      size: 12,
      bold: true,
      anchor: 'middle',
      rim: true,
    }),
    ...chosenKey(facts, capacity),
  ];
  return {
    svg: sheet(facts.title, finding, WIDTH, Math.max(HEIGHT, keyTop(gauges.length) + 116), body),
    title: facts.title,
    finding,
    table: tableOf(facts),
  };
}

const tableOf = ({
  gauges,
  direction,
  demand_psf,
  source,
}: LoadAgainstSpanFacts): Drawing['table'] => ({
  columns: ['Gauge', 'Span, in', `Allowable ${direction}, psf`, 'Demand, psf', 'Outcome', 'Source'],
  rows: gauges.flatMap(({ gauge, points }) =>
    points.map(({ span_in, load_psf }) => [
      gauge,
      n(span_in),
      n(load_psf),
      n(demand_psf),
      load_psf >= demand_psf ? 'bears it' : 'falls short',
      source,
    ]),
  ),
});

function findingOf(
  { chosen, demand_psf, direction }: LoadAgainstSpanFacts,
  capacity: number,
): string {
  const outcome = capacity >= demand_psf ? 'bears' : 'falls short of';
  return `${chosen.gauge} at ${n(chosen.span_in)} in is charted for ${n(capacity)} psf and ${outcome} the ${direction} demand of ${n(demand_psf)} psf.`;
}

/** The line and its rows; what lies above the frame is left out. */
function gaugeLine({ points }: GaugeLine, i: number, x: Scale, y: Scale): string {
  const inside = points.filter(({ load_psf }) => y(load_psf) >= TOP);
  const first = points.indexOf(inside[0] ?? points[0]!);
  const drawn: Point[] = inside.map(({ span_in, load_psf }): Point => [x(span_in), y(load_psf)]);
  const [before, next] = [points[first - 1], inside[0]];
  if (before && next) {
    const share = (y(next.load_psf) - TOP) / (y(next.load_psf) - y(before.load_psf));
    drawn.unshift([x(next.span_in) + share * (x(before.span_in) - x(next.span_in)), TOP]);
  }
  const d = lineThrough<Point>().digits(2)(drawn) ?? '';
  return (
    path(d, STROKES.ink, DASHES[i % DASHES.length]) +
    inside.map(({ span_in, load_psf }) => marker(i, [x(span_in), y(load_psf)])).join('')
  );
}

function marker(i: number, [x, y]: Point): string {
  const d = symbol(SHAPES[i % SHAPES.length], 42).digits(2)() ?? '';
  return `<path transform="translate(${n(x)} ${n(y)})" d="${d}" style="${FILLS.paper}"/>`;
}

interface Break {
  readonly gauge: string;
  readonly span: number | null;
}

/** What a gauge takes beside the chart: its name, its sheet, how far it bears the demand. */
const ENTRY = 52;
const keyTop = (gauges: number): number => TOP + 24 + gauges * ENTRY;

function legend(breaks: readonly Break[], chosen: string): readonly string[] {
  const left = WIDTH - RIGHT + 18;
  return breaks.flatMap(({ gauge, span }, i) => {
    const top = TOP + 12 + i * ENTRY;
    const [name = gauge, sheetOf = ''] = gauge.split(' (');
    const bears = span === null ? 'bears it at no span' : `bears it to ${n(span)} in`;
    return [
      path(`M${left} ${top}H${left + 40}`, STROKES.ink, DASHES[i % DASHES.length]),
      marker(i, [left + 20, top]),
      text([left + 48, top + 4], name, { size: 12, bold: gauge === chosen }),
      ...[sheetOf.replace(')', ''), bears]
        .filter((words) => words !== '')
        .map((words, k) => text([left + 48, top + 18 + k * 13], words, { size: 11, quiet: true })),
    ];
  });
}

/** Between the words of two gauges on one line. */
const CLEAR = 8;

/** A tick where each gauge stops bearing the demand, its words below, clear of the words before. */
function breakpoints(breaks: readonly Break[], x: Scale, y: number): readonly string[] {
  const spans = [...new Set(breaks.flatMap(({ span }) => (span === null ? [] : [span])))].sort(
    (a, b) => a - b,
  );
  const ends: number[] = [];
  return spans.flatMap((span) => {
    const who = breaks
      .filter((each) => each.span === span)
      .map(({ gauge }) => gauge.split(' (')[0]);
    const words = `${who.join(', ')} to ${n(span)} in`;
    const half = widthOf(words, 11) / 2;
    const free = ends.findIndex((end) => end + CLEAR < x(span) - half);
    const level = free < 0 ? ends.length : free;
    ends[level] = x(span) + half;
    const below = y + 20 + level * 15;
    return [
      line([x(span), y - 6], [x(span), below - 10], STROKES.ink),
      text([x(span), below], words, { size: 11, anchor: 'middle', rim: true }),
    ];
  });
}

function chosenMark([x, y]: Point): string {
  return (
    `<circle cx="${n(x)}" cy="${n(y)}" r="10" style="${STROKES.bold}"/>` +
    `<circle cx="${n(x)}" cy="${n(y)}" r="3.2" style="${FILLS.ink}"/>`
  );
}

/** Beside the chart: the chosen point in words, and how values between rows are read. */
function chosenKey(
  { gauges, chosen, demand_psf, interpolation }: LoadAgainstSpanFacts,
  capacity: number,
): readonly string[] {
  const left = WIDTH - RIGHT + 18;
  const top = keyTop(gauges.length);
  const used = (demand_psf / capacity).toFixed(2);
  const lines = [
    `${chosen.gauge.split(' (')[0]} at ${n(chosen.span_in)} in:`,
    `charted ${n(capacity)} psf`,
    `demand ${n(demand_psf)} psf`,
    `utilization ${used}`,
  ];
  const reading = interpolation
    ? 'Between rows the source permits a straight line.'
    : 'Between rows the next longer span counts.';
  return [
    chosenMark([left + 20, top]),
    ...lines.map((words, i) =>
      text([left + 48, top + 4 + i * 16], words, { size: 11.5, bold: i === 0 }),
    ),
    ...wrapped(reading, 28).map((words, i) =>
      text([left, top + 80 + i * 14], words, { size: 11, quiet: true }),
    ),
  ];
}
