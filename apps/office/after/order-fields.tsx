// The fields of an order: supplier and dates, the lines by piece length and count, how lengths stand.

import type { JobView } from '#jobs/contract';
import { DateField, SelectField, TextField, type FieldErrors } from '../parts/fields.js';
import { lineAfter, type LengthsTyped, type LineTyped, type OrderTyped } from './order-entry.js';
import { optionsOf, surfaceName, surfaceOptions } from './pick.js';

type Set = (change: Partial<OrderTyped>) => void;
interface Fields {
  readonly job: JobView;
  readonly typed: OrderTyped;
  readonly set: Set;
  readonly errors: FieldErrors;
}

export const OrderFields = ({ job, typed, set, errors }: Fields) => (
  <>
    <TextField
      id="supplier"
      label="Supplier"
      errors={errors}
      value={typed.supplier}
      onChange={(supplier) => set({ supplier })}
    />
    <DateField
      id="date"
      label="Date of the order"
      errors={errors}
      value={typed.date}
      onChange={(date) => set({ date })}
    />
    <DateField
      id="delivery"
      label="Delivery (optional)"
      errors={errors}
      value={typed.delivery}
      onChange={(delivery) => set({ delivery })}
    />
    <TextField
      id="landing"
      label="Landing place"
      errors={errors}
      value={typed.landing}
      onChange={(landing) => set({ landing })}
      hint="Where bundles are set down; only where the frame or the ground can carry them"
    />
    <Lines {...{ job, typed, set, errors }} />
    {typed.lengths.map((each, i) => (
      <Lengths
        key={each.surface}
        name={surfaceName(job, each.surface)}
        typed={each}
        errors={errors}
        set={(change) =>
          set({ lengths: typed.lengths.map((one, at) => (at === i ? { ...one, ...change } : one)) })
        }
      />
    ))}
  </>
);

const Lines = ({ job, typed, set, errors }: Fields) => (
  <section className="stack" aria-label="Lines of the order">
    <h2>Lines</h2>
    {typed.lines.map((line, i) => (
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
    ))}
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

const WHAT = optionsOf([
  'panel',
  'trim',
  'fastener',
  'closure',
  'sealant',
  'underlayment',
  'touch-up',
  'spare',
]);

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
    <legend>Line {line.id}</legend>
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
        onChange={(length) => set({ length })}
      />
      <TextField
        id={`count-${line.id}`}
        label="How many"
        numeric
        inputMode="numeric"
        errors={errors}
        value={line.count}
        onChange={(count) => set({ count })}
      />
      <button type="button" onClick={remove}>
        Remove<span className="visually-hidden"> line {line.id}</span>
      </button>
    </div>
  </fieldset>
);

export const STANDINGS = [
  { value: 'signed', label: 'Measured, and signed by who measured' },
  { value: 'hold', label: 'On hold until measured' },
  { value: 'field-verify', label: 'To be verified in the field' },
];
const BY = [
  { value: 'entered', label: 'Entered' },
  { value: 'take-off', label: 'From the take-off' },
];

const Lengths = ({
  name,
  typed,
  set,
  errors,
}: {
  readonly name: string;
  readonly typed: LengthsTyped;
  readonly set: (change: Partial<LengthsTyped>) => void;
  readonly errors: FieldErrors;
}) => (
  <fieldset className="sheet stack">
    <legend>Lengths of {name}</legend>
    <SelectField
      id={`standing-${typed.surface}`}
      label="They are"
      empty="Choose one"
      errors={errors}
      options={STANDINGS}
      value={typed.standing}
      onChange={(standing) => set({ standing })}
    />
    <SelectField
      id={`by-${typed.surface}`}
      label="They come"
      options={BY}
      value={typed.by}
      onChange={(by) => set({ by })}
    />
    {typed.standing === 'signed' && (
      <TextField
        id={`signed-${typed.surface}`}
        label="Who measured"
        errors={errors}
        value={typed.signedBy}
        onChange={(signedBy) => set({ signedBy })}
      />
    )}
  </fieldset>
);
