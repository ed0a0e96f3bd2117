// This office's usual gauges: house policy that an edition sets and a named role may override.

import { COMMON_PRACTICE } from '#engineering';
import type { OptionFacts } from './facts.js';
import { listed, measured, recorded, text } from './figures.js';
import { gaugeNumber, gaugesIn, optionText, thickness } from './gauges.js';
import {
  fail,
  failAs,
  notApplicable,
  pass,
  rule,
  unknown,
  unknownOf,
  type Verdict,
} from './rule.js';
import { aSurface, type SurfaceKind } from './words.js';

const OUT_OF_THE_WEATHER: readonly SurfaceKind[] = ['liner', 'soffit', 'interior'];

export const usualForConcealed = rule({
  id: 'GAUGE-04',
  version: 1,
  title: 'Usual range for concealed fasteners',
  stage: 'gauge',
  class: 'house-policy',
  severity: 'note',
  says: 'Concealed-fastener panels usually go in 24, or 22, here; the catalogue decides what exists.',
  cites: [COMMON_PRACTICE],
  reads: ['profile', 'option'],
  settings: { usual: '24, 22' },
  check: ({ profile, option }, { usual }) => {
    if (profile === undefined || option === undefined) return unknownOf({ profile, option });
    if (profile.fastening !== 'concealed') return notApplicable('the fasteners are exposed');
    return amongUsual(option, usual, 'for concealed-fastener panels');
  },
});

export const twentyNine = rule({
  id: 'GAUGE-05',
  version: 1,
  title: '29 gauge on exposed roofs and walls',
  stage: 'gauge',
  class: 'house-policy',
  severity: 'caution',
  says:
    '29 gauge dents and flexes easily and saves little against 26. Liner, soffit and ' +
    'interior are exempt. An office may switch it to not stocked.',
  cites: [COMMON_PRACTICE],
  reads: ['kind', 'option'],
  settings: { not_stocked: false },
  check: ({ kind, option }, { not_stocked }) => {
    if (kind === undefined || option === undefined) return unknownOf({ kind, option });
    const gauge = gaugeNumber(option);
    if (gauge === undefined) return notApplicable('this metal has no gauge');
    if (gauge < 29) return pass();
    if (OUT_OF_THE_WEATHER.includes(kind)) return notApplicable(`${aSurface(kind)} is exempt`);
    return not_stocked
      ? failAs('refuse', `${optionText(option)} is not stocked here for ${aSurface(kind)}`, [
          thickness(option),
        ])
      : fail(
          `${optionText(option)} on ${aSurface(kind)} dents and flexes easily ` +
            'and saves little against 26',
          [thickness(option)],
        );
  },
});

export const startOnOpenFraming = rule({
  id: 'GAUGE-11',
  version: 1,
  title: 'Starting point on open framing',
  stage: 'gauge',
  class: 'house-policy',
  severity: 'note',
  says:
    'On open framing 24 is the starting point; 22 or 20 for long spans or where the ' +
    'engineer asks; 26 and 29 where the chart passes.',
  cites: [COMMON_PRACTICE],
  reads: ['open_framing', 'option', 'support_spacing_in', 'sign_off_asked', 'zones'],
  settings: { long_span_in: 60 },
  check: (
    { open_framing, option, support_spacing_in, sign_off_asked, zones },
    { long_span_in },
  ) => {
    if (open_framing === undefined || option === undefined)
      return unknownOf({ open_framing, option });
    if (!open_framing) return notApplicable('not open framing');
    const gauge = gaugeNumber(option);
    if (gauge === undefined) return notApplicable('this metal has no gauge');
    if (gauge === 24) return pass('the starting point');
    if (gauge > 24) {
      if (zones === undefined || zones.length === 0) return unknown('zones');
      const charted = zones.every(({ panel }) => panel !== undefined && panel.utilization <= 1);
      return charted
        ? pass('lighter than the starting point; the chart passes')
        : fail(`${optionText(option)} is lighter than 24 and its chart does not pass`, [
            thickness(option),
          ]);
    }
    if (sign_off_asked !== undefined)
      return pass(`heavier than 24; asked for by ${sign_off_asked}`);
    if (support_spacing_in === undefined) return unknown('support_spacing_in');
    const span = recorded('support spacing', support_spacing_in, 'in');
    const long = recorded('long span', long_span_in, 'in');
    const left = measured(long, support_spacing_in - long_span_in, 'in', 3);
    if (support_spacing_in >= long_span_in)
      return pass(`heavier than 24 at a long span`, [span, long], left);
    return fail(
      `${optionText(option)} is heavier than 24 though the span of ${text(span)} ` +
        `is under ${text(long)}`,
      [thickness(option), span, long],
      left,
    );
  },
});

export const usualForBare = rule({
  id: 'GAUGE-12',
  version: 1,
  title: 'Usual range for bare G90 and AZ55',
  stage: 'gauge',
  class: 'house-policy',
  severity: 'note',
  says: 'Bare G90 or AZ55 usually goes in 22 or 20 here; the catalogue decides what exists.',
  cites: [COMMON_PRACTICE],
  reads: ['paint_system', 'metallic_coating', 'option'],
  settings: { usual: '22, 20' },
  check: ({ paint_system, metallic_coating, option }, { usual }) => {
    if (paint_system === undefined || option === undefined)
      return unknownOf({ paint_system, option });
    if (paint_system !== 'bare') return notApplicable('the sheet is painted');
    if (metallic_coating === undefined) return unknown('metallic_coating');
    if (metallic_coating !== 'G90' && metallic_coating !== 'AZ55') {
      return notApplicable('neither G90 nor AZ55');
    }
    return amongUsual(option, usual, `for bare ${metallic_coating}`);
  },
});

export const GAUGE_POLICY_RULES = [
  usualForConcealed,
  twentyNine,
  startOnOpenFraming,
  usualForBare,
] as const;

function amongUsual(option: OptionFacts, usual: string, forWhat: string): Verdict {
  if (option.gauge === undefined) return notApplicable('this metal has no gauge');
  const gauges = gaugesIn(usual);
  if (gauges.includes(option.gauge)) return pass();
  return fail(
    `${optionText(option)} is outside this office's usual range ${forWhat}: ${listed(gauges)}`,
    [thickness(option)],
  );
}
