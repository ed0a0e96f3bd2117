import { expect, test } from '@jest/globals';
import fc from 'fast-check';
import { Frontier, leafHash, treeRoot } from './merkle.js';
import { consistencyRanges, inclusionRanges, verifyConsistency, verifyInclusion } from './proof.js';
import type { Range } from './proof.js';

const all = Array.from({ length: 300 }, (_, i) => leafHash(`entry ${i}`));
const root = ({ start, end }: Range) => treeRoot(all.slice(start, end));
const size = fc.integer({ min: 1, max: all.length });

test('every leaf of a tree has a proof, and no other leaf passes with it', () => {
  fc.assert(
    fc.property(size, fc.nat(), fc.nat(), (count, pick, other) => {
      const index = pick % count;
      const proof = inclusionRanges(index, count).map(root);
      const whole = root({ start: 0, end: count });
      const check = (at: number, leaf: Buffer) => verifyInclusion(at, count, leaf, proof, whole);
      expect(check(index, all[index] as Buffer)).toBe(true);
      const wrong = other % count;
      expect(check(wrong, all[wrong] as Buffer)).toBe(wrong === index);
      expect(check(wrong, all[index] as Buffer)).toBe(wrong === index);
    }),
  );
});

test('a tree continues each of its beginnings, and none with one leaf changed', () => {
  fc.assert(
    fc.property(size, size, fc.nat(), (a, b, pick) => {
      const [from, to] = [Math.min(a, b), Math.max(a, b)];
      const proof = consistencyRanges(from, to).map(root);
      const after = root({ start: 0, end: to });
      const before = root({ start: 0, end: from });
      expect(verifyConsistency(from, to, before, after, proof)).toBe(true);
      const changed = all.slice(0, from).with(pick % from, leafHash('changed'));
      expect(verifyConsistency(from, to, treeRoot(changed), after, proof)).toBe(false);
    }),
  );
});

test('a frontier is its bytes', () => {
  const frontier = new Frontier();
  for (const leaf of all.slice(0, 77)) frontier.append(leaf);
  const again = Frontier.decode(77, frontier.encode());
  for (const leaf of all.slice(77)) again.append(leaf);
  expect(again.root()).toEqual(treeRoot(all));
  expect(() => Frontier.decode(78, frontier.encode())).not.toThrow();
  expect(() => Frontier.decode(79, frontier.encode())).toThrow(RangeError);
});
