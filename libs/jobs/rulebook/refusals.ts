// Refusals of the rulebook, each with an id of its own, as the rules of movement have.

import type { RefusalView } from '../contract/views.js';

export const BOOK = {
  'BOOK-01': { kind: 'forbidden', says: 'The rulebook is for the standards manager.' },
  'BOOK-02': { kind: 'wrong-stage', says: 'Only a draft that stands is published or withdrawn.' },
  'BOOK-03': { kind: 'wrong-stage', says: 'A draft changes an edition that is published.' },
  'BOOK-04': { kind: 'invalid-request', says: 'An edition must be without faults.' },
  'BOOK-05': { kind: 'invalid-request', says: 'What is left out must stand in the edition.' },
  'BOOK-06': { kind: 'invalid-request', says: 'A draft differs from the newest edition.' },
  'BOOK-07': { kind: 'invalid-request', says: 'A rule is edited once in a draft.' },
  'BOOK-08': {
    kind: 'invalid-request',
    says: 'An edition is in force from today or later, and not before the one it follows.',
  },
  'BOOK-09': { kind: 'stale', says: 'A draft is published over the newest edition alone.' },
  'BOOK-10': { kind: 'stale', says: 'A draft is saved or published as it was seen.' },
} as const satisfies Record<string, { kind: RefusalView['kind']; says: string }>;
export type BookId = keyof typeof BOOK;

/** What the rule says, then how it stands here. */
export function refuseBook(code: BookId, here: string, pointer?: string): RefusalView {
  const { kind, says } = BOOK[code];
  const words = `${says} ${here}`;
  return {
    kind,
    code,
    words,
    cites: [],
    figures: [],
    ...(pointer === undefined ? {} : { pointer }),
  };
}
