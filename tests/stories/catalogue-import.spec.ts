// A supplier's new figures: checked over HTTP without leaving a trace, then published with a reason.

import { beforeAll, expect, test } from '@jest/globals';
import ExcelJS from 'exceljs';
import type { Catalogue } from '#jobs/contract';
import { PARTS } from '#jobs';
import { XLSX } from '../../apps/api/catalogue/catalogue-import.controller.js';
import { demonstrationCatalogue } from '../../apps/cli/demonstration/catalogue.js';
import { call, company, withService, type Client } from '../service.js';

const running = withService();
const WHERE = '/catalogue/import/check?in_force_from=2026-11-20&summary=New%20prices';
let people: Readonly<Record<'standards' | 'office', Client>>;

interface Checked {
  readonly draft: Catalogue;
  readonly changes: readonly {
    readonly part: string;
    readonly profile: string;
    readonly after: number;
  }[];
  readonly faults?: readonly { readonly pointer: string }[];
}

const upload = (who: Client, type: string, body: string | Uint8Array, where = WHERE) =>
  call<Checked>(running.address, 'POST', where, body, {
    cookie: who.cookie,
    'x-csrf-token': who.csrf,
    'content-type': type,
  });
const editions = async () =>
  (await people.standards.get<{ editions: unknown[] }>('/catalogue/editions')).body.editions.length;

const priceOf = (row: Catalogue['made'][number], price: string): readonly string[] => [
  row.profile,
  row.width.v,
  row.metal,
  row.thickness.v,
  row.grade,
  row.metallic_coating,
  row.paint_system,
  row.color_groups.join(' '),
  price,
  row.upcharge?.v ?? '',
  '',
];

beforeAll(async () => {
  people = await company(running, 'Importers', {
    standards: ['standards-manager'],
    office: ['office'],
  });
  const catalogue = demonstrationCatalogue();
  const answer = await people.standards.send('POST', '/catalogue/editions', {
    catalogue,
    reason: 'the first',
  });
  if (answer.status !== 201) throw new Error(JSON.stringify(answer.body));
}, 60_000);

test('a price list as CSV gives a draft, records nothing, and is published with a reason', async () => {
  const first = demonstrationCatalogue().made.slice(0, 2);
  const csv = [PARTS.prices, ...first.map((row) => priceOf(row, '301.25'))]
    .map((cells) => cells.join(','))
    .join('\r\n');
  const { status, body } = await upload(people.standards, 'text/csv', csv, `${WHERE}&part=prices`);
  expect({ status, edition: body.draft?.edition }).toEqual({ status: 200, edition: 2 });
  expect(body.draft.made.filter(({ price }) => price.v === '301.25')).toHaveLength(2);
  expect(await editions()).toBe(1);
  const published = await people.standards.send('POST', '/catalogue/editions', {
    catalogue: body.draft,
    reason: 'supplier letter of November',
  });
  expect(published.status).toBe(201);
  const current = await people.standards.get<Catalogue>('/catalogue/current');
  expect(current.body.made[0]?.price.v).toBe('301.25');
});

test('a workbook with faults names sheet, row and column of each', async () => {
  const book = new ExcelJS.Workbook();
  const [row] = demonstrationCatalogue().made;
  if (!row) throw new Error('nothing is made');
  book.addWorksheet('prices').addRows([[...PARTS.prices], [...priceOf(row, 'free')]]);
  book.addWorksheet('assemblies').addRows([[...PARTS.assemblies], ['T1', 'nowhere']]);
  const { status, body } = await upload(
    people.standards,
    XLSX,
    new Uint8Array(await book.xlsx.writeBuffer()),
  );
  expect(status).toBe(422);
  const pointers = body.faults?.map(({ pointer }) => pointer) ?? [];
  expect(pointers).toEqual(
    expect.arrayContaining(['/assemblies/row 2/fastener', '/assemblies/row 2/date']),
  );
  expect(await editions()).toBe(2);
});

test('another role may not; a CSV without its part and a broken workbook are refused', async () => {
  expect((await upload(people.office, 'text/csv', 'a,b', `${WHERE}&part=prices`)).status).toBe(403);
  expect((await upload(people.standards, 'text/csv', 'a,b')).status).toBe(422);
  expect((await upload(people.standards, XLSX, Buffer.from('PK not really'))).status).toBe(422);
});
