// For tests: the house roof ordered, delivered, built and completed, as the commands that bring it there.

import type { Role } from '#rules';
import type { CommandInput } from '../contract/commands.js';
import type { Story } from '../given.js';
import { HOUSE, playUpTo } from '../job-files.js';

export const v = <U extends string>(value: string, u: U) => ({ v: value, u });
export const file = (name: string) => ({ digest: 'f'.repeat(64), name });
const facts = (entries: readonly (readonly [string | null, string, unknown])[]): CommandInput =>
  ({
    type: 'record-facts',
    reason: 'papers came',
    facts: entries.map(([on, fact, value]) => ({
      on,
      fact,
      value,
      how: 'document',
      source: 'job file',
    })),
  }) as CommandInput;

export const PAPERS = facts([
  [null, 'proposal-accepted', true],
  [null, 'deposit-agreed', v('0', 'usd')],
  [null, 'quote-valid-until', '2026-04-01'],
  [null, 'permit', 'granted'],
  [null, 'association-approval', 'not-asked'],
  [null, 'truck-limit', v('45', 'ft')],
  [null, 'site-limit', v('40', 'ft')],
  [null, 'handling-limit', v('40', 'ft')],
  [null, 'promised-documents', ['paint']],
  [null, 'terms-on-file', ['paint']],
  [null, 'term-text-given', true],
  [null, 'consumer-product', true],
  ['s1', 'chip-accepted', true],
]);
export const ORDER = {
  type: 'issue-order',
  order: 'o1',
  supplier: 'Invented Panel Works',
  date: '2026-03-05',
  landing_place: 'driveway, not on the roof',
  lines: [
    {
      id: 'p1',
      surface: 's1',
      what: 'panel',
      words: 'Snap seam 16, 24 gauge',
      length: v('288', 'in'),
      count: 40,
    },
    { id: 'c1', surface: 's1', what: 'fastener', words: 'Sliding clip', count: 600 },
  ],
  lengths: [{ surface: 's1', by: 'entered', standing: 'signed', signed_by: 'crew lead' }],
} as const satisfies CommandInput;
export const ready = (): Story => playUpTo(HOUSE, 'gauge').play(PAPERS);
export const ordered = (): Story => ready().play(ORDER);
export const receipt = (lot: string, panels: number): CommandInput => ({
  type: 'record-receipt',
  order: 'o1',
  on: '2026-03-20',
  stored_dry: true,
  lots: [{ surface: 's1', lot }],
  lines: [{ line: 'p1', count: panels }, ...(panels === 40 ? [{ line: 'c1', count: 600 }] : [])],
});
const BUILT: readonly (readonly [CommandInput, ...Role[]])[] = [
  [receipt('coil-7', 40)],
  [
    {
      type: 'record-as-built',
      surface: 's1',
      fastener: 'clip-s',
      zones: [{ zone: 'all', spacing: v('24', 'in') }],
      files: [file('deck.jpg')],
    },
    'crew-lead',
  ],
  [
    {
      type: 'record-inspection',
      on: '2026-04-10',
      passed: true,
      punch: [{ id: 'k1', words: 'touch up rake' }],
    },
  ],
  [{ type: 'close-punch-item', item: 'k1', words: 'done' }],
  [{ type: 'record-completion', on: '2026-04-12' }],
];
/** With the first `n` steps after the order: delivered, built, inspected, punch list closed, complete. */
export const builtUpTo = (n: number): Story =>
  BUILT.slice(0, n).reduce(
    (told, [command, ...roles]) => told.play(command, roles.length > 0 ? roles : undefined),
    ordered(),
  );
export const built = (): Story => builtUpTo(BUILT.length);
export const WARRANTY: CommandInput = {
  type: 'issue-warranty',
  document: 'w1',
  kind: 'paint',
  title: 'limited',
  warrantor: 'Invented Coil Coating',
  surfaces: ['s1'],
  start: '2026-04-12',
  years: 30,
  terms: file('terms.pdf'),
  fade: { limit: '5', scale: 'not named', years: 30 },
  chalk: { least: '8', years: 30 },
  disclosures: ['1', '2', '3', '4', '5', '7', '9'].map((item) => ({
    item,
    words: 'as the text says',
  })),
  full_tests_not_met: ['remedy free of charge'],
  exclusions_named: ['paint registered 11 days late'],
};
