// Requirements 24, 27 and 29 over HTTP and PostgreSQL: records that nothing later changes, moments on
// both axes, and issued papers whose attached record is a leaf of the log.

import { createHash } from 'node:crypto';
import path from 'node:path';
import { beforeAll, describe, expect, test } from '@jest/globals';
import type { CommandInput, JobView } from '#jobs/contract';
import { openKeyRing, openProof } from '#ledger';
import { originOf } from '../../apps/api/data/signing.js';
import { WARRANTY } from '../../libs/jobs/after-order/order-files.js';
import { attachmentsOf, pdfText, testByPoppler } from '../read-pdf.js';
import { withService } from '../service.js';
import { CATALOGUE, decide, openJob, order, type Told } from '../stories/ordered.js';

const running = withService({ keys: true });
let told: Told;

beforeAll(async () => {
  told = await openJob(running, 'house');
  await decide(told, 'house');
}, 120_000);

const record = async (query = '') =>
  (await told.people.reviewer.get<object>(`/jobs/${told.id}/decision-record${query}`)).body;

describe('requirement 24: publishing an edition changes no old record', () => {
  test('the record as of before reads the same after another edition was published', async () => {
    const moment = new Date().toISOString();
    const query = `?asOf=${encodeURIComponent(moment)}`;
    const before = JSON.stringify(await record(query));
    const entries = async () =>
      (await told.people.office.get<{ entries: object[] }>(`/jobs/${told.id}/history`)).body
        .entries;
    const history = JSON.stringify(await entries());
    const published = await told.people.standards.send('POST', '/catalogue/editions', {
      catalogue: {
        ...CATALOGUE,
        edition: CATALOGUE.edition + 1,
        charts: CATALOGUE.charts.map((chart) => ({
          ...chart,
          rows: chart.rows.map((row) => ({ ...row, outward: { v: '5', u: 'psf' } })),
        })),
      },
      reason: 'every chart was replaced',
    });
    expect(published.status).toBe(201);
    expect(JSON.stringify(await record(query))).toBe(before);
    expect(JSON.stringify(await entries())).toBe(history);
  }, 60_000);
});

describe('requirement 27: what was known and what was true, over HTTP', () => {
  const ELEVATION = 'site/elevation';
  const elevation = (value: string, effectiveAt: string): CommandInput =>
    ({
      type: 'record-facts',
      reason: 'looked up',
      effectiveAt,
      facts: [
        {
          on: null,
          fact: 'elevation',
          value: { v: value, u: 'ft' },
          how: 'document',
          source: 'map',
        },
      ],
    }) as CommandInput;
  const at = async (query: Readonly<Record<string, string>>) => {
    const answer = await told.people.reviewer.get<JobView>(
      `/jobs/${told.id}?${new URLSearchParams(query).toString()}`,
    );
    expect(answer.status).toBe(200);
    return answer.body.facts.find((fact) => fact.path === ELEVATION)?.value ?? null;
  };
  const later = (minutes: number) => new Date(Date.now() + minutes * 60_000).toISOString();

  test('what counts from another day is there from that day on, whatever lies between in the record', async () => {
    const opened = new Date().toISOString();
    await told.play('office', elevation('900', later(60)));
    await told.play('office', elevation('800', later(30)));
    const known = new Date().toISOString();
    await told.play('office', elevation('700', later(-1)));
    expect(await at({ effective: later(0) })).toEqual({ v: '700', u: 'ft' });
    expect(await at({ asOf: known, effective: later(0) })).toBeNull();
    expect(await at({ asOf: known, effective: later(45) })).toEqual({ v: '800', u: 'ft' });
    expect(await at({ asOf: known })).toEqual({ v: '800', u: 'ft' });
    expect(await at({ asOf: opened })).toBeNull();
    const seen = await told.people.reviewer.get<{ as_of: { version: number } }>(
      `/jobs/${told.id}/decision-record?effective=${encodeURIComponent(later(0))}`,
    );
    expect(seen.status).toBe(200);
    expect(seen.body.as_of.version).toBe((await told.view()).version);
  }, 60_000);
});

describe('requirement 29: what is attached to an issued paper is a leaf of the log', () => {
  const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
  const print = async (paper: string): Promise<Buffer> => {
    const response = await fetch(
      `${running.address}/api/jobs/${told.id}/papers/${paper}/print.pdf`,
      {
        headers: { cookie: told.people.office.cookie },
      },
    );
    expect(response.status).toBe(200);
    return Buffer.from(await response.arrayBuffer());
  };

  beforeAll(async () => {
    await order(told);
    await told.play('crew', {
      type: 'record-receipt',
      order: 'o1',
      on: '2026-03-20',
      stored_dry: true,
      lots: [{ surface: 's1', lot: 'coil-7' }],
      lines: [
        { line: 'p1', count: 40 },
        { line: 'c1', count: 600 },
      ],
    });
    await told.play('crew', {
      type: 'record-as-built',
      surface: 's1',
      fastener: 'clip-s',
      zones: [{ zone: 'all', spacing: { v: '24', u: 'in' } }],
      files: [await told.file('deck.jpg')],
    });
    await told.play('office', { type: 'record-inspection', on: '2026-04-10', passed: true });
    await told.play('office', { type: 'record-completion', on: '2026-04-12' });
    await told.play('office', {
      type: 'file-registration',
      kind: 'paint',
      on: '2026-05-01',
      window_days: 60,
    });
    await told.play('office', {
      ...WARRANTY,
      exclusions_named: [],
      terms: await told.file('terms.pdf'),
    } as CommandInput);
  }, 60_000);

  for (const paper of ['order/o1.1', 'warranty/w1']) {
    testByPoppler(
      `${paper}: its record hashes to the leaf of its proof, and its numbers are printed`,
      async () => {
        const bytes = await print(paper);
        const attached = attachmentsOf(bytes);
        const json = attached.get('record.json') ?? Buffer.alloc(0);
        const entry = JSON.parse(json.toString()) as { pos: number; data: { content: unknown } };
        const verifiers = openKeyRing(
          path.join(running.keysFolder ?? '', 'signing-key.json'),
        ).verifiers(originOf(told.company));
        const proof = attached.get('proof.txt')?.toString() ?? '';
        expect(openProof(proof, entry.pos, json, verifiers).size).toBeGreaterThanOrEqual(entry.pos);
        const forged = Buffer.from(
          json.toString().replace(/\d(?=\D*$)/, (digit) => String((Number(digit) + 1) % 10)),
        );
        expect(() => openProof(proof, entry.pos, forged, verifiers)).toThrow();
        const text = pdfText(bytes).replace(/[\s,]+/g, ' ');
        expect(text).toContain(sha256(json));
        const numbers = numbersIn(entry.data.content);
        expect(numbers.length).toBeGreaterThan(3);
        expect(numbers.filter((each) => !text.includes(each))).toEqual([]);
      },
    );
  }
});

/** Decimal texts and counts of a paper's content, as they are printed. */
function numbersIn(content: unknown): readonly string[] {
  if (typeof content === 'number') return [String(content)];
  if (typeof content === 'string') return /^\d+\.\d+$/.test(content) ? [content] : [];
  if (typeof content !== 'object' || content === null) return [];
  return Object.values(content).flatMap(numbersIn);
}
