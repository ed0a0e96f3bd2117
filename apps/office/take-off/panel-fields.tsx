// Lengths of the pieces, screws, bundles and where they land, spares.

import { label } from '#jobs/contract';
import { TextField } from '../parts/fields.js';
import type { Fields } from './lists.js';
import { edgesOf, planeNames } from './typed.js';

export function PanelFields({
  typed,
  set,
  errors,
  clips,
}: Fields & { /** Whether the surface is fastened by clips. */ readonly clips: boolean }) {
  const { panel, fastening } = typed;
  const change = (part: Partial<typeof panel>) => set({ panel: { ...panel, ...part } });
  return (
    <section className="stack" aria-label="Lengths and fastening">
      <h2>Lengths and fastening</h2>
      <div className="columns">
        <TextField
          id="panel-round_up_in"
          label="Lengths are ordered in multiples of"
          unit="in"
          numeric
          errors={errors}
          value={panel.round_up_in}
          onChange={(round_up_in) => change({ round_up_in })}
        />
        <TextField
          id="panel-end_lap_in"
          label="End lap (empty: the panel takes none)"
          unit="in"
          numeric
          errors={errors}
          value={panel.end_lap_in}
          onChange={(end_lap_in) => change({ end_lap_in })}
        />
        <TextField
          id="panel-least_piece_in"
          label="Shortest piece that is made (optional)"
          unit="in"
          numeric
          errors={errors}
          value={panel.least_piece_in}
          onChange={(least_piece_in) => change({ least_piece_in })}
        />
        {clips ? (
          <TextField
            id="fastening-screws_each"
            label="Screws in each clip (optional)"
            numeric
            inputMode="numeric"
            errors={errors}
            value={fastening.screws_each}
            onChange={(screws_each) => set({ fastening: { ...fastening, screws_each } })}
          />
        ) : (
          <TextField
            id="fastening-stitch_spacing_in"
            label="Between stitch screws of side laps (optional)"
            unit="in"
            numeric
            errors={errors}
            value={fastening.stitch_spacing_in}
            onChange={(stitch_spacing_in) =>
              set({ fastening: { ...fastening, stitch_spacing_in } })
            }
          />
        )}
      </div>
      <Ends {...{ typed, set, errors }} />
    </section>
  );
}

const Ends = ({ typed, set, errors }: Fields) => (
  <fieldset className="sheet stack">
    <legend>Added to a piece that ends at</legend>
    <span className="hint">Negative where it is held back; empty adds nothing.</span>
    <div className="columns">
      {edgesOf(typed).map((edge, i) => (
        <TextField
          key={edge}
          id={`ends-${i}`}
          label={`The ${label(edge)}`}
          unit="in"
          numeric
          errors={errors}
          value={typed.ends[edge] ?? ''}
          onChange={(value) => set({ ends: { ...typed.ends, [edge]: value } })}
        />
      ))}
    </div>
  </fieldset>
);

export function BundleFields({ typed, set, errors }: Fields) {
  const { bundles, spares } = typed;
  const spare = (part: Partial<typeof spares>) => set({ spares: { ...spares, ...part } });
  return (
    <section className="stack" aria-label="Bundles and spares">
      <h2>Bundles and spares</h2>
      <div className="columns">
        <TextField
          id="bundles-most_lb"
          label="Heaviest bundle (optional)"
          unit="lb"
          numeric
          errors={errors}
          value={bundles.most_lb}
          onChange={(most_lb) => set({ bundles: { ...bundles, most_lb } })}
        />
        <TextField
          id="bundles-most_pieces"
          label="Most pieces in a bundle"
          numeric
          inputMode="numeric"
          errors={errors}
          value={bundles.most_pieces}
          onChange={(most_pieces) => set({ bundles: { ...bundles, most_pieces } })}
        />
      </div>
      {bundles.most_lb.trim() !== '' &&
        planeNames(typed).map((name, i) => (
          <TextField
            key={name}
            id={`bundles-landings-${i}`}
            label={`Bundles of ${name} land`}
            errors={errors}
            value={typed.landings[name] ?? ''}
            onChange={(where) => set({ landings: { ...typed.landings, [name]: where } })}
          />
        ))}
      <div className="columns">
        <TextField
          id="spares-panels"
          label="Spare panels of the longest piece"
          numeric
          inputMode="numeric"
          errors={errors}
          value={spares.panels}
          onChange={(panels) => spare({ panels })}
        />
        <TextField
          id="spares-fastener_percent"
          label="Spare fasteners"
          unit="percent"
          numeric
          inputMode="numeric"
          errors={errors}
          value={spares.fastener_percent}
          onChange={(fastener_percent) => spare({ fastener_percent })}
        />
        <TextField
          id="spares-touch_up"
          label="Touch-up paint, pens or bottles"
          numeric
          inputMode="numeric"
          errors={errors}
          value={spares.touch_up}
          onChange={(touch_up) => spare({ touch_up })}
        />
      </div>
    </section>
  );
}
