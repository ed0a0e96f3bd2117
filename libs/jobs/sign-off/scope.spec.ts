// A sign-off is stale exactly when an input in its stored scope changes, whichever fact it is, and
// setting it back does not revive it.

import { expect, test } from '@jest/globals';
import fc from 'fast-check';
import type { CommandInput, FactEntry } from '../contract/commands.js';
import { FACTS } from '../contract/fact-dictionary.js';
import { APPROVE, ASK, BARN, playUpTo } from '../job-files.js';

const signed = playUpTo(BARN, 'gauge').play(ASK).play(APPROVE, ['engineer']);
const recorded = (BARN.facts as Extract<CommandInput, { type: 'record-facts' }>).facts;

/** Another value that the fact allows. */
function another({ fact, value }: FactEntry, by: number): FactEntry['value'] | undefined {
  const definition = FACTS[fact];
  if (definition.kind === 'flag') return !value;
  if (definition.kind === 'choice')
    return definition.of.filter((each) => each !== value)[by % (definition.of.length - 1)];
  if (definition.kind === 'spacings') return [{ v: String(25 + by) }];
  if (definition.kind !== 'amount') return undefined;
  const { v, u } = value as { v: string; u: string };
  const more = Number(v) * (1 + (by + 1) / 100);
  return { v: String(Number((more <= definition.most ? more : Number(v) * 0.9).toFixed(4))), u };
}
const pathOf = ({ on, fact }: FactEntry): string =>
  `${on === null ? FACTS[fact].on : on === 'b1' ? 'building/b1' : `surface/${on}`}/${fact}`;

test('stale if and only if the changed fact is in scope; setting it back does not revive', () => {
  const scope = signed.job.signOffs['r1']!.scope['s1']!;
  const seen = { inside: 0, outside: 0 };
  fc.assert(
    fc.property(fc.constantFrom(...recorded), fc.nat({ max: 20 }), (entry, by) => {
      const value = another(entry, by);
      fc.pre(value !== undefined);
      const changed = signed.play({
        type: 'record-facts',
        reason: 'seen',
        facts: [{ ...entry, value } as FactEntry],
      });
      const inScope = Object.hasOwn(scope, pathOf(entry));
      seen[inScope ? 'inside' : 'outside'] += 1;
      const back = changed.play({ type: 'record-facts', reason: 'as before', facts: [entry] });
      return [changed, back].every(
        ({ job }) => job.signOffs['r1']!.differences.length > 0 === inScope,
      );
    }),
    { numRuns: 200, seed: 31 },
  );
  expect(seen.inside).toBeGreaterThan(20);
  expect(seen.outside).toBeGreaterThan(20);
});
