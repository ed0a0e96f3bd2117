// The fields of an order: supplier and dates, the lines, how the lengths of each surface stand and
// where they come from.

import { useQueries } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import { useEffect, useRef } from 'react';
import type { JobView, TakeOffSheet } from '#jobs/contract';
import { takeOffQuery } from '../api/queries.js';
import { DateField, SelectField, TextField, type FieldErrors } from '../parts/fields.js';
import { withTakeOff, type LengthsTyped } from './order-entry.js';
import { Lines, type OrderFieldsProps } from './order-lines.js';
import { surfaceName } from './pick.js';

export function OrderFields({ job, typed, set, errors }: OrderFieldsProps) {
  const sheets = useSheets(job);
  const use = (sheet: TakeOffSheet) => set(withTakeOff(typed, sheet));
  useNamed(sheets, use);
  const change = (at: number, part: Partial<LengthsTyped>) =>
    set({ lengths: typed.lengths.map((one, i) => (i === at ? { ...one, ...part } : one)) });
  return (
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
      {typed.lengths.map((each, i) => (
        <Lengths
          key={each.surface}
          name={surfaceName(job, each.surface)}
          typed={each}
          errors={errors}
          set={(part) => change(i, part)}
          sheet={sheets.find(({ surface }) => surface === each.surface)}
          use={use}
        />
      ))}
      <Lines {...{ job, typed, set, errors }} />
    </>
  );
}

/** The take-offs that an order may name: those that count. */
function useSheets(job: JobView): readonly TakeOffSheet[] {
  const current = job.take_offs.filter(({ stands }) => stands === 'current');
  const answers = useQueries({
    queries: current.map(({ surface, number, stands }) =>
      takeOffQuery(job.id, surface, number, stands),
    ),
  });
  return answers.flatMap(({ data }) => data ?? []);
}

/** The one that the link named is taken over once, when it has come. */
function useNamed(sheets: readonly TakeOffSheet[], use: (sheet: TakeOffSheet) => void): void {
  const { take_off } = useSearch({ strict: false }) as { take_off?: string };
  const done = useRef(false);
  const named = sheets.find(({ surface }) => surface === take_off);
  useEffect(() => {
    if (done.current || !named) return;
    done.current = true;
    use(named);
  });
}

export const STANDINGS = [
  { value: 'signed', label: 'Measured, and signed by who measured' },
  { value: 'hold', label: 'On hold until measured' },
  { value: 'field-verify', label: 'To be verified in the field' },
];
const Lengths = ({
  name,
  typed,
  set,
  errors,
  sheet,
  use,
}: {
  readonly name: string;
  readonly typed: LengthsTyped;
  readonly set: (change: Partial<LengthsTyped>) => void;
  readonly errors: FieldErrors;
  readonly sheet: TakeOffSheet | undefined;
  readonly use: (sheet: TakeOffSheet) => void;
}) => (
  <fieldset className="sheet stack">
    <legend>Lengths of {name}</legend>
    <SelectField
      id={`by-${typed.surface}`}
      label="They come"
      options={[
        { value: 'entered', label: 'Entered here' },
        ...(sheet
          ? [
              {
                value: 'take-off',
                label: `From take-off ${sheet.number}: ${sheet.pieces} pieces, ${sheet.measured_from}`,
              },
            ]
          : typed.by === 'take-off'
            ? [{ value: 'take-off', label: 'From a take-off that counts no longer' }]
            : []),
      ]}
      value={typed.by}
      onChange={(by) => (by === 'take-off' && sheet ? use(sheet) : set({ by }))}
    />
    <SelectField
      id={`standing-${typed.surface}`}
      label="They are"
      empty="Choose one"
      errors={errors}
      options={STANDINGS}
      value={typed.standing}
      onChange={(standing) => set({ standing })}
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
