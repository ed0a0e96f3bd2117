// What goes with the panels: trims cut from stock lengths, closures, sealant, underlayment. Each is a
// list that a person may lengthen or shorten.

import { EDGE_KINDS } from '#engineering';
import type { ReactNode } from 'react';
import { CheckField, TextField, Tick, type FieldErrors } from '../parts/fields.js';
import { optionsFor, replaced, without, type Fields } from './lists.js';
import type { ClosureTyped, SealantTyped, TrimTyped, UnderlaymentTyped } from './typed.js';

const EDGES = optionsFor(EDGE_KINDS.filter((edge) => edge !== 'none'));

interface ListOf<T> {
  readonly title: string;
  readonly one: string;
  readonly list: readonly T[];
  readonly put: (list: readonly T[]) => void;
  readonly fresh: () => T;
  readonly fields: (each: T, i: number, change: (part: Partial<T>) => void) => ReactNode;
}

function Goods<T>({ title, one, list, put, fresh, fields }: ListOf<T>) {
  return (
    <section className="stack" aria-label={title}>
      <h2>{title}</h2>
      {list.map((each, i) => (
        <fieldset className="sheet stack" key={i}>
          <legend>
            {one} {i + 1}
          </legend>
          {fields(each, i, (part) => put(replaced(list, i, part)))}
          <div>
            <button type="button" onClick={() => put(without(list, i))}>
              Remove
              <span className="visually-hidden">
                {' '}
                {one.toLowerCase()} {i + 1}
              </span>
            </button>
          </div>
        </fieldset>
      ))}
      <div>
        <button type="button" onClick={() => put([...list, fresh()])}>
          Add {one.toLowerCase()}
        </button>
      </div>
    </section>
  );
}

interface Numbers<T> {
  readonly id: string;
  readonly each: T;
  readonly errors: FieldErrors;
  readonly change: (part: Partial<T>) => void;
  readonly of: readonly (readonly [key: keyof T & string, label: string, unit: string])[];
}

const Measures = <T,>({ id, each, errors, change, of }: Numbers<T>) => (
  <div className="columns">
    {of.map(([key, label, unit]) => (
      <TextField
        key={key}
        id={`${id}-${key}`}
        label={label}
        unit={unit}
        numeric
        errors={errors}
        value={each[key] as string}
        onChange={(value) => change({ [key]: value } as Partial<T>)}
      />
    ))}
  </div>
);

interface OnEdges<T> {
  readonly id: string;
  readonly each: T & { readonly name: string; readonly edges: readonly string[] };
  readonly errors: FieldErrors;
  readonly change: (part: Partial<T & { name: string; edges: readonly string[] }>) => void;
  readonly asks: string;
}

const NameAndEdges = <T,>({ id, each, errors, change, asks }: OnEdges<T>) => (
  <>
    <TextField
      id={`${id}-name`}
      label="What it is"
      errors={errors}
      value={each.name}
      onChange={(name) => change({ name } as never)}
    />
    <CheckField
      id={`${id}-edges`}
      label={asks}
      across
      errors={errors}
      options={EDGES}
      values={each.edges}
      onChange={(edges) => change({ edges } as never)}
    />
  </>
);

export const Trims = ({ typed, set, errors }: Fields) => {
  const last = typed.trims.at(-1);
  return (
    <Goods<TrimTyped>
      title="Trims, cut from stock lengths"
      one="Trim"
      list={typed.trims}
      put={(trims) => set({ trims })}
      fresh={() => ({
        name: '',
        edges: [],
        stock_in: last?.stock_in ?? '',
        lap_in: last?.lap_in ?? '',
        weight_plf: '',
        screw_spacing_in: '',
      })}
      fields={(each, i, change) => (
        <>
          <NameAndEdges {...{ each, errors, change }} id={`trims-${i}`} asks="It covers" />
          <Measures
            {...{ each, errors, change }}
            id={`trims-${i}`}
            of={[
              ['stock_in', 'Stock length', 'in'],
              ['lap_in', 'Lap of one piece on the next', 'in'],
              ['weight_plf', 'Weight', 'lb/ft'],
              ['screw_spacing_in', 'Between its screws (optional)', 'in'],
            ]}
          />
        </>
      )}
    />
  );
};

export const Closures = ({ typed, set, errors }: Fields) => (
  <Goods<ClosureTyped>
    title="Closures"
    one="Closure"
    list={typed.closures}
    put={(closures) => set({ closures })}
    fresh={() => ({ name: '', edges: [], length_in: '' })}
    fields={(each, i, change) => (
      <>
        <NameAndEdges {...{ each, errors, change }} id={`closures-${i}`} asks="Along" />
        <Measures
          {...{ each, errors, change }}
          id={`closures-${i}`}
          of={[['length_in', 'Length of one', 'in']]}
        />
      </>
    )}
  />
);

export const Sealants = ({ typed, set, errors }: Fields) => (
  <Goods<SealantTyped>
    title="Sealant"
    one="Sealant"
    list={typed.sealants}
    put={(sealants) => set({ sealants })}
    fresh={() => ({ name: '', edges: [], end_laps: false, side_laps: false, roll_ft: '' })}
    fields={(each, i, change) => (
      <>
        <NameAndEdges {...{ each, errors, change }} id={`sealants-${i}`} asks="Along" />
        <Tick
          id={`sealants-${i}-end_laps`}
          label="Also in end laps"
          checked={each.end_laps}
          onChange={(end_laps) => change({ end_laps })}
        />
        <Tick
          id={`sealants-${i}-side_laps`}
          label="Also in side laps"
          checked={each.side_laps}
          onChange={(side_laps) => change({ side_laps })}
        />
        <Measures
          {...{ each, errors, change }}
          id={`sealants-${i}`}
          of={[['roll_ft', 'Length of a roll or tube', 'ft']]}
        />
      </>
    )}
  />
);

export const Underlayments = ({ typed, set, errors }: Fields) => (
  <Goods<UnderlaymentTyped>
    title="Underlayment"
    one="Underlayment"
    list={typed.underlayments}
    put={(underlayments) => set({ underlayments })}
    fresh={() => ({
      name: '',
      roll_width_in: '',
      roll_length_ft: '',
      side_lap_in: '',
      end_lap_in: '',
      edges: [],
      courses: '1',
    })}
    fields={(each, i, change) => (
      <>
        <NameAndEdges
          {...{ each, errors, change }}
          id={`underlayments-${i}`}
          asks="Only along (none chosen: over the whole plane)"
        />
        {each.edges.length > 0 && (
          <TextField
            id={`underlayments-${i}-courses`}
            label="Courses"
            numeric
            inputMode="numeric"
            errors={errors}
            value={each.courses}
            onChange={(courses) => change({ courses })}
          />
        )}
        <Measures
          {...{ each, errors, change }}
          id={`underlayments-${i}`}
          of={[
            ['roll_width_in', 'Width of a roll', 'in'],
            ['roll_length_ft', 'Length of a roll', 'ft'],
            ['side_lap_in', 'Lap of one course on the next', 'in'],
            ['end_lap_in', 'Lap of one roll on the next', 'in'],
          ]}
        />
      </>
    )}
  />
);
