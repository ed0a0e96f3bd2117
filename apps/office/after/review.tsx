// The review before something is issued or decided: all of it in words, how it can be corrected, one
// explicit button.

import { useEffect, useRef, type ReactNode } from 'react';
import type { Form } from '../parts/use-form.js';
import { ErrorSummary } from '../parts/errors.js';
import type { FieldErrors } from '../parts/fields.js';

export function Review({
  title,
  words,
  correct,
  button,
  form,
  sent,
  back,
  confirm,
  children,
}: {
  readonly title: string;
  readonly words: readonly (readonly [string, string])[];
  readonly correct: string;
  readonly button: string;
  readonly form: Form;
  /** True once it was sent from here: earlier errors are over. */
  readonly sent: boolean;
  readonly back: () => void;
  readonly confirm: () => void;
  readonly children?: ReactNode;
}) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <section className="sheet stack" aria-labelledby="review-title">
      <h2 id="review-title" tabIndex={-1} ref={heading}>
        {title}
      </h2>
      {sent && <ErrorSummary {...form} errors={withRules(form)} />}
      <dl className="facts">
        {words.flatMap(([name, text]) => [
          <dt key={name}>{name}</dt>,
          <dd key={`${name} is`}>{text}</dd>,
        ])}
      </dl>
      {children}
      <p>How this can be corrected: {correct}</p>
      <div className="row">
        <button type="button" onClick={back}>
          Go back and change it
        </button>
        <button type="button" className="main" aria-disabled={form.busy} onClick={confirm}>
          {form.busy ? 'Saving…' : button}
        </button>
      </div>
    </section>
  );
}

/** Refusals with the rule that speaks. */
const withRules = ({ errors, problem }: Form): FieldErrors =>
  problem?.refusals?.length
    ? problem.refusals.map(({ code, words }) => ({ field: '', message: `${code}: ${words}` }))
    : errors;
