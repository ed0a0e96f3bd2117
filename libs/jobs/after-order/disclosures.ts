// What 16 CFR 701.3(a) asks a written warranty on a consumer product to disclose, item by item. Items
// 6 to 9 are from memory; the text is the warrantor's own.

export const DISCLOSURES = {
  '1': 'who is covered, if not every owner during the term',
  '2': 'what is covered and what is excluded',
  '3': 'what the warrantor will do and pay, and what not',
  '4': 'when the term starts, if not at purchase, and how long it runs',
  '5': 'how to claim, step by step, with whom and at which address',
  '6': 'informal dispute settlement, if any',
  '7': 'limits on the duration of implied warranties, with the sentence on states',
  '8': 'exclusion of incidental or consequential damages, with the sentence on states',
  '9': 'the sentence on specific legal rights',
} as const;
export type Disclosure = keyof typeof DISCLOSURES;

/** Items that must stand: the sixth only where there is such a settlement, the seventh only where limited. */
export function disclosureItems(title: 'limited' | 'full'): readonly Disclosure[] {
  const always: readonly Disclosure[] = ['1', '2', '3', '4', '5', '9'];
  return title === 'limited' ? [...always, '7'] : always;
}
