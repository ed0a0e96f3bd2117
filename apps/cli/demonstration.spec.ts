// The demonstration plays through, and playing it again changes nothing.

import { expect, test } from '@jest/globals';
import { Ledgers } from '../api/data/ledgers.js';
import { Jobs } from '../api/jobs/fold.js';
import { withService } from '../../tests/service.js';
import { fillDemonstration } from './demonstration.js';
import { BARN } from './demonstration/barn.js';
import { HOUSE } from './demonstration/house.js';
import { DEMONSTRATION } from './demonstration/people.js';
import { WORKSHOP } from './demonstration/workshop.js';
import { jobRow } from '#jobs';

const running = withService();

test('three jobs: signed off, confirmed at tear-off, and left in the middle', async () => {
  await fillDemonstration(running.service);
  const jobs = running.service.get(Jobs);
  const rows = await Promise.all(
    [BARN, HOUSE, WORKSHOP].map(async ({ id }) =>
      jobRow(await jobs.load(DEMONSTRATION.company, id)),
    ),
  );
  expect(rows.map(({ number, stage }) => [number, stage])).toEqual([
    ['2026-0101', 'done'],
    ['2026-0102', 'done'],
    ['2026-0103', 'hazards'],
  ]);
}, 60_000);

test('filling it again records nothing', async () => {
  const { ledger } = running.service.get(Ledgers);
  const before = await ledger.head(DEMONSTRATION.company);
  await fillDemonstration(running.service);
  expect((await ledger.head(DEMONSTRATION.company)).pos).toBe(before.pos);
});
