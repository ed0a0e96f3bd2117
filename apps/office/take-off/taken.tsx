// What a take-off comes to: every plane drawn with its strips, the cut list, what is bought, trims as
// they are cut, fasteners by zone, bundles and where they land.

import { feetInches, planeDrawing } from '#drawings';
import { panelsWeight, pieceWeight, type TakeOffResult } from '#jobs/contract';
import { Drawing } from '../parts/drawing.js';
import { PlainTable } from '../parts/table.js';
import { capital, count, number } from '../parts/words.js';

const long = (inches: string): string => feetInches(Number(inches));
const feet = (text: string): string => feetInches(Number(text) * 12);
const mark = (text: string): string => text.toUpperCase();
const percent = (share: string): string => `${(Number(share) * 100).toFixed(1)} %`;
const num = (name: string) => ({ name, num: true }) as const;

export const Taken = ({ result }: { readonly result: TakeOffResult }) => (
  <>
    <Summary result={result} />
    {result.planes.map((plane) => (
      <Drawing
        key={plane.name}
        figure={planeDrawing(plane, `Cut list drawn on the plane: ${plane.name}`)}
      />
    ))}
    <Pieces result={result} />
    <Planes result={result} />
    <Trims result={result} />
    <Fasteners result={result} />
    <Goods result={result} />
    <Bundles result={result} />
    <section className="stack" aria-label="What to know">
      <h2>What to know</h2>
      <ul>
        {result.notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
    </section>
  </>
);

type Of = { readonly result: TakeOffResult };

function Summary({ result }: Of) {
  const { totals, panel, pieces } = result;
  const longest = pieces[0];
  return (
    <p>
      {count(totals.pieces, 'piece')} in {count(pieces.length, 'length')}, the longest{' '}
      {longest ? `${mark(longest.mark)} with ${long(longest.length_in)}` : 'none'}; pieces to{' '}
      {feet(panel.longest_ft)} can come, limited by {panel.longest_by}. Covered{' '}
      {Number(totals.area_ft2).toFixed(1)} ft², bought {Number(totals.bought_ft2).toFixed(1)} ft²,{' '}
      {percent(totals.waste_share)} of it waste. Panels weigh {panelsWeight(result)} lb.
    </p>
  );
}

function Pieces({ result }: Of) {
  const { pieces, panel, totals } = result;
  const run = pieces.reduce((sum, { count: n, length_in }) => sum + n * Number(length_in), 0);
  return (
    <PlainTable
      caption="Cut list"
      note={`${panel.profile}, ${panel.coverage_in} in wide; ${panel.sheet}`}
      columns={['Piece', num('Count'), num('Length'), num('In inches'), num('Weight, lb')]}
      rows={[
        ...pieces.map((each) => [
          mark(each.mark),
          String(each.count),
          long(each.length_in),
          each.length_in,
          pieceWeight(each, panel),
        ]),
        ['In all', String(totals.pieces), feetInches(run), String(run), panelsWeight(result)],
      ]}
    />
  );
}

const Planes = ({ result: { planes } }: Of) => (
  <PlainTable
    caption="Planes"
    columns={[
      'Plane',
      num('Covered, ft²'),
      num('Openings, ft²'),
      num('Bought, ft²'),
      num('Waste'),
      num('Laps, ft²'),
      num('Weight, lb'),
    ]}
    rows={planes.map((each) => [
      each.name,
      Number(each.area_ft2).toFixed(1),
      Number(each.openings_ft2).toFixed(1),
      Number(each.bought_ft2).toFixed(1),
      percent(each.waste_share),
      Number(each.laps_ft2).toFixed(1),
      Number(each.weight_lb).toFixed(1),
    ])}
  />
);

const Trims = ({ result: { trims } }: Of) => {
  const bought = trims.filter(({ stocks }) => stocks > 0);
  return bought.length === 0 ? null : (
    <PlainTable
      caption="Trims and how they are cut"
      columns={[
        'Trim',
        num('Stock length'),
        num('To buy'),
        num('On edges'),
        num('Left over'),
        num('Weight, lb'),
        num('Screws'),
        'How it is cut',
      ]}
      rows={bought.map((each) => [
        each.name,
        long(each.stock_in),
        String(each.stocks),
        feet(each.edges_ft),
        feet(each.offcut_ft),
        each.weight_lb,
        each.screws === null ? 'none' : String(each.screws),
        patternWords(each),
      ])}
    />
  );
};

const patternWords = ({ patterns, proved, stock_in }: TakeOffResult['trims'][number]): string => {
  const cuts = patterns.map(({ cuts_in, times }) =>
    cuts_in.length === 1 && cuts_in[0] === stock_in
      ? `${times} whole`
      : `${times} cut to ${cuts_in.map(long).join(' + ')}`,
  );
  return `${cuts.join('; ')}${proved ? '' : '; fewer may do'}`;
};

const Fasteners = ({ result: { fasteners } }: Of) => (
  <PlainTable
    caption={`${fasteners.name} by zone`}
    columns={['Zone', num('Rows apart'), num('In a row of one panel'), num('Rows'), num('Count')]}
    rows={[
      ...fasteners.zones.map((each) => [
        each.zone === 'all' ? 'every zone' : each.zone,
        `${each.spacing_in} in`,
        String(each.per_row),
        String(each.rows),
        String(each.count),
      ]),
      ...(fasteners.zones.length > 1 ? [['In all', '', '', '', String(fasteners.count)]] : []),
      ...(fasteners.screws === null
        ? []
        : [['Screws of the clips', '', '', '', String(fasteners.screws)]]),
      ...(fasteners.stitch_screws === null
        ? []
        : [['Stitch screws of side laps', '', '', '', String(fasteners.stitch_screws)]]),
    ]}
  />
);

const Goods = ({ result: { closures, sealants, underlayments, edges, spares } }: Of) => (
  <>
    <PlainTable
      caption="Edges"
      columns={['Edge', num('Length')]}
      rows={edges.map((each) => [capital(each.edge.replaceAll('-', ' ')), feet(each.length_ft)])}
    />
    {closures.length + sealants.length + underlayments.length > 0 && (
      <PlainTable
        caption="Closures, sealant, underlayment"
        columns={['What', num('Length'), num('To buy')]}
        rows={[...closures, ...sealants, ...underlayments].map((each) => [
          each.name,
          feet(each.length_ft),
          String(each.count),
        ])}
      />
    )}
    <p>
      Spares: {number(spares.panels)} panels, {number(spares.fasteners)} fasteners,{' '}
      {number(spares.touch_up)} of touch-up paint.
    </p>
  </>
);

const Bundles = ({ result: { bundles } }: Of) =>
  bundles.length === 0 ? null : (
    <PlainTable
      caption="Bundles and where they land"
      columns={['Bundle', 'Plane', 'Holds', num('Longest'), num('Weight, lb'), 'Lands']}
      rows={bundles.map((each) => [
        each.name,
        each.plane,
        each.pieces.map((piece) => `${piece.count} of ${mark(piece.mark)}`).join(', '),
        long(each.longest_in),
        each.weight_lb,
        each.place,
      ])}
    />
  );
