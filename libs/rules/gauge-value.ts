// What the trade commonly advises about money: where 26 is the value choice, and what going to 24
// usually costs.

import { COMMON_PRACTICE } from '#engineering';
import type { Facts } from './facts.js';
import { against, measuredBetween, recorded, text } from './figures.js';
import { optionText, thickness } from './gauges.js';
import { fail, notApplicable, pass, rule, unknown, unknownOf } from './rule.js';

export const valueFirst = rule({
  id: 'GAUGE-10',
  version: 1,
  title: '26 where value comes first',
  stage: 'gauge',
  class: 'guidance',
  severity: 'note',
  says:
    'Value first, mild climate, exposed fastener in SMP: 26. Commercial and farm walls by ' +
    'cost: 26 SMP exposed. House walls: 26 SMP or 24 PVDF, either is sound.',
  cites: [COMMON_PRACTICE],
  reads: [
    'kind',
    'residential',
    'priorities',
    'profile',
    'paint_system',
    'option',
    'wind_speed_mph',
    'ground_snow_psf',
    'design_stone_in',
  ],
  settings: { mild_wind_mph: 130, mild_snow_psf: 40, mild_stone_in: 1.75 },
  check: (facts, mild) => {
    const { kind, residential, priorities, profile, paint_system, option } = facts;
    if (
      kind === undefined ||
      residential === undefined ||
      priorities === undefined ||
      profile === undefined ||
      paint_system === undefined ||
      option === undefined
    ) {
      return unknownOf({ kind, residential, priorities, profile, paint_system, option });
    }
    if (option.gauge === undefined) return notApplicable('this metal has no gauge');
    const chosen = `${option.gauge} ${paint_system}`;
    const off = (usual: string) =>
      fail(`${optionText(option)} in ${paint_system} is not ${usual}`, [thickness(option)]);
    if (kind === 'wall' && residential) {
      return chosen === '26 SMP' || chosen === '24 PVDF'
        ? pass('either 26 SMP or 24 PVDF is sound on a house wall')
        : off('26 SMP or 24 PVDF, of which either is sound on a house wall');
    }
    if (priorities[0] !== 'value') return notApplicable('value does not come first');
    if (profile.fastening !== 'exposed') return notApplicable('the fasteners are concealed');
    if (kind === 'wall')
      return chosen === '26 SMP' ? pass() : off('26 SMP, the usual choice for a wall by cost');
    if (paint_system !== 'SMP') return notApplicable('not SMP');
    const climate = isMild(facts, mild);
    if (climate === undefined) return unknownOf(weatherOf(facts));
    if (!climate) return notApplicable('not a mild climate');
    return option.gauge === '26' ? pass() : off('26, the value choice in a mild climate');
  },
});

export const nextGaugeCosts = rule({
  id: 'GAUGE-13',
  version: 1,
  title: 'What going from 26 to 24 costs',
  stage: 'gauge',
  class: 'guidance',
  severity: 'note',
  says:
    'Going from 26 to 24 usually costs 20 to 40 % more in panel material in the same system. The ' +
    "catalogue's own difference is shown; outside the band, check the price list.",
  cites: [COMMON_PRACTICE],
  reads: ['option'],
  settings: { least_percent: 20, most_percent: 40 },
  check: ({ option }, { least_percent, most_percent }) => {
    if (option === undefined) return unknown('option');
    const { gauge, thinner, price_per_square_usd: price } = option;
    if (gauge !== '24' || thinner?.gauge !== '26') return notApplicable('not a step from 26 to 24');
    if (price === undefined) return unknown('price_per_square_usd');
    const more = ((price - thinner.price_per_square_usd) / thinner.price_per_square_usd) * 100;
    const limit = more < least_percent ? least_percent : most_percent;
    const difference = against('difference', more, limit, '%', 1);
    const band = [
      recorded('least', least_percent, '%'),
      recorded('most', most_percent, '%'),
    ] as const;
    const left = measuredBetween(more, band, 1);
    if (more >= least_percent && more <= most_percent) {
      return pass(`24 costs ${text(difference)} more than 26`, [difference, ...band], left);
    }
    return fail(
      `24 costs ${text(difference)} more than 26, outside the usual ${text(band[0])} to ` +
        `${text(band[1])}: check the price list`,
      [difference, ...band],
      left,
    );
  },
});

export const GAUGE_VALUE_RULES = [valueFirst, nextGaugeCosts] as const;

type Weather = Pick<Facts, 'wind_speed_mph' | 'ground_snow_psf' | 'design_stone_in'>;

const weatherOf = ({ wind_speed_mph, ground_snow_psf, design_stone_in }: Weather) => ({
  wind_speed_mph,
  ground_snow_psf,
  design_stone_in,
});

/** Undefined where no known value is harsh but one is not known. */
function isMild(
  { wind_speed_mph: wind, ground_snow_psf: snow, design_stone_in: stone }: Weather,
  mild: {
    readonly mild_wind_mph: number;
    readonly mild_snow_psf: number;
    readonly mild_stone_in: number;
  },
): boolean | undefined {
  const limits = [mild.mild_wind_mph, mild.mild_snow_psf, mild.mild_stone_in];
  const values = [wind, snow, stone];
  if (values.some((value, i) => value !== undefined && value >= limits[i]!)) return false;
  return values.includes(undefined) ? undefined : true;
}
