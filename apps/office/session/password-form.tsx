// Email and password: takes pasted passwords and password managers, no puzzle.

import { useState, type FormEvent } from 'react';
import type { Problem, Session } from '../api/answers.js';
import { ask, keepToken, problemFrom } from '../api/client.js';
import { ErrorSummary, errorsOf } from '../parts/errors.js';
import { TextField, type FieldErrors } from '../parts/fields.js';

export function PasswordForm({
  email: given = '',
  done,
  failed,
}: {
  readonly email?: string;
  readonly done: (session: Session) => void;
  readonly failed?: (failed: boolean) => void;
}) {
  const [email, setEmail] = useState(given);
  const [password, setPassword] = useState('');
  const [errors, setErrors] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  const [busy, setBusy] = useState(false);
  const fail = (found: FieldErrors) => {
    setErrors(found);
    setAttempt((n) => n + 1);
    failed?.(true);
  };
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (busy) return;
    const missing = [
      ...(email.trim() ? [] : [{ field: 'email', message: 'Enter your email address' }]),
      ...(password ? [] : [{ field: 'password', message: 'Enter your password' }]),
    ];
    if (missing.length > 0) return fail(missing);
    setBusy(true);
    try {
      const body = { email: email.trim(), password };
      const { value } = await ask<Session>('/session', { method: 'POST', body });
      keepToken(value);
      done(value);
    } catch (error) {
      fail(signInErrors(problemFrom(error)));
    } finally {
      setBusy(false);
    }
  };
  return (
    <form className="stack" onSubmit={(event) => void submit(event)} noValidate>
      <ErrorSummary errors={errors} attempt={attempt} />
      <TextField
        id="email"
        label="Email address"
        type="email"
        autoComplete="username"
        value={email}
        onChange={setEmail}
        errors={errors}
      />
      <TextField
        id="password"
        label="Password"
        type="password"
        autoComplete="current-password"
        value={password}
        onChange={setPassword}
        errors={errors}
      />
      <div>
        <button type="submit" className="main" aria-disabled={busy}>
          {busy ? 'Signing in…' : 'Sign in'}
        </button>
      </div>
    </form>
  );
}

export function signInErrors(problem: Problem): FieldErrors {
  if (problem.status !== 401 && problem.status !== 403) return errorsOf(problem, () => 'email');
  return [
    { field: 'email', message: 'No account has this email address and password. Check both.' },
  ];
}
