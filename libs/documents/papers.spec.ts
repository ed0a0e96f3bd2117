// Order, engineer packet, warranty documents and decision letter: their words equal their data, they
// refuse what may not be printed, and they print the same bytes every time. All data is invented.

import { createHash } from 'node:crypto';
import { describe, expect, test } from '@jest/globals';
import { feetInches } from '#drawings';
import type { WarrantyPaper } from '#jobs';
import { CAUTIONS, LETTER, ORDER, PACKET, TERMS, WARRANTY } from '../../tests/sample-papers.js';
import {
  approvedText,
  attachmentsOf,
  pdfText,
  squashed,
  testByPoppler,
} from '../../tests/read-pdf.js';
import {
  renderDecisionLetter,
  renderEngineerPacket,
  renderOrder,
  renderWarranty,
  PRELIMINARY,
  type PaperOptions,
} from './index.js';

const options = (data: unknown, rest: Partial<PaperOptions> = {}): PaperOptions => {
  const json = JSON.stringify(data);
  return {
    size: 'letter',
    json,
    digest: createHash('sha256').update(json).digest('hex'),
    position: 4711,
    ...rest,
  };
};

interface Trial {
  readonly data: object;
  /** Another content of the same kind may be given. */
  readonly make: (rest?: Partial<PaperOptions>, data?: object) => Promise<Uint8Array>;
}

const trial = <T extends object>(
  data: T,
  render: (data: T, options: PaperOptions) => Promise<Uint8Array>,
  own: Partial<PaperOptions> = {},
): Trial => ({
  data,
  make: (rest = {}, other = data) => render(other as T, options(other, { ...own, ...rest })),
});

const PAPERS: Readonly<Record<string, Trial>> = {
  order: trial(ORDER, renderOrder),
  'engineer packet': trial(PACKET, renderEngineerPacket),
  warranty: trial(WARRANTY, renderWarranty, {
    attachments: [{ name: 'terms.txt', bytes: TERMS }],
  }),
  'decision letter': trial(LETTER, renderDecisionLetter),
};

describe.each(Object.entries(PAPERS))('%s', (name, { data, make }) => {
  test('the same bytes every time, another paper in between', async () => {
    const first = await make();
    await PAPERS['warranty']!.make({ size: 'a4' });
    expect(Buffer.compare(first, await make())).toBe(0);
    expect(Buffer.compare(first, await make({ size: 'a4' }))).not.toBe(0);
  });

  testByPoppler('says everything its data says', async () => {
    const text = squashed(pdfText(await make()));
    expect(leaves(data).filter((leaf) => !said(text, leaf))).toEqual([]);
  });

  testByPoppler(
    'carries its JSON, and prints the digest, the log position and the page on every page',
    async () => {
      const bytes = await make();
      const { digest, json } = options(data);
      expect(attachmentsOf(bytes).get('record.json')?.toString()).toBe(json);
      const pages = pdfText(bytes).split('\f').slice(0, -1);
      pages.forEach((page, i) => {
        expect(page).toContain(digest);
        expect(page).toContain('log position 4711');
        expect(page).toContain(`Page ${i + 1} of ${pages.length}`);
      });
    },
  );

  testByPoppler('reads as a person approved it', async () => {
    const file = name.replaceAll(' ', '-');
    const approved = JSON.parse(
      approvedText(`${file}.json`, JSON.stringify(data, null, 1)),
    ) as object;
    const text = pdfText(await make({}, approved));
    expect(squashed(text)).toBe(squashed(approvedText(`${file}.txt`, text)));
  });
});

/** Leaves that are not for reading: what they name is printed in other words, or is code. */
const NOT_PRINTED =
  /^(document|id|u|surface|transfer|decision|consumer_product|title|kind|full_tests_not_met|selected|fastener|path|source|where|calculated|passes|class|version|steps|findings|option|rules|site_fact|admissible|lead_days|budget_reached|order|method|by_engineer|strips|sides|outline|slope_factor|waste_share|polygons)$/;

function leaves(value: unknown, key = ''): readonly string[] {
  if (NOT_PRINTED.test(key) || value === null || typeof value === 'boolean') return [];
  if (typeof value === 'string' || typeof value === 'number')
    return value === '' ? [] : [String(value)];
  if (Array.isArray(value)) return value.flatMap((each) => leaves(each, key));
  return Object.entries(value as object).flatMap(([name, each]) => leaves(each, name));
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
function said(text: string, leaf: string): boolean {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})/.exec(leaf) ?? [];
  const date = year ? [`${Number(day)} ${MONTHS[Number(month) - 1]} ${year}`] : [];
  const forms = [
    leaf,
    leaf.replaceAll(/[-_]/g, ' '),
    leaf === 'all' ? 'every zone' : leaf,
    leaf.toUpperCase(),
    leaf === 'outward' ? 'uplift' : leaf,
    ...date,
    ...(/^\d+(\.\d+)?$/.test(leaf)
      ? [feetInches(Number(leaf)), feetInches(Number(leaf) * 12), Number(leaf).toFixed(1)]
      : []),
  ];
  return forms.some((form) => text.includes(squashed(form)));
}

describe('the engineer packet', () => {
  testByPoppler(
    'says on every page that it is preliminary, and has no seal or signature',
    async () => {
      const pages = pdfText(await PAPERS['engineer packet']!.make())
        .split('\f')
        .slice(0, -1);
      for (const page of pages) {
        expect(page).toContain(PRELIMINARY);
        for (const caution of CAUTIONS) expect(squashed(page)).toContain(squashed(caution));
        expect(page).not.toMatch(/signature,|Signed by|Signatures/i);
      }
    },
  );

  test('an option that the evaluation does not hold is refused', async () => {
    const packet = { ...PACKET, surfaces: [{ ...PACKET.surfaces[0]!, selected: 'steel-9' }] };
    await expect(renderEngineerPacket(packet, options(packet))).rejects.toThrow(
      'has no option steel-9',
    );
  });
});

describe('the order', () => {
  testByPoppler(
    'adds up exactly: 1853.2 + 25.8 + 22.9 lb; 5106.04 + 71.02 + 63.09 + 82.36 dollars',
    async () => {
      const text = pdfText(await PAPERS['order']!.make());
      expect(text).toContain('1901.9 lb');
      expect(text).toContain('$ 5322.51');
      // 62 x 218 + 2 x 94 + 2 x 83.5 in = 13871 in = 1155'-11"
      expect(text).toContain(`1155'-11"`);
      expect(text).toContain('4 lines; 11 without a price');
    },
  );

  testByPoppler('says from which take-off its lengths come, with no id and no key', async () => {
    const text = squashed(pdfText(await PAPERS['order']!.make()));
    expect(text).toContain(
      squashed('From take-off 2 of 2 Mar 2026, recorded by Pat Office from: Roof plan, sheet A2'),
    );
    expect(text).not.toMatch(/clip-s|take_off|_in\b|surface\/|undefined|null/);
  });

  for (const size of ['letter', 'a4'] as const) {
    testByPoppler(`has no page of signatures alone, on ${size}`, async () => {
      const pages = pdfText(await PAPERS['order']!.make({ size })).split('\f');
      const signed = pages.filter((page) => page.includes('Signatures, by hand'));
      expect(signed).toHaveLength(1);
      expect(signed[0]).toContain('Bundles and where they land');
    });
  }

  testByPoppler('leaves its signatures blank', async () => {
    expect(pdfText(await PAPERS['order']!.make())).toMatch(
      /Ordered by, signature\s+name in print\s+date/,
    );
  });

  test('without a caution it is refused', async () => {
    await expect(renderOrder({ ...ORDER, cautions: [] }, options(ORDER))).rejects.toThrow(
      'no caution is given',
    );
  });
});

describe('a warranty document', () => {
  const make = (change: Partial<WarrantyPaper>, attachments: PaperOptions['attachments'] = []) => {
    const data = { ...WARRANTY, ...change };
    return renderWarranty(data, options(data, { attachments }));
  };

  test('none is printed where none exists', async () => {
    await expect(make({ terms: [] })).rejects.toThrow('no paint warranty exists here');
  });
  test('a full title is not printed unless every test is met', async () => {
    await expect(make({ title: 'full' })).rejects.toThrow(
      'not a full warranty: remedy free of charge in reasonable time (15 USC 2304)',
    );
  });
  test('every missing disclosure is named', async () => {
    await expect(make({ disclosures: [] })).rejects.toThrow(
      /701\.3\(a\)\(1\).*\(2\).*\(3\).*\(4\).*\(5\) is missing/,
    );
  });
  test('terms that were altered are not attached', async () => {
    await expect(make({}, [{ name: 'terms.txt', bytes: Buffer.from('altered') }])).rejects.toThrow(
      'terms.txt is not the text on file',
    );
  });
  testByPoppler('each kind has its own title, and disclosures stand in their order', async () => {
    const titles = {
      paint: 'paint finish',
      substrate: 'substrate (perforation)',
      weathertightness: 'weathertightness',
      workmanship: 'workmanship',
    } as const;
    for (const [kind, title] of Object.entries(titles)) {
      const text = pdfText(await make({ kind: kind as WarrantyPaper['kind'] }));
      expect(text).toContain(`Limited warranty: ${title}`);
      const places = Array.from({ length: 9 }, (_, i) =>
        text.search(new RegExp(`^${i + 1}\\. `, 'm')),
      );
      expect(places).toEqual([...places].sort((a, b) => a - b));
      expect(places).not.toContain(-1);
    }
  });
  testByPoppler(
    'a full warranty says its years in its title, filed late is printed as filed late',
    async () => {
      const text = pdfText(await make({ title: 'full', full_tests_not_met: [], years: 10 }));
      expect(text).toContain('Full 10 year warranty: paint finish');
      expect(text).toContain('filed late: 22 Jun 2026, 11 days after 11 Jun 2026');
    },
  );
});

test('typical times, for reading only', async () => {
  const times: string[] = [];
  for (const [name, { make }] of Object.entries(PAPERS)) {
    const spent: number[] = [];
    for (let i = 0; i < 5; i++) {
      const start = performance.now();
      await make({ position: i });
      spent.push(performance.now() - start);
    }
    times.push(`${name} ${spent.sort((a, b) => a - b)[2]?.toFixed(0)} ms`);
  }
  console.info(`median of five: ${times.join(', ')}`);
  expect(times).toHaveLength(4);
});
