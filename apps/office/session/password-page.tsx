// Setting one's password, the first or a new one; and whether reminders are mailed.

import { useQuery } from '@tanstack/react-query';
import { useState, type FormEvent } from 'react';
import { ask, problemFrom } from '../api/client.js';
import { sessionQuery } from '../api/queries.js';
import { ErrorSummary, errorsOf } from '../parts/errors.js';
import { TextField, type FieldErrors } from '../parts/fields.js';
import { Page } from '../shell/page.js';
import { MailChoice } from './mail-choice.js';

const LEAST = 12;

export function PasswordPage() {
  const email = useQuery(sessionQuery).data?.person.email ?? '';
  const [current, setCurrent] = useState('');
  const [password, setPassword] = useState('');
  const [errors, setErrors] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  const [done, setDone] = useState(false);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    setDone(false);
    const found =
      password.length >= LEAST
        ? []
        : [{ field: 'new-password', message: `Choose a password of at least ${LEAST} characters` }];
    setErrors(found);
    setAttempt((n) => n + 1);
    if (found.length > 0) return;
    try {
      await ask('/session/password', {
        method: 'PUT',
        body: { password, ...(current ? { current } : {}) },
      });
      setCurrent('');
      setPassword('');
      setDone(true);
    } catch (error) {
      const problem = problemFrom(error);
      setErrors(
        errorsOf(problem, (pointer) =>
          pointer === '/password' ? 'new-password' : 'current-password',
        ),
      );
      setAttempt((n) => n + 1);
    }
  };
  return (
    <Page title="Password and mail" failed={errors.length > 0}>
      <form className="stack" noValidate onSubmit={(event) => void submit(event)}>
        <ErrorSummary errors={errors} attempt={attempt} />
        {done && (
          <p role="status" className="notice ready">
            The password is set.
          </p>
        )}
        <input type="text" autoComplete="username" value={email} readOnly hidden />
        <TextField
          id="current-password"
          label="Present password"
          hint="Leave it empty if you have none yet"
          type="password"
          autoComplete="current-password"
          errors={errors}
          value={current}
          onChange={setCurrent}
        />
        <TextField
          id="new-password"
          label="New password"
          hint={`At least ${LEAST} characters`}
          type="password"
          autoComplete="new-password"
          errors={errors}
          value={password}
          onChange={setPassword}
        />
        <div>
          <button type="submit" className="main">
            Set the password
          </button>
        </div>
      </form>
      <MailChoice />
    </Page>
  );
}
