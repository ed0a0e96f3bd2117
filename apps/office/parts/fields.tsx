// Form fields: a visible label, a hint and an error tied to it, the unit beside it and in its name.

import type { ComponentProps, ReactNode } from 'react';
import { spokenUnit, unit as unitText } from './words.js';

export interface FieldError {
  /** id of the field, or of the group's first field. */
  readonly field: string;
  readonly message: string;
}
export type FieldErrors = readonly FieldError[];
export const errorOf = (errors: FieldErrors, id: string): string | undefined =>
  errors.find(({ field }) => field === id)?.message;

interface Common {
  readonly id: string;
  readonly label: string;
  readonly hint?: ReactNode;
  readonly errors?: FieldErrors;
}

type Control = Common & {
  readonly value: string;
  readonly onChange: (value: string) => void;
};

const described = (id: string, hint: ReactNode, error: string | undefined) => {
  const ids = [hint ? `${id}-hint` : '', error ? `${id}-error` : ''].filter(Boolean).join(' ');
  return { ...(ids && { 'aria-describedby': ids }), ...(error && { 'aria-invalid': true }) };
};

function Frame({
  id,
  label,
  hint,
  error,
  unit,
  children,
}: {
  readonly id: string;
  readonly label: string;
  readonly hint: ReactNode;
  readonly error: string | undefined;
  readonly unit?: string | undefined;
  readonly children: ReactNode;
}) {
  const shown = unit && unitText(unit);
  return (
    <div className={error ? 'field wrong' : 'field'}>
      <label htmlFor={id}>
        {label}
        {shown && <span className="visually-hidden">, in {spokenUnit(unit ?? '')}</span>}
      </label>
      {hint && (
        <span className="hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
      {error && (
        <span className="error" id={`${id}-error`}>
          {error}
        </span>
      )}
      {shown ? (
        <span className="with-unit">
          {children}
          <span className="unit" aria-hidden="true">
            {shown}
          </span>
        </span>
      ) : (
        children
      )}
    </div>
  );
}

type TextProps = Control & {
  readonly unit?: string;
  readonly numeric?: boolean;
} & Pick<ComponentProps<'input'>, 'autoComplete' | 'type' | 'inputMode' | 'required' | 'autoFocus'>;

export function TextField({
  id,
  label,
  hint,
  errors = [],
  value,
  onChange,
  unit,
  numeric,
  ...rest
}: TextProps) {
  const error = errorOf(errors, id);
  return (
    <Frame {...{ id, label, hint, error, unit }}>
      <input
        id={id}
        className={numeric ? 'number' : 'long'}
        inputMode={numeric ? 'decimal' : undefined}
        autoComplete="off"
        {...rest}
        {...described(id, hint, error)}
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
    </Frame>
  );
}

export function LongField({ id, label, hint, errors = [], value, onChange }: Control) {
  const error = errorOf(errors, id);
  return (
    <Frame {...{ id, label, hint, error }}>
      <textarea
        id={id}
        {...described(id, hint, error)}
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
    </Frame>
  );
}

export interface Option {
  readonly value: string;
  readonly label: string;
  readonly hint?: ReactNode;
}

export function SelectField({
  id,
  label,
  hint,
  errors = [],
  value,
  onChange,
  options,
  empty,
}: Control & { readonly options: readonly Option[]; readonly empty?: string }) {
  const error = errorOf(errors, id);
  return (
    <Frame {...{ id, label, hint, error }}>
      <select
        id={id}
        {...described(id, hint, error)}
        value={value}
        onChange={(event) => onChange(event.target.value)}
      >
        {empty !== undefined && <option value="">{empty}</option>}
        {options.map((each) => (
          <option key={each.value} value={each.value}>
            {each.label}
          </option>
        ))}
      </select>
    </Frame>
  );
}

/** Dates are typed as "14 Feb 2026" (or 2026-02-14), never as month/day digits. */
export function DateField(props: Control) {
  return <TextField {...props} hint={props.hint ?? 'Like 14 Feb 2026'} />;
}

interface Group extends Common {
  readonly options: readonly Option[];
  readonly across?: boolean;
  readonly big?: boolean;
}

function Choices({
  id,
  label,
  hint,
  errors = [],
  options,
  across,
  big,
  kind,
  chosen,
  pick,
}: Group & {
  readonly kind: 'radio' | 'checkbox';
  readonly chosen: readonly string[];
  readonly pick: (value: string) => void;
}) {
  const error = errorOf(errors, `${id}-0`) ?? errorOf(errors, id);
  return (
    <fieldset className={error ? 'wrong' : undefined} {...described(id, hint, error)}>
      <legend className={big ? 'big' : undefined}>{label}</legend>
      {hint && (
        <span className="hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
      {error && (
        <span className="error" id={`${id}-error`}>
          {error}
        </span>
      )}
      <div className={across ? 'choices across' : 'choices'}>
        {options.map((each, i) => (
          <div className="choice" key={each.value}>
            <input
              type={kind}
              id={`${id}-${i}`}
              name={id}
              checked={chosen.includes(each.value)}
              onChange={() => pick(each.value)}
              {...(each.hint ? { 'aria-describedby': `${id}-${i}-hint` } : {})}
            />
            <label htmlFor={`${id}-${i}`}>{each.label}</label>
            {each.hint && (
              <span className="hint" id={`${id}-${i}-hint`}>
                {each.hint}
              </span>
            )}
          </div>
        ))}
      </div>
    </fieldset>
  );
}

export function RadioField({
  value,
  onChange,
  ...group
}: Group & { readonly value: string; readonly onChange: (value: string) => void }) {
  return <Choices {...group} kind="radio" chosen={[value]} pick={onChange} />;
}

export function CheckField({
  values,
  onChange,
  ...group
}: Group & {
  readonly values: readonly string[];
  readonly onChange: (values: readonly string[]) => void;
}) {
  const pick = (value: string) =>
    onChange(values.includes(value) ? values.filter((each) => each !== value) : [...values, value]);
  return <Choices {...group} kind="checkbox" chosen={values} pick={pick} />;
}

export function Tick({
  id,
  label,
  hint,
  checked,
  onChange,
}: Common & {
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
}) {
  return (
    <div className="choice">
      <input
        type="checkbox"
        id={id}
        checked={checked}
        onChange={(event) => onChange(event.target.checked)}
        {...described(id, hint, undefined)}
      />
      <label htmlFor={id}>{label}</label>
      {hint && (
        <span className="hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
    </div>
  );
}
