// The coverage page: what stands in the lists and the case files stands on the page, with counts.

import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from '@jest/globals';
import { coverage } from '#engineering';
import { coveragePage, type CaseLine } from './coverage-page.js';

const line = (id: string, topic: string, provenance: CaseLine['provenance']): CaseLine => ({
  id,
  topic,
  provenance,
});

test('clauses, functions, gaps, and cases by label', () => {
  const page = coveragePage(
    { color: [{ clause: 'Eq. 1 | 2', does: 'a sum', function: 'one, two', left_out: 'three' }] },
    {
      color: [
        line('a', 'sums', 'published'),
        line('b', 'sums', 'derived'),
        line('c', 'roots', 'published'),
      ],
      other: [line('d', 'elsewhere', 'published')],
    },
  );
  expect(page).toContain('| Eq. 1 \\| 2 | a sum | `one`, `two` | three |  |');
  expect(page).toContain('| color | 2 | 0 | 1 | 0 | 3 |');
  expect(page).toContain('| **all** | 2 | 0 | 1 | 0 | 3 |');
  expect(page).toContain('| roots | 1 | 0 | 0 | 0 | 1 |');
  expect(page).not.toContain('elsewhere');
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
