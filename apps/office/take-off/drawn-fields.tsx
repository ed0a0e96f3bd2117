// What is drawn: a shape by its dimensions, or planes corner by corner; and the openings in them.

import { RadioField, SelectField, TextField } from '../parts/fields.js';
import { planesFrom } from './from-shape.js';
import { optionsFor, STARTS, type Fields } from './lists.js';
import { Openings } from './opening-fields.js';
import { PlanesFields } from './plane-fields.js';
import type { TakeOffTyped } from './typed.js';

export const DrawnFields = (fields: Fields) => {
  const { typed, set } = fields;
  return (
    <section className="stack" aria-label="What is drawn">
      <h2>What is drawn</h2>
      <RadioField
        id="by"
        label="How the planes are given"
        value={typed.by}
        onChange={(by) => set(by === 'planes' ? { by, planes: planesFrom(typed) } : { by })}
        options={[
          { value: 'shape', label: 'A shape by its dimensions: shed, gable or hip' },
          { value: 'planes', label: 'Planes corner by corner' },
        ]}
      />
      {typed.by === 'shape' ? <ShapeFields {...fields} /> : <PlanesFields {...fields} />}
      <Openings {...fields} />
    </section>
  );
};

function ShapeFields({ typed, set, errors }: Fields) {
  const change = (part: Partial<TakeOffTyped['shape']>) =>
    set({ shape: { ...typed.shape, ...part } });
  const { shape } = typed;
  return (
    <fieldset className="sheet stack">
      <legend>The shape</legend>
      <div className="columns">
        <SelectField
          id="shape"
          label="Shape"
          options={optionsFor(['shed', 'gable', 'hip'])}
          value={shape.shape}
          onChange={(value) => change({ shape: value })}
        />
        <SelectField
          id="start"
          label="The first full panel lies"
          options={STARTS}
          value={shape.start}
          onChange={(start) => change({ start })}
        />
        <TextField
          id="along_ft"
          label="Walls, along the eave and the ridge"
          unit="ft"
          numeric
          errors={errors}
          value={shape.along_ft}
          onChange={(along_ft) => change({ along_ft })}
        />
        <TextField
          id="across_ft"
          label="Walls, across the ridge"
          unit="ft"
          numeric
          errors={errors}
          value={shape.across_ft}
          onChange={(across_ft) => change({ across_ft })}
        />
        <TextField
          id="overhang_ft"
          label="Overhang in plan, all round"
          unit="ft"
          numeric
          errors={errors}
          value={shape.overhang_ft}
          onChange={(overhang_ft) => change({ overhang_ft })}
        />
        <TextField
          id="rise_per_12"
          label="Rise"
          unit="per-12"
          numeric
          errors={errors}
          value={shape.rise_per_12}
          onChange={(rise_per_12) => change({ rise_per_12 })}
        />
      </div>
    </fieldset>
  );
}
