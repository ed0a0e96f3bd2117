// The field of one fact, by its kind; what is recorded now stands beside it.

import { factDefinition, label } from '#jobs/contract';
import {
  CheckField,
  DateField,
  LongField,
  SelectField,
  TextField,
  type FieldErrors,
} from '../parts/fields.js';
import { capital, value as valueWords } from '../parts/words.js';
import type { FactSlot } from './by-stage.js';
import { controlOf, listed, NONE } from './fact-entry.js';

const YES_NO = [
  { value: 'yes', label: 'Yes' },
  { value: 'no', label: 'No' },
];

export function FactField({
  slot,
  value,
  errors,
  onChange,
}: {
  readonly slot: FactSlot;
  readonly value: string;
  readonly errors: FieldErrors;
  readonly onChange: (value: string) => void;
}) {
  const definition = factDefinition(slot.name);
  const now = slot.fact && `Recorded: ${valueWords(slot.fact.value)} (${slot.fact.how})`;
  const hint = [definition.hint && capital(definition.hint), now].filter(Boolean).join('. ');
  const frame = {
    id: controlOf(slot.path),
    label: definition.asks,
    errors,
    value,
    onChange,
    ...(hint ? { hint } : {}),
  };
  const empty = slot.fact ? 'No change' : 'Not known';
  switch (definition.kind) {
    case 'amount':
      return <TextField {...frame} numeric unit={definition.unit} />;
    case 'choice':
      return (
        <SelectField
          {...frame}
          empty={empty}
          options={definition.of.map((each) => ({ value: each, label: capital(label(each)) }))}
        />
      );
    case 'flag':
      return <SelectField {...frame} empty={empty} options={YES_NO} />;
    case 'spacings':
      return <LongField {...frame} label={`${definition.asks}, in inches`} />;
    case 'text':
      return <TextField {...frame} />;
    case 'day':
      return <DateField {...frame} />;
    case 'choices':
      return (
        <CheckField
          {...frame}
          options={[...definition.of, NONE].map((each) => ({
            value: each,
            label: capital(label(each)),
          }))}
          values={listed(value)}
          onChange={(values) => onChange(values.join('\n'))}
        />
      );
  }
}
