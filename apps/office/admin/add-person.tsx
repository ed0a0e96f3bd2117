// Adding a person; the answer is a sign-in link that works once, to hand over.

import { useQueryClient } from '@tanstack/react-query';
import { useState, type FormEvent } from 'react';
import { ask, problemFrom } from '../api/client.js';
import { ErrorSummary, errorsOf } from '../parts/errors.js';
import { CheckField, TextField, type FieldErrors } from '../parts/fields.js';
import { ROLE_OPTIONS } from './role-options.js';

const EMPTY = { name: '', email: '', roles: [] as readonly string[] };

export function AddPerson() {
  const client = useQueryClient();
  const [value, setValue] = useState(EMPTY);
  const [errors, setErrors] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  const [link, setLink] = useState('');
  const set = (change: Partial<typeof EMPTY>) => setValue({ ...value, ...change });
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const found = [
      ...(value.name.trim() ? [] : [{ field: 'name', message: 'Enter the name' }]),
      ...(value.email.includes('@') ? [] : [{ field: 'email', message: 'Enter an email address' }]),
      ...(value.roles.length > 0
        ? []
        : [{ field: 'roles-0', message: 'Choose at least one role' }]),
    ];
    setErrors(found);
    setAttempt((n) => n + 1);
    if (found.length > 0) return;
    try {
      const body = { name: value.name.trim(), email: value.email.trim(), roles: value.roles };
      const { value: added } = await ask<{ link: string }>('/users', { method: 'POST', body });
      setLink(`${location.origin}/sign-in/${added.link}`);
      setValue(EMPTY);
      await client.invalidateQueries({ queryKey: ['users'] });
      void client.invalidateQueries({ queryKey: ['people'] });
    } catch (error) {
      setErrors(
        errorsOf(
          problemFrom(error),
          (pointer) => pointer.split('/')[1]?.replace('roles', 'roles-0') ?? 'email',
        ),
      );
      setAttempt((n) => n + 1);
    }
  };
  return (
    <form className="sheet stack" noValidate onSubmit={(event) => void submit(event)}>
      <h2>Add a person</h2>
      <ErrorSummary errors={errors} attempt={attempt} />
      {link && (
        <div className="notice ready" role="status">
          <p>Added. Hand over this link; it signs in once:</p>
          <p className="digest">{link}</p>
        </div>
      )}
      <TextField
        id="name"
        label="Name"
        autoComplete="off"
        errors={errors}
        value={value.name}
        onChange={(name) => set({ name })}
      />
      <TextField
        id="email"
        label="Email address"
        type="email"
        autoComplete="off"
        errors={errors}
        value={value.email}
        onChange={(email) => set({ email })}
      />
      <CheckField
        id="roles"
        label="Roles"
        errors={errors}
        options={ROLE_OPTIONS}
        values={value.roles}
        onChange={(roles) => set({ roles })}
      />
      <div>
        <button type="submit" className="main">
          Add the person
        </button>
      </div>
    </form>
  );
}
