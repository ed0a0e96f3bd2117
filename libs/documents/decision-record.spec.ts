// The decision record of real job files on paper: a stranger's five questions answered from it alone,
// its text equal to its JSON, its attachment whole, the same bytes every time.

import { createHash } from 'node:crypto';
import { describe, expect, test } from '@jest/globals';
import { loadAgainstSpan } from '#drawings';
import { decisionRecord, fastenerNames, prose, type DecisionRecord, type PastEvent } from '#jobs';
import { APPROVE, ASK, BARN, HOUSE, playUpTo } from '../jobs/job-files.js';
import { CUSTOMER, ENGINEER, SITE } from '../jobs/given.js';
import { SAMPLE_CATALOGUE } from '../jobs/sample.table.js';
import {
  approvedText,
  attachmentsOf,
  pdfText,
  squashed,
  testByPoppler,
} from '../../tests/read-pdf.js';
import { optionName } from './option-tables.js';
import { renderDecisionRecord, type DecisionRecordOptions } from './index.js';

const NAMES = {
  [CUSTOMER]: 'Sample Farm (invented)',
  [SITE]: '12 County Road, Anytown KS (invented)',
  [ENGINEER]: 'Avery Stone',
  'person-project-manager': 'Dana Field',
  ...fastenerNames([SAMPLE_CATALOGUE]),
};

/** The barn: signed, then a support is found wider. */
const WIDER = playUpTo(BARN, 'gauge')
  .play(ASK)
  .play(APPROVE, ['engineer'])
  .play({
    type: 'record-facts',
    reason: 'found on site',
    facts: [{ on: 's1', fact: 'support-spacings', value: [{ v: '54' }], how: 'measured' }],
  });
const recordOf = (events: readonly PastEvent[]): DecisionRecord =>
  decisionRecord('job-1', events, NAMES);
const RECORDS = { barn: recordOf(WIDER.events), house: recordOf(playUpTo(HOUSE, 'gauge').events) };

const issue = (
  record: DecisionRecord,
  rest: Partial<DecisionRecordOptions> = {},
): Promise<Uint8Array> => {
  const json = JSON.stringify(record);
  return renderDecisionRecord(record, {
    size: 'letter',
    json,
    digest: createHash('sha256').update(json).digest('hex'),
    position: 1042,
    ...rest,
  });
};

/** Words and numbers of the record by the keys that are for reading; those of other options apart. */
const READ =
  /^(v|utilization|words|says|reason|rule|limit_state|chosen|value|zone|part|grade|what|from|to|becomes|judgements|gauge|sentence|name|customer|site|number|license|jurisdiction|formula|symbol|by|stands_at)$/;
function printed(value: unknown, key = '', of: readonly string[] = []): readonly string[] {
  if (key === 'findings' || (key === 'steps' && of.includes('options'))) return [];
  if (typeof value === 'string') return READ.test(key) && value !== '' ? [value] : [];
  if (Array.isArray(value)) return value.flatMap((each) => printed(each, key, of));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, each]) => printed(each, name, [...of, key]));
}

describe.each(Object.entries(RECORDS))('the %s', (name, record) => {
  test('prints the same bytes, and others on other paper', async () => {
    const first = await issue(record);
    await issue(RECORDS.house, { size: 'a4' });
    expect(Buffer.compare(first, await issue(record))).toBe(0);
    expect(Buffer.compare(first, await issue(record, { size: 'a4' }))).not.toBe(0);
  });

  testByPoppler('says every word and number of its JSON', async () => {
    const text = squashed(pdfText(await issue(record)));
    const words = printed(record);
    const options = record.surfaces.flatMap(({ gauge }) => gauge?.options ?? []);
    const forms = (each: string) =>
      [
        ...options.filter(({ id }) => id === each).map(optionName),
        each === 'thickness in' ? 'Base thickness' : each,
        each.replaceAll(/[-_]/g, ' '),
        each.split('; ')[0] ?? each,
        prose(each),
      ].map(squashed);
    expect(words.length).toBeGreaterThan(200);
    expect(
      [...new Set(words)].filter((each) => !forms(each).some((form) => text.includes(form))),
    ).toEqual([]);
  });

  testByPoppler('names options and fasteners by the catalogue, never by their id', async () => {
    const text = pdfText(await issue(record));
    const { gauge } = record.surfaces[0]!;
    for (const id of [...gauge!.options.map((each) => each.id), gauge!.attachment.fastener])
      for (const form of [id, id.replaceAll('-', ' ')])
        expect(text).not.toMatch(new RegExp(`\\b${form}\\b`));
    const name = SAMPLE_CATALOGUE.fasteners.find(({ id }) => id === gauge!.attachment.fastener);
    expect(text).toContain(`Attachment ${name!.name}: `);
  });

  testByPoppler('has its arithmetic in full for the choice', async () => {
    const text = squashed(pdfText(await issue(record)));
    const { gauge, stages } = record.surfaces[0]!;
    const picked = stages
      .flatMap(({ chosen }) => chosen)
      .find(({ what }) => what === 'option')?.value;
    const option = gauge?.options.find(({ id }) => id === picked);
    const steps =
      option?.zones
        .flatMap(({ panel, attachment }) => [...panel, ...attachment])
        .flatMap((check) => check.steps) ?? [];
    expect(steps.length).toBeGreaterThan(5);
    expect(
      steps.filter(
        ({ formula, value }) =>
          !text.includes(squashed(formula)) || !text.includes(squashed(value)),
      ),
    ).toEqual([]);
  });

  testByPoppler(
    'carries the canonical bytes; digest, position, page and cautions stand on every page',
    async () => {
      const bytes = await issue(record);
      const json = JSON.stringify(record);
      expect(attachmentsOf(bytes).get('record.json')?.toString()).toBe(json);
      const pages = pdfText(bytes).split('\f').slice(0, -1);
      pages.forEach((page, i) => {
        expect(page).toContain(createHash('sha256').update(json).digest('hex'));
        expect(page).toContain(`Page ${i + 1} of ${pages.length}`);
        expect(page).toContain('log position 1042');
        for (const caution of record.cautions) expect(squashed(page)).toContain(squashed(caution));
      });
    },
  );

  testByPoppler('reads as a person approved it', async () => {
    const file = `decision-record-${name}`;
    const approved = approvedText(`${file}.json`, JSON.stringify(record, null, 1));
    const text = pdfText(await issue(JSON.parse(approved) as DecisionRecord));
    expect(squashed(text)).toBe(squashed(approvedText(`${file}.txt`, text)));
  });
});

describe('five questions, from the first page of the barn alone', () => {
  const answered = async () => {
    const [page = ''] = pdfText(await issue(RECORDS.barn)).split('\f');
    return page.replaceAll(/\s+/g, ' ');
  };
  const QUESTIONS = [
    [
      'Which gauge and attachment, and on what support?',
      '26 gauge (0.0187 in, SS 80); Ribbed 36, 36 in wide',
      'Screw #14 with washer: zone 1 at 9 in',
      'support spacings 47.5 in; 48 in; 46 in; zone 3: 24 in (measured)',
    ],
    [
      'On which loads, and from which source?',
      'Wind: entered, strength level, letter of the building department, 20 Feb 2026',
      'zone 3 (roof) uplift −35.44 psf',
    ],
    [
      'Why not the next lighter?',
      '29 gauge (0.0142 in, SS 80): ruled out. GAUGE-01: panel utilization over 1.00',
      'utilization 1.3097',
    ],
    [
      'Who approved what, and when?',
      'Gauge: Dana Field (project manager), 2 Mar 2026, 09:09 UTC',
      'Avery Stone (engineer), 2 Mar 2026, 09:11 UTC',
      'KS-00001, KS, expires 30 Jun 2027',
    ],
    [
      'What has changed since?',
      'zone 3: 24 in became 54 in, 2 Mar 2026, 09:12 UTC',
      'found on site',
      'To be checked again: substrate, gauge',
    ],
  ] as const;
  for (const [question, ...answers] of QUESTIONS) {
    testByPoppler(question, async () => {
      const page = await answered();
      for (const words of [question, ...answers]) expect(page).toContain(words);
    });
  }
});

testByPoppler('a record with nothing chosen, and one played from a file, say so', async () => {
  const opened = recordOf(playUpTo(BARN, 'facts').events);
  const text = pdfText(await issue(opened, { standing: 'played from a file, not a record' }));
  expect(text).toContain('No gauge has been selected for this surface.');
  expect(text).toContain('Nothing that these decisions read has changed.');
  expect(text.split('played from a file, not a record').length).toBeGreaterThan(
    text.split('\f').length - 1,
  );
});

testByPoppler('a drawing given for a surface is printed with its numbers', async () => {
  const chart = loadAgainstSpan({
    title: 'Uplift against span',
    direction: 'uplift',
    demand_psf: 23.44,
    interpolation: false,
    source: 'load chart R26-3',
    gauges: [
      {
        gauge: '26 gauge',
        points: [
          { span_in: 36, load_psf: 52 },
          { span_in: 48, load_psf: 28 },
        ],
      },
    ],
    chosen: { gauge: '26 gauge', span_in: 48 },
  });
  const text = pdfText(await issue(RECORDS.barn, { drawings: { s1: [chart] } }));
  expect(text).toContain(chart.finding);
  expect(text).toMatch(/26 gauge\s+48\s+28\s+23.44\s+bears it\s+load chart R26-3/);
});

test('without cautions there is no record on paper', async () => {
  await expect(issue({ ...RECORDS.barn, cautions: [] })).rejects.toThrow('no caution is given');
});

test('typical time, for reading only', async () => {
  const spent: number[] = [];
  for (let i = 0; i < 5; i++) {
    const start = performance.now();
    await issue(RECORDS.barn, { position: i });
    spent.push(performance.now() - start);
  }
  console.info(
    `decision record of one surface, median of five: ${spent.sort((a, b) => a - b)[2]?.toFixed(0)} ms`,
  );
  expect(spent).toHaveLength(5);
});
