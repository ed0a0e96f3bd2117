// The lines of an order: those of take-offs as a table, the others as fields.

import { LINE_KINDS, type JobView } from '#jobs/contract';
import { SelectField, TextField, type FieldErrors } from '../parts/fields.js';
import { LinesTable } from './lines-table.js';
import { isTaken, lineAfter, type LineTyped, type OrderTyped } from './order-entry.js';
import { optionsOf, surfaceOptions } from './pick.js';

export interface OrderFieldsProps {
  readonly job: JobView;
  readonly typed: OrderTyped;
  readonly set: (change: Partial<OrderTyped>) => void;
  readonly errors: FieldErrors;
}

export const Lines = ({ job, typed, set, errors }: OrderFieldsProps) => (
  <section className="stack" aria-label="Lines of the order">
    <h2>Lines</h2>
    <TakenLines job={job} typed={typed} />
    {typed.lines.map((line, i) =>
      isTaken(typed, line) ? null : (
        <Line
          key={line.id}
          job={job}
          line={line}
          errors={errors}
          set={(change) =>
            set({ lines: typed.lines.map((one, at) => (at === i ? { ...one, ...change } : one)) })
          }
          remove={() => set({ lines: typed.lines.filter((_, at) => at !== i) })}
        />
      ),
    )}
    <div>
      <button
        type="button"
        id="add-line"
        onClick={() => set({ lines: [...typed.lines, lineAfter(typed.lines)] })}
      >
        Add a line
      </button>
    </div>
  </section>
);

const WHAT = optionsOf(LINE_KINDS);

const Line = ({
  job,
  line,
  set,
  remove,
  errors,
}: {
  readonly job: JobView;
  readonly line: LineTyped;
  readonly set: (change: Partial<LineTyped>) => void;
  readonly remove: () => void;
  readonly errors: FieldErrors;
}) => (
  <fieldset className="sheet stack">
    <legend>Line {line.id.toUpperCase()}</legend>
    <div className="row bottoms">
      <SelectField
        id={`what-${line.id}`}
        label="Kind"
        options={WHAT}
        value={line.what}
        onChange={(what) => set({ what })}
      />
      <SelectField
        id={`surface-${line.id}`}
        label="For"
        empty="The whole job"
        options={surfaceOptions(job)}
        value={line.surface}
        onChange={(surface) => set({ surface })}
      />
    </div>
    <TextField
      id={`words-${line.id}`}
      label="What it is"
      errors={errors}
      value={line.words}
      onChange={(words) => set({ words })}
    />
    <div className="row bottoms">
      <TextField
        id={`length-${line.id}`}
        label={line.what === 'panel' ? 'Length of a piece' : 'Length of a piece (optional)'}
        unit="in"
        numeric
        errors={errors}
        value={line.length}
        onChange={(length) => set({ length, weight: '', price: '' })}
      />
      <TextField
        id={`count-${line.id}`}
        label="How many"
        numeric
        inputMode="numeric"
        errors={errors}
        value={line.count}
        onChange={(count) => set({ count, weight: '', price: '' })}
      />
      <TextField
        id={`weight-${line.id}`}
        label="Weight of all (optional)"
        unit="lb"
        numeric
        errors={errors}
        value={line.weight}
        onChange={(weight) => set({ weight })}
      />
      <TextField
        id={`price-${line.id}`}
        label="Price of all (optional)"
        unit="USD"
        numeric
        errors={errors}
        value={line.price}
        onChange={(price) => set({ price })}
      />
      <button type="button" onClick={remove}>
        Remove<span className="visually-hidden"> line {line.id.toUpperCase()}</span>
      </button>
    </div>
  </fieldset>
);

const TakenLines = ({ job, typed }: { readonly job: JobView; readonly typed: OrderTyped }) => {
  const lines = typed.lines.filter((line) => isTaken(typed, line));
  return lines.length === 0 ? null : (
    <>
      <p>
        Lines of take-offs stand as they were counted. Say that the lengths are entered here to
        change them by hand; more of something is a line of its own, as a spare.
      </p>
      <LinesTable job={job} caption="Lines from take-offs" lines={lines} />
    </>
  );
};
