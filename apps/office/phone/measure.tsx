// Measured on the spot: support spacings bay by bay, and single dimensions.

import { factDefinition } from '#jobs/contract';
import type { FactName, JobView, SurfaceView } from '#jobs/contract';
import { useState, type FormEvent } from 'react';
import { factValueFault } from '#jobs/contract';
import { useDraft } from '../parts/draft.js';
import { ErrorSummary } from '../parts/errors.js';
import { SelectField, TextField, type FieldErrors } from '../parts/fields.js';
import { typedValue } from '../facts/fact-entry.js';
import { post } from './outbox.js';

export interface OnRoof {
  readonly job: JobView;
  readonly surface: SurfaceView;
  readonly person: string;
}

export function Bays({ job, surface, person }: OnRoof) {
  const draft = useDraft(`${job.id} ${surface.id} bays`, {
    bays: [''] as readonly string[],
    tool: '',
  });
  const [errors, setErrors] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  const { bays, tool } = draft.value;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const given = bays.map((v) => v.trim()).filter(Boolean);
    const value = given.map((v) => ({ v }));
    const found = [
      ...bays.flatMap((v, i) =>
        v.trim() && factValueFault('support-spacings', [{ v: v.trim() }])
          ? [{ field: `bay-${i}`, message: `Bay ${i + 1}: inches in digits, between 3 and 240` }]
          : [],
      ),
      ...(given.length === 0 ? [{ field: 'bay-0', message: 'Enter at least one bay' }] : []),
      ...(tool.trim() ? [] : [{ field: 'bay-with', message: 'Say what it was measured with' }]),
    ];
    setErrors(found);
    setAttempt((n) => n + 1);
    if (found.length > 0) return;
    post({
      person,
      job: job.id,
      version: job.version,
      words: `Spacings of ${surface.name}: ${given.join(', ')} in`,
      command: {
        type: 'record-facts',
        facts: [
          { on: surface.id, fact: 'support-spacings', value, how: 'measured', source: tool.trim() },
        ],
        reason: 'Measured on the roof',
      },
    });
    draft.clear();
  };
  return (
    <form className="sheet stack" noValidate onSubmit={submit}>
      <h2>Spacing, bay by bay</h2>
      <ErrorSummary errors={errors} attempt={attempt} />
      {bays.map((v, i) => (
        <TextField
          key={i}
          id={`bay-${i}`}
          label={`Bay ${i + 1}`}
          unit="in"
          numeric
          errors={errors}
          value={v}
          onChange={(text) => draft.set({ bays: bays.map((each, at) => (at === i ? text : each)) })}
        />
      ))}
      <button
        type="button"
        className="wide-button"
        onClick={() => draft.set({ bays: [...bays, ''] })}
      >
        Next bay
      </button>
      <TextField
        id="bay-with"
        label="Measured with, by"
        hint="Tape, by whom"
        errors={errors}
        value={tool}
        onChange={(text) => draft.set({ tool: text })}
      />
      <button type="submit" className="main wide-button">
        Save the spacings
      </button>
    </form>
  );
}

const MEASURED: readonly FactName[] = [
  'deck-thickness',
  'support-thickness',
  'fastener-bite',
  'longest-piece',
  'slope',
];

export function Measure({ job, surface, person }: OnRoof) {
  const draft = useDraft(`${job.id} ${surface.id} measure`, { fact: '', text: '', tool: '' });
  const [errors, setErrors] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  const { fact, text, tool } = draft.value;
  const name = MEASURED.find((each) => each === fact);
  const definition = name && factDefinition(name);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const value = name && typedValue(name, text);
    const fault =
      name &&
      (value === undefined ? 'Enter the number in the unit shown' : factValueFault(name, value));
    const found = [
      ...(name ? [] : [{ field: 'measure', message: 'Choose what was measured' }]),
      ...(fault ? [{ field: 'measure-value', message: fault }] : []),
      ...(tool.trim() ? [] : [{ field: 'measure-with', message: 'Say what it was measured with' }]),
    ];
    setErrors(found);
    setAttempt((n) => n + 1);
    if (found.length > 0 || !name || value === undefined) return;
    post({
      person,
      job: job.id,
      version: job.version,
      words: `${definition?.asks} of ${surface.name}: ${text}`,
      command: {
        type: 'record-facts',
        reason: 'Measured on the roof',
        facts: [
          {
            on: surface.id,
            fact: name,
            value: value as string,
            how: 'measured',
            source: tool.trim(),
          },
        ],
      },
    });
    draft.clear();
  };
  return (
    <form className="sheet stack" noValidate onSubmit={submit}>
      <h2>Another measured fact</h2>
      <ErrorSummary errors={errors} attempt={attempt} />
      <SelectField
        id="measure"
        label="What was measured"
        empty="Choose one"
        errors={errors}
        value={fact}
        options={MEASURED.map((each) => ({ value: each, label: factDefinition(each).asks }))}
        onChange={(chosen) => draft.set({ fact: chosen })}
      />
      <TextField
        id="measure-value"
        label="Value"
        numeric
        errors={errors}
        value={text}
        {...(definition?.kind === 'amount' ? { unit: definition.unit } : {})}
        onChange={(now) => draft.set({ text: now })}
      />
      <TextField
        id="measure-with"
        label="Measured with, by"
        errors={errors}
        value={tool}
        onChange={(now) => draft.set({ tool: now })}
      />
      <button type="submit" className="main wide-button">
        Save the measurement
      </button>
    </form>
  );
}
