// Noting that a backup was made or restored on trial.

import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState, type FormEvent } from 'react';
import { backupsQuery } from '../api/administration.js';
import { ask, problemFrom } from '../api/client.js';
import { ErrorSummary, errorsOf } from '../parts/errors.js';
import { DateField, RadioField, TextField, type FieldErrors } from '../parts/fields.js';
import { day, parseDay, today } from '../parts/words.js';
import { useAnnounce } from '../shell/live.js';

const WHAT = [
  { value: 'made', label: 'A backup was made' },
  { value: 'restored-on-trial', label: 'A backup was restored on trial, and it worked' },
];
const empty = () => ({ what: '', on: day(today()), where: '' });

export function NoteBackup() {
  const client = useQueryClient();
  const say = useAnnounce();
  const [typed, setTyped] = useState(empty);
  const [errors, setErrors] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  const sending = useRef(false);
  const key = useRef({ text: '', key: '' });
  const set = (change: Partial<ReturnType<typeof empty>>) => setTyped({ ...typed, ...change });
  const show = (found: FieldErrors) => {
    setErrors(found);
    setAttempt((n) => n + 1);
  };
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (sending.current) return;
    const found = faults(typed);
    show(found);
    if (found.length > 0) return;
    const body = { what: typed.what, on: parseDay(typed.on), where: typed.where.trim() };
    const text = JSON.stringify(body);
    if (key.current.text !== text) key.current = { text, key: crypto.randomUUID() };
    sending.current = true;
    try {
      await ask('/backups', { method: 'POST', body, key: key.current.key });
      key.current = { text: '', key: '' };
      setTyped(empty());
      say('Noted.');
      await client.invalidateQueries({ queryKey: backupsQuery.queryKey });
    } catch (error) {
      show(errorsOf(problemFrom(error), (pointer) => PLACES[pointer] ?? ''));
    } finally {
      sending.current = false;
    }
  };
  return (
    <form className="sheet stack" noValidate onSubmit={(event) => void submit(event)}>
      <h2>Note a backup</h2>
      <ErrorSummary errors={errors} attempt={attempt} />
      <RadioField
        id="what"
        label="What was done"
        options={WHAT}
        errors={errors}
        value={typed.what}
        onChange={(what) => set({ what })}
      />
      <DateField
        id="on"
        label="On"
        errors={errors}
        value={typed.on}
        onChange={(on) => set({ on })}
      />
      <TextField
        id="where"
        label="Where the copy lies"
        hint="In words, for whoever has to find it; no password"
        errors={errors}
        value={typed.where}
        onChange={(where) => set({ where })}
      />
      <div>
        <button type="submit" className="main">
          Note it
        </button>
      </div>
    </form>
  );
}

const PLACES: Readonly<Record<string, string>> = {
  '/what': 'what',
  '/on': 'on',
  '/where': 'where',
};

const faults = ({ what, on, where }: ReturnType<typeof empty>): FieldErrors => [
  ...(what ? [] : [{ field: 'what', message: 'Choose what was done' }]),
  ...(parseDay(on) ? [] : [{ field: 'on', message: 'Enter the date like 14 Feb 2026' }]),
  ...(where.trim() ? [] : [{ field: 'where', message: 'Enter where the copy lies' }]),
];
