// The as-of control: a date and a time for what was recorded, and for what was true, plus "Now".
// Both stand in the address.

import { useEffect, useState, type FormEvent } from 'react';
import { ErrorSummary } from '../parts/errors.js';
import { DateField, TextField, type FieldErrors } from '../parts/fields.js';
import { day, moment, parseDay } from '../parts/words.js';

export interface Picked {
  readonly asOf?: string | undefined;
  readonly effective?: string | undefined;
}

export function AsOf({
  picked,
  go,
  failed,
}: {
  readonly picked: Picked;
  readonly go: (picked: Picked) => void;
  readonly failed: (failed: boolean) => void;
}) {
  const [known, setKnown] = useTyped(picked.asOf);
  const [true_, setTrue] = useTyped(picked.effective);
  const [errors, setErrors] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const found = [...faults('known', known), ...faults('true', true_)];
    setErrors(found);
    setAttempt((n) => n + 1);
    failed(found.length > 0);
    if (found.length === 0) go({ asOf: momentOf(known), effective: momentOf(true_) });
  };
  return (
    <section className="sheet stack" aria-label="As of">
      <form className="stack no-print" noValidate onSubmit={submit}>
        <ErrorSummary errors={errors} attempt={attempt} />
        <div className="columns">
          <Moment
            id="known"
            legend="What was known on"
            typed={known}
            set={setKnown}
            errors={errors}
          />
          <Moment
            id="true"
            legend="What was true on (optional)"
            typed={true_}
            set={setTrue}
            errors={errors}
          />
        </div>
        <div className="row">
          <button type="submit" className="main">
            Show
          </button>
          <button type="button" onClick={() => go({})}>
            Now
          </button>
        </div>
      </form>
      <p role="status">
        <strong>{sentence(picked)}</strong>
      </p>
    </section>
  );
}

export function sentence({ asOf, effective }: Picked): string {
  const known = asOf ? `Showing what was known on ${moment(asOf)}` : 'Showing what is known now';
  return `${known}${effective ? `, of what was true on ${moment(effective)}` : ''} (your time zone).`;
}

export interface MomentTyped {
  readonly date: string;
  readonly time: string;
}

export function Moment({
  id,
  legend,
  typed,
  set,
  errors,
}: {
  readonly id: string;
  readonly legend: string;
  readonly typed: MomentTyped;
  readonly set: (typed: MomentTyped) => void;
  readonly errors: FieldErrors;
}) {
  return (
    <fieldset>
      <legend>{legend}</legend>
      <div className="row bottoms">
        <DateField
          id={`${id}-date`}
          label="Date"
          errors={errors}
          value={typed.date}
          onChange={(date) => set({ ...typed, date })}
        />
        <TextField
          id={`${id}-time`}
          label="Time"
          hint="Like 09:30; empty for the end of the day"
          numeric
          errors={errors}
          value={typed.time}
          onChange={(time) => set({ ...typed, time })}
        />
      </div>
    </fieldset>
  );
}

export function useTyped(given: string | undefined): [MomentTyped, (typed: MomentTyped) => void] {
  const [typed, set] = useState<MomentTyped>(() => typedFrom(given));
  useEffect(() => set(typedFrom(given)), [given]);
  return [typed, set];
}

const typedFrom = (given: string | undefined): MomentTyped =>
  given ? { date: day(given), time: moment(given).slice(-5) } : { date: '', time: '' };

const TIME = /^([01]?\d|2[0-3]):[0-5]\d$/;

export const faults = (id: string, { date, time }: MomentTyped): FieldErrors => [
  ...(date.trim() && !parseDay(date)
    ? [{ field: `${id}-date`, message: 'Enter the date like 14 Feb 2026' }]
    : []),
  ...(time.trim() && !TIME.test(time.trim())
    ? [{ field: `${id}-time`, message: 'Enter the time like 09:30' }]
    : []),
  ...(time.trim() && !date.trim()
    ? [{ field: `${id}-date`, message: 'Enter the date beside the time' }]
    : []),
];

/** The moment in UTC; a date alone means the end of that day; a minute means all of that minute. */
export function momentOf({ date, time }: MomentTyped): string | undefined {
  const found = parseDay(date);
  if (!found) return undefined;
  const clock = (time.trim() || '23:59').padStart(5, '0');
  return new Date(`${found}T${clock}:59.999`).toISOString();
}
