// The explanation against brute force: what it shows turns the outcome, nothing less does, nothing
// is left out, reasons and changes are dual, the same question gives the same bytes, the budget is
// honest.

import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { EDITION_1, EDITION_2, type ColorGroup, type Edition } from '#rules';
import type { TestedAssembly } from '../contract/catalogue.js';
import type { CommandOf } from '../contract/commands.js';
import { contextOf } from '../given.js';
import { BARN, HOUSE, playUpTo } from '../job-files.js';
import { SAMPLE_CATALOGUE } from '../sample.table.js';
import { questionOf } from '../stages/gauge.js';
import { spaceOf } from './brute-force.js';
import { cellsOf } from './cells.js';
import { changeSets, keysOf, reproduces } from './change-sets.js';
import { framesOf } from './choices.js';
import { evaluate } from './evaluate.js';
import { hittingSets } from './minimal-sets.js';
import { optionsOf } from './options.js';
import type { Question } from './question.js';
import type { Target } from './spacings.js';
import { explain } from './what-would.js';

type Attachment = CommandOf<'select-gauge'>['attachment'];
const inches = (v: number) => ({ v: String(v), u: 'in' as const });
const attachmentOf = (file: typeof BARN): Attachment =>
  (file.gauge as CommandOf<'select-gauge'>).attachment;

function questionFor(file: typeof BARN): Question {
  const told = playUpTo(file, 'substrate');
  const asked = questionOf(told.job, told.job.surfaces['s1']!, attachmentOf(file), contextOf());
  if (!('facts' in asked)) throw new Error(asked.map(({ words }) => words).join());
  return asked;
}
const barn = questionFor(BARN);
const house = questionFor(HOUSE);

/**
 * 22 gauge without a chart: only tests speak for it, each with its own screw, spacing and supports.
 */
const rib = SAMPLE_CATALOGUE.made.find(({ profile }) => profile === 'rib-36')!;
const { deck_thickness: _, ...seamTest } = SAMPLE_CATALOGUE.assemblies[0]!;
const ribTest = (
  id: string,
  fastener: string,
  spacing: number,
  supports: number,
): TestedAssembly => ({
  ...seamTest,
  id,
  number: id,
  profile: 'rib-36',
  width: rib.width,
  thickness: inches(0.0296),
  substrates: ['purlins'],
  fastener,
  attachment_spacing: inches(spacing),
  support_spacing: inches(supports),
  outward: { v: '200', u: 'psf' },
  inward: { v: '90', u: 'psf' },
});
const tested = {
  ...SAMPLE_CATALOGUE,
  made: [...SAMPLE_CATALOGUE.made, { ...rib, thickness: inches(0.0296), gauge: '22' }],
  assemblies: [
    ...SAMPLE_CATALOGUE.assemblies,
    ribTest('rib-1', 'screw-14', 5, 20),
    ribTest('rib-2', 'screw-12', 4, 60),
  ],
};

/** A barn of two zones with drawn uplift, spacings and edition. */
const drawn = fc
  .record({
    uplift: fc.tuple(fc.integer({ min: 20, max: 110 }), fc.integer({ min: 20, max: 110 })),
    spacing: fc.constantFrom(6, 9, 12),
    supports: fc.constantFrom(24, 30, 36),
    edition: fc.constantFrom<Edition>(EDITION_1, EDITION_2),
  })
  .map(({ uplift, spacing, supports, edition }): Question => ({
    ...barn,
    catalogue: tested,
    edition,
    wind: {
      ...barn.wind,
      zones: uplift.map((each, i) => ({
        zone: String(i + 1),
        part: 'roof',
        inward_psf: '16',
        outward_psf: `-${each * (i + 1)}`,
      })),
    },
    spacings: [{ v: String(supports) }],
    attachment: { ...barn.attachment, zones: [{ zone: 'all', spacing: inches(spacing) }] },
  }));

/** A house on clips that do not hold everywhere, in a color that is made or not. */
const clipped = (uplift: number, color: ColorGroup = 'dark'): Question => {
  return {
    ...house,
    facts: { ...house.facts, color_group: color },
    wind: {
      ...house.wind,
      zones: house.wind.zones.map((each, i) => ({ ...each, outward_psf: `-${uplift + 8 * i}` })),
    },
  };
};

function searched(question: Question, id: string) {
  const option = optionsOf(question).find((each) => each.id === id);
  const result = evaluate(question, []).options.find((each) => each.id === id);
  if (!option || !result) throw new Error(`no option ${id}`);
  const target: Target = result.admissible ? 'fails' : 'passes';
  const cells = cellsOf(question, 1e6);
  const frames = framesOf(question);
  const { sets, whole } = changeSets(cells, frames, option, target);
  return { target, cells, sets, whole, space: spaceOf([...frames(option)], target) };
}

const subsets = (keys: readonly string[], most: number): readonly (readonly string[])[] =>
  keys.reduce<readonly (readonly string[])[]>(
    (all, key) => [...all, ...all.filter((set) => set.length < most).map((set) => [...set, key])],
    [[]],
  );
const named = (sets: readonly (readonly string[])[]): readonly string[] =>
  sets.map((set) => [...set].sort().join(' + ')).sort();

/** All minimal sets of up to `most` variables, by trying every one. */
function minimalByForce(
  { keys, turns }: ReturnType<typeof spaceOf>,
  most: number,
): readonly (readonly string[])[] {
  const found: (readonly string[])[] = [];
  for (const set of [...subsets(keys, most)].sort((a, b) => a.length - b.length)) {
    if (!found.some((fewer) => fewer.every((key) => set.includes(key))) && turns(set))
      found.push(set);
  }
  return found;
}

describe('change sets of a barn of two zones', () => {
  test.each([
    'steel-0.0296-ss-80',
    'steel-0.0236-ss-80',
    'steel-0.0187-ss-80',
    'steel-0.0142-ss-80',
  ])(
    '%s: sound, minimal and complete against brute force',
    (id) => {
      fc.assert(
        fc.property(drawn, (question) => {
          const { target, cells, sets, whole, space } = searched(question, id);
          expect(whole).toBe(true);
          expect(sets.filter((set) => !reproduces(cells, set, target))).toEqual([]);
          const most = target === 'fails' ? 1 : 2;
          const small = sets.map(keysOf).filter(({ length }) => length <= most);
          expect(named(small)).toEqual(named(minimalByForce(space, most)));
        }),
        { seed: 7, numRuns: 8 },
      );
    },
    120_000,
  );
});

test('two spacings of a zone together, or another screw and one of them, by brute force', () => {
  const [zone] = barn.wind.zones;
  const question = {
    ...barn,
    catalogue: tested,
    wind: { ...barn.wind, zones: [zone!] },
    spacings: [{ v: '36' }],
  };
  const { sets, space } = searched(question, 'steel-0.0296-ss-80');
  expect(named(sets.map(keysOf))).toEqual(['fastener + spacing 1', 'spacing 1 + supports 1']);
  expect(named(minimalByForce(space, 3))).toEqual(named(sets.map(keysOf)));
  const { what_would_change } = explain(question, evaluate(question, []));
  expect(what_would_change.map(({ words }) => words)).toContain(
    '22 gauge (0.0296 in, SS 80) passes with screws at 5 in or closer in zone 1 and ' +
      'supports at 20 in in zone 1 (added framing).',
  );
});

describe('a house on clips', () => {
  test.each([20, 36, 44, 60, 74])(
    'uplift %d: reasons and changes are dual, by brute force',
    (uplift) => {
      const { sets, space } = searched(clipped(uplift), 'steel-0.0236-ss-50-class-1');
      const reasons = hittingSets(sets.map(keysOf), 1000) ?? [];
      expect(reasons.length).toBeGreaterThan(0);
      for (const reason of reasons) {
        const others = space.keys.filter((key) => !reason.includes(key));
        expect(space.turns(others)).toBe(false);
        for (const key of reason) expect(space.turns([...others, key])).toBe(true);
      }
    },
    60_000,
  );

  test.each([20, 44, 60])(
    'uplift %d in a color that is not made: complete against brute force',
    (uplift) => {
      const { sets, space } = searched(clipped(uplift, 'textured'), 'steel-0.0236-ss-50-class-1');
      expect(named(sets.map(keysOf))).toEqual(named(minimalByForce(space, 3)));
      expect(named(sets.map(keysOf)).every((set) => set.includes('color_group'))).toBe(true);
    },
    60_000,
  );

  test('closer clips where the zone asks for them: hand arithmetic', () => {
    // 24 gauge weighs 1.2337 psf; 0.6 of it counts. T-101 at 24 in bears 45 psf, T-102 at 12 in 80
    // psf. Zone 2e at 52 psf of uplift asks 51.26: over 45, under 80.
    const question = clipped(44);
    const { what_would_change } = explain(question, evaluate(question, []));
    expect(
      what_would_change.filter(({ site_fact }) => !site_fact).map(({ words }) => words),
    ).toContain(
      '24 gauge (0.0236 in, SS 50 Class 1) passes with clips at 12 in or closer in zone 2e ' +
        '(13 in does not).',
    );
  });

  test('what-ifs are labeled, and the printed value turns where one step less does not', () => {
    const question = clipped(20);
    const { what_would_change } = explain(question, evaluate(question, []));
    const snow = what_would_change.filter(({ site_fact }) => site_fact);
    expect(snow.every(({ words }) => words.startsWith('What if: '))).toBe(true);
    // 45 + 0.7402 = 45.7402 psf is the last uplift that passes.
    expect(snow.map(({ words }) => words)).toContain(
      'What if: 24 gauge (0.0236 in, SS 50 Class 1) would pass up to an uplift in zone 1 ' +
        '(ASD level) of 45.7 psf, and not at 45.8 psf; 20 psf is recorded.',
    );
  });
});

describe('an explanation', () => {
  const evaluation = evaluate(barn, []);

  test('is the same bytes at every run', () => {
    expect(JSON.stringify(explain(barn, evaluation))).toBe(
      JSON.stringify(explain(barn, evaluation)),
    );
  });

  test('says when the budget ended it, and shows only what it verified', () => {
    const whole = explain(barn, evaluation);
    const short = explain(barn, evaluation, 20);
    expect(whole.budget_reached).toBe(false);
    expect(whole.searched.judgements).toBeLessThan(whole.searched.budget);
    expect(short.budget_reached).toBe(true);
    const sentences = whole.what_would_change.map(({ words }) => words);
    expect(short.what_would_change.filter(({ words }) => !sentences.includes(words))).toEqual([]);
    expect(short.what_would_change.length).toBeLessThan(sentences.length);
  });

  test('an option that passes but is not recommended comes first with another priority', () => {
    const first = explain(barn, evaluation).what_would_change.filter(
      ({ becomes }) => becomes === 'comes-first',
    );
    expect(first.map(({ words }) => words)).toEqual([
      '24 gauge (0.0236 in, SS 80) would come first with first priority long life.',
    ]);
  });
});
