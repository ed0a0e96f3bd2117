// The order on paper: for each surface its panels and cut list, trims and fasteners by zone; totals by
// sheet and by stock length; what a revision changes. Signatures are blank lines for a hand.

import type { OrderedSurface, OrderPaper } from '#jobs';
import { issuePaper, mustCaution, type PaperOptions } from './pdf.js';
import { column, numbers, type Pair, type Section } from './print.js';
import { takenSections } from './order-take-off.js';
import { cutTable, lineMark, lineTable, totalTables } from './order-tables.js';
import { dayWords, spaced } from './words.js';

/** Throws PdfRefused. */
export async function renderOrder(order: OrderPaper, options: PaperOptions): Promise<Uint8Array> {
  const about = {
    kind: 'Order',
    about: `number ${order.order}, revision ${order.revision}; job ${order.job.number}, ${order.job.name}`,
    at: order.issued_at,
    cautions: mustCaution('order', order.cautions),
  };
  return issuePaper(
    'order',
    about,
    { head: head(order), sections: sections(order), sign: SIGN },
    options,
  );
}

const SIGN = ['Ordered by', 'Lengths measured by', 'Acknowledged for the supplier'] as const;

function head(order: OrderPaper): readonly Pair[] {
  return [
    ['Supplier', order.supplier],
    ['Ordered by', order.buyer],
    ['Issued', dayWords(order.issued_at)],
    ['Deliver to', order.deliver_to],
    ['Landing place', order.landing_place ?? 'to be named before delivery'],
    ['Delivery asked for', order.delivery === null ? 'no date given' : dayWords(order.delivery)],
  ];
}

function sections(order: OrderPaper): readonly Section[] {
  const free = order.lines.filter(({ surface }) => surface === null);
  return [
    ...(order.revision > 1 ? [changes(order)] : []),
    ...order.surfaces.flatMap((surface) => [
      surfaceSection(order, surface),
      ...takenSections(order, surface),
    ]),
    ...(free.length > 0
      ? [{ name: 'For the whole job', tables: [lineTable('Lines of no one surface', free)] }]
      : []),
    { name: 'Totals', tables: totalTables(order) },
    ...(order.bundles.length > 0 ? [bundles(order)] : []),
  ];
}

function changes({ difference, change_reason, revision }: OrderPaper): Section {
  return {
    name: `What revision ${revision} changes`,
    words: [
      `Reason: ${change_reason ?? 'none recorded'}. Revision ${revision - 1} is replaced; it stays on record.`,
    ],
    tables: [
      {
        caption: 'Differences by line',
        columns: [column('Line'), column('What'), column('Was', 1), column('Is', 1)],
        rows: difference.map(({ line, what, from, to }) => [
          lineMark(line),
          what,
          from ?? 'not there',
          to ?? 'not there',
        ]),
      },
    ],
  };
}

function surfaceSection(order: OrderPaper, surface: OrderedSurface): Section {
  const own = order.lines.filter((line) => line.surface === surface.surface);
  const panels = own.filter(({ what }) => what === 'panel');
  const others = own.filter(({ what }) => what !== 'panel');
  return {
    name: surface.name,
    pairs: surfacePairs(order, surface),
    tables: [
      cutTable(surface, panels),
      lineTable(`Trims, closures and the rest, ${surface.name}`, others),
      {
        caption: `Fastening by zone, ${surface.name}`,
        columns: [column('Zone'), column('Fastener', 1), numbers('Spacing'), numbers('Rows')],
        rows: surface.attachment.zones.map(({ zone, spacing, rows }) => [
          zone === 'all' ? 'every zone' : zone,
          surface.fastener_name ?? spaced(surface.attachment.fastener),
          `${spacing.v} in`,
          rows ? `${rows.v} in` : '–',
        ]),
      },
    ].filter(({ rows }) => rows.length > 0),
  };
}

function surfacePairs(order: OrderPaper, surface: OrderedSurface): readonly Pair[] {
  const gauge = surface.gauge === null ? '' : `${surface.gauge} gauge, `;
  const finish = [
    surface.metal,
    surface.metallic_coating,
    spaced(surface.paint_system),
    surface.color
      ? `${surface.color} (${spaced(surface.color_group)})`
      : `${spaced(surface.color_group)} (exact color open)`,
  ];
  return [
    ['Panel', `${surface.profile}, ${surface.width_in} in wide`],
    ['Sheet', `${gauge}${surface.thickness_in} in base thickness, ${surface.grade}`],
    ['Finish', finish.join(', ')],
    ['Lies on', spaced(surface.substrate)],
    ['Lengths', lengthsWords(order, surface.surface)],
  ];
}

/** Where the lengths come from, and how they stand. */
function lengthsWords(order: OrderPaper, id: string): string {
  const lengths = order.lengths.find((each) => each.surface === id);
  if (!lengths) return 'not stated';
  const taken = order.take_offs.find((each) => each.surface === id);
  const from = taken
    ? `From take-off ${taken.number} of ${dayWords(taken.at)}, recorded by ${taken.by} from: ${taken.measured_from}`
    : lengths.by === 'take-off'
      ? 'From a take-off'
      : `Entered by ${order.issued_by}`;
  const standing = {
    signed: `signed, measured by ${lengths.signed_by ?? 'nobody named'}`,
    hold: 'on hold until measured: do not cut',
    'field-verify': 'to be verified in the field: do not cut before',
  }[lengths.standing];
  return `${from}; ${standing}`;
}

const bundles = (order: OrderPaper): Section => ({
  name: 'Bundles and where they land',
  tables: [
    {
      caption: 'Bundles',
      columns: [
        column('Bundle'),
        column('Holds', 1),
        numbers('Weight'),
        column('Landing place', 1),
      ],
      rows: order.bundles.map((each) => [
        each.name,
        each.holds,
        `${each.weight_lb} lb`,
        each.landing_place,
      ]),
    },
  ],
});
