// The product's rules editions reach a company's record: both into a new one, the missing one into
// an older one, none twice.

import { expect, test } from '@jest/globals';
import { EDITION_1, EDITION_2 } from '#rules';
import { createMemoryLedger } from '#ledger';
import { oneStream, type Ledgers } from '../data/ledgers.js';
import { Editions, inForce, RULEBOOK } from './editions.js';
import { PublishRules } from './publish-rules.js';

function fresh() {
  const ledger = createMemoryLedger();
  const ledgers = { ledger, append: ledger.append } as unknown as Ledgers;
  const editions = new Editions(ledgers);
  return { ledger, ledgers, editions, publish: new PublishRules(ledgers, editions) };
}

test('a new company has both, and the full rulebook is in force from October 2026', async () => {
  const { editions, publish } = fresh();
  await publish.ofTheProduct('acme', 'somebody');
  const shelf = await editions.rules('acme');
  expect(shelf.editions.map(({ number }) => number)).toEqual([1, 2]);
  expect(inForce(shelf, '2026-09-30')?.edition).toEqual(EDITION_1);
  expect(inForce(shelf, '2026-11-25')?.edition).toEqual(EDITION_2);
});

test('a company with the first edition gets the second, and keeps its first as it was', async () => {
  const { ledger, ledgers, editions, publish } = fresh();
  await ledger.createLog('older');
  const older = { ...EDITION_1, summary: 'as it was published then' };
  const by = { person: 'somebody', role: 'administrator' };
  await ledgers.append(
    oneStream({ company: 'older', by, commandId: 'first', asked: {} }, RULEBOOK, 0, [
      { type: 'rules-edition-published/1', data: { edition: older, reason: null } },
    ]),
  );
  await publish.ofTheProduct('older', 'product');
  const shelf = await editions.rules('older');
  expect(shelf.editions.map(({ edition }) => edition.summary)).toEqual([
    older.summary,
    EDITION_2.summary,
  ]);
});

test('doing it again, or twice at once, records nothing more', async () => {
  const { ledger, publish } = fresh();
  await Promise.all([publish.ofTheProduct('acme', 'a'), publish.ofTheProduct('acme', 'b')]);
  await publish.ofTheProduct('acme', 'c');
  expect((await ledger.head('acme')).pos).toBe(2);
});
