// The calculator `snow`.

import { calculator, STRUCTURE_CAUTION, type Calculator } from '../calculator.js';
import type { Shape } from '../input.js';
import { readSnowRoof } from './read.js';
import { snowOnRoof } from './snow-on-roof.js';

const input = {
  edition: { kind: 'choice', of: ['7-10', '7-16', '7-22'], says: 'edition of ASCE/SEI 7' },
  pg_psf: {
    kind: 'number',
    unit: 'psf',
    least: 0,
    most: 1000,
    says: 'ground snow load, from its source',
  },
  pg_basis: {
    kind: 'choice',
    of: ['service-50yr', 'strength'],
    says: 'service-50yr for 7-10 and 7-16, strength for 7-22',
  },
  risk_category: { kind: 'choice', of: ['I', 'II', 'III', 'IV'], says: 'risk category' },
  Ce: {
    kind: 'number',
    unit: '',
    least: 0.7,
    most: 1.2,
    optional: true,
    says: 'exposure factor, or give terrain and roof_exposure',
  },
  Ct: {
    kind: 'number',
    unit: '',
    least: 0.85,
    most: 1.3,
    optional: true,
    says: 'thermal factor, or give thermal and R_roof',
  },
  terrain: { kind: 'choice', of: ['B', 'C', 'D'], optional: true, says: 'terrain category' },
  roof_exposure: {
    kind: 'choice',
    of: ['fully', 'partially', 'sheltered'],
    optional: true,
    says: 'exposure of the roof',
  },
  thermal: {
    kind: 'choice',
    of: [
      'heated',
      'just-above-freezing',
      'cold-ventilated',
      'unheated',
      'open-air',
      'freezer',
      'greenhouse',
    ],
    optional: true,
    says: 'thermal condition of the building',
  },
  R_roof: {
    kind: 'number',
    unit: 'h·ft²·°F/Btu',
    least: 0,
    optional: true,
    says: 'thermal resistance of the roof; also opens the slippery line of warm roofs',
  },
  ventilated: { kind: 'flag', optional: true, says: 'ventilated roof; not so unless said' },
  surface: {
    kind: 'choice',
    of: ['slippery-unobstructed', 'other'],
    says: 'other wherever snow guards, a step or a lower roof at the eave hold the snow',
  },
  roof: {
    kind: 'group',
    says: 'the surface that carries the snow',
    fields: {
      shape: { kind: 'choice', of: ['flat', 'gable', 'hip', 'monoslope'], says: 'roof shape' },
      rise_per_12: {
        kind: 'number',
        unit: 'in per 12',
        least: 0,
        optional: true,
        says: 'slope, or give theta_deg; a flat roof without either is level',
      },
      theta_deg: {
        kind: 'number',
        unit: 'deg',
        least: 0,
        below: 90,
        optional: true,
        says: 'slope',
      },
      W_ft: { kind: 'number', unit: 'ft', above: 0, says: 'eave to ridge, horizontal' },
    },
  },
  drift: {
    kind: 'group',
    optional: true,
    says: 'drift on this roof; in 7-22 also the place of W2 for unbalanced loads',
    fields: {
      lu_ft: { kind: 'number', unit: 'ft', above: 0, optional: true, says: 'upwind fetch' },
      h_step_ft: {
        kind: 'number',
        unit: 'ft',
        above: 0,
        optional: true,
        says: 'from this roof up to the edge of the higher roof',
      },
      kind: {
        kind: 'choice',
        of: ['leeward', 'windward', 'parapet'],
        optional: true,
        says: 'where the snow comes from',
      },
      lower_roof_ft: {
        kind: 'number',
        unit: 'ft',
        above: 0,
        optional: true,
        says: 'length of this, lower, roof',
      },
      parapet_ft: {
        kind: 'number',
        unit: 'ft',
        above: 0,
        optional: true,
        says: 'height of the parapet, at a step the one on the higher roof',
      },
      W2: {
        kind: 'number',
        unit: '',
        above: 0,
        most: 1,
        optional: true,
        says: 'winter wind parameter of 7-22, a fraction',
      },
      gamma_pcf: {
        kind: 'number',
        unit: 'pcf',
        least: 14,
        most: 30,
        optional: true,
        says: 'snow density where it is entered',
      },
    },
  },
  sliding: {
    kind: 'group',
    optional: true,
    says: 'a higher roof sheds snow onto this one',
    fields: {
      upper_W_ft: {
        kind: 'number',
        unit: 'ft',
        above: 0,
        says: 'eave to ridge of the higher roof',
      },
    },
  },
} as const satisfies Shape;

export const snowCalculators: readonly Calculator[] = [
  calculator({
    name: 'snow',
    says: 'Snow loads on one roof surface by ASCE/SEI 7, chapter 7',
    input,
    output: {
      Ce: 'exposure factor',
      Ct: 'thermal factor',
      Is: 'importance factor; 1 in 7-22',
      Cs: 'slope factor',
      gamma_pcf: 'snow density',
      pf_psf: 'flat roof load',
      pm_psf: 'least load on low slopes, a case of its own; null where none applies',
      ps_psf: 'balanced load, on the horizontal projection',
      unbalanced:
        'windward_psf, leeward_psf, surcharge_psf on top of the leeward load over ' +
        'surcharge_width_ft from the ridge; null where none applies',
      drift:
        'hd_ft, pd_psf on top of the balanced load, width_ft, height_ft, hb_ft, hc_ft; ' +
        'null where not asked',
      sliding: 'plf of eave over width_ft; null where not asked',
      rain_on_snow_psf: 'surcharge on the balanced load alone',
    },
    cautions: [
      STRUCTURE_CAUTION,
      'Service level in 7-10 and 7-16, strength level in 7-22; editions are not mixed.',
      'Snow and ice slide off metal roofs: look at doors, walks and lower roofs.',
    ],
    run: (ask) => {
      const roof = readSnowRoof(ask);
      if (!roof.ok) return roof;
      const loads = snowOnRoof(roof.value);
      return loads.ok
        ? { ...loads, value: { ...loads.value }, notes: [...roof.notes, ...loads.notes] }
        : loads;
    },
  }),
];
