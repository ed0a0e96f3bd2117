// The attachment proposed: one fastener, its spacing in each zone. Edge zones are cured by closer
// attachment; one plane takes one gauge.

import type { Catalogue } from '#jobs/contract';
import { SelectField, TextField, type FieldErrors } from '../parts/fields.js';
import type { AttachmentTyped } from './attachment-entry.js';

export function AttachmentFields({
  typed,
  set,
  errors,
  fasteners,
}: {
  readonly typed: AttachmentTyped;
  readonly set: (change: Partial<AttachmentTyped>) => void;
  readonly errors: FieldErrors;
  readonly fasteners: Catalogue['fasteners'];
}) {
  const put = (i: number, change: Partial<AttachmentTyped['zones'][number]>) =>
    set({ zones: typed.zones.map((each, at) => (at === i ? { ...each, ...change } : each)) });
  const clip = fasteners.find(({ id }) => id === typed.fastener)?.kind !== 'screw';
  return (
    <fieldset className="sheet stack">
      <legend className="big">Attachment proposed, by zone</legend>
      <p className="quiet">
        One plane takes one gauge: edge zones are cured by closer attachment or closer supports.
      </p>
      <SelectField
        id="fastener"
        label="Fastener"
        empty="Choose one"
        errors={errors}
        value={typed.fastener}
        options={fasteners.map(({ id, name }) => ({ value: id, label: name }))}
        onChange={(fastener) => set({ fastener })}
      />
      {typed.zones.map(({ zone, spacing, rows }, i) => (
        <div className="row bottoms" key={zone} role="group" aria-label={`Zone ${zone}`}>
          <TextField
            id={`spacing-${i}`}
            numeric
            unit="in"
            errors={errors}
            value={spacing}
            label={`Zone ${zone}: ${clip ? 'clips along the panel, every' : 'screws across the panel, every'}`}
            onChange={(text) => put(i, { spacing: text })}
          />
          {!clip && (
            <TextField
              id={`rows-${i}`}
              numeric
              unit="in"
              errors={errors}
              value={rows}
              label={`Zone ${zone}: rows along the panel, on a solid deck (optional)`}
              onChange={(text) => put(i, { rows: text })}
            />
          )}
        </div>
      ))}
    </fieldset>
  );
}
