// Planes corner by corner: each corner with the kind of side that runs from it.

import { EDGE_KINDS } from '#engineering';
import { SelectField, TextField, type FieldErrors } from '../parts/fields.js';
import { optionsFor, replaced, STARTS, without, type Fields } from './lists.js';
import { corner, plane as newPlane, type CornerTyped, type PlaneTyped } from './typed.js';

export const PlanesFields = (fields: Fields) => {
  const { typed, set } = fields;
  const next = () => {
    const last = typed.planes.at(-1);
    const name = `Plane ${typed.planes.length + 1}`;
    set({
      planes: [...typed.planes, newPlane(name, last?.rise_per_12 ?? '', last?.lies ?? 'roof')],
    });
  };
  return (
    <>
      <p className="hint">
        Corners in order, in feet: x along the eave to the right as one looks up the slope, y up the
        slope. Each corner names the side that runs from it to the next.
      </p>
      {typed.planes.map((each, i) => (
        <PlaneFields
          key={i}
          at={i}
          plane={each}
          errors={fields.errors}
          change={(part) => set({ planes: replaced(typed.planes, i, part) })}
          remove={
            typed.planes.length > 1 ? () => set({ planes: without(typed.planes, i) }) : undefined
          }
        />
      ))}
      <div>
        <button type="button" onClick={next}>
          Add a plane
        </button>
      </div>
    </>
  );
};

function PlaneFields({
  at,
  plane,
  errors,
  change,
  remove,
}: {
  readonly at: number;
  readonly plane: PlaneTyped;
  readonly errors: FieldErrors;
  readonly change: (part: Partial<PlaneTyped>) => void;
  readonly remove: (() => void) | undefined;
}) {
  const id = `planes-${at}`;
  return (
    <fieldset className="sheet stack">
      <legend>Plane {at + 1}</legend>
      <div className="columns">
        <TextField
          id={`${id}-name`}
          label="Name"
          errors={errors}
          value={plane.name}
          onChange={(name) => change({ name })}
        />
        <SelectField
          id={`${id}-lies`}
          label="It is"
          options={[
            { value: 'roof', label: 'A sloping roof' },
            { value: 'wall', label: 'A wall' },
          ]}
          value={plane.lies}
          onChange={(lies) => change({ lies })}
        />
        {plane.lies === 'roof' && (
          <>
            <TextField
              id={`${id}-rise_per_12`}
              label="Rise"
              unit="per-12"
              numeric
              errors={errors}
              value={plane.rise_per_12}
              onChange={(rise_per_12) => change({ rise_per_12 })}
            />
            <SelectField
              id={`${id}-measured`}
              label="y is measured"
              options={[
                { value: 'in-plan', label: 'In plan, level' },
                { value: 'on-slope', label: 'On the slope' },
              ]}
              value={plane.measured}
              onChange={(measured) => change({ measured })}
            />
          </>
        )}
        <SelectField
          id={`${id}-start`}
          label="The first full panel lies"
          options={STARTS}
          value={plane.start}
          onChange={(start) => change({ start })}
        />
      </div>
      <Corners id={id} plane={plane} errors={errors} change={change} />
      {remove && (
        <div>
          <button type="button" onClick={remove}>
            Remove<span className="visually-hidden"> plane {at + 1}</span> this plane
          </button>
        </div>
      )}
    </fieldset>
  );
}

const EDGES = optionsFor(EDGE_KINDS.filter((edge) => edge !== 'none')).concat({
  value: 'none',
  label: 'No edge: the plane goes on',
});

function Corners({
  id,
  plane,
  errors,
  change,
}: {
  readonly id: string;
  readonly plane: PlaneTyped;
  readonly errors: FieldErrors;
  readonly change: (part: Partial<PlaneTyped>) => void;
}) {
  const set = (at: number, part: Partial<CornerTyped>) =>
    change({ outline: replaced(plane.outline, at, part) });
  return (
    <>
      {plane.outline.map((each, j) => (
        <fieldset className="corner" key={j}>
          <legend>Corner {j + 1}</legend>
          <div className="row bottoms">
            {(['x_ft', 'y_ft'] as const).map((key) => (
              <TextField
                key={key}
                id={`${id}-outline-${j}-${key}`}
                label={key.charAt(0)}
                unit="ft"
                numeric
                errors={errors}
                value={each[key]}
                onChange={(value) => set(j, { [key]: value })}
              />
            ))}
            <SelectField
              id={`${id}-outline-${j}-edge`}
              label="Side from here"
              errors={errors}
              options={EDGES}
              value={each.edge}
              onChange={(edge) => set(j, { edge })}
            />
            <TextField
              id={`${id}-outline-${j}-joint`}
              label="Joint with another plane, by a name (optional)"
              errors={errors}
              value={each.joint}
              onChange={(joint) => set(j, { joint })}
            />
            {plane.outline.length > 3 && (
              <button type="button" onClick={() => change({ outline: without(plane.outline, j) })}>
                Remove<span className="visually-hidden"> corner {j + 1}</span>
              </button>
            )}
          </div>
        </fieldset>
      ))}
      <div>
        <button type="button" onClick={() => change({ outline: [...plane.outline, corner()] })}>
          Add a corner
        </button>
      </div>
    </>
  );
}
