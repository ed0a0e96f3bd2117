// The lines of an order that a take-off makes, with weights, and with prices where the catalogue has
// them: panels by piece, trims by stock length, fasteners by zone, and what goes with them.

import type { OrderLine } from '../contract/after-order.js';
import type { Catalogue } from '../contract/catalogue.js';
import type { TakenPiece, TakeOffResult } from '../contract/take-off.js';
import { pieceArea, pieceWeight, trimWeight } from '../contract/take-off-weights.js';
import type { Surface } from '../job.js';

type Kind = OrderLine['what'];

export function linesOf(
  surface: Surface,
  number: number,
  result: TakeOffResult,
  catalogue: Catalogue | null,
): readonly OrderLine[] {
  const line = (
    id: string,
    what: Kind,
    words: string,
    count: number,
    rest: Partial<OrderLine> = {},
  ): OrderLine[] =>
    count > 0 ? [{ id: `${number}-${id}`, surface: surface.id, what, words, count, ...rest }] : [];
  const { fasteners, spares, trims } = result;
  const trimScrews = trims.reduce((sum, { screws }) => sum + (screws ?? 0), 0);
  const longest = result.pieces[0];
  return [
    ...result.pieces.map((piece) =>
      panelLine(surface, piece, piece.mark, 'panel', result, catalogue),
    ),
    ...(spares.panels > 0 && longest
      ? [
          panelLine(
            surface,
            { ...longest, count: spares.panels },
            `${number}-x1`,
            'spare',
            result,
            catalogue,
          ),
        ]
      : []),
    ...trims.flatMap((each, i) =>
      line(`t${i + 1}`, 'trim', each.name, each.stocks, {
        length: { v: each.stock_in, u: 'in' },
        weight: { v: trimWeight(each), u: 'lb' },
      }),
    ),
    ...fasteners.zones.flatMap((each, i) =>
      line(
        `f${i + 1}`,
        'fastener',
        `${fasteners.name}, ${each.zone === 'all' ? 'every zone' : `zone ${each.zone}`}`,
        each.count,
      ),
    ),
    ...line('f-clips', 'fastener', 'Screws of the clips', fasteners.screws ?? 0),
    ...line('f-stitch', 'fastener', 'Stitch screws of side laps', fasteners.stitch_screws ?? 0),
    ...line('f-trim', 'fastener', 'Screws of trims', trimScrews),
    ...result.closures.flatMap((each, i) => line(`c${i + 1}`, 'closure', each.name, each.count)),
    ...result.sealants.flatMap((each, i) => line(`s${i + 1}`, 'sealant', each.name, each.count)),
    ...result.underlayments.flatMap((each, i) =>
      line(`u${i + 1}`, 'underlayment', each.name, each.count),
    ),
    ...line('x2', 'spare', `${fasteners.name}, spare`, spares.fasteners),
    ...line('x3', 'touch-up', `Touch-up paint, ${colorWords(surface)}`, spares.touch_up),
  ];
}

const colorWords = (surface: Surface): string => {
  const content = surface.stages.coating.record?.content;
  return content?.color ?? (content ? `${content.color_group}, exact color open` : 'color open');
};

function panelLine(
  surface: Surface,
  piece: TakenPiece,
  id: string,
  what: Kind,
  { panel }: TakeOffResult,
  catalogue: Catalogue | null,
): OrderLine {
  const squareFeet = pieceArea(piece, panel);
  const price = pricePerSquare(surface, catalogue);
  const gauge = surface.stages.gauge.record?.content.gauge;
  return {
    id,
    surface: surface.id,
    what,
    words: [
      panel.profile,
      gauge ? `${gauge} gauge` : null,
      colorWords(surface),
      what === 'spare' ? 'spare' : null,
    ]
      .filter((each) => each)
      .join(', '),
    count: piece.count,
    length: { v: piece.length_in, u: 'in' },
    weight: { v: pieceWeight(piece, panel), u: 'lb' },
    ...(price === null ? {} : { price: { v: ((squareFeet / 100) * price).toFixed(2), u: 'usd' } }),
  };
}

/** The catalogue's price of this sheet with its upcharge; null where the edition has none. */
function pricePerSquare(surface: Surface, catalogue: Catalogue | null): number | null {
  const style = surface.stages.style.record?.content;
  const coating = surface.stages.coating.record?.content;
  const gauge = surface.stages.gauge.record?.content;
  if (!style || !coating || !gauge) return null;
  const row = catalogue?.made.find(
    (each) =>
      each.profile === style.profile &&
      Number(each.width.v) === Number(style.width) &&
      each.metal === coating.metal &&
      each.metallic_coating === coating.metallic_coating &&
      each.paint_system === coating.paint_system &&
      each.thickness.v === gauge.thickness_in &&
      each.grade === gauge.grade &&
      each.color_groups.some((group) => group === coating.color_group),
  );
  return row ? Number(row.price.v) + Number(row.upcharge?.v ?? 0) : null;
}
