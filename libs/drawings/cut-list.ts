// The cut list drawn on the roof plane: every panel strip with its piece and length, to scale.

import { scaleLinear } from 'd3-scale';
import { feetInches } from './feet-inches.js';
import { boundsOf, hatched, middle } from './hatching.js';
import { FILLS, polygon, sheet, STROKES, text, widthOf, type Drawing, type Point } from './svg.js';

export interface CutListFacts {
  readonly title: string;
  /** In the plane of the roof, feet: x along the eave, y up the slope. */
  readonly outline: readonly Point[];
  readonly openings: readonly { readonly name: string; readonly polygon: readonly Point[] }[];
  /** From the starting edge onward. */
  readonly strips: readonly Strip[];
  /** Kinds of the sides, written along them outside the plane; then named in the table too. */
  readonly sides?: readonly Side[];
}

export interface Side {
  readonly from: Point;
  readonly to: Point;
  readonly kind: string;
  readonly length_in: number;
}

export interface Strip {
  /** The piece's mark on the order: "A", "B12". Equal marks have equal lengths. */
  readonly mark: string;
  readonly polygon: readonly Point[];
  /** Where the piece goes round an opening: the other parts that it covers. */
  readonly also?: readonly (readonly Point[])[];
  readonly length_in: number;
  /** From below, where pieces lie end to end: another course has another label. */
  readonly course?: number;
}

const [WIDTH, MARGIN, TALLEST] = [760, 30, 340];

export function cutList(facts: CutListFacts): Drawing {
  const { title, outline, openings, strips, sides = [] } = facts;
  const { left, right, low, high } = boundsOf([...outline, ...strips.flatMap(partsOf).flat()]);
  const scale = Math.min((WIDTH - 2 * MARGIN) / (right - left), TALLEST / (high - low));
  const x = scaleLinear([left, right], [MARGIN, MARGIN + (right - left) * scale]);
  const y = scaleLinear([high, low], [MARGIN, MARGIN + (high - low) * scale]);
  const placed = (points: readonly Point[]): Point[] =>
    points.map(([px, py]): Point => [x(px), y(py)]);
  const rows = pieces(strips);
  const height = MARGIN + (high - low) * scale + 44;
  const finding = findingOf(rows, strips);
  const body = [
    ...strips.flatMap(partsOf).map((part) => polygon(placed(part), STROKES.line)),
    ...openings.map(
      (each) => polygon(placed(each.polygon), FILLS.paper) + openingHatch(placed(each.polygon)),
    ),
    polygon(placed(outline), STROKES.bold),
    ...runs(strips).map((run) => runLabel(run, placed)),
    ...sides.map((side) => sideLabel(side, outline, placed)),
    ...openings.map((each) =>
      text(middle(placed(each.polygon)), each.name, { size: 11, anchor: 'middle', rim: true }),
    ),
    text(
      [x((left + right) / 2), height - 10],
      `${sides.length > 0 ? 'low side' : 'eave side'}, ${feetInches((right - left) * 12)} over all`,
      { size: 11, anchor: 'middle' },
    ),
  ];
  return {
    svg: sheet(title, finding, WIDTH, height, body),
    title,
    finding,
    table: {
      columns: ['Piece', 'Count', 'Length'],
      rows: [
        ...rows.map((each) => [each.mark, String(each.count), feetInches(each.length_in)]),
        ...sideRows(sides),
      ],
    },
  };
}

const partsOf = ({ polygon: first, also = [] }: Strip): readonly (readonly Point[])[] => [
  first,
  ...also,
];

interface Piece {
  readonly mark: string;
  readonly length_in: number;
  readonly count: number;
}

/** Pieces by mark, longest first. Throws where one mark has two lengths. */
function pieces(strips: readonly Strip[]): readonly Piece[] {
  const byMark = new Map<string, Piece>();
  for (const { mark, length_in } of strips) {
    const known = byMark.get(mark);
    if (known && known.length_in !== length_in) throw new Error(`piece ${mark} has two lengths`);
    byMark.set(mark, { mark, length_in, count: (known?.count ?? 0) + 1 });
  }
  return [...byMark.values()].sort(
    (a, b) => b.length_in - a.length_in || a.mark.localeCompare(b.mark),
  );
}

function findingOf(rows: readonly Piece[], strips: readonly Strip[]): string {
  const [longest] = rows;
  if (!longest) return 'No piece is needed.';
  const lengths = rows.length === 1 ? 'all of one length' : `in ${rows.length} lengths`;
  return `${strips.length} pieces ${lengths}; the longest is ${longest.mark}, ${feetInches(longest.length_in)}.`;
}

/** Neighbors of the same piece share one label. */
function runs(strips: readonly Strip[]): readonly (readonly Strip[])[] {
  const found: Strip[][] = [];
  for (const strip of strips) {
    const last = found.at(-1);
    if (last?.[0]?.mark === strip.mark && last[0].course === strip.course) last.push(strip);
    else found.push([strip]);
  }
  return found;
}

/** Written across the run where there is room, else up the strip from its foot; the mark at least. */
function runLabel(run: readonly Strip[], placed: (points: readonly Point[]) => Point[]): string {
  const [first] = run;
  if (!first) return '';
  const length = feetInches(first.length_in);
  const words =
    run.length === 1 ? `${first.mark} ${length}` : `${run.length} × ${first.mark} ${length}`;
  const bounds = boundsOf(run.flatMap((strip) => placed(strip.polygon)));
  const [across, up] = [bounds.right - bounds.left, bounds.high - bounds.low];
  const center = (bounds.left + bounds.right) / 2;
  const flat = Math.min(13, (across - 4) / widthOf(words, 1), up / 2);
  if (flat >= 8) {
    const at: Point = [center, bounds.high - Math.min(up * 0.16, 40)];
    return text(at, words, { size: flat, anchor: 'middle', bold: true, rim: true });
  }
  const { foot, top } = upright(run, center, Math.min(6, across / 2.4), placed);
  const tall = Math.min(12, across * 0.85, (foot - top - 8) / widthOf(words, 1));
  if (tall >= 6)
    return text([center + tall * 0.36, foot - 5], words, {
      size: tall,
      turned: 90,
      rim: true,
    });
  const mark = Math.min(10, (across - 2) / widthOf(first.mark, 1), up - 4);
  return mark < 4
    ? ''
    : text([center, bounds.high - 3], first.mark, { size: mark, anchor: 'middle', rim: true });
}

/** The room between low and high side for a label of this half width, where the strip is cut aslant. */
function upright(
  run: readonly Strip[],
  center: number,
  half: number,
  placed: (points: readonly Point[]) => Point[],
): { readonly foot: number; readonly top: number } {
  const outlines = run.map((strip) => placed(strip.polygon));
  const heights = [center - half, center + half].map((x) =>
    outlines.flatMap((outline) => crossingsAt(outline, x)),
  );
  return {
    foot: Math.min(...heights.map((each) => Math.max(...each))),
    top: Math.max(...heights.map((each) => Math.min(...each))),
  };
}

function crossingsAt(outline: readonly Point[], x: number): readonly number[] {
  return outline.flatMap(([px, py], i) => {
    const [qx, qy] = outline[(i + 1) % outline.length] ?? [px, py];
    return px > x === qx > x ? [] : [py + ((x - px) / (qx - px)) * (qy - py)];
  });
}

const openingHatch = (points: readonly Point[]): string => hatched(points, 5);

/** Sides of one kind and length together, as they first come. */
function sideRows(sides: readonly Side[]): readonly (readonly string[])[] {
  const counts = new Map<string, number>();
  for (const { kind, length_in } of sides) {
    const key = `side: ${kind}|${feetInches(length_in)}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return [...counts].map(([key, count]) => {
    const [words = '', length = ''] = key.split('|');
    return [words, String(count), length];
  });
}

/** Along the side, on the outer hand of it; left out where there is no room. */
function sideLabel(
  { from, to, kind, length_in }: Side,
  outline: readonly Point[],
  placed: (points: readonly Point[]) => Point[],
): string {
  const [p, q] = placed([from, to]) as [Point, Point];
  const words = `${kind} ${feetInches(length_in)}`;
  const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
  if (length < widthOf(words, SIDE_SIZE)) return '';
  const center: Point = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
  const [nx, ny] = outward(p, q, placed(outline));
  // Read from left to right; the baseline lies nearer to the side above the words than below them.
  const turn = (Math.atan2(q[1] - p[1], q[0] - p[0]) * 180) / Math.PI;
  const turned = turn > 90 ? turn - 180 : turn <= -90 ? turn + 180 : turn;
  const up = -Math.cos((turned * Math.PI) / 180) * ny + Math.sin((turned * Math.PI) / 180) * nx;
  const away = up >= 0 ? 5 : 5 + SIDE_SIZE * 0.75;
  return text([center[0] + nx * away, center[1] + ny * away], words, {
    size: SIDE_SIZE,
    anchor: 'middle',
    turned: -turned,
    quiet: true,
    rim: true,
  });
}
const SIDE_SIZE = 10;

/** The unit normal that points out of the plane. */
function outward(p: Point, q: Point, outline: readonly Point[]): Point {
  const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
  const n: Point = [(q[1] - p[1]) / length, (p[0] - q[0]) / length];
  const probe: Point = [(p[0] + q[0]) / 2 + n[0] * 0.5, (p[1] + q[1]) / 2 + n[1] * 0.5];
  return inside(probe, outline) ? [-n[0], -n[1]] : n;
}

function inside([x, y]: Point, outline: readonly Point[]): boolean {
  return outline.reduce((within, [px, py], i) => {
    const [qx, qy] = outline[(i + 1) % outline.length] ?? [px, py];
    const crosses = py > y !== qy > y && x < px + ((y - py) / (qy - py)) * (qx - px);
    return crosses ? !within : within;
  }, false);
}
