// Of several refusals the gravest gives the status, and the body lists all.

import { expect, test } from '@jest/globals';
import type { RefusalView } from '#jobs/contract';
import { problemBody, refused } from './problems.js';

const refusal = (kind: RefusalView['kind']): RefusalView => ({
  kind,
  code: 'X-01',
  words: `${kind}.`,
  cites: [],
  figures: [],
});

test.each([
  [['refused-by-rules', 'forbidden'], 403],
  [['stale', 'not-found'], 404],
  [['wrong-stage', 'stale'], 412],
  [['refused-by-rules', 'wrong-stage'], 409],
  [['invalid-request'], 422],
] as const)('%j → %d', (kinds, status) => {
  const body = problemBody(refused(kinds.map(refusal)));
  expect(body).toMatchObject({ status, refusals: kinds.map((kind) => ({ kind })) });
});
