// From a take-off to the order and its papers over HTTP: rehearsed, recorded, named by the order, stale
// once the attachment changes, and the same counts in JSON, CSV, XLSX and on paper.

import { beforeAll, describe, expect, test } from '@jest/globals';
import ExcelJS from 'exceljs';
import { feetInches } from '#drawings';
import type { CommandInput, JobView, OrderLine, Rehearsal, TakeOffSheet } from '#jobs/contract';
import { HOUSE } from '../../libs/jobs/job-files.js';
import { ORDER, PAPERS, v } from '../../libs/jobs/after-order/order-files.js';
import { HOUSE_TAKE_OFF } from '../../libs/jobs/take-off/take-off-files.js';
import { pdfText, squashed, testByPoppler } from '../read-pdf.js';
import { withService } from '../service.js';
import { decide, openJob, type Told } from './ordered.js';

const running = withService();
let told: Told;

beforeAll(async () => {
  told = await openJob(running, 'house');
  await decide(told, 'house');
  await told.play('office', PAPERS);
}, 120_000);

/** A hip whose cut list has many lengths, with a chimney in it. */
const HIP = {
  ...HOUSE_TAKE_OFF,
  drawn: {
    ...HOUSE_TAKE_OFF.drawn,
    shape: 'hip',
    openings: [
      { plane: 'front', name: 'chimney', x_ft: '18', y_ft: '5', width_ft: '4', height_ft: '3' },
    ],
  },
  bundles: {
    most_lb: '1200',
    most_pieces: 24,
    landings: ['front', 'right', 'back', 'left'].map((plane) => ({ plane, place: 'driveway' })),
  },
} as CommandInput;

const sheet = async () =>
  (await told.people.office.get<TakeOffSheet>(`/jobs/${told.id}/take-offs/s1`)).body;
const rehearsed = async (command: unknown) =>
  (await told.people.office.send<Rehearsal>('POST', `/jobs/${told.id}/rehearsals`, command)).body;
const fromTakeOff = (lines: readonly OrderLine[]): CommandInput =>
  ({
    ...ORDER,
    lines,
    lengths: [{ surface: 's1', by: 'take-off', standing: 'signed', signed_by: 'Dana Field' }],
  }) as CommandInput;
const bytes = async (path: string): Promise<Buffer> => {
  const answer = await fetch(`${running.address}/api/jobs/${told.id}${path}`, {
    headers: { cookie: told.people.office.cookie },
  });
  if (answer.status !== 200) throw new Error(`${path}: ${await answer.text()}`);
  return Buffer.from(await answer.arrayBuffer());
};

describe('the take-off', () => {
  test('is rehearsed with nothing recorded; each fault stands at its place', async () => {
    const trial = await rehearsed(HIP);
    expect(trial.refusals).toEqual([]);
    expect(trial.take_off?.result.planes.map(({ name }) => name)).toEqual([
      'front',
      'right',
      'back',
      'left',
    ]);
    expect((await told.view()).take_offs).toEqual([]);
    expect((await told.people.office.get(`/jobs/${told.id}/take-offs/s1`)).status).toBe(404);
    const wrong = await rehearsed({
      ...HIP,
      trims: [
        { name: 'Eave trim', edges: ['eave'], stock_in: '40', lap_in: '24', weight_plf: '1' },
      ],
    });
    expect(wrong.refusals.map(({ pointer, words }) => `${pointer} ${words}`)).toEqual([
      '/trims/0/lap_in Trims 1 lap (in): of Eave trim must be at most half its stock length.',
    ]);
    expect(wrong.take_off).toBeUndefined();
  });

  test('what does not parse is refused with its field, and the crew lead may not record one', async () => {
    const malformed = await told.ask('office', {
      ...HIP,
      drawn: { ...HOUSE_TAKE_OFF.drawn, along_ft: 'forty' },
    } as CommandInput);
    expect(malformed.status).toBe(422);
    expect(JSON.stringify(malformed.body)).toContain('along_ft');
    expect((await told.ask('crew', HIP)).status).toBe(403);
  });

  test('is recorded once, with what it counted and by whom', async () => {
    const view: JobView = await told.play('office', HIP);
    expect(view.take_offs).toMatchObject([{ surface: 's1', number: 1, stands: 'current' }]);
    const { result, lines } = await sheet();
    expect(result.totals.pieces).toBe(view.take_offs[0]?.pieces);
    expect(lines.filter(({ what }) => what === 'panel').map(({ id }) => id)).toEqual(
      result.pieces.map(({ mark }) => mark),
    );
  });
});

describe('an order of it', () => {
  test('is refused with other pieces, and once the attachment has changed', async () => {
    const { lines } = await sheet();
    const fewer = await told.ask('office', fromTakeOff(lines.slice(1)));
    expect(fewer.body.refusals?.map(({ code }) => code)).toContain('MOVE-21');
    await told.play('office', {
      ...HOUSE.gauge,
      reason: 'closer at the edges',
      attachment: { fastener: 'clip-s', zones: [{ zone: 'all', spacing: v('18', 'in') }] },
    } as CommandInput);
    expect((await sheet()).stale_because).toEqual(['the attachment changed from 24 in to 18 in']);
    const stale = await told.ask('office', fromTakeOff(lines));
    expect(stale.body.refusals?.map(({ words }) => words)).toContain(
      'South: take-off 1 no longer counts: the attachment changed from 24 in to 18 in. Record it again.',
    );
    await told.play('office', HIP);
    expect(await sheet()).toMatchObject({ number: 2, stands: 'current' });
  }, 60_000);

  testByPoppler(
    'has its counts in the JSON, in CSV and XLSX, and on paper with every plane drawn',
    async () => {
      const { lines, result } = await sheet();
      const reached = { address: '1 Seam Street, Exampleville KS', phone: '555 0100' };
      await told.people.administrator.send('PATCH', '/company', reached);
      await told.play('office', fromTakeOff(lines));
      const { body: paper } = await told.people.office.get<{ lines: OrderLine[]; buyer: string }>(
        `/jobs/${told.id}/papers/order/o1.1`,
      );
      expect(paper.lines).toEqual(lines);
      expect(paper.buyer).toBe(
        'Ridge and Valley Roofing (invented), 1 Seam Street, Exampleville KS, 555 0100, office',
      );
      const rows = (await bytes('/orders/o1.1/lines.csv'))
        .toString()
        .trim()
        .split(/\r?\n/)
        .slice(1);
      expect(rows).toHaveLength(lines.length);
      const book = new ExcelJS.Workbook();
      await book.xlsx.load((await bytes('/orders/o1.1/lines.xlsx')) as never);
      const cells =
        book.worksheets[0]!.getSheetValues() as unknown as readonly (readonly unknown[])[];
      const counts = cells.slice(2).map((row) => [String(row[1]), Number(row[5])]);
      expect(counts).toEqual(lines.map(({ id, count }) => [id, count]));
      const text = squashed(pdfText(await bytes('/papers/order/o1.1/print.pdf')));
      for (const { mark, count, length_in } of result.pieces) {
        const line = lines.find(({ id }) => id === mark)!;
        expect(text).toContain(
          squashed(`${mark} ${line.words} ${count} ${feetInches(Number(length_in))}`),
        );
      }
      for (const { name } of result.planes)
        expect(text).toContain(squashed(`South, plane ${name}`));
      for (const { name, pieces } of result.bundles) {
        const holds = pieces.map((each) => `${each.count} of ${each.mark}`).join(', ');
        expect(text).toContain(squashed(`${name} ${holds}`));
      }
      expect(text).toContain(squashed('From take-off 2 of'));
      expect(text).not.toMatch(/clip-s|take_off|undefined|\bnull\b/);
    },
  );
});
