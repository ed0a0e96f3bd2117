// 16 CFR 701.3(a), subsection by subsection: what is missing keeps the document back, what is there is
// printed, and the sentences that the rule words itself stand in it.

import { describe, expect, test } from '@jest/globals';
import { DISCLOSURES, type CommandInput } from '#jobs/contract';
import { renderWarranty } from '#documents';
import { warrantyPaper, type WarrantyPaper } from '#jobs';
import { built, WARRANTY as COMMAND } from '../../libs/jobs/after-order/order-files.js';
import { disclosureParts } from '../../libs/documents/disclosures.js';
import { pdfText, testByPoppler } from '../read-pdf.js';
import { WARRANTY } from '../sample-papers.js';

type Item = keyof typeof DISCLOSURES;
const OPTIONS = { size: 'letter', json: '{}', digest: 'a'.repeat(64) } as const;
const without = (item: string): WarrantyPaper => ({
  ...WARRANTY,
  disclosures: WARRANTY.disclosures.filter((each) => each.item !== item),
});
const registered = built().play({
  type: 'file-registration',
  kind: 'paint',
  on: '2026-05-01',
  window_days: 60,
});
const issue = COMMAND as Extract<CommandInput, { type: 'issue-warranty' }>;
const issueWithout = (item: string) =>
  registered.refusals({
    ...issue,
    exclusions_named: [],
    disclosures: (issue.disclosures ?? []).filter((each) => each.item !== item),
  });
const printed = async (paper: WarrantyPaper): Promise<string> =>
  pdfText(Buffer.from(await renderWarranty(paper, OPTIONS))).replace(/\s+/g, ' ');
const words = (paper: WarrantyPaper, item: Item): readonly string[] =>
  disclosureParts(paper.disclosures)[Number(item) - 1]?.words ?? [];

const MUST: readonly Item[] = ['1', '2', '3', '4', '5'];
const SENTENCES: Readonly<Partial<Record<Item, string>>> = {
  '7': 'Some States do not allow limitations on how long an implied warranty lasts, so the above limitation may not apply to you.',
  '8': 'Some States do not allow the exclusion or limitation of incidental or consequential damages, so the above limitation or exclusion may not apply to you.',
  '9': 'This warranty gives you specific legal rights, and you may also have other rights which vary from State to State.',
};

test('with all of them there it is issued', () => {
  expect(issueWithout('none')).toEqual([]);
});

describe.each(MUST)('16 CFR 701.3(a)(%s)', (item) => {
  test(`${DISCLOSURES[item]}: missing, nothing is issued and nothing is printed`, async () => {
    expect(issueWithout(item)).toEqual(['WARR-09']);
    await expect(renderWarranty(without(item), OPTIONS)).rejects.toThrow(`701.3(a)(${item})`);
  });

  testByPoppler('stands on the document in its own words', async () => {
    const own = WARRANTY.disclosures.find((each) => each.item === item)?.words ?? '';
    expect(own.length).toBeGreaterThan(10);
    expect(await printed(WARRANTY)).toContain(own);
  });
});

describe('16 CFR 701.3(a)(5)', () => {
  test("the warrantor's mailing address is known, or nothing is issued", () => {
    const stranger = { ...issue, exclusions_named: [], warrantor: 'Somebody Else (invented)' };
    expect(registered.refusals(stranger)).toEqual(['WARR-11']);
    const known = registered.play({ ...stranger, warrantor_address: '5 Other Road, Anytown KS' });
    expect(warrantyPaper(known.events, 'w1')?.warrantor).toEqual({
      name: 'Somebody Else (invented)',
      address: '5 Other Road, Anytown KS',
    });
  });

  testByPoppler('and stands on the document', async () => {
    const { name, address } = WARRANTY.warrantor;
    expect(await printed(WARRANTY)).toContain(`${name}, ${address}`);
  });
});

describe('16 CFR 701.3(a)(6)', () => {
  testByPoppler(
    'an informal settlement stands where there is one, and that there is none where not',
    async () => {
      const own = 'Disputes go first to the Example Mediation Board.';
      const paper = {
        ...WARRANTY,
        disclosures: [...WARRANTY.disclosures, { item: '6', words: own }],
      };
      expect(await printed(paper)).toContain(own);
      expect(await printed(WARRANTY)).toContain('No informal settlement procedure is stated.');
    },
  );
});

describe.each(['7', '8'] as const)('16 CFR 701.3(a)(%s)', (item) => {
  const sentence = SENTENCES[item] ?? '';

  test(`${DISCLOSURES[item]}: the rule's sentence follows a limit, once, and nothing else`, () => {
    expect(words(WARRANTY, item).at(-1)).toBe(sentence);
    const own = WARRANTY.disclosures.find((each) => each.item === item)!.words;
    const twice = {
      ...without(item),
      disclosures: [...without(item).disclosures, { item, words: `${own} ${sentence}` }],
    };
    expect(words(twice, item).join(' ').split(sentence)).toHaveLength(2);
    expect(words(without(item), item).join(' ')).not.toContain(sentence);
  });

  testByPoppler('and stands on the document', async () => {
    expect(await printed(WARRANTY)).toContain(sentence);
    expect(await printed(without(item))).not.toContain(sentence);
  });
});

test('16 CFR 701.3(a)(7): a limited document says how long implied warranties last, or is not issued', () => {
  expect(issueWithout('7')).toEqual(['WARR-09']);
});

describe('16 CFR 701.3(a)(9)', () => {
  test('missing, nothing is issued', () => {
    expect(issueWithout('9')).toEqual(['WARR-09']);
  });

  testByPoppler("the rule's sentence stands in any case", async () => {
    expect(await printed(without('9'))).toContain(SENTENCES['9']);
  });
});

test('outside consumer products the office is not kept back by them, and an unanswered question is no answer', () => {
  const farm = registered.play({
    type: 'record-facts',
    reason: 'asked',
    facts: [
      { on: null, fact: 'consumer-product', value: false, how: 'document', source: 'job file' },
    ],
  });
  const bare = { ...issue, exclusions_named: [], disclosures: [] };
  expect(farm.refusals(bare)).toEqual([]);
  expect(registered.refusals(bare)).toEqual(['WARR-09']);
});

describe('15 USC 2303 and 2304', () => {
  test('"full" is refused where one test is not met, by the rules and by the printer', async () => {
    expect(registered.refusals({ ...issue, exclusions_named: [], title: 'full' })).toEqual([
      'WARR-08',
    ]);
    await expect(renderWarranty({ ...WARRANTY, title: 'full' }, OPTIONS)).rejects.toThrow(
      '15 USC 2304',
    );
  });

  testByPoppler('any other is titled "Limited warranty"', async () => {
    expect(await printed(WARRANTY)).toMatch(/^.{0,40}Limited warranty: paint finish/i);
  });
});
