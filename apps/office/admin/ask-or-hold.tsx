// Asking for an erasure, or placing a legal hold: whom or what is picked from a job by its number.

import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useRef, useState, type FormEvent } from 'react';
import { ask, problemFrom } from '../api/client.js';
import { disposalQuery, type Ground } from '../api/disposal.js';
import { jobQuery, jobsQuery, useNames } from '../api/queries.js';
import { ErrorSummary, errorsOf } from '../parts/errors.js';
import {
  LongField,
  RadioField,
  SelectField,
  TextField,
  type FieldErrors,
  type Option,
} from '../parts/fields.js';
import { useLater } from '../parts/use-later.js';
import { capital } from '../parts/words.js';
import { useAnnounce } from '../shell/live.js';
import { GROUNDS } from './erasures.js';

const WHAT = [
  { value: 'erase', label: 'Ask for an erasure' },
  { value: 'hold', label: 'Place a legal hold' },
];
const empty = { what: 'erase', number: '', subject: '', ground: '', why: '' };
type Typed = typeof empty;

export function AskOrHold() {
  const client = useQueryClient();
  const say = useAnnounce();
  const [typed, setTyped] = useState(empty);
  const [errors, setErrors] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  const sending = useRef(false);
  const { options, state } = useSubjects(typed);
  const set = (change: Partial<Typed>) => setTyped({ ...typed, ...change });
  const show = (found: FieldErrors) => {
    setErrors(found);
    setAttempt((n) => n + 1);
  };
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (sending.current) return;
    const found = faults(typed, options);
    show(found);
    if (found.length > 0) return;
    sending.current = true;
    try {
      await send(typed);
      setTyped({ ...empty, what: typed.what });
      say(typed.what === 'erase' ? 'The erasure is asked for.' : 'The hold is placed.');
      await client.invalidateQueries({ queryKey: disposalQuery.queryKey });
    } catch (error) {
      show(errorsOf(problemFrom(error), (pointer) => PLACES[pointer] ?? ''));
    } finally {
      sending.current = false;
    }
  };
  const erase = typed.what === 'erase';
  return (
    <form className="sheet stack" noValidate onSubmit={(event) => void submit(event)}>
      <h2>Ask for an erasure, or place a hold</h2>
      <ErrorSummary errors={errors} attempt={attempt} />
      <RadioField
        id="what"
        label="What to do"
        options={WHAT}
        value={typed.what}
        onChange={(what) => set({ what, subject: '' })}
      />
      <TextField
        id="job-number"
        label="Number of a job"
        hint="One that names the person or the site"
        errors={errors}
        value={typed.number}
        onChange={(number) => set({ number, subject: '' })}
      />
      <p role="status" className="quiet">
        {state}
      </p>
      {options.length > 0 && (
        <RadioField
          id="subject"
          label={erase ? 'Whose details' : 'On whom or what'}
          options={options}
          errors={errors}
          value={typed.subject}
          onChange={(subject) => set({ subject })}
        />
      )}
      {erase && (
        <SelectField
          id="ground"
          label="Why"
          hint="Only what the law asks for goes before a retention period has ended"
          empty="Choose"
          options={Object.entries(GROUNDS).map(([value, label]) => ({ value, label }))}
          errors={errors}
          value={typed.ground}
          onChange={(ground) => set({ ground })}
        />
      )}
      <LongField
        id="why"
        label={erase ? 'Reason, in words' : 'Matter of the hold'}
        hint={
          erase
            ? 'Kept beside the details, not in the record'
            : 'Stays in the record for ever: name the matter, not a person'
        }
        errors={errors}
        value={typed.why}
        onChange={(why) => set({ why })}
      />
      <div>
        <button type="submit" className="main">
          {erase ? 'Ask for the erasure' : 'Place the hold'}
        </button>
      </div>
    </form>
  );
}

/** Everybody whom the job names now, its site, and for a hold the job itself. */
function useSubjects({ number, what }: Typed): { options: readonly Option[]; state: string } {
  const wanted = useLater(number.trim(), 300);
  const found = useQuery({
    ...jobsQuery(new URLSearchParams({ find: wanted }).toString()),
    enabled: wanted !== '',
  });
  const row = found.data?.rows.find((each) => each.number === wanted);
  const job = useQuery({ ...jobQuery(row?.id ?? ''), enabled: row !== undefined }).data?.job;
  const parts = new Map<string, string[]>();
  for (const [part, id] of Object.entries({ ...job?.parties, ...(job && { site: job.site }) }))
    parts.set(id, [...(parts.get(id) ?? []), part]);
  const nameOf = useNames([...parts.keys()]);
  if (wanted === '') return { options: [], state: '' };
  if (found.isFetching || (row && !job)) return { options: [], state: 'Looking for the job…' };
  if (!row || !job) return { options: [], state: `No job has the number ${wanted}.` };
  const people = [...parts].map(([id, of]) => ({
    value: `party ${id}`,
    label: `${capital(of.join(', '))}: ${nameOf(id)}`,
  }));
  const whole = { value: `job ${job.id}`, label: `The job, with everybody its record names` };
  return {
    options: what === 'hold' ? [whole, ...people] : people,
    state: `${row.number}: ${row.name}`,
  };
}

async function send({ what, subject, ground, why }: Typed): Promise<void> {
  const [kind, id] = subject.split(' ');
  const words = why.trim();
  const body =
    what === 'erase'
      ? { party: id, ground: ground as Ground, reason: words }
      : { on: { kind, id }, why: words };
  await ask(what === 'erase' ? '/disposal/erasures' : '/disposal/holds', { method: 'POST', body });
}

const PLACES: Readonly<Record<string, string>> = {
  '/ground': 'ground',
  '/reason': 'why',
  '/why': 'why',
};

const faults = (typed: Typed, options: readonly Option[]): FieldErrors => [
  ...(options.length > 0 ? [] : [{ field: 'job-number', message: 'Enter the number of a job' }]),
  ...(options.length === 0 || typed.subject
    ? []
    : [{ field: 'subject', message: 'Choose whom or what it is about' }]),
  ...(typed.what === 'hold' || typed.ground ? [] : [{ field: 'ground', message: 'Choose why' }]),
  ...(typed.why.trim() ? [] : [{ field: 'why', message: 'Say it in words' }]),
];
