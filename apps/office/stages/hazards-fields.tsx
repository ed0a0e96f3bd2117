// The fields of wind: how it is known, then what that way needs; and what both loads share.

import { capital } from '../parts/words.js';
import {
  DateField,
  LongField,
  RadioField,
  SelectField,
  TextField,
  Tick,
  type FieldErrors,
} from '../parts/fields.js';
import type { HazardsTyped, LoadTyped, ZoneTyped } from './hazards-entry.js';

export interface Given {
  readonly typed: HazardsTyped;
  readonly set: (change: Partial<HazardsTyped>) => void;
  readonly errors: FieldErrors;
}

export const METHODS = [
  { value: 'entered', label: 'Entered', hint: 'From a letter, report or map, with its date' },
  {
    value: 'calculated',
    label: 'Calculated',
    hint: 'From the facts above, by an edition of ASCE/SEI 7',
  },
  { value: 'not-applicable', label: 'Does not act here', hint: 'Say why' },
];
const BASES = [
  { value: 'strength', label: 'Strength level' },
  { value: 'ASD', label: 'Service level (ASD)' },
];
export const EDITIONS = ['7-10', '7-16', '7-22'].map((value) => ({
  value,
  label: `ASCE/SEI ${value}`,
}));
const PARTS = ['roof', 'overhang', 'wall'].map((value) => ({ value, label: capital(value) }));

export function WindFields({ typed, set, errors }: Given) {
  const { wind } = typed;
  const put = (change: Partial<LoadTyped>) => set({ wind: { ...wind, ...change } });
  return (
    <section className="sheet stack">
      <RadioField
        id="wind-method"
        label="Wind pressures"
        big
        options={METHODS}
        errors={errors}
        value={wind.method}
        onChange={(method) => put({ method })}
      />
      {wind.method === 'entered' && (
        <>
          <Zones zones={typed.zones} errors={errors} set={(zones) => set({ zones })} />
          <Entered id="wind" load={wind} put={put} errors={errors} />
        </>
      )}
      {wind.method === 'calculated' && (
        <SelectField
          id="wind-edition"
          label="Edition"
          options={EDITIONS}
          value={wind.edition}
          onChange={(edition) => put({ edition })}
        />
      )}
      {wind.method === 'not-applicable' && (
        <LongField
          id="wind-why"
          label="Why wind does not act here"
          errors={errors}
          value={wind.why}
          onChange={(why) => put({ why })}
        />
      )}
    </section>
  );
}

function Zones({
  zones,
  errors,
  set,
}: {
  readonly zones: readonly ZoneTyped[];
  readonly errors: FieldErrors;
  readonly set: (zones: readonly ZoneTyped[]) => void;
}) {
  const put = (i: number, change: Partial<ZoneTyped>) =>
    set(zones.map((each, at) => (at === i ? { ...each, ...change } : each)));
  return (
    <fieldset>
      <legend>Pressure by zone</legend>
      <span className="hint">
        Inward is positive; uplift is negative and is typed with its minus sign.
      </span>
      {zones.map((each, i) => (
        <div className="row bottoms" key={i} role="group" aria-label={`Zone ${each.zone || i + 1}`}>
          <TextField
            id={`zone-${i}`}
            label="Zone"
            numeric
            inputMode="text"
            errors={errors}
            value={each.zone}
            onChange={(zone) => put(i, { zone })}
          />
          <SelectField
            id={`part-${i}`}
            label="Part"
            options={PARTS}
            value={each.part}
            onChange={(part) => put(i, { part })}
          />
          <TextField
            id={`inward-${i}`}
            label="Inward"
            unit="psf"
            numeric
            errors={errors}
            value={each.inward}
            onChange={(inward) => put(i, { inward })}
          />
          <TextField
            id={`outward-${i}`}
            label="Uplift"
            unit="psf"
            numeric
            inputMode="text"
            errors={errors}
            value={each.outward}
            onChange={(outward) => put(i, { outward })}
          />
          {zones.length > 1 && (
            <button
              type="button"
              aria-label={`Remove zone ${each.zone || i + 1}`}
              onClick={() => set(zones.filter((_, at) => at !== i))}
            >
              Remove
            </button>
          )}
        </div>
      ))}
      <div>
        <button
          type="button"
          onClick={() =>
            set([
              ...zones,
              { zone: '', part: zones.at(-1)?.part ?? 'roof', inward: '', outward: '' },
            ])
          }
        >
          Add a zone
        </button>
      </div>
    </fieldset>
  );
}

export function Entered({
  id,
  load,
  put,
  errors,
}: {
  readonly id: 'wind' | 'snow';
  readonly load: LoadTyped;
  readonly put: (change: Partial<LoadTyped>) => void;
  readonly errors: FieldErrors;
}) {
  return (
    <>
      <RadioField
        id={`${id}-basis`}
        label="Level of these values"
        across
        options={BASES}
        value={load.basis}
        onChange={(basis) => put({ basis })}
      />
      <TextField
        id={`${id}-document`}
        label="From which document"
        errors={errors}
        value={load.document}
        onChange={(document) => put({ document })}
      />
      <DateField
        id={`${id}-date`}
        label="Date of that document"
        errors={errors}
        value={load.date}
        onChange={(date) => put({ date })}
      />
      <Tick
        id={`${id}-engineer`}
        label="An engineer gave these values"
        checked={load.byEngineer}
        onChange={(byEngineer) => put({ byEngineer })}
      />
    </>
  );
}
