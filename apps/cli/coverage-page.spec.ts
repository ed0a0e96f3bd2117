// The coverage page: what stands in the lists and the case files stands on the page, with counts.

import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from '@jest/globals';
import { coverage } from '#engineering';
import { coveragePage, type CaseLine, type NotMet } from './coverage-page.js';

const line = (id: string, topic: string, provenance: CaseLine['provenance']): CaseLine => ({
  id,
  topic,
  provenance,
});

test('clauses, functions, gaps, and cases by label at their clause', () => {
  const row = { clause: 'Eq. 1 | 2', does: 'a sum', function: 'one, two', cases: ['sums'] };
  const page = coveragePage(
    { color: [{ ...row, left_out: 'three' }] },
    {
      color: [
        line('a', 'sums', 'published'),
        line('b', 'sums', 'derived'),
        line('c', 'roots', 'second-hand'),
      ],
      other: [line('d', 'elsewhere', 'published')],
    },
    { color: { b: 'a slip of the pen' } },
  );
  expect(page).toContain(
    '| Eq. 1 \\| 2 | a sum | `one`, `two` | 1 | 0 | 1 | 1 | 0 | 1 | three |  |',
  );
  expect(page).toContain('| color | 1 | 1 | 2 | 1 | 0 | 1 |');
  expect(page).toContain('| **all** | 1 | 1 | 2 | 1 | 0 | 1 |');
  expect(page).toContain('| b | sums | derived | a slip of the pen |');
  expect(page).not.toContain('elsewhere');
});

const casesOf = (topic: string): readonly CaseLine[] => {
  const file = new URL(`../../tests/standards/cases/${topic}.json`, import.meta.url);
  return JSON.parse(readFileSync(file, 'utf8')) as CaseLine[];
};

test('every case stands at a clause, and every clause names cases that there are', () => {
  const there = new Set(
    Object.keys(coverage).flatMap((topic) => casesOf(topic).map((each) => each.topic)),
  );
  const named = new Set(
    Object.values(coverage)
      .flat()
      .flatMap(({ cases = [] }) => cases),
  );
  expect([...there].filter((topic) => !named.has(topic))).toEqual([]);
  expect([...named].filter((topic) => !there.has(topic))).toEqual([]);
});

test('what is not met names cases that there are', () => {
  const file = new URL('../../tests/standards/not-met.json', import.meta.url);
  const notMet = JSON.parse(readFileSync(file, 'utf8')) as NotMet;
  for (const [topic, reasons] of Object.entries(notMet)) {
    const ids = new Set(casesOf(topic).map(({ id }) => id));
    expect(Object.keys(reasons).filter((id) => !ids.has(id))).toEqual([]);
  }
});

test.each(Object.keys(coverage))('%s has a case file, and every row says what it does', (topic) => {
  const file = new URL(`../../tests/standards/cases/${topic}.json`, import.meta.url);
  expect(existsSync(file)).toBe(true);
  const cases = JSON.parse(readFileSync(file, 'utf8')) as CaseLine[];
  expect(cases.length).toBeGreaterThan(0);
  for (const row of coverage[topic] ?? []) {
    expect(Math.min(row.clause.length, row.does.length, row.function.length)).toBeGreaterThan(0);
  }
});
