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
import { jobRow, takeOffSheet } from '#jobs';

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

test('the house has a take-off with a chimney, which still counts', async () => {
  const { company } = DEMONSTRATION;
  const job = await running.service.get(Jobs).load(company, HOUSE.id);
  const sheet = takeOffSheet(job, 'main', null)!;
  expect([sheet.stands, sheet.number]).toEqual(['current', 1]);
  expect(sheet.result.planes.map(({ openings }) => openings.map(({ name }) => name))).toEqual([
    ['chimney'],
    [],
  ]);
  // Two planes of 48.8 ft by 17.4 ft of run at 6 in 12; the chimney is 3.5 by 2.5 ft on the plan.
  expect(Number(sheet.result.totals.area_ft2)).toBeCloseTo(
    (2 * 48.8 * 17.4 - 3.5 * 2.5) * Math.sqrt(1.25),
    1,
  );
  expect(sheet.result.notes.join(' ')).not.toMatch(/No trim is named/);
});

test('filling it again records nothing', async () => {
  const { ledger } = running.service.get(Ledgers);
  const before = await ledger.head(DEMONSTRATION.company);
  await fillDemonstration(running.service);
  expect((await ledger.head(DEMONSTRATION.company)).pos).toBe(before.pos);
});
