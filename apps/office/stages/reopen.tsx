// Puts a confirmed stage up for re-check with a reason, where no fact of it has changed: somebody doubts it.

import { useState } from 'react';
import { label } from '#jobs/contract';
import type { JobView, Stage, SurfaceView } from '#jobs/contract';
import { ActForm } from '../parts/act-form.js';
import { LongField } from '../parts/fields.js';
import { useForm } from '../parts/use-form.js';

export function Reopen({
  job,
  surface,
  stage,
}: {
  readonly job: JobView;
  readonly surface: SurfaceView;
  readonly stage: Exclude<Stage, 'sign-off'>;
}) {
  const [reason, setReason] = useState('');
  const form = useForm(job.id, () => 'reopen-reason', 'Put up for re-check.');
  return (
    <details>
      <summary>Put {label(stage)} up for re-check</summary>
      <ActForm
        form={form}
        button="Put it up for re-check"
        submit={() =>
          form.submit(
            reason.trim() ? [] : [{ field: 'reopen-reason', message: 'Say why it is doubted' }],
            () => ({
              type: 'reopen-stage',
              surface: surface.id,
              stage,
              reason: reason.trim(),
            }),
            () => undefined,
          )
        }
      >
        <p className="quiet">
          What it says stays visible, but counts only when confirmed again. Later stages stay as
          they are unless something else is confirmed here.
        </p>
        <LongField
          id="reopen-reason"
          label="Why it is doubted"
          errors={form.errors}
          value={reason}
          onChange={setReason}
        />
      </ActForm>
    </details>
  );
}
