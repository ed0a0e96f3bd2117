// The form of one command after the gauge: its fields, what the rules say, a review where something is
// issued or decided, then back to the job.

import { useNavigate } from '@tanstack/react-router';
import { useState, type ReactNode } from 'react';
import type { CommandInput, JobView, Rehearsal } from '#jobs/contract';
import { useRehearsal } from '../api/commands.js';
import { useDraft } from '../parts/draft.js';
import { ErrorSummary } from '../parts/errors.js';
import type { FieldErrors } from '../parts/fields.js';
import { Kept } from '../parts/kept.js';
import { useForm } from '../parts/use-form.js';
import { useLater } from '../parts/use-later.js';
import { besideIn, Gate, NOTHING_BESIDE, type Beside } from './gate.js';
import { Review } from './review.js';

export interface CommandFormProps<T extends object> {
  readonly job: JobView;
  readonly version: number;
  readonly name: string;
  readonly initial: T;
  readonly faults: (typed: T) => FieldErrors;
  readonly command: (typed: T) => CommandInput;
  /** Of a gate: what the rules are asked meanwhile; null while too little is filled in. */
  readonly asked?: (typed: T) => CommandInput | null;
  /** Nothing is set aside or acknowledged with it. */
  readonly firm?: boolean;
  readonly place: (pointer: string) => string;
  readonly button: string;
  readonly saved: string;
  readonly review?: {
    readonly correct: string;
    readonly words: (typed: T) => readonly (readonly [string, string])[];
    readonly below?: (typed: T) => ReactNode;
  };
  readonly children: (given: {
    readonly typed: T;
    readonly set: (change: Partial<T>) => void;
    readonly errors: FieldErrors;
  }) => ReactNode;
}

export function CommandForm<T extends object>(props: CommandFormProps<T>) {
  const { job, version, review } = props;
  const draft = useDraft<T & Beside>(`${job.id} ${props.name}`, {
    ...props.initial,
    ...NOTHING_BESIDE,
  });
  const { value: typed } = draft;
  const set = draft.set as (change: Partial<T> | Partial<Beside>) => void;
  const form = useForm(job.id, props.place, props.saved);
  const navigate = useNavigate();
  const [step, setStep] = useState<'fill' | 'review' | 'sent'>('fill');
  const asked = useLater(props.asked?.(typed) ?? null, 350);
  const rules = useRehearsal(job.id, version, asked);
  const command = () => {
    const plain = props.command(typed);
    return props.asked && !props.firm
      ? ({ ...plain, ...besideIn(typed, rules.data) } as CommandInput)
      : plain;
  };
  const send = (faults: FieldErrors) =>
    form.submit(faults, command, () => {
      draft.clear();
      void navigate({ to: '/jobs/$job', params: { job: job.id }, hash: 'order-and-after' });
    });
  if (review && step !== 'fill') {
    return (
      <Review
        title="Review it, then confirm"
        words={[...review.words(typed), ...asideWords(typed, rules.data)]}
        correct={review.correct}
        button={props.button}
        form={form}
        sent={step === 'sent'}
        back={() => setStep('fill')}
        confirm={() => {
          setStep('sent');
          send([]);
        }}
      >
        {review.below?.(typed)}
      </Review>
    );
  }
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        const faults = props.faults(typed);
        if (faults.length === 0 && review) setStep('review');
        else send(faults);
      }}
    >
      <ErrorSummary {...form} />
      <Kept draft={draft} />
      {props.children({ typed, set, errors: form.errors })}
      {props.asked && (
        <Gate
          job={job.id}
          rehearsal={asked === null ? undefined : rules.data}
          asking={rules.isFetching}
          firm={props.firm ?? false}
          typed={typed}
          set={set}
          errors={form.errors}
        />
      )}
      <div>
        <button type="submit" className="main" aria-disabled={form.busy}>
          {review ? 'Review it' : form.busy ? 'Saving…' : props.button}
        </button>
      </div>
    </form>
  );
}

const asideWords = (
  typed: Beside,
  said: Rehearsal | undefined,
): readonly (readonly [string, string])[] => {
  const { acknowledges, overrides } = besideIn(typed, said);
  return [
    ...(acknowledges.length > 0 ? [['Cautions read', acknowledges.join(', ')] as const] : []),
    ...overrides.map(({ rule, reason }) => [`${rule} set aside`, reason] as const),
  ];
};
