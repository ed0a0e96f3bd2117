// The typesetter: refuses what an archival, accessible paper may not be, takes hostile words as words,
// and shows letters that no face has.

import { describe, expect, test } from '@jest/globals';
import { attachmentsOf, pdfText, testByPoppler } from '../../tests/read-pdf.js';
import { FONTS, printable } from './fonts.js';
import { coverageOf } from './glyphs.js';
import { PdfRefused, renderSource, typesetting, type PdfInput } from './pdf.js';

const INPUT: PdfInput = {
  paper: {
    kind: 'Trial',
    about: 'nothing',
    at: '2026-02-14T09:30:15Z',
    size: 'letter',
    digest: 'd'.repeat(64),
    cautions: [],
  },
  body: {
    words: '#panic("markup") $x$ *bold* <script> \\ "quoted"',
    svg: '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9" width="9" height="9"><rect width="9" height="9"/></svg>',
  },
  json: '{"a":1}',
};
const page = (content: string): string => `#import "paper.typ": *\n#show: paper\n${content}`;

test('a picture without alternative text is refused', async () => {
  const bare = page('#image(bytes(data.body.svg), format: "svg")');
  await expect(renderSource(bare, INPUT)).rejects.toThrow('missing alt text');
  await expect(renderSource(bare, INPUT)).rejects.toBeInstanceOf(PdfRefused);
  await expect(
    renderSource(page('#image(bytes(data.body.svg), format: "svg", alt: "a square")'), INPUT),
  ).resolves.toBeInstanceOf(Uint8Array);
});

test('a template that does not compile is refused with the reason, and the next paper is not harmed', async () => {
  await expect(renderSource(page('#data.body.nothing'), INPUT)).rejects.toThrow('nothing');
  await expect(renderSource(page('#data.body.words'), INPUT)).resolves.toBeInstanceOf(Uint8Array);
});

testByPoppler('words are never read as markup', async () => {
  expect(pdfText(await renderSource(page('#data.body.words'), INPUT))).toContain(
    '#panic("markup") $x$ *bold* <script> \\\\ "quoted"'.replace('\\\\', '\\'),
  );
});

testByPoppler('attachments come out as they went in; not issued is said', async () => {
  const attachments = [
    { name: 'photo.jpg', bytes: Uint8Array.from([0, 255, 1, 2]) },
    { name: 'list.csv', bytes: Buffer.from('a,b') },
  ];
  const bytes = await renderSource(page('#data.body.words'), { ...INPUT, attachments });
  const found = attachmentsOf(bytes);
  expect([...found.keys()].sort()).toEqual(['list.csv', 'photo.jpg', 'record.json']);
  expect([...found.get('photo.jpg')!]).toEqual([0, 255, 1, 2]);
  expect(pdfText(bytes)).toContain('not issued, no log position');
});

test('it is tagged, archival, dated by its record, in the compiler that the record names', async () => {
  const text = Buffer.from(await renderSource(page('#data.body.words'), INPUT)).toString('latin1');
  expect(text).toContain('pdfaid:part>3<');
  expect(text).toContain('pdfaid:conformance>A<');
  expect(text).toContain('/MarkInfo');
  expect(text).toContain('D:20260214093015Z');
  expect(text).toContain(typesetting('order').compiler);
  expect(typesetting('order').digest).toMatch(/^[0-9a-f]{64}$/);
  expect(typesetting('order').digest).not.toBe(typesetting('warranty').digest);
});

test('two attachments of one name and a date that is none are refused', async () => {
  const twice = { ...INPUT, attachments: [{ name: 'record.json', bytes: Buffer.from('x') }] };
  await expect(renderSource(page('x'), twice)).rejects.toThrow('two attachments have one name');
  await expect(
    renderSource(page('x'), { ...INPUT, paper: { ...INPUT.paper, at: 'soon' } }),
  ).rejects.toThrow('"soon" is not a moment');
});

describe('letters', () => {
  test("the faces have the trade's signs and the names of much of the world", () => {
    const covered = coverageOf(FONTS[0]!);
    for (const letter of 'Aé ñ Ł ж Ω ≥ × ° ′ ″ – · √')
      expect(covered.has(letter.codePointAt(0)!)).toBe(true);
    expect(covered.has(0x738b)).toBe(false);
  });

  test('a letter that no face has is shown by its code point; combining letters are composed', () => {
    expect(printable('王 Smith\u0007')).toBe('[U+738B] Smith[U+0007]');
    expect(printable('Jose\u0301\nline')).toBe('José\nline');
    expect(printable('\ue000')).toBe('[U+E000]');
  });

  testByPoppler('a name in any script does not stop a paper', async () => {
    const body = { words: '王小明 🏠 \u{10ffff} מגדל' };
    expect(pdfText(await renderSource(page('#data.body.words'), { ...INPUT, body }))).toContain(
      '[U+738B][U+5C0F][U+660E] [U+1F3E0]',
    );
  });
});
