// The review page before something is signed: all of it in words, how it can be corrected, the
// password once more, the code where one is needed, one explicit button.

import { useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useEffect, useRef, useState, type FormEvent } from 'react';
import type { Problem } from '../api/answers.js';
import { ask, problemFrom } from '../api/client.js';
import { signingQuery } from '../api/queries.js';
import { ErrorSummary, errorsOf } from '../parts/errors.js';
import { TextField, type FieldErrors } from '../parts/fields.js';
import { CodeField } from './code-field.js';

export function Confirm({
  title,
  words,
  correct,
  button,
  errors,
  problem,
  attempt,
  busy,
  back,
  confirm,
}: {
  readonly title: string;
  readonly words: readonly (readonly [string, string])[];
  readonly correct: string;
  readonly button: string;
  readonly errors: FieldErrors;
  readonly problem: Problem | null;
  readonly attempt: number;
  readonly busy: boolean;
  readonly back: () => void;
  readonly confirm: () => void;
}) {
  const factors = useFactors();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (!busy && (await factors.give())) confirm();
  };
  const { wrong } = factors;
  return (
    <form className="sheet stack" noValidate onSubmit={(event) => void submit(event)}>
      <h2 tabIndex={-1} ref={heading}>
        {title}
      </h2>
      <ErrorSummary
        errors={wrong.length > 0 ? wrong : errors}
        problem={wrong.length > 0 ? null : problem}
        attempt={attempt + factors.tries}
      />
      <dl className="facts">
        {words.flatMap(([name, text]) => [
          <dt key={name}>{name}</dt>,
          <dd key={`${name} is`}>{text}</dd>,
        ])}
      </dl>
      <p>How this can be corrected: {correct}</p>
      <TextField
        id="password"
        label="Your password, once more"
        type="password"
        autoComplete="current-password"
        errors={wrong}
        value={factors.password}
        onChange={factors.setPassword}
      />
      <p className="quiet small">
        No password yet, because you came by a link? <Link to="/password">Set one</Link>; what you
        typed is kept.
      </p>
      {factors.standing?.code_needed && (
        <CodeField
          comes={factors.standing.comes}
          errors={wrong}
          value={factors.code}
          onChange={factors.setCode}
        />
      )}
      <div className="row">
        <button type="button" onClick={back}>
          Go back and change it
        </button>
        <button type="submit" className="main" aria-disabled={busy}>
          {busy ? 'Signing…' : button}
        </button>
      </div>
    </form>
  );
}

/** Password and code as they are typed, and given to the service. */
function useFactors() {
  const standing = useQuery(signingQuery).data;
  const client = useQueryClient();
  const [password, setPassword] = useState('');
  const [code, setCode] = useState('');
  const [wrong, setWrong] = useState<FieldErrors>([]);
  const [tries, setTries] = useState(0);
  const give = async (): Promise<boolean> => {
    setTries((n) => n + 1);
    const missing = [
      ...(password ? [] : [{ field: 'password', message: 'Enter your password to sign' }]),
      ...(standing?.code_needed && !code.trim()
        ? [{ field: 'signing-code', message: 'Enter the code you were given' }]
        : []),
    ];
    setWrong(missing);
    if (missing.length > 0) return false;
    try {
      const body = { password, ...(code.trim() ? { code: code.trim() } : {}) };
      await ask('/session/signing', { method: 'POST', body });
      setCode('');
      return true;
    } catch (error) {
      setWrong(wrongFactors(problemFrom(error)));
      return false;
    } finally {
      void client.invalidateQueries({ queryKey: signingQuery.queryKey });
    }
  };
  return { standing, password, setPassword, code, setCode, wrong, tries, give };
}

const SAID: Readonly<Record<string, string>> = {
  '/password': 'The password is not right, or none is set yet. Nothing was signed.',
  '/code': 'The code is not right, or its ten minutes are over. Nothing was signed.',
};

function wrongFactors(problem: Problem): FieldErrors {
  const faults = (problem.faults ?? []).map((fault) => ({
    ...fault,
    message: problem.status === 401 ? (SAID[fault.pointer] ?? fault.message) : fault.message,
  }));
  return errorsOf({ ...problem, faults }, (pointer) =>
    pointer === '/code' ? 'signing-code' : 'password',
  );
}
