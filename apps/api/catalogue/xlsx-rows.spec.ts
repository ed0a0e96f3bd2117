// Workbooks are read as their sheets stand; hostile ones are refused before they cost anything.

import { deflateRawSync } from 'node:zlib';
import { describe, expect, test } from '@jest/globals';
import ExcelJS from 'exceljs';
import { PARTS } from '#jobs';
import { xlsxRows } from './xlsx-rows.js';

async function workbook(
  name: string,
  rows: readonly (readonly ExcelJS.CellValue[])[],
): Promise<Buffer> {
  const book = new ExcelJS.Workbook();
  book.addWorksheet(name).addRows(rows.map((row) => [...row]));
  return Buffer.from(await book.xlsx.writeBuffer());
}
async function faults(bytes: Buffer): Promise<readonly string[]> {
  const read = await xlsxRows(bytes);
  return read.ok
    ? []
    : read.faults.map(({ sheet, row, column, message }) => `${sheet} ${row} ${column}: ${message}`);
}

interface Part {
  readonly name: string;
  readonly packed: Buffer;
  readonly size: number;
  readonly encrypted?: boolean;
}

/** A zip as its writer wants it, whether or not that is true. */
function zip(...parts: readonly Part[]): Buffer {
  const locals: Buffer[] = [];
  const entries: Buffer[] = [];
  let at = 0;
  for (const { name, packed, size, encrypted = false } of parts) {
    const local = Buffer.alloc(30 + name.length);
    local.writeUInt32LE(0x04034b50, 0);
    local.writeUInt16LE(8, 8);
    local.writeUInt16LE(name.length, 26);
    local.write(name, 30);
    const entry = Buffer.alloc(46 + name.length);
    entry.writeUInt32LE(0x02014b50, 0);
    entry.writeUInt16LE(encrypted ? 1 : 0, 8);
    entry.writeUInt16LE(8, 10);
    entry.writeUInt32LE(packed.length, 20);
    entry.writeUInt32LE(size, 24);
    entry.writeUInt16LE(name.length, 28);
    entry.writeUInt32LE(at, 42);
    entry.write(name, 46);
    locals.push(local, packed);
    entries.push(entry);
    at += local.length + packed.length;
  }
  const directory = Buffer.concat(entries);
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(parts.length, 10);
  end.writeUInt32LE(directory.length, 12);
  end.writeUInt32LE(at, 16);
  return Buffer.concat([...locals, directory, end]);
}

test('numbers, dates, yes and no come as a person reads them; row numbers are those of the sheet', async () => {
  const read = await xlsxRows(
    await workbook('made', [
      [...PARTS.made],
      [],
      ['rib-36', 0.1 + 0.2, new Date('2026-11-01'), true, ' x ', null, 0.0179],
    ]),
  );
  expect(read).toMatchObject({
    ok: true,
    sheets: [
      {
        part: 'made',
        rows: [
          { row: 1 },
          { row: 3, cells: ['rib-36', '0.3', '2026-11-01', 'yes', 'x', '', '0.0179'] },
        ],
      },
    ],
  });
});

test('a formula is refused by sheet, row and column', async () => {
  const cells = ['rib-36', { formula: 'A1*2', result: 36 }];
  expect(await faults(await workbook('prices', [[...PARTS.prices], cells]))).toEqual([
    expect.stringMatching(/^prices 2 width_in: /),
  ]);
});

test('a sheet of another name is named', async () => {
  expect(await faults(await workbook('Sheet1', [['a']]))).toEqual([
    expect.stringMatching(/^Sheet1 0 : sheets are named .*\bcharts\b/),
  ]);
});

describe('hostile files', () => {
  const zeros = 64 * 1024 * 1024;
  const bomb = deflateRawSync(Buffer.alloc(zeros));

  test('a part that unpacks to far more than a workbook', async () => {
    expect(bomb.length).toBeLessThan(100_000);
    expect(
      await faults(zip({ name: 'xl/worksheets/sheet1.xml', packed: bomb, size: zeros })),
    ).toEqual([expect.stringContaining('larger than 32 MiB')]);
  });

  test('the same, declaring a small size', async () => {
    expect(
      await faults(zip({ name: 'xl/worksheets/sheet1.xml', packed: bomb, size: 1000 })),
    ).toEqual([expect.stringContaining('not of the size it declares')]);
  });

  test('many parts over one another', async () => {
    const part = { name: 'a', packed: deflateRawSync(Buffer.from('x')), size: 1 };
    expect(await faults(zip(...Array.from({ length: 201 }, () => part)))).toEqual([
      expect.stringContaining('at most 200'),
    ]);
  });

  test('an encrypted part, a cut file, no zip at all, nothing', async () => {
    const part = { name: 'a', packed: deflateRawSync(Buffer.from('x')), size: 1 };
    expect(await faults(zip({ ...part, encrypted: true }))).toEqual([
      expect.stringContaining('encrypted'),
    ]);
    const whole = await workbook('made', [[...PARTS.made]]);
    for (const bytes of [
      whole.subarray(0, whole.length - 40),
      whole.subarray(40),
      Buffer.from('PK'),
      Buffer.alloc(0),
    ]) {
      expect(await faults(bytes)).toHaveLength(1);
    }
  });

  test('a zip that is no workbook', async () => {
    expect(
      await faults(zip({ name: 'a', packed: deflateRawSync(Buffer.from('x')), size: 1 })),
    ).toHaveLength(1);
  });

  test('merged cells and validations over the whole sheet cost nothing', async () => {
    const before = Date.now();
    expect(await xlsxRows(widened())).toMatchObject({
      ok: true,
      sheets: [{ part: 'made', rows: [{ row: 1, cells: [...PARTS.made] }] }],
    });
    expect(Date.now() - before).toBeLessThan(5_000);
  });
});

/** A workbook of one sheet whose cells are merged and validated from corner to corner. */
function widened(): Buffer {
  const all = '"A1:XFD1048576"';
  const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
  const office = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
  const packages = 'http://schemas.openxmlformats.org/package/2006';
  const cells = PARTS.made
    .map(
      (name, i) =>
        `<c r="${String.fromCharCode(65 + i)}1" t="inlineStr"><is><t>${name}</t></is></c>`,
    )
    .join('');
  const files = {
    '[Content_Types].xml': `<Types xmlns="${packages}/content-types"/>`,
    '_rels/.rels': `<Relationships xmlns="${packages}/relationships"><Relationship Id="r1" Type="${office}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    'xl/workbook.xml': `<workbook xmlns="${main}" xmlns:r="${office}"><sheets><sheet name="made" sheetId="1" r:id="r1"/></sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `<Relationships xmlns="${packages}/relationships"><Relationship Id="r1" Type="${office}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    'xl/worksheets/sheet1.xml':
      `<worksheet xmlns="${main}"><sheetData><row r="1">${cells}</row></sheetData>` +
      `<mergeCells count="1"><mergeCell ref=${all}/></mergeCells><dataValidations count="1">` +
      `<dataValidation type="list" sqref=${all}><formula1>"a"</formula1></dataValidation></dataValidations></worksheet>`,
  };
  return zip(
    ...Object.entries(files).map(([name, xml]) => {
      const data = Buffer.from(xml);
      return { name, packed: deflateRawSync(data), size: data.length };
    }),
  );
}
