// The wind zones of a roof or wall, to scale in feet, with the width of each strip and its
// pressures inward and outward. Denser hatching is stronger uplift.

import { scaleLinear } from 'd3-scale';
import { feetInches } from './feet-inches.js';
import { boundsOf, hatched, middle, type Bounds } from './hatching.js';
import {
  box,
  FILLS,
  line,
  polygon,
  sheet,
  STROKES,
  text,
  widthOf,
  type Drawing,
  type Point,
} from './svg.js';

export interface ZonePlanFacts {
  /** "Wind zones of the main building, roof". */
  readonly title: string;
  /** Convex pieces in feet, y up. All of one view: the plan, or one face of wall. */
  readonly pieces: readonly {
    readonly part: string;
    readonly zone: string;
    readonly polygon: readonly Point[];
    readonly width_ft?: number;
  }[];
  /** Decimal text in psf; outward is negative. */
  readonly pressures: readonly ZonePressures[];
  /** "strength level" or "ASD". */
  readonly basis: string;
  readonly source: string;
}

export interface ZonePressures {
  readonly part: string;
  readonly zone: string;
  readonly inward_psf: string;
  readonly outward_psf: string;
}

interface Zone extends ZonePressures {
  readonly widths: string;
  readonly level: number;
}

const [WIDTH, KEY, MARGIN, ROW] = [760, 250, 34, 46];

/** Throws where a piece's zone has no pressures: a plan without a number is not drawn. */
export function zonePlan(facts: ZonePlanFacts): Drawing {
  const zones = zonesOf(facts);
  const bounds = boundsOf(facts.pieces.flatMap((piece) => piece.polygon));
  const across = bounds.right - bounds.left;
  const up = bounds.high - bounds.low;
  const scale = Math.min((WIDTH - KEY - 2 * MARGIN) / across, 420 / up);
  const x = scaleLinear([bounds.left, bounds.right], [MARGIN, MARGIN + across * scale]);
  const y = scaleLinear([bounds.high, bounds.low], [MARGIN, MARGIN + up * scale]);
  const placed = facts.pieces.map((piece) => ({
    zone: zoneOf(zones, piece),
    polygon: piece.polygon.map(([px, py]): Point => [x(px), y(py)]),
  }));
  const height = Math.max(MARGIN + up * scale + 64, MARGIN + zones.length * ROW + 30);
  const strongest = zones.reduce((a, b) => (Number(b.outward_psf) < Number(a.outward_psf) ? b : a));
  const finding = `Uplift is strongest in zone ${strongest.zone} (${strongest.part}): ${strongest.outward_psf} psf, ${facts.basis}.`;
  const body = [
    ...placed.map(
      (piece) => polygon(piece.polygon, FILLS.paper) + hatched(piece.polygon, piece.zone.level),
    ),
    ...placed.map((piece) => polygon(piece.polygon, STROKES.ink)),
    ...placed.map((piece) => zoneLabel(piece.polygon, piece.zone.zone)),
    dimensions(bounds, x, y),
    ...zones.map((zone, i) => keyRow(zone, MARGIN + i * ROW)),
    text([WIDTH - KEY, MARGIN + zones.length * ROW + 12], `Pressures: ${facts.basis}`, {
      size: 11,
      quiet: true,
    }),
  ];
  return {
    svg: sheet(facts.title, finding, WIDTH, height, body),
    title: facts.title,
    finding,
    table: {
      columns: ['Zone', 'Part', 'Strip width', 'Inward, psf', 'Uplift, psf', 'Basis', 'Source'],
      rows: zones.map((each) => [
        each.zone,
        each.part,
        each.widths,
        each.inward_psf,
        each.outward_psf,
        facts.basis,
        facts.source,
      ]),
    },
  };
}

function zonesOf({ pieces, pressures }: ZonePlanFacts): readonly Zone[] {
  const shown = pressures.filter(({ zone, part }) =>
    pieces.some((each) => each.zone === zone && each.part === part),
  );
  if (shown.length === 0) throw new Error('the plan has no zone with pressures');
  const strengths = [...new Set(shown.map(({ outward_psf }) => Number(outward_psf)))].sort(
    (a, b) => b - a,
  );
  return shown.map((each) => ({
    ...each,
    level: Math.ceil(
      (5 * strengths.indexOf(Number(each.outward_psf))) / Math.max(1, strengths.length - 1),
    ),
    widths: widthsOf(pieces.filter(({ zone, part }) => zone === each.zone && part === each.part)),
  }));
}

function widthsOf(pieces: ZonePlanFacts['pieces']): string {
  const widths = [
    ...new Set(
      pieces.flatMap(({ width_ft }) => (width_ft === undefined ? [] : [feetInches(width_ft * 12)])),
    ),
  ];
  return widths.length === 0 ? 'field' : widths.join(' and ');
}

function zoneOf(
  zones: readonly Zone[],
  piece: { readonly zone: string; readonly part: string },
): Zone {
  const found = zones.find(({ zone, part }) => zone === piece.zone && part === piece.part);
  if (!found) throw new Error(`zone ${piece.zone} (${piece.part}) is drawn but has no pressures`);
  return found;
}

/** The zone's name, on a patch of paper, where the piece has room for it. */
function zoneLabel(points: readonly Point[], name: string): string {
  const { left, right, low, high } = boundsOf(points);
  const size = Math.min(13, (right - left) / (name.length * 0.62 + 0.4), (high - low) * 0.9);
  if (size < 6) return '';
  const [cx, cy] = middle(points);
  const width = widthOf(name, size) + 4;
  return (
    box(cx - width / 2, cy - size * 0.62, width, size * 1.24, FILLS.blank) +
    text([cx, cy + size * 0.36], name, { size, anchor: 'middle', bold: true })
  );
}

type Scale = (value: number) => number;

/** Overall length and width in feet and inches, outside the plan. */
function dimensions({ left, right, low, high }: Bounds, x: Scale, y: Scale): string {
  const [below, beside] = [y(low) + 18, x(left) - 14];
  const tick = (at: Point, turned: boolean): string =>
    line(
      [at[0] - (turned ? 4 : 0), at[1] - (turned ? 0 : 4)],
      [at[0] + (turned ? 4 : 0), at[1] + (turned ? 0 : 4)],
      STROKES.line,
    );
  return [
    line([x(left), below], [x(right), below], STROKES.line),
    tick([x(left), below], false),
    tick([x(right), below], false),
    text([(x(left) + x(right)) / 2, below + 16], feetInches((right - left) * 12), {
      size: 11,
      anchor: 'middle',
    }),
    line([beside, y(low)], [beside, y(high)], STROKES.line),
    tick([beside, y(low)], true),
    tick([beside, y(high)], true),
    text([beside - 5, (y(low) + y(high)) / 2], feetInches((high - low) * 12), {
      size: 11,
      anchor: 'middle',
      turned: 90,
    }),
  ].join('');
}

function keyRow(zone: Zone, top: number): string {
  const left = WIDTH - KEY;
  const swatch: readonly Point[] = [
    [left, top],
    [left + 34, top],
    [left + 34, top + 30],
    [left, top + 30],
  ];
  const strip = zone.widths === 'field' ? 'field' : `strip ${zone.widths}`;
  return [
    polygon(swatch, FILLS.paper),
    hatched(swatch, zone.level),
    polygon(swatch, STROKES.ink),
    text([left + 44, top + 11], `Zone ${zone.zone}, ${zone.part}: ${strip}`, {
      size: 12,
      bold: true,
    }),
    text([left + 44, top + 27], `uplift ${zone.outward_psf}, inward ${zone.inward_psf} psf`, {
      size: 12,
    }),
  ].join('');
}
