// The lines of an order as a list for a spreadsheet or a supplier's import.

import type { OrderPaper } from '#jobs';
import type { ListTable } from './list-table.js';

/** One row a line; an amount that is not stated is an empty cell. */
export function orderList({ order, revision, surfaces, lines }: OrderPaper): ListTable {
  const of = new Map(surfaces.map((each) => [each.surface, each]));
  return {
    name: `Order ${order} revision ${revision}`,
    columns: [
      { name: 'Line', kind: 'text' },
      { name: 'Surface', kind: 'text' },
      { name: 'Kind', kind: 'text' },
      { name: 'What', kind: 'text' },
      { name: 'Count', kind: 'number' },
      { name: 'Length in', kind: 'number' },
      { name: 'Gauge', kind: 'text' },
      { name: 'Base thickness in', kind: 'number' },
      { name: 'Finish', kind: 'text' },
      { name: 'Weight lb', kind: 'number' },
      { name: 'Price USD', kind: 'number' },
    ],
    rows: lines.map((line) => {
      const surface = of.get(line.surface ?? '');
      const sheet = line.what === 'panel' ? surface : undefined;
      return [
        line.id,
        surface?.name ?? null,
        line.what,
        line.words,
        String(line.count),
        line.length?.v ?? null,
        sheet?.gauge ?? null,
        sheet?.thickness_in ?? null,
        sheet
          ? [
              sheet.metal,
              sheet.metallic_coating,
              sheet.paint_system,
              sheet.color ?? sheet.color_group,
            ].join(' ')
          : null,
        line.weight?.v ?? null,
        line.price?.v ?? null,
      ];
    }),
  };
}
