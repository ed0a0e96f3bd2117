// The fields of a small form, from the list of what it asks.

import type { StoredFile } from '../api/files.js';
import {
  CheckField,
  DateField,
  LongField,
  RadioField,
  SelectField,
  TextField,
  type FieldErrors,
} from '../parts/fields.js';
import { FileField } from '../parts/file-field.js';
import type { Ask, Typed } from './asks.js';

export function AskFields({
  asks,
  typed,
  set,
  errors,
}: {
  readonly asks: readonly Ask[];
  readonly typed: Typed;
  readonly set: (change: Partial<Typed>) => void;
  readonly errors: FieldErrors;
}) {
  return asks.map((ask) => (
    <AskField
      key={ask.id}
      ask={ask}
      errors={errors}
      value={typed.values[ask.id] ?? ''}
      onChange={(value) => set({ values: { ...typed.values, [ask.id]: value } })}
      files={typed.files[ask.id] ?? []}
      setFiles={(files) => set({ files: { ...typed.files, [ask.id]: files } })}
    />
  ));
}

function AskField({
  ask,
  errors,
  value,
  onChange,
  files,
  setFiles,
}: {
  readonly ask: Ask;
  readonly errors: FieldErrors;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly files: readonly StoredFile[];
  readonly setFiles: (files: readonly StoredFile[]) => void;
}) {
  const { id, kind, options = [], unit } = ask;
  const label = ask.optional ? `${ask.label} (optional)` : ask.label;
  const given = { id, label, errors, value, onChange, ...(ask.hint ? { hint: ask.hint } : {}) };
  const inUnit = unit ? { unit } : {};
  switch (kind) {
    case 'text':
      return <TextField {...given} />;
    case 'count':
      return <TextField {...given} {...inUnit} numeric inputMode="numeric" />;
    case 'decimal':
      return <TextField {...given} {...inUnit} numeric />;
    case 'long':
    case 'lines':
      return <LongField {...given} />;
    case 'day':
      return <DateField {...given} />;
    case 'pick':
      return <SelectField {...given} empty="Choose one" options={options} />;
    case 'choice':
      return <RadioField {...given} options={options} />;
    case 'many':
      return (
        <CheckField
          {...given}
          options={options}
          values={value.split('\n').filter(Boolean)}
          onChange={(values) => onChange(values.join('\n'))}
        />
      );
    case 'files':
      return <FileField {...given} files={files} set={setFiles} />;
  }
}
