// Catalogue edition 1 of the demonstration, put together from its invented table.

import type {
  Catalogue,
  CoatingTerm,
  Fastener,
  LoadChart,
  MadeRow,
  Profile,
  TestedAssembly,
} from '#jobs/contract';
import {
  CHART_ROWS,
  OFFER_ROWS,
  PRICE_FACTORS,
  PRICES,
  PROFILE_ROWS,
  SHEETS,
  TEST_ROWS,
  UPCHARGES,
  type Gauge,
} from './catalogue.table.js';

const amount = <U extends string>(v: string | number, u: U) => ({ v: String(v), u });
const source = (document: string) => ({
  document: `${document} (invented for the demonstration)`,
  edition: 'edition 1',
  date: '2026-01-05',
  invented: true,
});

function profiles(): Profile[] {
  return PROFILE_ROWS.map(
    ([
      id,
      name,
      family,
      fastening,
      seam,
      structural,
      slope,
      widths,
      rib,
      flat,
      striated,
      longest,
      developed,
    ]) => ({
      id,
      name,
      family,
      fastening,
      seam,
      structural,
      striated,
      least_slope: amount(slope, 'per-12'),
      widths: widths.map((width) => amount(width, 'in')),
      rib_height: amount(rib, 'in'),
      flat_width: amount(flat, 'in'),
      longest_piece: amount(longest, 'ft'),
      developed_width: amount(developed, 'in'),
    }),
  );
}

const widthOf = (profile: string) => PROFILE_ROWS.find(([id]) => id === profile)?.[7][0] ?? '';
const sheet = (gauge: Gauge) => ({
  gauge,
  thickness: amount(SHEETS[gauge][0], 'in'),
  grade: SHEETS[gauge][1],
});

function made(): MadeRow[] {
  return OFFER_ROWS.flatMap(
    ([of, gauges, metallic_coating, paint_system, groups, status, lead_days]) =>
      of.flatMap((profile) =>
        gauges.map((gauge): MadeRow => {
          const price = Math.round(
            (PRICES[paint_system][gauge] ?? 0) * (PRICE_FACTORS[profile] ?? 1),
          );
          const upcharge = Math.max(...groups.map((group) => UPCHARGES[group] ?? 0));
          return {
            profile,
            ...sheet(gauge),
            metallic_coating,
            paint_system,
            status,
            lead_days,
            width: amount(widthOf(profile), 'in'),
            metal: 'steel',
            gauge_table: 'msg',
            color_groups: [...groups],
            price: amount(price.toFixed(2), 'usd/square'),
            ...(status === 'special-run' ? { least_order: amount(30, 'squares') } : {}),
            ...(upcharge > 0 ? { upcharge: amount(upcharge.toFixed(2), 'usd/square') } : {}),
          };
        }),
      ),
  );
}

function charts(): LoadChart[] {
  return CHART_ROWS.map(([profile, gauge, spans, rows]) => ({
    id: `${profile}-${gauge}-${spans === '3+' ? '3' : spans}`,
    profile,
    ...sheet(gauge),
    spans,
    width: amount(widthOf(profile), 'in'),
    metal: 'steel',
    basis: 'ASD',
    deflection_limit: 'L/180',
    attachment_included: false,
    interpolation: false,
    rows: rows.map(([span, inward, outward, deflection]) => ({
      span: amount(span, 'in'),
      inward: amount(inward, 'psf'),
      outward: amount(outward, 'psf'),
      deflection: amount(deflection, 'psf'),
    })),
    source: source(`Load charts of ${profile}`),
  }));
}

function assemblies(): TestedAssembly[] {
  return TEST_ROWS.map(
    ([
      number,
      profile,
      width,
      gauge,
      substrates,
      fastener,
      spacing,
      support,
      deck,
      outward,
      inward,
      expires,
    ]) => ({
      id: number.toLowerCase(),
      number,
      profile,
      fastener,
      width: amount(width, 'in'),
      metal: 'steel',
      thickness: amount(SHEETS[gauge][0], 'in'),
      substrates: [...substrates],
      attachment_spacing: amount(spacing, 'in'),
      ...(support === null ? {} : { support_spacing: amount(support, 'in') }),
      ...(deck === null ? {} : { deck_thickness: amount(deck, 'in') }),
      outward: amount(outward, 'psf'),
      inward: amount(inward, 'psf'),
      basis: 'ASD',
      standard: 'invented test',
      ...(expires === null ? {} : { expires }),
      source: source(`Test report ${number}`),
    }),
  );
}

const STEEL_SCREWS = source('Screw tests');
const FASTENERS: readonly Fastener[] = [
  {
    id: 'clip-fixed',
    name: 'Fixed clip 1-3/4, two screws',
    kind: 'clip',
    clip_movement: 'fixed',
    metal: 'galvanized',
  },
  {
    id: 'clip-floating',
    name: 'Floating clip 2, two screws',
    kind: 'clip',
    clip_movement: 'floating',
    metal: 'galvanized',
  },
  {
    id: 'screw-pancake-10',
    name: 'No. 10 pancake-head wood screw, 1 in',
    kind: 'screw',
    metal: 'galvanized',
    diameter: amount('0.190', 'in'),
    washer_diameter: amount('0.435', 'in'),
    thread_bite: amount('0.75', 'in'),
  },
  {
    id: 'screw-wood-10',
    name: 'No. 10 wood screw with sealing washer, 1-1/2 in',
    kind: 'screw',
    metal: 'galvanized',
    diameter: amount('0.190', 'in'),
    washer_diameter: amount('0.563', 'in'),
    thread_bite: amount('1.25', 'in'),
  },
  {
    id: 'screw-steel-12',
    name: 'No. 12 self-drilling screw with sealing washer, 1-1/4 in',
    kind: 'screw',
    metal: 'galvanized',
    diameter: amount('0.216', 'in'),
    washer_diameter: amount('0.5', 'in'),
    tested: [
      {
        into: 'purlins',
        least_thickness: amount('0.060', 'in'),
        allowable: amount('265', 'lb'),
        source: STEEL_SCREWS,
      },
      {
        into: 'girts',
        least_thickness: amount('0.060', 'in'),
        allowable: amount('265', 'lb'),
        source: STEEL_SCREWS,
      },
    ],
  },
  {
    id: 'screw-steel-14',
    name: 'No. 14 self-drilling screw with sealing washer, 1-1/4 in',
    kind: 'screw',
    metal: 'galvanized',
    diameter: amount('0.250', 'in'),
    washer_diameter: amount('0.625', 'in'),
  },
];

/** Years and limits of the invented supplier's finish terms, by system; bare metal has its own. */
const FINISH = {
  PVDF: { years: 35, fade: '5', chalk: '8' },
  SMP: { years: 25, fade: '7', chalk: '6' },
} as const;

function terms(): CoatingTerm[] {
  const painted = (['PVDF', 'SMP'] as const).flatMap((paint_system) => {
    const { years, fade, chalk } = FINISH[paint_system];
    const groups = [
      'white',
      'light',
      'earth-tone',
      'bright',
      'dark',
      'metallic',
      'textured',
    ] as const;
    return groups.map((color_group): CoatingTerm => ({
      metal: 'steel',
      metallic_coating: 'AZ50',
      paint_system,
      color_group,
      finish_years: color_group === 'bright' ? years - 10 : years,
      fade: { limit: fade, scale: 'Hunter', years: color_group === 'bright' ? years - 10 : years },
      chalk: { least: chalk, years },
      water_distance: amount(1500, 'ft'),
      document: `Finish term ${paint_system} (invented)`,
    }));
  });
  const bare = (['AZ55', 'G90'] as const).map((metallic_coating): CoatingTerm => ({
    metal: 'steel',
    metallic_coating,
    paint_system: 'bare',
    color_group: 'mill',
    finish_years: 0,
    water_distance: amount(2500, 'ft'),
    document: `Substrate term ${metallic_coating} (invented)`,
  }));
  return [...painted, ...bare];
}

/** Newly made at each call, so that nobody changes another's. */
export const demonstrationCatalogue = (): Catalogue => ({
  edition: 1,
  in_force_from: '2026-01-05',
  summary: 'First edition, invented for the demonstration: no number here is of a real product.',
  invented: true,
  profiles: profiles(),
  made: made(),
  charts: charts(),
  assemblies: assemblies(),
  fasteners: [...FASTENERS],
  terms: terms(),
});
