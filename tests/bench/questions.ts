// Invented questions for benchmarks: surfaces drawn by a seeded generator over a whole catalogue.

import { EDITION_2, isOpenFraming, RULE_BOOK, type Substrate, type SurfaceFacts } from '#rules';
import type { Catalogue, MadeRow, Profile, Question } from '#jobs';

/** A small linear congruential generator: the same seed gives the same questions. */
export function drawing(seed: number): <T>(from: readonly T[]) => T {
  let state = seed >>> 0;
  return (from) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    const found = from[Math.floor((state / 2 ** 32) * from.length)];
    if (found === undefined) throw new Error('nothing to draw from');
    return found;
  };
}

type Draw = ReturnType<typeof drawing>;

const OPEN: readonly Substrate[] = ['purlins', 'purlins', 'girts', 'battens'];
const SOLID: readonly Substrate[] = ['plywood', 'osb', 'plywood', 'steel-deck'];

export function questions(catalogue: Catalogue, count: number, seed: number): readonly Question[] {
  const draw = drawing(seed);
  return Array.from({ length: count }, () => question(catalogue, draw));
}

function question(catalogue: Catalogue, draw: Draw): Question {
  const row = draw(catalogue.made);
  const profile = catalogue.profiles.find(({ id }) => id === row.profile)!;
  const open = profile.structural && draw([true, true, false]);
  const substrate = draw(open ? OPEN : SOLID);
  const fastener = draw(
    catalogue.fasteners.filter(
      ({ kind }) => (profile.fastening === 'exposed') === (kind === 'screw'),
    ),
  ).id;
  const spacing = draw(['6', '9', '12', '18', '24']);
  const supports = draw(['24', '30', '36', '48', '60']);
  const zones = draw([
    ['1', '2', '3'],
    ['1', '2e', '2r', '3e', '3r'],
    ['1', '2', '2n', '3', '3r', '1p'],
  ]);
  const uplift = draw([18, 24, 30, 40]);
  return {
    facts: facts(row, profile, substrate, draw),
    profile,
    width: row.width.v,
    wind: {
      method: 'entered',
      basis: 'ASD',
      by_engineer: false,
      source: 'invented',
      edition: null,
      unconfirmed: [],
      outside: [],
      steps: [],
      zones: zones.map((zone, i) => ({
        zone,
        part: 'roof',
        inward_psf: '10',
        outward_psf: `-${(uplift * (1 + i * 0.3)).toFixed(1)}`,
      })),
    },
    snow: {
      method: 'entered',
      basis: 'ASD',
      roof_psf: draw(['0', '14', '25', '40']),
      slippery: false,
      by_engineer: false,
      source: 'invented',
      edition: null,
      unconfirmed: [],
      outside: [],
      steps: [],
    },
    roof_live_psf: null,
    substrate,
    open_framing: isOpenFraming(substrate),
    spacings: isOpenFraming(substrate) ? [{ v: supports }] : [],
    deck_thickness_in: 0.594,
    support_thickness_in: 0.0598,
    support_tensile_ksi: 65,
    wood_specific_gravity: 0.5,
    bite_in: 1,
    longest_piece_ft: 20,
    attachment: {
      fastener,
      zones: [
        {
          zone: 'all',
          spacing: { v: spacing, u: 'in' },
          ...(open ? {} : { rows: { v: '24', u: 'in' } }),
        },
      ],
    },
    catalogue,
    catalogueDigest: 'c'.repeat(64),
    edition: EDITION_2,
    editionDigest: 'e'.repeat(64),
    book: RULE_BOOK,
    day: '2026-11-02',
  };
}

function facts(row: MadeRow, profile: Profile, substrate: Substrate, draw: Draw): SurfaceFacts {
  return {
    kind: 'roof',
    slope_per_12: draw([3, 4, 6]),
    longest_piece_ft: 20,
    area_squares: 24,
    reroof: false,
    residential: draw([true, false]),
    priorities: [draw(['value', 'long-life', 'quick-delivery'] as const)],
    mean_roof_height_ft: 20,
    risk_category: 'II',
    metal: row.metal,
    metallic_coating: row.metallic_coating,
    paint_system: row.paint_system,
    color_group: draw(row.color_groups),
    combination: row.status,
    water: 'none',
    wind_speed_mph: 115,
    ground_snow_psf: 20,
    design_stone_in: draw([1, 2]),
    enclosure: 'enclosed',
    any_side_open: false,
    doors_open_in_storms: false,
    hazards_without_source: [],
    outside_method: [],
    pressures_by_engineer: false,
    unconfirmed_figures: [],
    inside_air: 'heated',
    condensation_control: 'vented-deck',
    substrate,
    open_framing: isOpenFraming(substrate),
    support_spacing_in: 60,
    spacing_measured: true,
    substrate_not_measured: [],
    profile: {
      id: profile.id,
      name: profile.name,
      family: profile.family,
      fastening: profile.fastening,
      seam: profile.seam,
      structural: profile.structural,
      least_slope_per_12: Number(profile.least_slope.v),
      flat_width_in: Number(profile.flat_width.v),
      striated: profile.striated,
      listed: true,
    },
  };
}
