// The rulebook page lists every rule once, with its source and its cases.

import { describe, expect, it } from '@jest/globals';
import { ALL_RULES, CASES, EDITION_1, EDITION_2, type Rule } from '#rules';
import { rulebookPage } from './rulebook-page.js';

const editions = [EDITION_1, EDITION_2];
const page = rulebookPage({ rules: ALL_RULES, cases: CASES, editions });
const entryOf = (id: string): string => page.split(`### ${id} `)[1]!.split('###')[0]!;

describe('the rulebook page', () => {
  it('has every rule once, with what it says', () => {
    for (const rule of ALL_RULES as readonly Rule[]) {
      expect(page.split(`### ${rule.id} version`)).toHaveLength(2);
      expect(entryOf(rule.id)).toContain(rule.says);
    }
    expect(page).toContain(`${ALL_RULES.length} rules`);
  });

  it('gives class, severity, source, settings, facts, editions and cases', () => {
    expect(entryOf('STYLE-01')).toContain('*code, refuse.*');
    expect(entryOf('STYLE-01')).toContain('- Source: IBC 2018, 1507.4.2; IRC 2018, R905.10.2');
    expect(entryOf('STYLE-01')).toContain('- Reads: kind, slope_per_12, profile, lap_sealant');
    expect(entryOf('STYLE-01')).toContain('- Editions: 1, 2');
    expect(entryOf('STYLE-05')).toContain('- Editions: 2');
    expect(entryOf('STYLE-05')).toContain('- Source: common practice');
    expect(entryOf('STYLE-05')).not.toContain('Settings');
    expect(entryOf('GAUGE-08')).toContain('- Settings: high_wind_mph = 130, heavy_snow_psf = 40');
    const { passes, refuses, withSettings } = CASES['SIGN-01'];
    expect(entryOf('SIGN-01')).toContain(`${passes.length} pass, ${refuses.length} fail`);
    expect(entryOf('SIGN-01')).toContain(`${withSettings!.length} with other settings`);
  });

  it('will not count a rule without cases', () => {
    const rules = ALL_RULES.slice(0, 1);
    expect(() => rulebookPage({ rules, cases: {}, editions })).toThrow('STYLE-01 has no cases');
  });
});
