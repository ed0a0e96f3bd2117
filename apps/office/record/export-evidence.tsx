// The evidence as one file; the reason is noted with the export before anything leaves.

import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState, type FormEvent } from 'react';
import type { JobView } from '#jobs/contract';
import { NO_ANSWER, problemOf } from '../api/client.js';
import { exportsQuery } from '../api/proof.js';
import { ErrorSummary } from '../parts/errors.js';
import { LongField, type FieldErrors } from '../parts/fields.js';
import { useAnnounce } from '../shell/live.js';

export const EXPORTERS = ['warranty-reviewer', 'project-manager', 'administrator'] as const;

export function ExportEvidence({ job }: { readonly job: JobView }) {
  const [why, setWhy] = useState('');
  const [errors, setErrors] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  const [busy, setBusy] = useState(false);
  const sending = useRef(false);
  const client = useQueryClient();
  const say = useAnnounce();
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (sending.current) return;
    const missing = why.trim() === '' ? [{ field: 'why', message: 'Enter the reason' }] : [];
    setErrors(missing);
    setAttempt((n) => n + 1);
    if (missing.length > 0) return;
    sending.current = true;
    setBusy(true);
    const failed = await download(job, why.trim());
    sending.current = false;
    setBusy(false);
    if (failed) {
      setErrors([{ field: '', message: failed }]);
      setAttempt((n) => n + 1);
      return;
    }
    setWhy('');
    say('The evidence was exported.');
    await client.invalidateQueries({ queryKey: exportsQuery(job.id).queryKey });
  };
  return (
    <form className="sheet stack" noValidate onSubmit={(event) => void submit(event)}>
      <h2>Export the evidence</h2>
      <p>
        One file with every entry of this job and its proof, the rules and the catalogue it rests
        on, the papers as they were issued, photos and letters, checkpoints and public keys. It
        holds personal data: give it only to whom the case needs.
      </p>
      <ErrorSummary errors={errors} attempt={attempt} />
      <LongField
        id="why"
        label="Reason for the export"
        hint="Kept with your name and the time"
        errors={errors}
        value={why}
        onChange={setWhy}
      />
      <div>
        <button type="submit" className="main" aria-disabled={busy}>
          {busy ? 'Making the file…' : 'Export the evidence'}
        </button>
      </div>
    </form>
  );
}

/** What went wrong, in words; undefined where the file is on its way to the person’s folder. */
async function download(job: JobView, why: string): Promise<string | undefined> {
  let response: Response;
  try {
    response = await fetch(`/api/jobs/${job.id}/evidence.zip?why=${encodeURIComponent(why)}`);
  } catch {
    return NO_ANSWER.detail;
  }
  if (!response.ok) {
    const { detail, title } = await problemOf(response);
    return detail ?? title;
  }
  const link = document.createElement('a');
  link.href = URL.createObjectURL(await response.blob());
  link.download = `evidence-${job.number}.zip`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  return undefined;
}
