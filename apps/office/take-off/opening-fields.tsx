// Openings: rectangles in plan inside one plane.

import { SelectField, TextField, type FieldErrors } from '../parts/fields.js';
import { replaced, without, type Fields } from './lists.js';
import { planeNames, type OpeningTyped } from './typed.js';

export function Openings({ typed, set, errors }: Fields) {
  const planes = planeNames(typed);
  const add = (): OpeningTyped => ({
    plane: planes[0] ?? '',
    name: '',
    x_ft: '',
    y_ft: '',
    width_ft: '',
    height_ft: '',
  });
  return (
    <>
      {typed.openings.map((each, i) => (
        <Opening
          key={i}
          at={i}
          opening={each}
          planes={planes}
          errors={errors}
          change={(part) => set({ openings: replaced(typed.openings, i, part) })}
          remove={() => set({ openings: without(typed.openings, i) })}
        />
      ))}
      <div>
        <button type="button" onClick={() => set({ openings: [...typed.openings, add()] })}>
          Add an opening
        </button>
      </div>
    </>
  );
}

const MEASURES = [
  ['x_ft', 'Left edge, from the left end of the eave'],
  ['y_ft', 'Low edge, from the eave, in plan'],
  ['width_ft', 'Width along the eave'],
  ['height_ft', 'Length up the slope, in plan'],
] as const;

function Opening({
  at,
  opening,
  planes,
  errors,
  change,
  remove,
}: {
  readonly at: number;
  readonly opening: OpeningTyped;
  readonly planes: readonly string[];
  readonly errors: FieldErrors;
  readonly change: (part: Partial<OpeningTyped>) => void;
  readonly remove: () => void;
}) {
  return (
    <fieldset className="sheet stack">
      <legend>Opening {at + 1}</legend>
      <div className="columns">
        <TextField
          id={`openings-${at}-name`}
          label="What it is"
          errors={errors}
          value={opening.name}
          onChange={(name) => change({ name })}
        />
        <SelectField
          id={`openings-${at}-plane`}
          label="In the plane"
          empty="Choose one"
          errors={errors}
          options={planes.map((value) => ({ value, label: value }))}
          value={opening.plane}
          onChange={(plane) => change({ plane })}
        />
        {MEASURES.map(([key, words]) => (
          <TextField
            key={key}
            id={`openings-${at}-${key}`}
            label={words}
            unit="ft"
            numeric
            errors={errors}
            value={opening[key]}
            onChange={(value) => change({ [key]: value })}
          />
        ))}
      </div>
      <div>
        <button type="button" onClick={remove}>
          Remove<span className="visually-hidden"> opening {at + 1}</span> this opening
        </button>
      </div>
    </fieldset>
  );
}
