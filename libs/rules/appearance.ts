// What looks, dents and labels ask of a sheet: the hail class of the exact assembly, oil canning,
// and a gauge number that fits its base thickness.

import { cite, COMMON_PRACTICE } from '#engineering';
import { listed, measuredBetween, recorded, text } from './figures.js';
import { gaugeNumber, optionText, thickness } from './gauges.js';
import { fail, notApplicable, pass, rule, unknown, unknownOf } from './rule.js';

export const hailClassOfTheAssembly = rule({
  id: 'GAUGE-15',
  version: 1,
  title: 'Hail class of the exact assembly',
  stage: 'gauge',
  class: 'guidance',
  severity: 'caution',
  says:
    'In hail country, or where class 4 is asked for: class 4 of the exact assembly on a ' +
    'solid deck, and the customer sees that dents are cosmetic and excluded.',
  cites: [cite('ul-2218', 'classes 1 to 4'), COMMON_PRACTICE],
  reads: [
    'design_stone_in',
    'class_4_asked',
    'assembly_hail_class',
    'open_framing',
    'dent_exclusion_shown',
  ],
  settings: { hail_country_stone_in: 1.75 },
  check: (facts, { hail_country_stone_in }) => {
    const { design_stone_in, class_4_asked, assembly_hail_class, open_framing } = facts;
    const hail = design_stone_in !== undefined && design_stone_in >= hail_country_stone_in;
    if (!hail && !class_4_asked) {
      if (design_stone_in === undefined) return unknown('design_stone_in');
      return notApplicable('not hail country, and class 4 is not asked for');
    }
    const { dent_exclusion_shown } = facts;
    const asked = { assembly_hail_class, open_framing, dent_exclusion_shown };
    if (Object.values(asked).includes(undefined)) return unknownOf(asked);
    const stone = hail ? [recorded('design stone', design_stone_in, 'in')] : [];
    const missing = [
      ...(assembly_hail_class === 4 ? [] : [`class 4 (it has ${assembly_hail_class || 'none'})`]),
      ...(open_framing ? ['a solid deck'] : []),
      ...(dent_exclusion_shown ? [] : ['the dent exclusion shown to the customer']),
    ];
    if (missing.length === 0) return pass(undefined, stone);
    const why = stone.map((each) => ` at a ${each.name} of ${text(each)}`).join('');
    return fail(`the assembly lacks ${listed(missing)}${why}`, stone);
  },
});

export const oilCanning = rule({
  id: 'GAUGE-16',
  version: 1,
  title: 'Oil canning is disclosed',
  stage: 'gauge',
  class: 'guidance',
  severity: 'caution',
  says:
    'Broad flats without striation, or concealed-fastener sheet thinner than 24 gauge steel or ' +
    '0.032 in aluminum, show waves in the flat. It is inherent and no ground for rejection: the ' +
    'customer signs a disclosure. Dark and glossy colors show it most.',
  cites: [cite('mca-95-1060', 'causes of oil canning'), COMMON_PRACTICE],
  reads: ['profile', 'metal', 'option', 'oil_canning_disclosed'],
  settings: { widest_flat_in: 16, thinnest_aluminum_in: 0.032 },
  check: ({ profile, metal, option, oil_canning_disclosed }, limits) => {
    if (profile === undefined || metal === undefined || option === undefined) {
      return unknownOf({ profile, metal, option });
    }
    if (profile.fastening !== 'concealed') return notApplicable('not a concealed-fastener panel');
    const wide = !profile.striated && profile.flat_width_in > limits.widest_flat_in;
    const gauge = gaugeNumber(option) ?? 0;
    const thin =
      metal === 'steel'
        ? gauge > 24
        : metal === 'aluminum' && option.thickness_in < limits.thinnest_aluminum_in;
    if (!wide && !thin) return pass();
    if (oil_canning_disclosed) return pass('disclosed');
    const flat = recorded('flat', profile.flat_width_in, 'in');
    const widest = recorded('widest plain flat', limits.widest_flat_in, 'in');
    const why = [
      ...(wide ? [`a plain flat of ${text(flat)}, over ${text(widest)}`] : []),
      ...(thin ? [`thin sheet, ${optionText(option)}`] : []),
    ];
    return fail(`oil canning is likely and not disclosed: ${listed(why)}`, [
      ...(wide ? [flat, widest] : []),
      ...(thin ? [thickness(option)] : []),
    ]);
  },
});

/** Least and most base thickness, in, that any of the three tables gives the number. */
const THICKNESSES: Readonly<Record<string, readonly [number, number]>> = {
  '20': [0.0356, 0.0396],
  '22': [0.0296, 0.0336],
  '24': [0.0236, 0.0276],
  '26': [0.0179, 0.0217],
  '28': [0.0149, 0.0187],
  '29': [0.0135, 0.0172],
};

export const labelFitsThickness = rule({
  id: 'GAUGE-19',
  version: 1,
  title: 'The gauge number fits the base thickness',
  stage: 'gauge',
  class: 'guidance',
  severity: 'caution',
  says:
    'A gauge number means different thicknesses in the tables for uncoated and ' +
    'zinc-coated sheet and in the statute: the decimal base thickness stands beside it ' +
    'and lies between them.',
  cites: [cite('gauge-chart', 'uncoated and zinc-coated sheet'), cite('usc-15-206', 'table')],
  reads: ['metal', 'option'],
  settings: {},
  check: ({ metal, option }) => {
    if (metal === undefined || option === undefined) return unknownOf({ metal, option });
    if (metal !== 'steel') return notApplicable('this metal has no gauge');
    const range = THICKNESSES[option.gauge ?? ''];
    if (range === undefined) {
      return fail(`${optionText(option)} carries no gauge number that the tables know`, [
        thickness(option),
      ]);
    }
    const [least, most] = [recorded('least', range[0], 'in'), recorded('most', range[1], 'in')];
    const figures = [thickness(option), least, most];
    const left = measuredBetween(option.thickness_in, [least, most], 4);
    return option.thickness_in >= range[0] && option.thickness_in <= range[1]
      ? pass(undefined, figures, left)
      : fail(
          `${optionText(option)} is not between ${text(least)} and ${text(most)}`,
          figures,
          left,
        );
  },
});

export const APPEARANCE_RULES = [hailClassOfTheAssembly, oilCanning, labelFitsThickness] as const;
