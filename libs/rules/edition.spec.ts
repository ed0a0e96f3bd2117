// Editions: what a draft may change, what findings carry, and which facts a stage reads.

import { describe, expect, it } from '@jest/globals';
import {
  bookKey,
  EDITION_1,
  EDITION_2,
  editionFaults,
  factsReadBy,
  findings,
  RULE_BOOK,
  type Edition,
  type EditionEntry,
} from './index.js';

const changed = (rule: string, change: Partial<EditionEntry>): Edition => ({
  ...EDITION_1,
  number: 7,
  entries: EDITION_1.entries.map((entry) =>
    entry.rule === rule ? { ...entry, ...change } : entry,
  ),
});
const faultsOf = (rule: string, change: Partial<EditionEntry>) =>
  editionFaults(changed(rule, change), RULE_BOOK);

describe('the editions of the product', () => {
  it('have a number, a date and a summary', () => {
    expect(
      [EDITION_1, EDITION_2].map(({ number, in_force_from }) => [number, in_force_from]),
    ).toEqual([
      [1, '2026-01-01'],
      [2, '2026-10-01'],
    ]);
    expect(EDITION_1.summary).toContain('starting rules');
    expect(EDITION_2.summary).toContain('full rulebook');
    expect(EDITION_1.entries.length).toBeLessThan(EDITION_2.entries.length);
  });
});

describe('a drafted edition', () => {
  it('may be what the product comes with', () => {
    expect(editionFaults(EDITION_1, RULE_BOOK)).toEqual([]);
    expect(editionFaults(EDITION_2, RULE_BOOK, EDITION_1)).toEqual([]);
  });

  it('may change settings and severity of guidance and house policy', () => {
    expect(faultsOf('GAUGE-07', { settings: { hail_country_stone_in: 1.5 } })).toEqual([]);
    expect(faultsOf('GAUGE-05', { settings: { not_stocked: true }, severity: 'refuse' })).toEqual(
      [],
    );
  });

  it('may change neither for any other class', () => {
    expect(faultsOf('HAZ-02', { settings: { utilization_limit: 2 }, severity: 'note' })).toEqual([
      {
        rule: 'HAZ-02',
        message: 'is physics: its setting "utilization_limit" is 0.8 and may not be changed',
      },
      { rule: 'HAZ-02', message: 'is physics: its severity is caution and may not be changed' },
    ]);
  });

  it('names every wrong setting at once', () => {
    expect(
      faultsOf('GAUGE-08', { settings: { high_wind_mph: 'much', loud_wind_mph: 3 } }).map(
        ({ message }) => message,
      ),
    ).toEqual([
      'setting "high_wind_mph" must be a number',
      'has no setting "loud_wind_mph"',
      'setting "heavy_snow_psf" is missing',
    ]);
  });

  it('names only known versions, each rule once', () => {
    expect(faultsOf('GAUGE-08', { version: 9 })).toEqual([
      { rule: 'GAUGE-08', message: 'version 9 is not known' },
    ]);
    const [first] = EDITION_1.entries;
    const twice = { ...EDITION_1, entries: [...EDITION_1.entries, first!] };
    expect(editionFaults(twice, RULE_BOOK)).toEqual([
      { rule: first!.rule, message: 'stands twice' },
    ]);
  });

  it('may leave out guidance and house policy, and nothing else that stood before', () => {
    const without = (rule: string): Edition => ({
      ...EDITION_1,
      entries: EDITION_1.entries.filter((entry) => entry.rule !== rule),
    });
    expect(editionFaults(without('GAUGE-13'), RULE_BOOK, EDITION_1)).toEqual([]);
    expect(editionFaults(without('GAUGE-01'), RULE_BOOK, EDITION_1)).toEqual([
      { rule: 'GAUGE-01', message: 'is physics: it may not be left out' },
    ]);
    expect(editionFaults(without('GAUGE-01'), RULE_BOOK)).toEqual([]);
  });
});

describe('findings', () => {
  it('come all at once, in the order of the edition, for one stage', () => {
    const said = findings(EDITION_1, RULE_BOOK, 'style', { kind: 'roof' });
    expect(said.map(({ rule }) => rule)).toEqual(['STYLE-01', 'STYLE-02', 'STYLE-03', 'STYLE-04']);
    expect(said.every(({ outcome }) => outcome === 'not-evaluated')).toBe(true);
    expect(said[0]).toMatchObject({ missing: ['profile'], words: 'not known yet: profile' });
  });

  it("carry severity, figures, margin and source, and the rule's own words when it passes", () => {
    const zone = { zone: '3', missing: [], calculated_only: false };
    const panel = (utilization: number) => ({ utilization, limit_state: 'bending' });
    const of = (panelUtilization: number, unconfirmed: readonly string[]) =>
      findings(EDITION_1, RULE_BOOK, 'gauge', {
        unconfirmed_figures: unconfirmed,
        zones: [{ ...zone, panel: panel(panelUtilization), attachment: panel(0.1) }],
      });
    const find = (said: ReturnType<typeof of>, rule: string) =>
      said.find((each) => each.rule === rule);
    expect(find(of(1.25, []), 'GAUGE-01')).toEqual({
      rule: 'GAUGE-01',
      version: 1,
      title: 'The panel bears every zone',
      class: 'physics',
      severity: 'refuse',
      outcome: 'fail',
      words: 'panel utilization over 1.00: zone 3: bending 1.250',
      figures: [{ name: 'zone 3: bending', v: '1.250', u: '' }],
      limit: { name: 'limit', v: '1', u: '' },
      margin: { name: 'margin', v: '-0.250', u: '' },
      cites: RULE_BOOK.get(bookKey('GAUGE-01', 1))!.cites,
    });
    expect(find(of(0.9, ['slope factor']), 'HAZ-02')).toMatchObject({ severity: 'require' });
    expect(find(of(0.7, ['slope factor']), 'HAZ-02')).toMatchObject({ severity: 'caution' });
    const passing = find(of(0.7, []), 'HAZ-02');
    expect(passing).toMatchObject({
      outcome: 'pass',
      severity: 'caution',
      words: RULE_BOOK.get(bookKey('HAZ-02', 1))!.says,
      figures: [],
    });
    expect(passing).not.toHaveProperty('margin');
    expect(passing).not.toHaveProperty('missing');
  });

  it('use the severity and settings of the edition', () => {
    const hail = {
      design_stone_in: 1,
      option: { gauge: '26', thickness_in: 0.0179, availability: 'stock' },
    } as const;
    const strict = changed('GAUGE-07', {
      settings: { hail_country_stone_in: 1 },
      severity: 'refuse',
    });
    const find = (edition: Edition) =>
      findings(edition, RULE_BOOK, 'gauge', hail).find(({ rule }) => rule === 'GAUGE-07');
    expect(find(EDITION_1)).toMatchObject({ outcome: 'not-applicable' });
    expect(find(strict)).toMatchObject({ outcome: 'fail', severity: 'refuse' });
  });

  it('of a rule that is not in the code are a fault', () => {
    expect(() => findings(changed('GAUGE-08', { version: 9 }), RULE_BOOK, 'style', {})).toThrow(
      'edition 7 names GAUGE-08/9, which is not in the code',
    );
  });
});

describe('the facts a stage reads', () => {
  it('are those its rules declare, each once', () => {
    expect(factsReadBy(EDITION_1, RULE_BOOK, 'style')).toEqual([
      'kind',
      'slope_per_12',
      'profile',
      'lap_sealant',
      'open_framing',
    ]);
    expect(factsReadBy({ ...EDITION_1, entries: [] }, RULE_BOOK, 'style')).toEqual([]);
    expect(factsReadBy(changed('STYLE-01', { version: 9 }), RULE_BOOK, 'style')).not.toContain(
      'lap_sealant',
    );
  });
});
