// The pressure of each zone at one effective wind area: coefficients, the equation of the edition
// and the 16 psf minimum, with steps.

import { step, type Step } from '../check.js';
import { asce, type AsceEdition, type Citation } from '../sources.js';
import { psf, type Feet, type Psf, type SquareFeet } from '../units.js';
import { negativeOf, onCurve } from './curves.js';
import { curveTexts, textsOf } from './curve-texts.js';
import { CLAUSES } from './exposure.table.js';
import { WALL_NEGATIVE, WALL_POSITIVE, wallFigureName } from './figures-all-editions.table.js';
import { negativeAt, positiveAt, zonesOf, type Coefficients } from './roof-figure.js';
import { KD } from './velocity-pressure.js';

export type Part = 'roof' | 'overhang' | 'wall';

export interface ZonePressure {
  /** The standard's own zone name in that edition and figure. */
  readonly zone: string;
  readonly part: Part;
  readonly area: SquareFeet;
  readonly GCpPositive: number;
  readonly GCpNegative: number;
  /** Toward the surface, positive. */
  readonly inward: Psf;
  /** Away from the surface, negative. */
  readonly outward: Psf;
  /** Where the 16 psf minimum stands instead of the calculated pressure. */
  readonly minimumGoverns: 'none' | 'inward' | 'outward' | 'both';
}

/** Net pressure of cladding, either direction, strength level: 30.2.2. */
export const LEAST_PSF = psf(16);

const WALL_TEXTS = textsOf(WALL_NEGATIVE);

/** What is the same for all zones and areas of one surface. */
export interface PressureBasis {
  readonly edition: AsceEdition;
  /** q_h, in 7-22 times K_d. */
  readonly q: number;
  readonly GCpi: number;
  readonly coefficients: Coefficients;
  readonly overhang: boolean;
  readonly wallPositiveAtEdge: boolean;
  readonly cites: { readonly roof: Citation; readonly wall: Citation; readonly p: Citation };
  readonly overhangCite: Citation;
}

export function pressureBasis(
  edition: AsceEdition,
  qh: Psf,
  GCpi: number,
  coefficients: Coefficients,
  with_: { readonly overhang: boolean; readonly wallPositiveAtEdge: boolean },
): PressureBasis {
  return {
    edition,
    q: edition === '7-22' ? qh * KD : qh,
    GCpi,
    coefficients,
    ...with_,
    cites: {
      roof: asce(edition, coefficients.name),
      wall: asce(edition, wallFigureName(edition)),
      p: asce(edition, `${CLAUSES[edition].p}, 30.2.2`),
    },
    overhangCite: asce(edition, CLAUSES[edition].overhang),
  };
}

/** p = q [(GC_p) - (GC_pi)] with the sign of GC_pi that counts; q of 7-22 includes K_d. psf. */
export const inwardPressure = (q: number, GCp: number, GCpi: number): Psf => psf(q * (GCp + GCpi));
export const outwardPressure = (q: number, GCp: number, GCpi: number): Psf => psf(q * (GCp - GCpi));

/** Adds every zone of roof, overhang and wall at one effective wind area. */
export function zonesAt(
  basis: PressureBasis,
  area: SquareFeet,
  zones: ZonePressure[],
  steps: Step[],
): void {
  const { coefficients: c, cites } = basis;
  const wallPositive = onCurve(WALL_POSITIVE, area);
  const positive = positiveAt(c, area);
  const roofZones = zonesOf(c.low, 'negative');
  const roofText = curveTexts(c, 'negative');
  for (let i = 0; i < roofZones.length; i++) {
    const zone = roofZones[i]!.zone;
    const edge = basis.wallPositiveAtEdge && (zone === '2' || zone === '3');
    const GCp = {
      positive: edge ? wallPositive : positive,
      negative: negativeAt(c, 'negative', i, area),
    };
    add(basis, zones, steps, {
      zone,
      part: 'roof',
      area,
      GCp,
      text: roofText[i]!,
      cite: cites.roof,
    });
  }
  if (basis.overhang) overhangsAt(basis, area, wallPositive, positive, zones, steps);
  for (let i = 0; i < WALL_NEGATIVE.length; i++) {
    const wall = WALL_NEGATIVE[i]!;
    const GCp = { positive: wallPositive, negative: negativeOf(wall, area) };
    add(basis, zones, steps, {
      zone: wall.zone,
      part: 'wall',
      area,
      GCp,
      text: WALL_TEXTS[i]!,
      cite: cites.wall,
    });
  }
}

/** Net of top and soffit. Inward takes the roof's positive; nothing beneath counts against it. */
function overhangsAt(
  basis: PressureBasis,
  area: SquareFeet,
  wallPositive: number,
  positive: number,
  zones: ZonePressure[],
  steps: Step[],
): void {
  const { coefficients: c } = basis;
  const sum = c.low.overhang === 'roof-minus-wall';
  const kind = sum ? 'negative' : 'overhang';
  const list = zonesOf(c.low, kind);
  const text = curveTexts(c, kind);
  for (let i = 0; i < list.length; i++) {
    const negative = negativeAt(c, kind, i, area) - (sum ? wallPositive : 0);
    add(basis, zones, steps, {
      zone: list[i]!.zone,
      part: 'overhang',
      area,
      GCp: { positive, negative },
      text: sum ? 'roof zone (negative) minus wall (positive) at the same area' : text[i]!,
      cite: sum ? basis.overhangCite : basis.cites.roof,
    });
  }
}

interface ZoneEntry {
  readonly zone: string;
  readonly part: Part;
  readonly area: SquareFeet;
  readonly GCp: { readonly positive: number; readonly negative: number };
  readonly text: string;
  readonly cite: Citation;
}

function add(basis: PressureBasis, zones: ZonePressure[], steps: Step[], entry: ZoneEntry): void {
  const { zone, part, area, GCp, text, cite } = entry;
  const { q, GCpi, cites } = basis;
  const inward = inwardPressure(q, GCp.positive, GCpi);
  const outward = outwardPressure(q, GCp.negative, GCpi);
  const low = inward < LEAST_PSF;
  const weak = outward > -LEAST_PSF;
  zones.push({
    zone,
    part,
    area,
    GCpPositive: GCp.positive,
    GCpNegative: GCp.negative,
    inward: low ? LEAST_PSF : inward,
    outward: weak ? psf(-LEAST_PSF) : outward,
    minimumGoverns: low ? (weak ? 'both' : 'inward') : weak ? 'outward' : 'none',
  });
  const of = `${part} zone ${zone}, ${area} ft2`;
  const equation = basis.edition === '7-22' ? 'q_h K_d' : 'q_h';
  steps.push(
    step(`+GC_p (${of})`, GCp.positive, '', 'positive curve, linear in log10 A', cite),
    step(`-GC_p (${of})`, GCp.negative, '', text, cite),
    step(
      `p inward (${of})`,
      low ? LEAST_PSF : inward,
      'psf',
      low ? `16 psf minimum; calculated ${inward.toFixed(2)}` : `${equation} [(+GC_p) - (-GC_pi)]`,
      cites.p,
    ),
    step(
      `p outward (${of})`,
      weak ? -LEAST_PSF : outward,
      'psf',
      weak
        ? `16 psf minimum; calculated ${outward.toFixed(2)}`
        : `${equation} [(-GC_p) - (+GC_pi)]`,
      cites.p,
    ),
  );
}

/** Adds the steps that stand once for the surface. */
export function surfaceSteps(steps: Step[], edition: AsceEdition, GCpi: number, a: Feet): void {
  const figure = wallFigureName(edition);
  steps.push(
    step('GC_pi', GCpi, '', 'plus and minus, whichever adds', asce(edition, CLAUSES[edition].GCpi)),
    step('a', a, 'ft', 'min(0.1 B, 0.4 h), not less than max(0.04 B, 3)', asce(edition, figure)),
  );
}
