// Wind and snow on a surface, calculated from the recorded facts of site and building. A fact that is
// missing is named; a fact outside the method gives no number.

import {
  degrees,
  degreesOfRise,
  display,
  feet,
  mph,
  per12,
  readSnowRoof,
  snowOnRoof,
  squareFeet,
  TO_BE_CONFIRMED,
  windOnSurface,
  type Outcome,
  type WindSurfaceInput,
} from '#engineering';
import type { CommandOf } from '../contract/commands.js';
import type { SnowContent, WindContent } from '../contract/events.js';
import { stepRecord } from '../choosing/step-record.js';
import { factDefinition, factPath, type FactName } from '../contract/fact-dictionary.js';
import type { Surface } from '../job.js';
import type { Lookup } from '../lookup.js';
import { refuse, type Refusal } from '../refusal.js';

/** Panels count at 10 square feet, the smallest area of the figures: never less pressure than theirs. */
const PANEL_AREA_FT2 = 10;

const WALL_KINDS = ['wall', 'fascia'];

/** Reads facts by name and collects what is missing. */
function needed(at: Lookup, surface: Surface) {
  const missing: FactName[] = [];
  const value = (name: FactName): unknown => {
    const { on } = factDefinition(name);
    const found = at(factPath(on, on === 'building' ? surface.building : surface.id, name));
    if (found === null) missing.push(name);
    return found;
  };
  return {
    missing,
    choice: <T extends string>(name: FactName): T => (value(name) ?? '') as T,
    number: (name: FactName): number => Number((value(name) as { v: string } | null)?.v ?? NaN),
    optional: (name: FactName): number | undefined => {
      const { on } = factDefinition(name);
      const found = at(factPath(on, on === 'building' ? surface.building : surface.id, name)) as {
        v: string;
      } | null;
      return found === null ? undefined : Number(found.v);
    },
    yes: (name: FactName): boolean => at(factPath('building', surface.building, name)) === true,
  };
}

const missingFacts = (what: string, names: readonly FactName[]): readonly Refusal[] =>
  names.map((name) =>
    refuse(
      'MOVE-10',
      `${what} needs ${factDefinition(name).asks.toLowerCase()}: record it first.`,
      `/facts/${name}`,
    ),
  );

export function calculateWind(
  at: Lookup,
  surface: Surface,
  edition: WindSurfaceInput['edition'],
): WindContent | readonly Refusal[] {
  const fact = needed(at, surface);
  const input = windInput(fact, surface, edition);
  if (fact.missing.length > 0) return missingFacts('Wind', fact.missing);
  const outside = outsideWind(input.roof.shape, input.enclosure);
  if (outside.length > 0) return outsideTheMethod(outside);
  const outcome = windOnSurface(input);
  if (!outcome.ok) {
    return outsideTheMethod(
      outcome.faults.map(({ pointer, message }) => `${pointer.slice(1)} ${message}`),
    );
  }
  const part = WALL_KINDS.includes(surface.kind) ? ['wall'] : ['roof', 'overhang'];
  return {
    method: 'calculated',
    basis: 'strength',
    zones: outcome.value.zones
      .filter((zone) => part.includes(zone.part))
      .map(({ zone, part: where, inward, outward }) => ({
        zone,
        part: where,
        inward_psf: display(inward, 2),
        outward_psf: display(outward, 2),
      })),
    by_engineer: false,
    source: `calculated, ASCE/SEI ${edition}, ${outcome.value.figure}, ${PANEL_AREA_FT2} ft2`,
    edition,
    unconfirmed: unconfirmed(outcome),
    outside: [],
    steps: outcome.steps.map(stepRecord),
  };
}

function windInput(
  fact: ReturnType<typeof needed>,
  surface: Surface,
  edition: WindSurfaceInput['edition'],
): WindSurfaceInput {
  const width = fact.number('width');
  const length = fact.number('length');
  const slope = fact.number(WALL_KINDS.includes(surface.kind) ? 'roof-slope' : 'slope');
  return {
    edition,
    V: mph(fact.number('wind-speed')),
    exposure: fact.choice<WindSurfaceInput['exposure']>('exposure'),
    h: feet(fact.number('mean-roof-height')),
    Kzt: fact.optional('topographic-factor') ?? 1,
    elevation: feet(fact.optional('elevation') ?? 0),
    enclosure: fact.choice<WindSurfaceInput['enclosure']>('enclosure'),
    roof: {
      shape: fact.choice<WindSurfaceInput['roof']['shape']>('roof-shape'),
      theta: degrees(degreesOfRise(per12(slope))),
      width: feet(Math.min(width, length)),
      length: feet(Math.max(width, length)),
      overhang: fact.yes('overhang'),
    },
    areas: [squareFeet(PANEL_AREA_FT2)],
  };
}

const outsideTheMethod = (faults: readonly string[]): readonly Refusal[] =>
  faults.map((fault) =>
    refuse(
      'MOVE-10',
      `Outside the method: ${fault}. Enter an engineer's pressures instead.`,
      '/hazards/wind',
    ),
  );

function outsideWind(shape: string, enclosure: string): readonly string[] {
  return [
    ...(shape === 'other' ? ['the roof shape has no figure'] : []),
    ...(enclosure === 'open' ? ['an open building has no method here'] : []),
  ];
}

type SnowGiven = Extract<CommandOf<'assess-hazards'>['hazards']['snow'], { method: 'calculated' }>;

export function calculateSnow(
  at: Lookup,
  surface: Surface,
  given: SnowGiven,
): SnowContent | readonly Refusal[] {
  const fact = needed(at, surface);
  const shape = fact.choice<string>('roof-shape');
  const W2 = given.edition === '7-22' ? fact.optional('winter-wind') : undefined;
  const question = {
    edition: given.edition,
    pg_psf: fact.number('ground-snow'),
    pg_basis: fact.choice<'service-50yr' | 'strength'>('ground-snow-basis'),
    risk_category: fact.choice<'I' | 'II' | 'III' | 'IV'>('risk-category'),
    terrain: fact.choice<'B' | 'C' | 'D'>('exposure'),
    roof_exposure: given.roof_exposure,
    thermal: given.thermal,
    ventilated: given.ventilated,
    surface: given.surface,
    roof: {
      shape: shape as 'gable',
      rise_per_12: fact.number('slope'),
      W_ft: fact.number('eave-to-ridge'),
    },
    ...(given.R_roof === undefined ? {} : { R_roof: Number(given.R_roof) }),
    ...(W2 === undefined ? {} : { drift: { W2 } }),
  };
  if (fact.missing.length > 0) return missingFacts('Snow', fact.missing);
  if (shape === 'other')
    return [
      refuse(
        'MOVE-10',
        "Outside the method: the roof shape has no figure. Enter an engineer's loads instead.",
        '/hazards/snow',
      ),
    ];
  const roof = readSnowRoof(question);
  const outcome = roof.ok ? snowOnRoof(roof.value) : roof;
  if (!outcome.ok) {
    return outcome.faults.map(({ pointer, message }) =>
      refuse('MOVE-10', `Snow: ${pointer.slice(1)} ${message}.`, '/hazards/snow'),
    );
  }
  const { ps_psf, pm_psf, unbalanced, rain_on_snow_psf } = outcome.value;
  const balanced = Number(ps_psf) + Number(rain_on_snow_psf);
  const leeward = unbalanced
    ? Number(unbalanced.leeward_psf) + Number(unbalanced.surcharge_psf ?? 0)
    : 0;
  const worst = Math.max(balanced, Number(pm_psf ?? 0), leeward);
  return {
    method: 'calculated',
    basis: given.edition === '7-22' ? 'strength' : 'ASD',
    roof_psf: display(worst, 2),
    slippery: given.surface === 'slippery-unobstructed',
    by_engineer: false,
    source: `calculated, ASCE/SEI ${given.edition}, worst of balanced, minimum and unbalanced`,
    edition: given.edition,
    unconfirmed: [...(roof.ok ? unconfirmed(roof) : []), ...unconfirmed(outcome)],
    outside: [],
    steps: outcome.steps.map(stepRecord),
  };
}

/** Notes that mark a figure whose edition text is to be confirmed. */
function unconfirmed(outcome: Outcome<unknown>): readonly string[] {
  return outcome.ok ? outcome.notes.filter((note) => note.includes(TO_BE_CONFIRMED)) : [];
}
