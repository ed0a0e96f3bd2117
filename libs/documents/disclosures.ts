// What a written warranty discloses, in the order of 16 CFR 701.3(a), and the three sentences that the
// rule words itself. The heading of each item is ours.

/**
 * Items (1) to (9). The sentence of item 9 was read in the rule; those of 7 and 8 are from memory, to
 * be confirmed against the rule before a consumer document is issued.
 */
export const DISCLOSURE_ITEMS = [
  { item: '1', asks: 'Who is covered' },
  { item: '2', asks: 'What is covered, and what is excluded' },
  { item: '3', asks: 'What the warrantor will do and pay for, and what not' },
  { item: '4', asks: 'When the term starts and how long it runs' },
  { item: '5', asks: 'How to make a claim, step by step' },
  { item: '6', asks: 'Informal settlement of disputes' },
  {
    item: '7',
    asks: 'How long implied warranties last',
    sentence:
      'Some States do not allow limitations on how long an implied warranty lasts, so the above limitation may not apply to you.',
  },
  {
    item: '8',
    asks: 'Incidental and consequential damages',
    sentence:
      'Some States do not allow the exclusion or limitation of incidental or consequential damages, so the above limitation or exclusion may not apply to you.',
  },
  {
    item: '9',
    asks: 'Your rights',
    sentence:
      'This warranty gives you specific legal rights, and you may also have other rights which vary from State to State.',
  },
] as const satisfies readonly {
  readonly item: string;
  readonly asks: string;
  readonly sentence?: string;
}[];

export interface Disclosed {
  readonly item: string;
  readonly words: string;
}

export interface DisclosurePart {
  readonly asks: string;
  readonly words: readonly string[];
}

/** Every item in its order; the sentence of 7 and 8 follows only where something is limited. */
export function disclosureParts(given: readonly Disclosed[]): readonly DisclosurePart[] {
  return DISCLOSURE_ITEMS.map((each) => {
    const own = given.filter(({ item }) => item === each.item).map(({ words }) => words);
    const sentence = 'sentence' in each ? each.sentence : undefined;
    const follows =
      sentence !== undefined &&
      (each.item === '9' || own.length > 0) &&
      !own.some((words) => words.includes(sentence));
    const words = [...own, ...(follows ? [sentence] : [])];
    return {
      asks: each.asks,
      words: words.length > 0 ? words : [ABSENT[each.item] ?? 'Nothing is stated.'],
    };
  });
}

const ABSENT: Readonly<Record<string, string>> = {
  '6': 'No informal settlement procedure is stated.',
  '7': 'No limit on implied warranties is stated.',
  '8': 'No exclusion of incidental or consequential damages is stated.',
};
