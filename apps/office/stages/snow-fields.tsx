// The fields of snow: how it is known, then what that way needs.

import { label } from '#jobs/contract';
import { LongField, RadioField, SelectField, TextField, Tick } from '../parts/fields.js';
import { capital } from '../parts/words.js';
import { EDITIONS, Entered, METHODS, type Given } from './hazards-fields.js';
import type { LoadTyped } from './hazards-entry.js';

export function SnowFields({ typed, set, errors }: Given) {
  const { snow } = typed;
  const put = (change: Partial<LoadTyped>) => set({ snow: { ...snow, ...change } });
  return (
    <section className="sheet stack">
      <RadioField
        id="snow-method"
        label="Snow on the roof"
        big
        options={METHODS}
        errors={errors}
        value={snow.method}
        onChange={(method) => put({ method })}
      />
      {snow.method === 'entered' && (
        <>
          <TextField
            id="roof-snow"
            label="Design roof snow load"
            unit="psf"
            numeric
            errors={errors}
            hint="The worst of balanced, unbalanced and drift"
            value={typed.roofSnow}
            onChange={(roofSnow) => set({ roofSnow })}
          />
          <Entered id="snow" load={snow} put={put} errors={errors} />
        </>
      )}
      {snow.method === 'calculated' && <SnowMethod {...{ typed, set, put, errors }} />}
      {snow.method === 'not-applicable' && (
        <LongField
          id="snow-why"
          label="Why snow does not act here"
          errors={errors}
          value={snow.why}
          onChange={(why) => put({ why })}
        />
      )}
    </section>
  );
}

const words = (values: readonly string[]) =>
  values.map((value) => ({ value, label: capital(label(value)) }));
const SNOW_CHOICES = {
  exposure: words(['fully', 'partially', 'sheltered']),
  thermal: words([
    'heated',
    'just-above-freezing',
    'cold-ventilated',
    'unheated',
    'open-air',
    'freezer',
    'greenhouse',
  ]),
  roofSurface: words(['slippery-unobstructed', 'other']),
};

function SnowMethod({
  typed,
  set,
  put,
  errors,
}: Given & {
  readonly put: (change: Partial<LoadTyped>) => void;
}) {
  return (
    <div className="columns">
      <SelectField
        id="snow-edition"
        label="Edition"
        options={EDITIONS}
        value={typed.snow.edition}
        onChange={(edition) => put({ edition })}
      />
      <SelectField
        id="snow-exposure"
        label="Roof exposure"
        options={SNOW_CHOICES.exposure}
        value={typed.exposure}
        onChange={(exposure) => set({ exposure })}
      />
      <SelectField
        id="snow-thermal"
        label="Thermal condition"
        options={SNOW_CHOICES.thermal}
        value={typed.thermal}
        onChange={(thermal) => set({ thermal })}
      />
      <TextField
        id="r-roof"
        label="Thermal resistance of the roof (optional)"
        hint="In h ft² °F/Btu"
        numeric
        errors={errors}
        value={typed.rRoof}
        onChange={(rRoof) => set({ rRoof })}
      />
      <SelectField
        id="snow-surface"
        label="Roof surface"
        options={SNOW_CHOICES.roofSurface}
        value={typed.roofSurface}
        onChange={(roofSurface) => set({ roofSurface })}
      />
      <Tick
        id="snow-ventilated"
        label="Ventilated roof"
        checked={typed.ventilated}
        onChange={(ventilated) => set({ ventilated })}
      />
    </div>
  );
}
