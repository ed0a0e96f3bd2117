// The preview on the command line, over the demonstration's record: as text, as JSON, and refused
// with every fault.

import { afterAll, beforeAll, expect, test } from '@jest/globals';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { EDITION_2 } from '#rules';
import { withService } from '../../tests/service.js';
import { fillDemonstration } from './demonstration.js';
import { previewFile, type PreviewOptions } from './rulebook-preview.js';

const running = withService();
const folder = mkdtempSync(path.join(tmpdir(), 'gauge-preview-'));
const before = process.env['DATABASE_SERVICE_URL'];

beforeAll(async () => {
  await fillDemonstration(running.service);
  process.env['DATABASE_SERVICE_URL'] = running.database.serviceUrl;
}, 120_000);
afterAll(() => {
  if (before === undefined) delete process.env['DATABASE_SERVICE_URL'];
  else process.env['DATABASE_SERVICE_URL'] = before;
  rmSync(folder, { recursive: true, force: true });
});

const DRAFT = {
  in_force_from: '2027-01-01',
  summary: 'Sign-off from a tenth of capacity.',
  edits: [{ rule: 'SIGN-01', settings: { utilization_limit: 0.1 }, source: 'invented' }],
};

async function run(given: unknown, options: Partial<PreviewOptions> = {}) {
  const file = path.join(folder, 'draft.json');
  writeFileSync(file, JSON.stringify(given));
  const all = { data: 'not used', company: 'demonstration', scope: 'open', json: false } as const;
  let [out, progress] = ['', ''];
  const written = {
    out: (text: string) => void (out += text),
    progress: (text: string) => void (progress += text),
  };
  await previewFile(file, { ...all, ...options }, written);
  return { out, progress };
}

test('as text, with progress apart from the result', async () => {
  const { out, progress } = await run(DRAFT);
  expect(out).toContain('4 open surfaces checked: 3 same, 1 now blocked.');
  expect(out).toMatch(/2026-0102 Main roof, gauge: now blocked\n {2}before: 24 gauge/);
  expect(progress).toMatch(/100 % read, 4 checked\n$/);
});

test('as JSON, over every past decision, and of a whole edition', async () => {
  const whole = { ...EDITION_2, number: 3, in_force_from: '2027-01-01' };
  const { out } = await run(whole, { json: true, scope: 'all' });
  const { done, counts, rows } = JSON.parse(out) as {
    done: number;
    counts: Record<string, number>;
    rows: unknown[];
  };
  expect(done).toBeGreaterThan(10);
  expect(counts['same']).toBe(done);
  expect(rows).toEqual([]);
});

test('every fault is named', async () => {
  await expect(run({ in_force_from: 'soon', edits: [{ rule: 'SIGN-01' }] })).rejects.toThrow(
    /\/in_force_from .*\n\/summary .*\n\/edits\/0\/source /,
  );
  const fixed = { ...DRAFT, edits: [{ rule: 'GAUGE-01', severity: 'note', source: 'x' }] };
  await expect(run(fixed)).rejects.toThrow('GAUGE-01 is physics: its severity is refuse');
  await expect(run(DRAFT, { company: 'nobody' })).rejects.toThrow('"nobody" has no rules edition');
});
