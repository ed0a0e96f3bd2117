// What the trade commonly advises about thickness by place: solid decks, hail, wind and snow, long
// life. Guidance: an edition may set other numbers.

import { cite, COMMON_PRACTICE } from '#engineering';
import { listed, recorded, text } from './figures.js';
import { gaugeNumber, gaugesIn, optionText, thickness } from './gauges.js';
import { fail, notApplicable, pass, rule, unknown, unknownOf } from './rule.js';
import { label } from './words.js';

const NO_GAUGE = 'this metal has no gauge';

export const usefulOnDeck = rule({
  id: 'GAUGE-06',
  version: 1,
  title: 'Useful choices on a solid deck',
  stage: 'gauge',
  class: 'guidance',
  severity: 'note',
  says: 'On a solid deck 24 and 26 are the useful choices; 22 and 20 gain little there.',
  cites: [COMMON_PRACTICE],
  reads: ['open_framing', 'option'],
  settings: { useful: '24, 26' },
  check: ({ open_framing, option }, { useful }) => {
    if (open_framing === undefined || option === undefined)
      return unknownOf({ open_framing, option });
    if (open_framing) return notApplicable('not a solid deck');
    if (option.gauge === undefined) return notApplicable(NO_GAUGE);
    const gauges = gaugesIn(useful);
    if (gauges.includes(option.gauge)) return pass();
    const heavier = gauges.every((each) => Number(option.gauge) < Number(each));
    return fail(
      `${optionText(option)} ${heavier ? 'gains little' : 'is not among the useful choices'} ` +
        `on a solid deck; useful: ${listed(gauges)}`,
      [thickness(option)],
    );
  },
});

export const hailCountry = rule({
  id: 'GAUGE-07',
  version: 1,
  title: '24 or heavier in hail country',
  stage: 'gauge',
  class: 'guidance',
  severity: 'caution',
  says:
    'In hail country 24 or heavier resists dents better. Class ratings belong to the ' +
    'assembly and speak of splits, not dents.',
  cites: [cite('ul-2218', 'scope'), COMMON_PRACTICE],
  reads: ['design_stone_in', 'option'],
  settings: { hail_country_stone_in: 1.75 },
  check: ({ design_stone_in, option }, { hail_country_stone_in }) => {
    if (option === undefined || design_stone_in === undefined)
      return unknownOf({ design_stone_in, option });
    if (design_stone_in < hail_country_stone_in) return notApplicable('not hail country');
    const gauge = gaugeNumber(option);
    if (gauge === undefined) return notApplicable(NO_GAUGE);
    const stone = recorded('design stone', design_stone_in, 'in');
    const from = recorded('hail country from', hail_country_stone_in, 'in');
    if (gauge <= 24) return pass(undefined, [stone, from]);
    return fail(
      `${optionText(option)} dents sooner than 24 under a design stone of ${text(stone)} (hail ` +
        `country from ${text(from)}); a class rating speaks of splits, not dents`,
      [thickness(option), stone, from],
    );
  },
});

export const windAndSnow = rule({
  id: 'GAUGE-08',
  version: 1,
  title: '24 or heavier in high wind or heavy snow',
  stage: 'gauge',
  class: 'guidance',
  severity: 'note',
  says: 'In high wind or heavy snow 24 or heavier is preferred; on deck the attachment decides first.',
  cites: [COMMON_PRACTICE],
  reads: ['wind_speed_mph', 'ground_snow_psf', 'option'],
  settings: { high_wind_mph: 130, heavy_snow_psf: 40 },
  check: ({ wind_speed_mph, ground_snow_psf, option }, { high_wind_mph, heavy_snow_psf }) => {
    if (option === undefined) return unknown('option');
    const gauge = gaugeNumber(option);
    if (gauge === undefined) return notApplicable(NO_GAUGE);
    const reasons = [
      ...(wind_speed_mph !== undefined && wind_speed_mph >= high_wind_mph
        ? [
            recorded('wind', wind_speed_mph, 'mph'),
            recorded('high wind from', high_wind_mph, 'mph'),
          ]
        : []),
      ...(ground_snow_psf !== undefined && ground_snow_psf >= heavy_snow_psf
        ? [
            recorded('ground snow', ground_snow_psf, 'psf'),
            recorded('heavy snow from', heavy_snow_psf, 'psf'),
          ]
        : []),
    ];
    if (reasons.length === 0) {
      return wind_speed_mph === undefined || ground_snow_psf === undefined
        ? unknownOf({ wind_speed_mph, ground_snow_psf })
        : notApplicable('neither high wind nor heavy snow');
    }
    if (gauge <= 24) return pass(undefined, reasons);
    const why = reasons.map((each) => `${each.name} ${text(each)}`).join(', ');
    return fail(`24 or heavier is preferred over ${optionText(option)} here: ${why}`, [
      thickness(option),
      ...reasons,
    ]);
  },
});

export const longLife = rule({
  id: 'GAUGE-09',
  version: 1,
  title: '24 or heavier for long life or best appearance',
  stage: 'gauge',
  class: 'guidance',
  severity: 'note',
  says:
    'Where long life or best appearance is wanted: 24 or heavier (dents, handling, foot ' +
    'traffic). Paint life comes from the system, corrosion life from coating and ' +
    'surroundings.',
  cites: [COMMON_PRACTICE],
  reads: ['priorities', 'option'],
  settings: {},
  check: ({ priorities, option }) => {
    if (priorities === undefined || option === undefined) return unknownOf({ priorities, option });
    const wanted = priorities.filter((each) => each === 'long-life' || each === 'best-appearance');
    if (wanted.length === 0)
      return notApplicable('neither long life nor best appearance was asked for');
    const gauge = gaugeNumber(option);
    if (gauge === undefined) return notApplicable(NO_GAUGE);
    if (gauge <= 24) return pass();
    return fail(
      `${optionText(option)} is lighter than 24 though ${listed(wanted.map(label))} was asked for`,
      [thickness(option)],
    );
  },
});

export const GAUGE_GUIDANCE_RULES = [usefulOnDeck, hailCountry, windAndSnow, longLife] as const;
