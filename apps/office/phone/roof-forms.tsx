// Big, short forms: stop work, tear-off checkpoint, photos, receipt of material.

import { useState, type FormEvent } from 'react';
import type { StoredFile } from '../api/files.js';
import { useDraft } from '../parts/draft.js';
import { ErrorSummary } from '../parts/errors.js';
import { LongField, RadioField, type FieldErrors } from '../parts/fields.js';
import { FileField } from '../parts/file-field.js';
import type { OnRoof } from './measure.js';
import { post } from './outbox.js';

function useShort(name: string) {
  const draft = useDraft(name, { words: '', finding: '', files: [] as readonly StoredFile[] });
  const [errors, setErrors] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  const check = (found: FieldErrors): boolean => {
    setErrors(found);
    setAttempt((n) => n + 1);
    return found.length === 0;
  };
  return { ...draft, errors, attempt, check };
}

const note = (surface: string, words: string, files: readonly StoredFile[] = []) => ({
  type: 'add-note' as const,
  about: surface,
  words,
  files: files.map(({ digest, name }) => ({ digest, name })),
});

export function Stop({ job, surface, person }: OnRoof) {
  const short = useShort(`${job.id} ${surface.id} stop`);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const words = short.value.words.trim();
    if (!short.check(words ? [] : [{ field: 'stop-why', message: 'Say what was found' }])) return;
    post({
      person,
      job: job.id,
      version: job.version,
      words: `Stop work: ${words}`,
      command: note(surface.id, `STOP WORK: ${words}`),
    });
    short.clear();
  };
  return (
    <form className="sheet stack" noValidate onSubmit={submit}>
      <h2>Stop and call</h2>
      <p>
        Oversize spacing, rotten framing, anything unsafe: stop first, call the office, then write
        it here.
      </p>
      <ErrorSummary errors={short.errors} attempt={short.attempt} />
      <LongField
        id="stop-why"
        label="What was found"
        errors={short.errors}
        value={short.value.words}
        onChange={(words) => short.set({ words })}
      />
      <button type="submit" className="stop wide-button">
        Record the stop
      </button>
    </form>
  );
}

export function TearOffCheck({ job, surface, person }: OnRoof) {
  const short = useShort(`${job.id} ${surface.id} phone tear-off`);
  const { finding, words, files } = short.value;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const found = [
      ...(finding ? [] : [{ field: 'off-0', message: 'Say whether it is as assumed' }]),
      ...(words.trim() ? [] : [{ field: 'off-words', message: 'Say what was found' }]),
    ];
    if (!short.check(found)) return;
    post({
      person,
      job: job.id,
      version: job.version,
      words: `Tear-off of ${surface.name}: ${finding === 'different' ? 'different' : 'as assumed'}`,
      command: {
        type: 'record-tear-off',
        surface: surface.id,
        finding: finding as 'different',
        words: words.trim(),
        files: files.map(({ digest, name }) => ({ digest, name })),
      },
    });
    short.clear();
  };
  return (
    <form className="sheet stack" noValidate onSubmit={submit}>
      <h2>Tear-off checkpoint</h2>
      <ErrorSummary errors={short.errors} attempt={short.attempt} />
      <RadioField
        id="off"
        label="With the old roof off, what lies below is"
        errors={short.errors}
        value={finding}
        options={[
          { value: 'as-assumed', label: 'As assumed' },
          { value: 'different', label: 'Different: panel laying goes on hold' },
        ]}
        onChange={(now) => short.set({ finding: now })}
      />
      <LongField
        id="off-words"
        label="What was found"
        errors={short.errors}
        value={words}
        onChange={(now) => short.set({ words: now })}
      />
      <FileField
        id="off-photos"
        label="Photos (optional)"
        accept="image/*"
        files={files}
        set={(now) => short.set({ files: now })}
      />
      <button type="submit" className="main wide-button">
        Save the checkpoint
      </button>
    </form>
  );
}

export function PhotoNote({ job, surface, person }: OnRoof) {
  const short = useShort(`${job.id} ${surface.id} photos`);
  const { words, files } = short.value;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const found = [
      ...(files.length > 0 ? [] : [{ field: 'photos', message: 'Take at least one photo' }]),
      ...(words.trim() ? [] : [{ field: 'photo-words', message: 'Say what the photos show' }]),
    ];
    if (!short.check(found)) return;
    post({
      person,
      job: job.id,
      version: job.version,
      words: `${files.length} photos: ${words.trim()}`,
      command: note(surface.id, words.trim(), files),
    });
    short.clear();
  };
  return (
    <form className="sheet stack" noValidate onSubmit={submit}>
      <h2>Photos</h2>
      <p className="quiet">
        Photograph from the ground where you can. Photos are stored when chosen and need a signal.
      </p>
      <ErrorSummary errors={short.errors} attempt={short.attempt} />
      <FileField
        id="photos"
        label="Photos"
        accept="image/*"
        files={files}
        errors={short.errors}
        set={(now) => short.set({ files: now })}
      />
      <LongField
        id="photo-words"
        label="What they show"
        errors={short.errors}
        value={words}
        onChange={(now) => short.set({ words: now })}
      />
      <button type="submit" className="main wide-button">
        Save the photos
      </button>
    </form>
  );
}

export function Receipt({ job, surface, person }: OnRoof) {
  const short = useShort(`${job.id} ${surface.id} receipt`);
  const { words } = short.value;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (
      !short.check(
        words.trim() ? [] : [{ field: 'receipt', message: 'Say what came and in what state' }],
      )
    )
      return;
    post({
      person,
      job: job.id,
      version: job.version,
      words: `Receipt: ${words.trim()}`,
      command: note(surface.id, `RECEIPT: ${words.trim()}`),
    });
    short.clear();
  };
  return (
    <form className="sheet stack" noValidate onSubmit={submit}>
      <h2>Material received</h2>
      <ErrorSummary errors={short.errors} attempt={short.attempt} />
      <LongField
        id="receipt"
        label="Count, damage, coil or lot numbers"
        errors={short.errors}
        value={words}
        onChange={(now) => short.set({ words: now })}
      />
      <button type="submit" className="main wide-button">
        Save the receipt
      </button>
    </form>
  );
}
