// Recording facts: values, how they are known, from whom; what a change would reopen comes first.

import { useNavigate, useSearch } from '@tanstack/react-router';
import { Link } from '@tanstack/react-router';
import { useState, type FormEvent } from 'react';
import { HOWS, label } from '#jobs/contract';
import type { JobView, Rehearsal, Stage } from '#jobs/contract';
import { rehearse } from '../api/commands.js';
import { useDraft } from '../parts/draft.js';
import { ErrorSummary } from '../parts/errors.js';
import { DateField, LongField, RadioField, TextField } from '../parts/fields.js';
import { Kept } from '../parts/kept.js';
import { useForm } from '../parts/use-form.js';
import { Reopens } from '../parts/reopens.js';
import { capital, parseDay } from '../parts/words.js';
import { jobCrumbs, WithJob } from '../jobs/use-job.js';
import { Page } from '../shell/page.js';
import { SALE, slotsFor, slotsOn, type FactSlot } from './by-stage.js';
import { factCommand, factFaults, fieldOf, NOTHING_TYPED, type FactsTyped } from './fact-entry.js';
import { FactField } from './fact-field.js';

export const FactsPage = () => <WithJob>{({ job }) => <Facts job={job} key={job.id} />}</WithJob>;

const HOW_OPTIONS = HOWS.map((value) => ({
  value,
  label: capital(label(value)),
  hint: {
    assumed: 'A quote may rest on it; an order may not',
    told: 'Somebody said so: name them',
    measured: 'With a tape or a gauge, on the spot',
    document: 'A drawing, letter, report or map: name it',
  }[value],
}));

function Facts({ job }: { readonly job: JobView }) {
  const search = useSearch({ strict: false }) as { surface?: string; stage?: Stage; on?: string };
  const surface = job.surfaces.find(({ id }) => id === search.surface);
  const whole = !surface || !search.stage;
  const slots = whole
    ? slotsOn(job, search.on ?? null)
    : slotsFor(job, surface, search.stage as Stage);
  const back =
    !whole && surface
      ? ({
          to: '/jobs/$job/surfaces/$surface/$stage',
          params: { job: job.id, surface: surface.id, stage: search.stage ?? 'style' },
        } as const)
      : ({ to: '/jobs/$job', params: { job: job.id } } as const);
  const title = whole ? 'Record facts' : `Facts for ${label(search.stage ?? '')}: ${surface.name}`;
  const [failed, setFailed] = useState(false);
  return (
    <Page title={title} section={`Job ${job.number}`} crumbs={jobCrumbs(job)} failed={failed}>
      {whole && <Things job={job} here={search.on ?? null} />}
      <FactForm
        key={search.on ?? ''}
        job={job}
        slots={slots}
        back={back}
        failed={setFailed}
        name={`${job.id} facts ${search.surface ?? ''} ${search.stage ?? search.on ?? 'site'}`}
      />
    </Page>
  );
}

/** Which thing the facts are about: the site, the sale, a building, a surface. */
function Things({ job, here }: { readonly job: JobView; readonly here: string | null }) {
  const things = [
    { id: null, name: 'The site' },
    { id: SALE, name: 'The sale and its papers' },
    ...job.buildings.map(({ id, name }) => ({ id, name: `Building: ${name}` })),
    ...job.surfaces.map(({ id, name }) => ({ id, name: `Surface: ${name}` })),
  ];
  return (
    <nav aria-label="What the facts are about" className="parts-of">
      <ul>
        {things.map(({ id, name }) => (
          <li key={name}>
            <Link
              to="/jobs/$job/facts"
              params={{ job: job.id }}
              search={id === null ? {} : { on: id }}
              {...(id === here ? { 'aria-current': 'page' } : {})}
            >
              {name}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}

function FactForm({
  job,
  slots,
  name,
  back,
  failed,
}: {
  readonly job: JobView;
  readonly slots: readonly FactSlot[];
  readonly name: string;
  readonly back: { readonly to: string; readonly params: Readonly<Record<string, string>> };
  readonly failed: (failed: boolean) => void;
}) {
  const draft = useDraft<FactsTyped>(name, NOTHING_TYPED);
  const { value: typed, set } = draft;
  const form = useForm(job.id, (pointer) => placeOf(pointer, slots, typed), 'Facts recorded.');
  const [review, setReview] = useState<Rehearsal['reopens'] | null>(null);
  const navigate = useNavigate();
  const command = () => factCommand(slots, typed, effective(typed));
  const put = (path: string) => (text: string) => {
    setReview(null);
    set({ values: { ...typed.values, [path]: text } });
  };
  const send = () => {
    const reasonMissing = review && review.length > 0 && !typed.reason.trim();
    const faults = [
      ...factFaults(slots, typed),
      ...sinceFaults(typed),
      ...(reasonMissing
        ? [{ field: 'reason', message: 'Say why this changes; later stages are reopened' }]
        : []),
    ];
    failed(faults.length > 0);
    form.submit(faults, command, () => {
      draft.clear();
      void navigate({ to: back.to as '/jobs/$job', params: back.params as { job: string } });
    });
  };
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (review !== null || [...factFaults(slots, typed), ...sinceFaults(typed)].length > 0)
      return send();
    const reopens = await reopensOf(job.id, command());
    if (reopens.length === 0) send();
    else setReview(reopens);
  };
  return (
    <form className="stack wide" noValidate onSubmit={(event) => void submit(event)}>
      <ErrorSummary {...form} />
      <Kept draft={draft} />
      <div className="columns">
        {slots.map((slot) => (
          <FactField
            key={slot.path}
            slot={slot}
            errors={form.errors}
            value={typed.values[slot.path] ?? ''}
            onChange={put(slot.path)}
          />
        ))}
      </div>
      <RadioField
        id="how"
        label="How is this known?"
        big
        across
        options={HOW_OPTIONS}
        errors={form.errors}
        value={typed.how}
        onChange={(how) => set({ how })}
      />
      <TextField
        id="source"
        label="From whom or what"
        hint="Not needed for an assumption"
        errors={form.errors}
        value={typed.source}
        onChange={(source) => set({ source })}
      />
      <details open={typed.since !== ''}>
        <summary>It was true earlier than now</summary>
        <div className="row bottoms">
          <DateField
            id="since"
            label="True since"
            errors={form.errors}
            value={typed.since}
            onChange={(since) => set({ since })}
          />
          <TextField
            id="since-time"
            label="Time (optional)"
            hint="Like 09:30"
            errors={form.errors}
            value={typed.sinceTime}
            onChange={(sinceTime) => set({ sinceTime })}
          />
        </div>
      </details>
      {review && <Reopens job={job} reopens={review} />}
      <LongField
        id="reason"
        label={review ? 'Reason for the change' : 'Reason (where it changes something recorded)'}
        errors={form.errors}
        value={typed.reason}
        onChange={(reason) => set({ reason })}
      />
      <div className="row">
        <button type="submit" className="main" aria-disabled={form.busy}>
          {form.busy
            ? 'Recording…'
            : review
              ? 'Record and reopen these stages'
              : 'Record these facts'}
        </button>
        {review && (
          <button type="button" onClick={() => setReview(null)}>
            Go back, change nothing
          </button>
        )}
      </div>
    </form>
  );
}

const sinceFaults = ({ since, sinceTime }: FactsTyped) => [
  ...(since.trim() && !parseDay(since)
    ? [{ field: 'since', message: 'Enter the date like 14 Feb 2026' }]
    : []),
  ...(sinceTime.trim() && !/^([01]?\d|2[0-3]):[0-5]\d$/.test(sinceTime.trim())
    ? [{ field: 'since-time', message: 'Enter the time like 09:30' }]
    : []),
];

function effective({ since, sinceTime }: FactsTyped): string | undefined {
  const date = parseDay(since);
  return (
    date && new Date(`${date}T${(sinceTime.trim() || '00:00').padStart(5, '0')}:00`).toISOString()
  );
}

/**
 * The reason is asked for once it is known what reopens, so a rehearsal goes without one. An
 * unanswered rehearsal is no reason not to save: the service decides again.
 */
async function reopensOf(
  job: string,
  command: ReturnType<typeof factCommand>,
): Promise<Rehearsal['reopens']> {
  try {
    return (await rehearse(job, { ...command, reason: command.reason ?? 'not given yet' })).reopens;
  } catch {
    return [];
  }
}

function placeOf(pointer: string, slots: readonly FactSlot[], typed: FactsTyped): string {
  const [, first = '', index = '', rest = ''] = pointer.split('/');
  if (first !== 'facts') return first === 'effectiveAt' ? 'since' : first;
  if (rest === 'source') return 'source';
  const given = slots.filter(({ path }) => (typed.values[path] ?? '').trim() !== '');
  const slot = given[Number(index)];
  return slot ? fieldOf(slot) : '';
}
