// The engineer's answer: approve, approve with conditions, decline; then a review; then confirmation
// with the password. A signed answer is corrected by revoking it or by a new request.

import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { CommandInput, JobView, RequestView } from '#jobs/contract';
import { sessionQuery } from '../api/queries.js';
import { useDraft } from '../parts/draft.js';
import { ErrorSummary } from '../parts/errors.js';
import { LongField, RadioField, TextField } from '../parts/fields.js';
import { Kept } from '../parts/kept.js';
import {
  LicenseFields,
  licenseFaults,
  licenseOf,
  licensePlace,
  NO_LICENSE,
} from '../parts/license.js';
import { useForm } from '../parts/use-form.js';
import { capital, day } from '../parts/words.js';
import { decimal } from '../stages/hazards-entry.js';
import { Confirm } from './confirm.js';

const ANSWERS = [
  { value: 'approve', label: 'Approve' },
  {
    value: 'approve-with-conditions',
    label: 'Approve with conditions',
    hint: 'They bind the gauge stage, which must be confirmed again',
  },
  { value: 'decline', label: 'Decline, with reasons' },
] as const;

const EMPTY = {
  ...NO_LICENSE,
  answer: '',
  statement: '',
  exclusions: '',
  reasons: '',
  conditions: '',
  thickness: '',
  spacing: '',
};
type Typed = typeof EMPTY;

export function AnswerForm({
  job,
  request,
  digest,
}: {
  readonly job: JobView;
  readonly request: RequestView;
  readonly digest: string;
}) {
  const session = useQuery(sessionQuery).data;
  const draft = useDraft<Typed>(`${job.id} ${request.request} answer`, {
    ...EMPTY,
    engineer: session?.person.name ?? '',
  });
  const { value, set } = draft;
  const [review, setReview] = useState(false);
  const form = useForm(
    job.id,
    (pointer) => licensePlace(pointer) ?? PLACE[pointer.split('/')[1] ?? ''] ?? '',
    'Your answer was recorded.',
  );
  const command = (): CommandInput => answerCommand(value, request.request, digest);
  if (review) {
    return (
      <Confirm
        title="Review your answer"
        words={[
          ['Answer', ANSWERS.find((each) => each.value === value.answer)?.label ?? ''],
          ['Statement', value.statement],
          ...(value.answer === 'decline' ? [['Reasons', value.reasons] as const] : []),
          ...(value.answer === 'approve-with-conditions'
            ? [['Conditions', value.conditions] as const]
            : []),
          [
            'Signer',
            `${value.engineer}, license ${value.license}, ${value.state.toUpperCase()}, until ${day(licenseOf(value).expires)}`,
          ],
          ['Packet', digest],
        ]}
        correct="An approval can be revoked by you; a declined request can be asked again. History keeps both."
        button={value.answer === 'decline' ? 'Decline' : 'Sign this answer'}
        errors={form.errors}
        problem={form.problem}
        attempt={form.attempt}
        busy={form.busy}
        back={() => setReview(false)}
        confirm={() =>
          form.submit([], command, () => {
            draft.clear();
            setReview(false);
          })
        }
      />
    );
  }
  return (
    <form
      className="sheet stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        const found = answerFaults(value);
        if (found.length > 0) form.submit(found, command, () => undefined);
        else setReview(true);
      }}
    >
      <h2>Your answer</h2>
      <ErrorSummary {...form} />
      <Kept draft={draft} />
      <RadioField
        id="answer"
        label="You"
        options={ANSWERS}
        errors={form.errors}
        value={value.answer}
        onChange={(answer) => set({ answer })}
      />
      {value.answer === 'approve-with-conditions' && (
        <>
          <LongField
            id="conditions"
            label="Conditions, in words"
            errors={form.errors}
            value={value.conditions}
            onChange={(conditions) => set({ conditions })}
          />
          <TextField
            id="condition-thickness"
            label="Base thickness you set (optional)"
            unit="in"
            numeric
            errors={form.errors}
            value={value.thickness}
            onChange={(thickness) => set({ thickness })}
          />
          <TextField
            id="condition-spacing"
            label="Support spacing you set (optional)"
            unit="in"
            numeric
            errors={form.errors}
            value={value.spacing}
            onChange={(spacing) => set({ spacing })}
          />
        </>
      )}
      {value.answer === 'decline' && (
        <LongField
          id="reasons"
          label="Reasons"
          errors={form.errors}
          value={value.reasons}
          onChange={(reasons) => set({ reasons })}
        />
      )}
      <LongField
        id="statement"
        label="Your statement, in a full sentence"
        errors={form.errors}
        value={value.statement}
        onChange={(statement) => set({ statement })}
      />
      <LongField
        id="exclusions"
        label="Exclusions (optional)"
        errors={form.errors}
        value={value.exclusions}
        onChange={(exclusions) => set({ exclusions })}
      />
      <LicenseFields typed={value} set={set} errors={form.errors} />
      <div>
        <button type="submit" className="main">
          Review your answer
        </button>
      </div>
    </form>
  );
}

const PLACE: Readonly<Record<string, string>> = {
  answer: 'answer-0',
  statement: 'statement',
  conditions: 'conditions',
  reasons: 'reasons',
};

const answerFaults = (value: Typed) => [
  ...(value.answer ? [] : [{ field: 'answer-0', message: 'Choose your answer' }]),
  ...(value.answer === 'approve-with-conditions' && !value.conditions.trim()
    ? [{ field: 'conditions', message: 'State the conditions' }]
    : []),
  ...(['thickness', 'spacing'] as const).flatMap((field) =>
    value.answer === 'approve-with-conditions' && value[field].trim() && !decimal(value[field])
      ? [
          {
            field: `condition-${field}`,
            message: `${capital(field)}: enter inches in digits, or leave it empty`,
          },
        ]
      : [],
  ),
  ...(value.answer === 'decline' && !value.reasons.trim()
    ? [{ field: 'reasons', message: 'Give the reasons' }]
    : []),
  ...(value.statement.trim() ? [] : [{ field: 'statement', message: 'Write your statement' }]),
  ...licenseFaults(value),
];

function answerCommand(value: Typed, request: string, packet: string): CommandInput {
  const inches = (text: string) => ({ v: decimal(text) ?? '', u: 'in' as const });
  return {
    type: 'answer-sign-off',
    request,
    packet,
    answer: value.answer as 'approve',
    license: licenseOf(value),
    statement: value.statement.trim(),
    exclusions: value.exclusions.trim(),
    ...(value.answer === 'decline' ? { reasons: value.reasons.trim() } : {}),
    ...(value.answer === 'approve-with-conditions'
      ? {
          conditions: {
            words: value.conditions.trim(),
            ...(value.thickness.trim() ? { thickness: inches(value.thickness) } : {}),
            ...(value.spacing.trim() ? { support_spacing: inches(value.spacing) } : {}),
          },
        }
      : {}),
  };
}
