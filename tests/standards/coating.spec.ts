// Coating mass, corrosion, finish limits, warranty title and sheet gauge against published
// and other outside values; each case's source stands beside its check.

import { describe, expect, test } from '@jest/globals';
import {
  alZnThickness,
  calculateAll,
  chalkAgainstTerm,
  corrosivity,
  corrosivityBand,
  disclosureRuleApplies,
  fadeAgainstTerm,
  FINISH_LIMITS,
  G_PER_M2_IN_OZ_PER_FT2,
  lossAfter,
  micrometers,
  timeFactor,
  TIME_EXPONENTS,
  warrantyTitle,
  zincLifeRange,
  zincThicknessFromGrams,
  zincThicknessFromOunces,
  type Corrosivity,
  type FinishLimits,
  type FinishTerm,
  type RateScale,
} from '#engineering';
import { readCases, runCases, type StandardCase } from './cases.js';

type Values = Record<string, unknown>;
type Inputs = Record<string, number>;

function calc(name: string, input: Values): Values {
  const made = calculateAll(name, input);
  if (made.outcome !== 'results') throw new Error(JSON.stringify(made));
  return made.output as Values;
}

/** The calculator's one-side and single-spot minima, under the case's unit. */
const mass =
  (unit: 'ozft2' | 'gm2') =>
  (i: Values): Values => {
    const made = calc('coating-mass', i);
    return {
      [`TST_total_both_sides_${unit}`]: made[`total_${unit}`],
      [`TST_one_side_${unit}`]: made['one_side_min'],
      [`SST_total_both_sides_${unit}`]: made['single_spot_min'],
    };
  };

function zincThickness(i: Inputs): Values {
  const { total_both_sides_ozft2: oz, total_both_sides_gm2: grams = NaN } = i;
  const um = oz === undefined ? zincThicknessFromGrams(grams) : zincThicknessFromOunces(oz);
  return { thickness_um_per_side_even_split: um, thickness_mil_per_side_even_split: um / 25.4 };
}

function alZn(i: Inputs): Values {
  const grams = (i['total_both_sides_ozft2'] ?? NaN) * G_PER_M2_IN_OZ_PER_FT2;
  const um = alZnThickness(grams, i['density_gcm3']);
  return { thickness_um_per_side_even_split: um, thickness_mil_per_side_even_split: um / 25.4 };
}

const band =
  (scale: RateScale, unit: string) =>
  (i: Values): Values => {
    const { over, to } = corrosivityBand(scale, i['category'] as Corrosivity);
    return { [`rcorr_min_${unit}`]: over, [`rcorr_max_${unit}`]: to };
  };

function timeFactors({ t_years: t = NaN }: Inputs): Values {
  const out: Values = {};
  for (const [metal, { B1, B2 }] of Object.entries(TIME_EXPONENTS)) {
    const name = metal === 'aluminum' ? 'aluminium' : metal;
    out[`${name}_B1`] = timeFactor(t, B1);
    out[`${name}_B2`] = timeFactor(t, B2);
  }
  return out;
}

const loss = ({ rcorr_um_per_y: r = NaN, t_years: t = NaN, b = NaN }: Inputs): Values => ({
  loss_um_linear_after_20: lossAfter(r, t, b),
  loss_um_power: r * timeFactor(t, b),
});

function zincLife({ zinc_um_per_side, rcorr_um_per_y }: Inputs): Values {
  const years = (exponent: string): unknown =>
    calc('zinc-life', { zinc_um_per_side, rcorr_um_per_y, exponent })['years'];
  return {
    years_constant_rate: years('linear'),
    years_iso9224_B1: years('B1'),
    years_iso9224_B2: years('B2'),
  };
}

function lifeRange(i: Values): Values {
  const { least, most } = zincLifeRange(
    micrometers(Number(i['zinc_um'])),
    i['category'] as Corrosivity,
  );
  return { life_min_years: least, life_max_years: most };
}

const gauge =
  (table: string) =>
  (i: Values): Values => {
    const made = calc('gauge', { gauge: i['gauge'], table });
    const weight = made['weight_psf'] as number;
    return {
      thickness_in: made['t_in'],
      thickness_in_approx: made['t_in'],
      thickness_min_in: made['t_min_in'],
      thickness_max_in: made['t_max_in'],
      thickness_min_in_cold_rolled: made['t_min_in'],
      weight_psf_flat: weight,
      weight_psf: weight,
      weight_ozft2: weight * 16,
      weight_lb_per_100sqft_flat: weight * 100,
    };
  };

function specification(limits: FinishLimits): Values {
  return {
    south_florida_years: limits.southFloridaYears,
    fade: limits.fadeMost,
    fade_dE_max: limits.fadeMost,
    dE_max: limits.fadeMost,
    chalk: limits.chalkLeast,
    chalk_rating_min: limits.chalkLeast,
    gloss_retention_pct_min: limits.glossRetentionLeastPct,
    erosion_pct_max: limits.erosionMostPct,
    min_dry_film_mil: limits.dryFilmLeastMil,
    humidity_h: limits.humidityHours,
    salt_spray_B117_h: limits.saltSprayHours,
  };
}

// A term of this shape as an office would enter it from a document; the case is from memory and
// checks only that roof and wall are held apart and on which side of a limit a finding falls.
const ROOF: FinishTerm = { fade: { most: 7, scale: 'Hunter' }, chalk: { least: 6 } };
const WALL: FinishTerm = { fade: { most: 5, scale: 'Hunter' }, chalk: { least: 8 } };
const FILM_INTEGRITY_YEARS = 40;

function enteredTerm(): Values {
  const chalkLeast = (term: FinishTerm): number | undefined =>
    [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10].find(
      (rating) => chalkAgainstTerm(term, { rating, ratedBeforeWashing: true }).outcome === 'within',
    );
  const fadeMost = (term: FinishTerm): number | undefined =>
    [9, 8, 7, 6, 5, 4].find((change) => {
      const at = (L: number) => ({ space: 'Hunter', value: { L, a: 0, b: 0 } }) as const;
      const viewing = { illuminant: 'C', observer: '2-degree' } as const;
      const read = { retained: at(40), weathered: at(40 + change), viewing, washed: true };
      return fadeAgainstTerm(term, read).outcome === 'within';
    });
  return {
    roof_chalk_rating_min: chalkLeast(ROOF),
    wall_chalk_rating_min: chalkLeast(WALL),
    roof_dE_max: fadeMost(ROOF),
    wall_dE_max: fadeMost(WALL),
    film_integrity_years: FILM_INTEGRITY_YEARS,
  };
}

const TOPICS: Readonly<Record<string, (inputs: never) => Values>> = {
  'zinc coating mass, inch-pound designation': mass('ozft2'),
  'zinc coating mass, SI designation': mass('gm2'),
  'zinc thickness per side from coating designation': zincThickness,
  'coating mass unit conversion': ({ mass_ozft2: oz = NaN }: Inputs): Values => ({
    mass_gm2: oz * G_PER_M2_IN_OZ_PER_FT2,
  }),
  '55% Al-Zn coating mass': mass('ozft2'),
  '55% Al-Zn coating mass, SI': mass('gm2'),
  '55% Al-Zn thickness per side': alZn,
  'first-year zinc corrosion band': band('zinc um/y', 'um_per_y'),
  'first-year carbon steel band': band('steel um/y', 'um_per_y'),
  'first-year carbon steel mass loss band': band('steel g/m2y', 'g_per_m2y'),
  'zinc category at a bound': ({ rcorr_zinc_um_per_y: r = NaN }: Inputs): Values => ({
    category: corrosivity('zinc um/y', r),
  }),
  'dose-response first-year corrosion': (i: Values): Values => calc('corrosion', i),
  'ISO 9224 time factor t^b': timeFactors,
  'zinc loss after t years': loss,
  "years to consume the zinc at a category's upper rate": zincLife,
  'life to first maintenance of zinc': lifeRange,
  'galvanized sheet gauge': gauge('galvanized'),
  "uncoated sheet gauge (Manufacturers' Standard)": gauge('msg'),
  'U.S. statutory gauge': gauge('usc206'),
  'organic finish on aluminium': (i: { spec: keyof typeof FINISH_LIMITS }): Values =>
    specification(FINISH_LIMITS[i.spec]),
  'factory finish after 5000 h accelerated weathering': (): Values =>
    specification(FINISH_LIMITS['guide specification, standard gloss']),
  'factory finish after accelerated weathering, low gloss': (): Values =>
    specification(FINISH_LIMITS['guide specification, low gloss']),
  'typical film warranty thresholds, upper tier': enteredTerm,
  'written warranty title': (i: Values): Values => ({
    title_required: warrantyTitle(
      i['meets_2304_minimum_standards'] as boolean,
      i['duration_years'] as number | undefined,
    ),
  }),
  'disclosure rule threshold': ({ cost_to_consumer_usd: usd = NaN }: Inputs): Values => ({
    disclosure_rule_applies: disclosureRuleApplies(usd),
  }),
};

const cases = readCases('coating');
const evaluated = new Set<string>();

function evaluate(each: StandardCase): Values {
  const how = TOPICS[each.topic];
  if (how === undefined) throw new Error(`no check for the topic "${each.topic}"`);
  evaluated.add(each.id);
  return how(each.inputs as never);
}

describe('coating, corrosion, finish, gauge and warranty title', () => {
  runCases(cases, evaluate);

  test('every case of the file has run', () => {
    expect(cases.length).toBe(94);
    expect(evaluated.size).toBe(cases.length);
  });
});
