// Opening a job: customer and site, buildings and surfaces, the owner's priorities.

import { useNavigate } from '@tanstack/react-router';
import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState, type FormEvent } from 'react';
import { PRIORITIES } from '#jobs/contract';
import type { JobView } from '#jobs/contract';
import { ask, problemFrom } from '../api/client.js';
import type { Problem } from '../api/answers.js';
import { useDraft } from '../parts/draft.js';
import { ErrorSummary, errorsOf } from '../parts/errors.js';
import { CheckField, DateField, TextField, type FieldErrors } from '../parts/fields.js';
import { capital, parseDay } from '../parts/words.js';
import { label } from '#jobs/contract';
import { Page } from '../shell/page.js';
import { BuildingFields } from './building-fields.js';
import { EMPTY_JOB, newJobFaults, openJobBody, placeOf, type NewJob } from './new-job.js';
import { Kept } from '../parts/kept.js';

export function OpenJobPage() {
  const draft = useDraft<NewJob>('open-job', EMPTY_JOB);
  const { value, set } = draft;
  const [errors, setErrors] = useState<FieldErrors>([]);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [attempt, setAttempt] = useState(0);
  const [busy, setBusy] = useState(false);
  const keys = useRef({ text: '', key: '', parties: {} as Record<string, string> });
  const navigate = useNavigate();
  const client = useQueryClient();
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (busy) return;
    const found = newJobFaults(value);
    setProblem(null);
    setErrors(found);
    setAttempt((n) => n + 1);
    if (found.length > 0) return;
    setBusy(true);
    try {
      const job = await openJob(value, keys.current);
      draft.clear();
      void client.invalidateQueries({ queryKey: ['jobs'] });
      await navigate({ to: '/jobs/$job', params: { job: job.id } });
    } catch (error) {
      const now = problemFrom(error);
      setProblem(now);
      setErrors(errorsOf(now, placeOf));
      setAttempt((n) => n + 1);
    } finally {
      setBusy(false);
    }
  };
  const field = (
    id: 'number' | 'name' | 'customer' | 'phone' | 'owner' | 'site' | 'jurisdiction',
  ) => ({
    id,
    errors,
    value: value[id],
    onChange: (text: string) => set({ [id]: text }),
  });
  return (
    <Page
      title="Open a new job"
      section="Jobs"
      crumbs={[{ name: 'Jobs', to: '/jobs' }]}
      failed={errors.length > 0}
    >
      <form className="stack wide" noValidate onSubmit={(event) => void submit(event)}>
        <ErrorSummary errors={errors} problem={problem} attempt={attempt} />
        <Kept draft={draft} />
        <fieldset className="stack">
          <legend className="big">The job</legend>
          <TextField label="Name of the job" hint="How the office calls it" {...field('name')} />
          <TextField
            label="Job number (optional)"
            hint="Left empty, the next number of the year is given"
            {...field('number')}
          />
          <DateField
            id="due"
            label="Due (optional)"
            errors={errors}
            value={value.due}
            onChange={(due) => set({ due })}
          />
        </fieldset>
        <fieldset className="stack">
          <legend className="big">Who and where</legend>
          <TextField label="Customer" autoComplete="off" {...field('customer')} />
          <TextField label="Phone of the customer (optional)" type="tel" {...field('phone')} />
          <TextField
            label="Owner, where another person (optional)"
            hint="Named on the warranty"
            {...field('owner')}
          />
          <TextField label="Site address" {...field('site')} />
          <TextField
            label="State or territory (optional)"
            hint="Two letters, for the engineer's license"
            {...field('jurisdiction')}
          />
        </fieldset>
        <BuildingFields
          buildings={value.buildings}
          errors={errors}
          set={(buildings) => set({ buildings })}
        />
        <CheckField
          id="priorities"
          label="What matters most to the owner"
          big
          hint="Options that pass are ranked by these, in the order ticked"
          options={PRIORITIES.map((each) => ({ value: each, label: capital(label(each)) }))}
          values={value.priorities}
          onChange={(priorities) => set({ priorities })}
        />
        <div className="row">
          <button type="submit" className="main" aria-disabled={busy}>
            {busy ? 'Opening…' : 'Open the job'}
          </button>
        </div>
      </form>
    </Page>
  );
}

interface Keys {
  text: string;
  key: string;
  parties: Record<string, string>;
}

/** Details of people and site first, apart from the record; then the job, under one key per content. */
async function openJob(value: NewJob, keys: Keys): Promise<JobView> {
  const party = async (kind: 'person' | 'site', details: Record<string, string>) => {
    const text = JSON.stringify([kind, details]);
    const known = keys.parties[text];
    if (known) return JSON.parse(known) as { id: string; commitment?: string };
    const { value: made } = await ask<{ id: string; commitment?: string }>('/parties', {
      method: 'POST',
      body: { kind, details },
    });
    keys.parties[text] = JSON.stringify(made);
    return made;
  };
  const phone = value.phone.trim();
  const customer = await party('person', {
    name: value.customer.trim(),
    ...(phone ? { phone } : {}),
  });
  const owner = value.owner.trim()
    ? await party('person', { name: value.owner.trim() })
    : undefined;
  const site = await party('site', { name: value.site.trim(), address: value.site.trim() });
  const body = openJobBody(value, { customer, site, owner }, parseDay(value.due));
  const text = JSON.stringify(body);
  if (keys.text !== text) Object.assign(keys, { text, key: crypto.randomUUID() });
  return (await ask<JobView>('/jobs', { method: 'POST', body, key: keys.key })).value;
}
