// The take-off on the order: how trims are cut, fasteners by zone, the pieces of each plane, and every
// plane drawn with its strips.

import { feetInches, planeDrawing } from '#drawings';
import { panelsWeight, trimsWeight, type OrderedSurface, type OrderPaper } from '#jobs';
import { column, numbers, printDrawing, type PrintTable, type Section } from './print.js';
import { lineMark } from './order-tables.js';

type Taken = OrderPaper['take_offs'][number];
type Result = Taken['result'];

const inches = (text: string): string => feetInches(Number(text));
const feet = (text: string): string => feetInches(Number(text) * 12);

/** Nothing where the lengths were entered. */
export function takenSections(order: OrderPaper, surface: OrderedSurface): readonly Section[] {
  const taken = order.take_offs.find((each) => each.surface === surface.surface);
  if (!taken) return [];
  const { result } = taken;
  const many = result.planes.length > MOST_COLUMNS;
  return [
    {
      name: `${surface.name}: how it was counted`,
      level: 2,
      words: [totalsWords(result)],
      tables: [
        ...(many ? [] : [pieceTable(result)]),
        planeTable(result),
        trimTable(result),
        fastenerTable(result),
        zoneTable(result),
        goodsTable(result),
      ].filter(({ rows }) => rows.length > 0),
    },
    {
      name: `${surface.name}: the cut list drawn`,
      level: 2,
      drawings: result.planes.map((plane) =>
        printDrawing(
          planeDrawing(plane, `${surface.name}, plane ${plane.name}`),
          many ? 'below' : 'beside',
        ),
      ),
    },
    {
      name: `${surface.name}: what to know of the take-off`,
      level: 2,
      list: result.notes,
    },
  ];
}

/** More planes than this have their pieces below each drawing instead of one table. */
const MOST_COLUMNS = 6;

function totalsWords(result: Result): string {
  const { totals, panel, engine } = result;
  const waste = (Number(totals.waste_share) * 100).toFixed(1);
  return (
    `${totals.pieces} pieces cover ${Number(totals.area_ft2).toFixed(1)} ft²; ` +
    `${Number(totals.bought_ft2).toFixed(1)} ft² are bought, ${waste} % of it waste. ` +
    `Panels of ${panel.sheet} weigh ${panelsWeight(result)} lb at ${panel.weight_psf} psf, trims ${trimsWeight(result)} lb. ` +
    `Pieces to ${feet(panel.longest_ft)} can come, limited by ${panel.longest_by}. ` +
    `Counted by: ${engine}.`
  );
}

const pieceTable = ({ pieces, planes }: Result): PrintTable => ({
  caption: 'Pieces by plane',
  columns: [
    column('Piece'),
    numbers('Length'),
    ...planes.map(({ name }) => ({ ...numbers(name), share: 1 })),
    numbers('In all'),
  ],
  rows: pieces.map(({ mark, length_in, count }) => [
    lineMark(mark),
    inches(length_in),
    ...planes.map((plane) => String(plane.pieces.find((each) => each.mark === mark)?.count ?? '–')),
    String(count),
  ]),
});

const planeTable = ({ planes }: Result): PrintTable => ({
  caption: 'Planes',
  columns: [
    column('Plane', 1),
    numbers('Covered'),
    numbers('Openings'),
    numbers('Bought'),
    numbers('Waste'),
    numbers('In laps'),
    numbers('Weight'),
  ],
  rows: planes.map((each) => [
    each.name,
    `${Number(each.area_ft2).toFixed(1)} ft²`,
    `${Number(each.openings_ft2).toFixed(1)} ft²`,
    `${Number(each.bought_ft2).toFixed(1)} ft²`,
    `${Number(each.waste_ft2).toFixed(1)} ft² (${(Number(each.waste_share) * 100).toFixed(1)} %)`,
    `${Number(each.laps_ft2).toFixed(1)} ft²`,
    `${Number(each.weight_lb).toFixed(1)} lb`,
  ]),
});

const trimTable = ({ trims }: Result): PrintTable => ({
  caption: 'Trims and how they are cut',
  columns: [
    column('Trim', 1),
    numbers('Stock length'),
    numbers('To buy'),
    numbers('On edges'),
    numbers('Left over'),
    column('How it is cut', 2),
  ],
  rows: trims
    .filter(({ stocks }) => stocks > 0)
    .map((each) => [
      each.name,
      inches(each.stock_in),
      String(each.stocks),
      feet(each.edges_ft),
      feet(each.offcut_ft),
      patternWords(each),
    ]),
});

function patternWords({ patterns, stock_in, proved }: Result['trims'][number]): string {
  const cuts = patterns.map(({ cuts_in, times }) =>
    cuts_in.length === 1 && cuts_in[0] === stock_in
      ? `${times} whole`
      : `${times} cut to ${cuts_in.map(inches).join(' + ')}`,
  );
  return `${cuts.join('; ')}${proved ? '' : '; fewer may do'}`;
}

const fastenerTable = ({ fasteners }: Result): PrintTable => ({
  caption: `${fasteners.name}, counted by zone`,
  columns: [
    column('Zone', 1),
    numbers('Rows apart'),
    numbers('In a row of one panel'),
    numbers('Rows'),
    numbers('Count'),
  ],
  rows: fasteners.zones.map((each) => [
    each.zone === 'all' ? 'every zone' : each.zone,
    `${each.spacing_in} in`,
    String(each.per_row),
    String(each.rows),
    String(each.count),
  ]),
});

const zoneTable = ({ planes }: Result): PrintTable => ({
  caption: 'Zones under the planes',
  columns: [column('Plane', 1), column('Zone'), column('Part'), numbers('Area')],
  rows: planes.flatMap(({ name, zones }) =>
    zones.map((each) => [name, each.zone, each.part, `${Number(each.area_ft2).toFixed(1)} ft²`]),
  ),
});

const goodsTable = ({ edges, closures, sealants, underlayments }: Result): PrintTable => ({
  caption: 'Edges, closures, sealant, underlayment',
  columns: [column('What', 1), numbers('Length'), numbers('To buy')],
  rows: [
    ...edges.map(({ edge, length_ft }) => [
      `edge: ${edge.replaceAll('-', ' ')}`,
      feet(length_ft),
      '–',
    ]),
    ...[...closures, ...sealants, ...underlayments].map((each) => [
      each.name,
      feet(each.length_ft),
      String(each.count),
    ]),
  ],
});
