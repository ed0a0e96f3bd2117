// How the panel is held: long runs on floating clips, the one fixed line, and uplift known by
// test.

import { COMMON_PRACTICE } from '#engineering';
import { listed, recorded, text } from './figures.js';
import { fail, notApplicable, pass, rule, unknown, unknownOf } from './rule.js';

export const longRuns = rule({
  id: 'GAUGE-17',
  version: 1,
  title: 'Long runs move on floating clips',
  stage: 'gauge',
  class: 'guidance',
  severity: 'caution',
  says:
    'A concealed-fastener run over about 40 ft takes two-piece floating clips and one ' +
    'fixed line; the whole run counts, end laps do not break it.',
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

export const ATTACHMENT_RULES = [longRuns, oneFixedLine, seamUpliftByTest] as const;
