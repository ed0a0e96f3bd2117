// A small form of one act: what is wrong with it, its fields, one button.

import type { ReactNode } from 'react';
import { ErrorSummary } from './errors.js';
import type { Form } from './use-form.js';

export function ActForm({
  title,
  form,
  button,
  main = false,
  submit,
  children,
}: {
  readonly title?: string;
  readonly form: Form;
  readonly button: string;
  readonly main?: boolean;
  readonly submit: () => void;
  readonly children: ReactNode;
}) {
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      {title && <h2>{title}</h2>}
      <ErrorSummary {...form} />
      {children}
      <div>
        <button type="submit" className={main ? 'main' : undefined} aria-disabled={form.busy}>
          {form.busy ? 'Saving…' : button}
        </button>
      </div>
    </form>
  );
}
