// The review page before something is signed: all of it in words, how it can be corrected, the
// password once more, one explicit button.

import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useEffect, useRef, useState, type FormEvent } from 'react';
import type { Problem, Session } from '../api/answers.js';
import { ask, keepToken, problemFrom } from '../api/client.js';
import { sessionQuery } from '../api/queries.js';
import { ErrorSummary } from '../parts/errors.js';
import { TextField, type FieldErrors } from '../parts/fields.js';
import { signInErrors } from '../session/password-form.js';

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
  const session = useQuery(sessionQuery).data;
  const [password, setPassword] = useState('');
  const [wrong, setWrong] = useState<FieldErrors>([]);
  const [tries, setTries] = useState(0);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    setTries((n) => n + 1);
    if (!password) return setWrong([{ field: 'password', message: 'Enter your password to sign' }]);
    try {
      const body = { email: session?.person.email ?? '', password };
      keepToken((await ask<Session>('/session', { method: 'POST', body })).value);
      setWrong([]);
      confirm();
    } catch (error) {
      const now = problemFrom(error);
      setWrong(
        now.status === 401
          ? [
              {
                field: 'password',
                message: 'The password is not right, or none is set yet. Nothing was signed.',
              },
            ]
          : signInErrors(now),
      );
    }
  };
  return (
    <form className="sheet stack" noValidate onSubmit={(event) => void submit(event)}>
      <h2 tabIndex={-1} ref={heading}>
        {title}
      </h2>
      <ErrorSummary
        errors={wrong.length > 0 ? wrong : errors}
        problem={wrong.length > 0 ? null : problem}
        attempt={attempt + tries}
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
        value={password}
        onChange={setPassword}
      />
      <p className="quiet small">
        No password yet, because you came by a link? <Link to="/password">Set one</Link>; what you
        typed is kept.
      </p>
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
