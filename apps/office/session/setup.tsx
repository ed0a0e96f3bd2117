// The first administrator of an empty installation, by a link that works once.

import { useQueryClient } from '@tanstack/react-query';
import { useNavigate, useParams } from '@tanstack/react-router';
import { useState, type FormEvent } from 'react';
import type { Session } from '../api/answers.js';
import { ask, keepToken, problemFrom } from '../api/client.js';
import { sessionQuery } from '../api/queries.js';
import { ErrorSummary, errorsOf } from '../parts/errors.js';
import { TextField, type FieldErrors } from '../parts/fields.js';
import { Door } from './door.js';

const FIELDS = [
  { id: 'company', label: 'Company', auto: 'organization', need: 'Enter the name of the company' },
  { id: 'name', label: 'Your name', auto: 'name', need: 'Enter your name' },
  { id: 'email', label: 'Email address', auto: 'username', need: 'Enter your email address' },
] as const;
type Values = Record<(typeof FIELDS)[number]['id'] | 'password', string>;

export function SetupPage() {
  const { token = '' } = useParams({ strict: false });
  const client = useQueryClient();
  const navigate = useNavigate();
  const [values, setValues] = useState<Values>({ company: '', name: '', email: '', password: '' });
  const [errors, setErrors] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  const set = (id: keyof Values) => (value: string) =>
    setValues((now) => ({ ...now, [id]: value }));
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const found = faults(values);
    setErrors(found);
    setAttempt((n) => n + 1);
    if (found.length > 0) return;
    try {
      const body = { token, ...values };
      const { value } = await ask<Session>('/setup', { method: 'POST', body });
      keepToken(value);
      client.setQueryData(sessionQuery.queryKey, value);
      await navigate({ to: '/admin', replace: true });
    } catch (error) {
      setErrors(errorsOf(problemFrom(error), (pointer) => pointer.slice(1)));
      setAttempt((n) => n + 1);
    }
  };
  return (
    <Door title="Set up Gauge Ledger" failed={errors.length > 0}>
      <p>This makes the first administrator. Other people are added afterwards.</p>
      <form className="stack" noValidate onSubmit={(event) => void submit(event)}>
        <ErrorSummary errors={errors} attempt={attempt} />
        {FIELDS.map(({ id, label, auto }) => (
          <TextField
            key={id}
            id={id}
            label={label}
            autoComplete={auto}
            errors={errors}
            type={id === 'email' ? 'email' : 'text'}
            value={values[id]}
            onChange={set(id)}
          />
        ))}
        <TextField
          id="password"
          label="Password"
          hint={`At least ${LEAST} characters`}
          type="password"
          autoComplete="new-password"
          errors={errors}
          value={values.password}
          onChange={set('password')}
        />
        <div>
          <button type="submit" className="main">
            Set up
          </button>
        </div>
      </form>
    </Door>
  );
}

const LEAST = 12;

const faults = (values: Values): FieldErrors => [
  ...FIELDS.filter(({ id }) => values[id].trim() === '').map(({ id, need }) => ({
    field: id,
    message: need,
  })),
  ...(values.password.length >= LEAST
    ? []
    : [{ field: 'password', message: `Choose a password of at least ${LEAST} characters` }]),
];
