// Changing what is said of the whole job, and adding buildings and surfaces.

import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { label, PRIORITIES } from '#jobs/contract';
import type { JobView, Priority, SurfaceKind } from '#jobs/contract';
import { nextId } from '../after/pick.js';
import { peopleQuery } from '../api/queries.js';
import { ActForm } from '../parts/act-form.js';
import { useDraft } from '../parts/draft.js';
import { CheckField, DateField, LongField, SelectField, TextField } from '../parts/fields.js';
import { Kept } from '../parts/kept.js';
import { useForm } from '../parts/use-form.js';
import { capital, day, parseDay } from '../parts/words.js';
import { Page } from '../shell/page.js';
import { KIND_OPTIONS } from './building-fields.js';
import { jobCrumbs, WithJob } from './use-job.js';

export const ChangeJobPage = () => (
  <WithJob>
    {({ job }) => (
      <Page title="Change the job" section={`Job ${job.number}`} crumbs={jobCrumbs(job)}>
        <Describe job={job} />
        <AddBuilding job={job} />
        {job.buildings.length > 0 && <AddSurface job={job} />}
        {job.surfaces.some(({ withdrawn }) => withdrawn === null) && <Withdraw job={job} />}
      </Page>
    )}
  </WithJob>
);

function Describe({ job }: { readonly job: JobView }) {
  const people = useQuery({ ...peopleQuery, retry: false }).data?.people ?? [];
  const draft = useDraft(`${job.id} describe`, {
    name: job.name,
    due: day(job.due),
    assigned: job.assigned ?? '',
    jurisdiction: job.jurisdiction ?? '',
    priorities: job.priorities as readonly string[],
    reason: '',
  });
  const { value, set } = draft;
  const form = useForm(job.id, (pointer) => pointer.split('/')[1] ?? '', 'The job was changed.');
  const faults = () => [
    ...(value.name.trim() ? [] : [{ field: 'name', message: 'Enter a name for the job' }]),
    ...(value.due.trim() && !parseDay(value.due)
      ? [{ field: 'due', message: 'Enter the date like 14 Feb 2026' }]
      : []),
  ];
  const command = () => ({
    type: 'describe-job' as const,
    name: value.name.trim(),
    due: parseDay(value.due) ?? null,
    assigned: value.assigned || null,
    priorities: [...value.priorities] as Priority[],
    ...(value.jurisdiction.trim() ? { jurisdiction: value.jurisdiction.trim().toUpperCase() } : {}),
    ...(value.reason.trim() ? { reason: value.reason.trim() } : {}),
  });
  return (
    <ActForm
      title="What is said of the job"
      form={form}
      button="Save the change"
      main
      submit={() => form.submit(faults(), command, draft.clear)}
    >
      <Kept draft={draft} />
      <TextField
        id="name"
        label="Name of the job"
        errors={form.errors}
        value={value.name}
        onChange={(name) => set({ name })}
      />
      <DateField
        id="due"
        label="Due"
        errors={form.errors}
        value={value.due}
        onChange={(due) => set({ due })}
      />
      <SelectField
        id="assigned"
        label="Worked by"
        empty="Nobody yet"
        errors={form.errors}
        value={value.assigned}
        options={people.map(({ id, name }) => ({ value: id, label: name }))}
        onChange={(assigned) => set({ assigned })}
      />
      <TextField
        id="jurisdiction"
        label="State or territory"
        hint="Two letters"
        errors={form.errors}
        value={value.jurisdiction}
        onChange={(jurisdiction) => set({ jurisdiction })}
      />
      <CheckField
        id="priorities"
        label="What matters most to the owner"
        errors={form.errors}
        options={PRIORITIES.map((each) => ({ value: each, label: capital(label(each)) }))}
        values={value.priorities}
        onChange={(priorities) => set({ priorities })}
      />
      <LongField
        id="reason"
        label="Reason (optional)"
        errors={form.errors}
        value={value.reason}
        onChange={(reason) => set({ reason })}
      />
    </ActForm>
  );
}

const idsOf = (taken: readonly { readonly id: string }[]) => taken.map(({ id }) => id);

function AddBuilding({ job }: { readonly job: JobView }) {
  const [name, setName] = useState('');
  const form = useForm(job.id, () => 'building-name', 'Building added.');
  return (
    <ActForm
      title="Add a building"
      form={form}
      button="Add the building"
      submit={() =>
        form.submit(
          name.trim() ? [] : [{ field: 'building-name', message: 'Enter a name for the building' }],
          () => ({
            type: 'add-building',
            id: nextId('b', idsOf(job.buildings)),
            name: name.trim(),
          }),
          () => setName(''),
        )
      }
    >
      <TextField
        id="building-name"
        label="Name of the building"
        errors={form.errors}
        value={name}
        onChange={setName}
      />
    </ActForm>
  );
}

function AddSurface({ job }: { readonly job: JobView }) {
  const [value, setValue] = useState({
    name: '',
    kind: 'roof',
    building: job.buildings[0]?.id ?? '',
  });
  const form = useForm(job.id, () => 'surface-name', 'Surface added.');
  const set = (change: Partial<typeof value>) => setValue({ ...value, ...change });
  return (
    <ActForm
      title="Add a surface"
      form={form}
      button="Add the surface"
      submit={() =>
        form.submit(
          value.name.trim()
            ? []
            : [{ field: 'surface-name', message: 'Enter a name for the surface' }],
          () => ({
            type: 'add-surface',
            id: nextId('s', idsOf(job.surfaces)),
            building: value.building,
            name: value.name.trim(),
            kind: value.kind as SurfaceKind,
          }),
          () => set({ name: '' }),
        )
      }
    >
      <div className="row bottoms">
        <TextField
          id="surface-name"
          label="Name of the surface"
          errors={form.errors}
          value={value.name}
          onChange={(name) => set({ name })}
        />
        <SelectField
          id="surface-kind"
          label="Kind"
          options={KIND_OPTIONS}
          value={value.kind}
          onChange={(kind) => set({ kind })}
        />
        <SelectField
          id="surface-building"
          label="Building"
          value={value.building}
          onChange={(building) => set({ building })}
          options={job.buildings.map(({ id, name }) => ({ value: id, label: name }))}
        />
      </div>
    </ActForm>
  );
}

function Withdraw({ job }: { readonly job: JobView }) {
  const open = job.surfaces.filter(({ withdrawn }) => withdrawn === null);
  const [surface, setSurface] = useState('');
  const [reason, setReason] = useState('');
  const form = useForm(
    job.id,
    (pointer) => (pointer === '/reason' ? 'withdraw-reason' : 'withdraw'),
    'Surface withdrawn.',
  );
  return (
    <ActForm
      title="Withdraw a surface"
      form={form}
      button="Withdraw the surface"
      submit={() =>
        form.submit(
          [
            ...(surface ? [] : [{ field: 'withdraw', message: 'Choose the surface' }]),
            ...(reason.trim()
              ? []
              : [{ field: 'withdraw-reason', message: 'Say why it is withdrawn' }]),
          ],
          () => ({ type: 'withdraw-surface', surface, reason: reason.trim() }),
          () => setReason(''),
        )
      }
    >
      <p className="quiet">It leaves the job; its record stays and can be read for ever.</p>
      <SelectField
        id="withdraw"
        label="Surface"
        empty="Choose one"
        errors={form.errors}
        value={surface}
        options={open.map(({ id, name }) => ({ value: id, label: name }))}
        onChange={setSurface}
      />
      <LongField
        id="withdraw-reason"
        label="Reason"
        errors={form.errors}
        value={reason}
        onChange={setReason}
      />
    </ActForm>
  );
}
