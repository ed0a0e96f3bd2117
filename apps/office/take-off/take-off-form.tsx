// The form of a take-off with what it comes to beside it while it is typed, each fault named.

import type { JobView, Rehearsal, SurfaceView, TakeOffSheet } from '#jobs/contract';
import { useRehearsal } from '../api/commands.js';
import { useDraft } from '../parts/draft.js';
import { ErrorSummary } from '../parts/errors.js';
import { TextField } from '../parts/fields.js';
import { Kept } from '../parts/kept.js';
import { useForm } from '../parts/use-form.js';
import { useLater } from '../parts/use-later.js';
import { count, prose } from '../parts/words.js';
import { askedTakeOff, place, takeOffCommand } from './command.js';
import { DrawnFields } from './drawn-fields.js';
import { takeOffFaults } from './faults.js';
import { Closures, Sealants, Trims, Underlayments } from './goods-fields.js';
import { BundleFields, PanelFields } from './panel-fields.js';
import { Taken } from './taken.js';
import { takeOffTyped, type TakeOffTyped } from './typed.js';

export function TakeOffForm({
  job,
  version,
  surface,
  before,
  clips,
}: {
  readonly job: JobView;
  readonly version: number;
  readonly surface: SurfaceView;
  readonly before: TakeOffSheet | undefined;
  readonly clips: boolean;
}) {
  const draft = useDraft<TakeOffTyped>(
    `${job.id} take-off ${surface.id} ${before?.number ?? 0}`,
    takeOffTyped(job, surface, before),
  );
  const { value: typed, set } = draft;
  const form = useForm(job.id, place, 'The take-off was recorded.');
  const asked = useLater(askedTakeOff(surface.id, typed), 350);
  const trial = useRehearsal(job.id, version, asked);
  const fields = { typed, set, errors: form.errors };
  const send = () =>
    form.submit(
      takeOffFaults(typed),
      () => takeOffCommand(surface.id, typed),
      () => {
        draft.clear();
        window.scrollTo({ top: 0 });
      },
    );
  return (
    <>
      <form
        className="stack wide"
        noValidate
        aria-label={before ? 'Take off again' : 'Take off'}
        onSubmit={(event) => {
          event.preventDefault();
          send();
        }}
      >
        {before && <h2>Take off again</h2>}
        <ErrorSummary {...form} />
        <Kept draft={draft} />
        <TextField
          id="measured_from"
          label="Measured from"
          hint="The drawing by its sheet and date, or who measured on site and when"
          errors={form.errors}
          value={typed.measured_from}
          onChange={(measured_from) => set({ measured_from })}
        />
        <DrawnFields {...fields} />
        <PanelFields {...fields} clips={clips} />
        <Trims {...fields} />
        <Closures {...fields} />
        <Sealants {...fields} />
        <Underlayments {...fields} />
        <BundleFields {...fields} />
        <div>
          <button type="submit" className="main" aria-disabled={form.busy}>
            {form.busy ? 'Recording…' : 'Record the take-off'}
          </button>
        </div>
      </form>
      <Trial said={asked === null ? undefined : trial.data} asking={trial.isFetching} />
    </>
  );
}

function Trial({
  said,
  asking,
}: {
  readonly said: Rehearsal | undefined;
  readonly asking: boolean;
}) {
  const refusals = said?.refusals ?? [];
  const result = said?.take_off?.result;
  return (
    <section className="stack wide" aria-labelledby="trial-title">
      <h2 id="trial-title">What it would come to</h2>
      <p role="status" className="quiet">
        {asking
          ? 'Counting…'
          : said === undefined
            ? 'It is counted once the planes are complete.'
            : refusals.length > 0
              ? `${count(refusals.length, 'thing')} to put right first.`
              : `Counted, not recorded yet: ${count(result?.totals.pieces ?? 0, 'piece')}.`}
      </p>
      {refusals.length > 0 && (
        <ul>
          {refusals.map(({ words }, i) => (
            <li key={i}>{prose(words)}</li>
          ))}
        </ul>
      )}
      {result && <Taken result={result} />}
    </section>
  );
}
