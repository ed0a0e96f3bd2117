// One change of a draft: the rule, what becomes of it, and what the change rests on.

import { label } from '#jobs/contract';
import {
  LongField,
  RadioField,
  SelectField,
  TextField,
  type FieldErrors,
} from '../parts/fields.js';
import { capital, number } from '../parts/words.js';
import { settingField, type Change, type Kind } from './draft-entry.js';
import type { Edition, KnownRule } from './reading.js';

export interface EditFieldsProps {
  readonly i: number;
  readonly change: Change;
  readonly put: (change: Partial<Change>) => void;
  readonly remove?: (() => void) | undefined;
  readonly known: readonly KnownRule[];
  readonly base: Edition;
  readonly errors: FieldErrors;
}

export function EditFields(props: EditFieldsProps) {
  const { i, change, put, remove, known, base, errors } = props;
  const standing = base.rules.find(({ rule }) => rule === change.rule);
  const own = known.find(({ rule }) => rule === change.rule);
  const ids = [...new Set(known.map(({ rule }) => rule))].sort();
  const options = ids.map((rule) => {
    const { title = '' } = known.find((each) => each.rule === rule) ?? {};
    const joins = base.rules.some((each) => each.rule === rule) ? '' : ' (not in the edition yet)';
    return { value: rule, label: `${rule}: ${title}${joins}` };
  });
  return (
    <fieldset className="sheet stack">
      <legend className="big">Change {i + 1}</legend>
      <SelectField
        id={`edit-${i}-rule`}
        label="Rule"
        empty="Choose a rule"
        options={options}
        errors={errors}
        value={change.rule}
        onChange={(rule) => put({ rule, version: '', severity: '', settings: {}, kind: 'change' })}
      />
      {own && <RuleWords rule={standing ?? own} joins={!standing} />}
      {own && <WhatBecomes {...props} own={own} standing={standing} />}
      <LongField
        id={`edit-${i}-source`}
        label="What this change rests on"
        hint="A document with its date, or who decided it and when"
        errors={errors}
        value={change.source}
        onChange={(source) => put({ source })}
      />
      {remove && (
        <div className="row">
          <button type="button" onClick={remove}>
            Take out change {i + 1}
          </button>
        </div>
      )}
    </fieldset>
  );
}

const RuleWords = ({ rule, joins }: { readonly rule: KnownRule; readonly joins: boolean }) => (
  <div className="notice stack tight">
    <p>{rule.says}</p>
    <p className="quiet small">
      {capital(label(rule.class))}, {rule.severity}; {capital(label(rule.stage))}. Source:{' '}
      {rule.cites.join('; ')}
    </p>
    {joins && <p>It joins the edition by this change.</p>}
    {!joins && !rule.may_be_changed && (
      <p>
        {capital(label(rule.class))} is not the office’s to change: its severity and settings stay,
        and it may not be left out. Only another version of it may be taken.
      </p>
    )}
  </div>
);

function WhatBecomes({
  i,
  change,
  put,
  known,
  errors,
  own,
  standing,
}: EditFieldsProps & { readonly own: KnownRule; readonly standing: KnownRule | undefined }) {
  const versions = known.filter(({ rule }) => rule === change.rule).map(({ version }) => version);
  const taken = change.version
    ? (known.find((each) => each.rule === own.rule && String(each.version) === change.version) ??
      own)
    : (standing ?? own);
  return (
    <>
      {standing && own.may_be_changed && (
        <RadioField
          id={`edit-${i}-kind`}
          label="What becomes of it"
          across
          options={[
            { value: 'change', label: 'It stays, changed' },
            { value: 'leave-out', label: 'It is left out' },
          ]}
          value={change.kind}
          onChange={(kind) => put({ kind: kind as Kind })}
        />
      )}
      {change.kind === 'change' && versions.length > 1 && (
        <SelectField
          id={`edit-${i}-version`}
          label="Version"
          empty={standing ? `Stays version ${standing.version}` : 'The newest'}
          options={versions.map((each) => ({ value: String(each), label: `Version ${each}` }))}
          value={change.version}
          onChange={(version) => put({ version, settings: {} })}
        />
      )}
      {change.kind === 'change' && own.may_be_changed && (
        <>
          <SelectField
            id={`edit-${i}-severity`}
            label="Severity"
            empty={`Stays ${taken.severity}`}
            options={['refuse', 'require', 'caution', 'note'].map((value) => ({
              value,
              label: capital(value),
            }))}
            errors={errors}
            value={change.severity}
            onChange={(severity) => put({ severity })}
          />
          {Object.entries(taken.settings).map(([name, value]) => (
            <Setting
              key={name}
              {...{ i, name, errors }}
              stands={value}
              typed={change.settings[name]}
              put={(text) => put({ settings: { ...change.settings, [name]: text } })}
            />
          ))}
          {Object.keys(taken.settings).length === 0 && (
            <p className="quiet">This rule has no settings.</p>
          )}
        </>
      )}
    </>
  );
}

function Setting({
  i,
  name,
  stands,
  typed,
  put,
  errors,
}: {
  readonly i: number;
  readonly name: string;
  readonly stands: string | number | boolean;
  readonly typed: string | undefined;
  readonly put: (text: string) => void;
  readonly errors: FieldErrors;
}) {
  const id = settingField(i, name);
  const words = capital(name.replaceAll('_', ' '));
  const value = typed ?? String(stands);
  if (typeof stands === 'boolean') {
    return (
      <RadioField
        id={id}
        label={words}
        hint={`Stands at ${stands ? 'yes' : 'no'}`}
        across
        options={[
          { value: 'true', label: 'Yes' },
          { value: 'false', label: 'No' },
        ]}
        errors={errors}
        value={value}
        onChange={put}
      />
    );
  }
  return (
    <TextField
      id={id}
      label={words}
      hint={`Stands at ${number(stands)}`}
      numeric={typeof stands === 'number'}
      errors={errors}
      value={value}
      onChange={put}
    />
  );
}
