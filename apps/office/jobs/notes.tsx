// Notes of a job, newest last, and a form for one more.

import type { JobView } from '#jobs/contract';
import { useDraft } from '../parts/draft.js';
import { ErrorSummary } from '../parts/errors.js';
import { LongField } from '../parts/fields.js';
import { useForm } from '../parts/use-form.js';
import { moment } from '../parts/words.js';

export function Notes({
  job,
  nameOf,
  may,
}: {
  readonly job: JobView;
  readonly nameOf: (id: string) => string;
  readonly may: boolean;
}) {
  return (
    <section className="stack" aria-labelledby="notes-title">
      <h2 id="notes-title">Notes</h2>
      {job.notes.length === 0 && <p className="quiet">No note yet.</p>}
      {job.notes.length > 0 && (
        <ol className="timeline">
          {job.notes.map((note, i) => (
            <li key={i}>
              <p>{note.words}</p>
              <p className="quiet small">
                {nameOf(note.by)}, {moment(note.at)}
              </p>
            </li>
          ))}
        </ol>
      )}
      {may && <NoteForm job={job} />}
    </section>
  );
}

function NoteForm({ job }: { readonly job: JobView }) {
  const draft = useDraft(`${job.id} note`, { words: '' });
  const form = useForm(job.id, () => 'note', 'Note saved.');
  const words = draft.value.words.trim();
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        const faults = words ? [] : [{ field: 'note', message: 'Write the note first' }];
        form.submit(faults, () => ({ type: 'add-note', about: null, words }), draft.clear);
      }}
    >
      <ErrorSummary {...form} />
      <LongField
        id="note"
        label="A new note"
        errors={form.errors}
        value={draft.value.words}
        onChange={(text) => draft.set({ words: text })}
      />
      <div>
        <button type="submit" aria-disabled={form.busy}>
          Save the note
        </button>
      </div>
    </form>
  );
}
