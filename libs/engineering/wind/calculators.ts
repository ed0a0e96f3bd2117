// The calculators of the topic: `wind` and `velocity-pressure`.

import { calculator, STRUCTURE_CAUTION, type Calculator } from '../calculator.js';
import { result } from '../check.js';
import type { NumberField } from '../input.js';
import { ASCE_EDITIONS } from '../sources.js';
import { degrees, feet, mph, squareFeet } from '../units.js';
import { ENCLOSURES, EXPOSURES, type Enclosure, type Exposure } from './exposure.table.js';
import { ROOF_SHAPES } from './roof-figure.js';
import { windOnSurface } from './surface.js';
import { HIGHEST_FT, velocityPressure } from './velocity-pressure.js';

const SITE = {
  edition: { kind: 'choice', of: ASCE_EDITIONS, says: 'edition of ASCE/SEI 7' },
  V_mph: {
    kind: 'number',
    unit: 'mph',
    above: 0,
    most: 300,
    says: 'basic wind speed for the risk category, strength level',
  },
  exposure: { kind: 'choice', of: EXPOSURES, says: 'exposure category' },
  h_ft: {
    kind: 'number',
    unit: 'ft',
    above: 0,
    most: HIGHEST_FT,
    says: 'mean roof height; the eave height may be entered where the slope is 10 degrees or less',
  },
  Kzt: {
    kind: 'number',
    unit: '',
    least: 1,
    most: 3.2,
    optional: true,
    says: 'topographic factor; 1 unless entered',
  },
  elevation_ft: {
    kind: 'number',
    unit: 'ft',
    least: -500,
    most: 15000,
    optional: true,
    says: 'ground elevation above sea level; 0 (K_e 1) unless entered',
  },
} as const;

/** A default is a recorded assumption. */
function assumed(input: { readonly Kzt?: number; readonly elevation_ft?: number }): string[] {
  return [
    ...(input.Kzt === undefined ? ['K_zt is assumed 1: flat ground, none was entered.'] : []),
    ...(input.elevation_ft === undefined
      ? ['Elevation is assumed 0 ft (K_e 1): none was entered.']
      : []),
  ];
}

const velocity = calculator({
  name: 'velocity-pressure',
  says: 'Velocity pressure at mean roof height, strength level.',
  input: SITE,
  output: {
    Kz: 'velocity pressure exposure coefficient',
    Ke: 'ground elevation factor',
    Kd: 'directionality factor; in 7-22 it is not in q_h but in the pressure',
    qh_psf: 'velocity pressure, psf',
  },
  cautions: [STRUCTURE_CAUTION],
  run: (input) => {
    const { Kz, Ke, Kd, qh, steps, notes } = velocityPressure({
      edition: input.edition as (typeof ASCE_EDITIONS)[number],
      V: mph(input.V_mph),
      exposure: input.exposure as Exposure,
      h: feet(input.h_ft),
      Kzt: input.Kzt ?? 1,
      elevation: feet(input.elevation_ft ?? 0),
    });
    return result({ Kz, Ke, Kd, qh_psf: qh }, steps, [...assumed(input), ...notes]);
  },
});

const lengthField = (says: string): NumberField & { readonly kind: 'number' } => ({
  kind: 'number',
  unit: 'ft',
  above: 0,
  most: 5000,
  says,
});

const WIND_INPUT = {
  ...SITE,
  enclosure: { kind: 'choice', of: ENCLOSURES, says: 'enclosure classification' },
  roof: {
    kind: 'group',
    says: 'the roof and the plan of the building',
    fields: {
      shape: { kind: 'choice', of: ROOF_SHAPES, says: 'roof shape' },
      theta_deg: {
        kind: 'number',
        unit: 'degrees',
        least: 0,
        most: 45.000001,
        says: 'roof slope; at most 45, monoslope 30, flat 7',
      },
      width_ft: lengthField('least horizontal dimension, without overhangs'),
      length_ft: lengthField('the other horizontal dimension, not less than width_ft'),
      overhang: { kind: 'flag', says: 'whether the roof overhangs the walls' },
    },
  },
  areas_ft2: {
    kind: 'list',
    least: 1,
    most: 1000,
    of: { kind: 'number', unit: 'ft2', above: 0, says: 'effective wind area' },
    says: 'effective wind areas: of a panel span x max(cover, span/3)',
  },
  Kz: {
    kind: 'number',
    unit: '',
    above: 0,
    most: 2.5,
    optional: true,
    says: 'exposure coefficient, where it is entered instead of calculated',
  },
} as const;

const wind = calculator({
  name: 'wind',
  says: 'Wind pressure on roof and wall cladding by zone, h <= 60 ft, strength level.',
  input: WIND_INPUT,
  output: {
    Kz: 'velocity pressure exposure coefficient',
    Kd: 'directionality factor',
    Ke: 'ground elevation factor',
    qh_psf: 'velocity pressure at mean roof height, psf; in 7-22 without K_d',
    GCpi: 'internal pressure coefficient, plus and minus',
    a_ft: 'dimension a, ft',
    zones:
      'list: zone, part (roof, overhang, wall), area_ft2, GCp_pos, GCp_neg, inward_psf, ' +
      'outward_psf, minimum_governs (none, inward, outward, both: the 16 psf minimum)',
  },
  cautions: [STRUCTURE_CAUTION],
  run: (input) => {
    const outcome = windOnSurface({
      edition: input.edition as (typeof ASCE_EDITIONS)[number],
      V: mph(input.V_mph),
      exposure: input.exposure as Exposure,
      h: feet(input.h_ft),
      Kzt: input.Kzt ?? 1,
      elevation: feet(input.elevation_ft ?? 0),
      enclosure: input.enclosure as Enclosure,
      roof: {
        shape: input.roof.shape as (typeof ROOF_SHAPES)[number],
        theta: degrees(input.roof.theta_deg),
        width: feet(input.roof.width_ft),
        length: feet(input.roof.length_ft),
        overhang: input.roof.overhang,
      },
      areas: input.areas_ft2.map(squareFeet),
      ...(input.Kz === undefined ? {} : { Kz: input.Kz }),
    });
    if (!outcome.ok) return outcome;
    const { Kz, Kd, Ke, qh, GCpi, a, zones } = outcome.value;
    const listed = zones.map((z) => ({
      zone: z.zone,
      part: z.part,
      area_ft2: z.area,
      GCp_pos: z.GCpPositive,
      GCp_neg: z.GCpNegative,
      inward_psf: z.inward,
      outward_psf: z.outward,
      minimum_governs: z.minimumGoverns,
    }));
    const value = { Kz, Kd, Ke, qh_psf: qh, GCpi, a_ft: a, zones: listed };
    return result(value, outcome.steps, [...assumed(input), ...outcome.notes]);
  },
});

export const windCalculators: readonly Calculator[] = [wind, velocity];
