// What an engineer says to a packet: the answer with its conditions or reasons, a statement, exclusions
// and the license; the same signed in and by private link.

import type { CommandInput } from '#jobs/contract';
import { LongField, RadioField, TextField, type FieldErrors } from '../parts/fields.js';
import {
  LicenseFields,
  licenseFaults,
  licenseOf,
  licensePlace,
  NO_LICENSE,
} from '../parts/license.js';
import { capital, day } from '../parts/words.js';
import { decimal } from '../stages/hazards-entry.js';

export const ANSWERS = [
  { value: 'approve', label: 'Approve' },
  {
    value: 'approve-with-conditions',
    label: 'Approve with conditions',
    hint: 'They bind the gauge stage, which must be confirmed again',
  },
  { value: 'decline', label: 'Decline, with reasons' },
] as const;

export const NO_ANSWER = {
  ...NO_LICENSE,
  answer: '',
  statement: '',
  exclusions: '',
  reasons: '',
  conditions: '',
  thickness: '',
  spacing: '',
};
export type AnswerTyped = typeof NO_ANSWER;

interface Props {
  readonly value: AnswerTyped;
  readonly set: (change: Partial<AnswerTyped>) => void;
  readonly errors: FieldErrors;
}

export function AnswerFields({ value, set, errors }: Props) {
  return (
    <>
      <RadioField
        id="answer"
        label="You"
        options={ANSWERS}
        errors={errors}
        value={value.answer}
        onChange={(answer) => set({ answer })}
      />
      {value.answer === 'approve-with-conditions' && (
        <>
          <LongField
            id="conditions"
            label="Conditions, in words"
            errors={errors}
            value={value.conditions}
            onChange={(conditions) => set({ conditions })}
          />
          <TextField
            id="condition-thickness"
            label="Base thickness you set (optional)"
            unit="in"
            numeric
            errors={errors}
            value={value.thickness}
            onChange={(thickness) => set({ thickness })}
          />
          <TextField
            id="condition-spacing"
            label="Support spacing you set (optional)"
            unit="in"
            numeric
            errors={errors}
            value={value.spacing}
            onChange={(spacing) => set({ spacing })}
          />
        </>
      )}
      {value.answer === 'decline' && (
        <LongField
          id="reasons"
          label="Reasons"
          errors={errors}
          value={value.reasons}
          onChange={(reasons) => set({ reasons })}
        />
      )}
      <LongField
        id="statement"
        label="Your statement, in a full sentence"
        errors={errors}
        value={value.statement}
        onChange={(statement) => set({ statement })}
      />
      <LongField
        id="exclusions"
        label="Exclusions (optional)"
        errors={errors}
        value={value.exclusions}
        onChange={(exclusions) => set({ exclusions })}
      />
      <LicenseFields typed={value} set={set} errors={errors} />
    </>
  );
}

const PLACE: Readonly<Record<string, string>> = {
  answer: 'answer-0',
  statement: 'statement',
  conditions: 'conditions',
  reasons: 'reasons',
};

export const answerFaults = (value: AnswerTyped) => [
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

/** The field that a pointer into the answer belongs to. */
export const answerPlace = (pointer: string): string =>
  licensePlace(pointer) ?? PLACE[pointer.split('/')[1] ?? ''] ?? '';

/** What is reviewed before it is signed. */
export const answerWords = (
  value: AnswerTyped,
  digest: string,
): readonly (readonly [string, string])[] => [
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
];

type Answer = Omit<
  Extract<CommandInput, { type: 'answer-sign-off' }>,
  'type' | 'request' | 'packet'
>;

export function answerOf(value: AnswerTyped): Answer {
  const inches = (text: string) => ({ v: decimal(text) ?? '', u: 'in' as const });
  return {
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
