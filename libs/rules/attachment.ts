// How the panel is held and what its looks and hail rating rest on: oil canning, long runs, the one
// fixed line, the hail class of the assembly, labels that fit their thickness.

import { cite, COMMON_PRACTICE } from '#engineering';
import { listed, recorded, text } from './figures.js';
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
    'In hail country, or where class 4 is asked for: class 4 of the exact assembly on a solid deck, ' +
    'and the customer sees that dents are cosmetic and excluded.',
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

export const longRuns = rule({
  id: 'GAUGE-17',
  version: 1,
  title: 'Long runs move on floating clips',
  stage: 'gauge',
  class: 'guidance',
  severity: 'caution',
  says:
    'A concealed-fastener run over about 40 ft takes two-piece floating clips and one fixed line; ' +
    'the whole run counts, end laps do not break it.',
  cites: [COMMON_PRACTICE],
  reads: ['profile', 'longest_piece_ft', 'clip_kind'],
  settings: { long_run_ft: 40 },
  check: ({ profile, longest_piece_ft, clip_kind }, { long_run_ft }) => {
    if (profile === undefined) return unknown('profile');
    if (profile.fastening !== 'concealed') return notApplicable('not a concealed-fastener panel');
    if (longest_piece_ft === undefined) return unknown('longest_piece_ft');
    if (longest_piece_ft <= long_run_ft) return notApplicable('not a long run');
    if (clip_kind === undefined) return unknown('clip_kind');
    if (clip_kind === 'floating') return pass();
    const run = recorded('run', longest_piece_ft, 'ft');
    const long = recorded('long run over', long_run_ft, 'ft');
    return fail(`fixed clips on a run of ${text(run)}, over ${text(long)}`, [run, long]);
  },
});

export const oneFixedLine = rule({
  id: 'GAUGE-18',
  version: 1,
  title: 'Exactly one fixed line',
  stage: 'gauge',
  class: 'guidance',
  severity: 'caution',
  says:
    'A panel on floating clips is held fast along exactly one line; a screw, curb or bracket ' +
    'through the sheet elsewhere is a second one.',
  cites: [COMMON_PRACTICE],
  reads: ['clip_kind', 'fixed_lines'],
  settings: {},
  check: ({ clip_kind, fixed_lines }) => {
    if (clip_kind === undefined) return unknown('clip_kind');
    if (clip_kind !== 'floating') return notApplicable('no floating clips');
    if (fixed_lines === undefined) return unknown('fixed_lines');
    const lines = recorded('fixed lines', fixed_lines, '');
    return fixed_lines === 1
      ? pass()
      : fail(`${text(lines)} fixed lines instead of exactly one`, [lines]);
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
    'A gauge number means different thicknesses in the tables for uncoated and zinc-coated sheet ' +
    'and in the statute: the decimal base thickness stands beside it and lies between them.',
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
    return option.thickness_in >= range[0] && option.thickness_in <= range[1]
      ? pass(undefined, figures)
      : fail(`${optionText(option)} is not between ${text(least)} and ${text(most)}`, figures);
  },
});

export const seamUpliftByTest = rule({
  id: 'GAUGE-20',
  version: 1,
  title: 'Standing-seam uplift only by test',
  stage: 'gauge',
  class: 'physics',
  severity: 'refuse',
  says:
    'What a clipped seam holds against uplift is known only from tests; a calculated capacity ' +
    'does not stand in for one.',
  cites: [COMMON_PRACTICE],
  reads: ['profile', 'zones'],
  settings: {},
  check: ({ profile, zones }) => {
    if (profile === undefined || zones === undefined) return unknownOf({ profile, zones });
    if (profile.fastening !== 'concealed') return notApplicable('the fasteners are exposed');
    const guessed = zones.filter((each) => each.calculated_only).map((each) => `zone ${each.zone}`);
    return guessed.length === 0
      ? pass()
      : fail(`${profile.name} has no test, only a calculation, in ${listed(guessed)}`);
  },
});

export const ATTACHMENT_RULES = [
  hailClassOfTheAssembly,
  oilCanning,
  longRuns,
  oneFixedLine,
  labelFitsThickness,
  seamUpliftByTest,
] as const;
