// A button whose dialog asks once more, with a reason where one is wanted, and then does one act.

import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useId, useState, type ReactNode } from 'react';
import { disposalQuery } from '../api/disposal.js';
import { ask, problemFrom } from '../api/client.js';
import { Dialog } from '../parts/dialog.js';
import { ErrorSummary, errorsOf } from '../parts/errors.js';
import { LongField, type FieldErrors } from '../parts/fields.js';
import { useAnnounce } from '../shell/live.js';

interface Words {
  readonly title: string;
  /** On the button in the dialog. */
  readonly does: string;
  readonly done: string;
}

export function ActDialog({
  path,
  opener,
  about,
  words,
  withReason,
  danger,
  children,
}: {
  readonly path: string;
  readonly opener: string;
  /** Whom or what, for those who do not see the row. */
  readonly about: string;
  readonly words: Words;
  readonly withReason?: boolean;
  readonly danger?: boolean;
  readonly children: ReactNode;
}) {
  const client = useQueryClient();
  const say = useAnnounce();
  const field = useId();
  const [open, setOpen] = useState(false);
  const [why, setWhy] = useState('');
  const [errors, setErrors] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  const fail = (found: FieldErrors) => {
    setErrors(found);
    setAttempt((n) => n + 1);
  };
  const act = useMutation({
    mutationFn: () =>
      ask(path, { method: 'POST', ...(withReason ? { body: { why: why.trim() } } : {}) }),
    onSuccess: async () => {
      setOpen(false);
      setWhy('');
      say(words.done);
      await client.invalidateQueries({ queryKey: disposalQuery.queryKey });
      await client.invalidateQueries({ queryKey: ['parties'] });
    },
    onError: (error) => fail(errorsOf(problemFrom(error), () => field)),
  });
  const go = () => {
    if (act.isPending) return;
    if (withReason && why.trim() === '') return fail([{ field, message: 'Enter the reason' }]);
    setErrors([]);
    act.mutate();
  };
  const begin = () => {
    setErrors([]);
    setOpen(true);
  };
  return (
    <>
      <button type="button" onClick={begin}>
        {opener}
        <span className="visually-hidden"> {about}</span>…
      </button>
      <Dialog title={words.title} open={open} close={() => setOpen(false)}>
        <div className="stack">
          <ErrorSummary errors={errors} attempt={attempt} />
          {children}
          {withReason && (
            <LongField
              id={field}
              label="Reason"
              hint="Stays in the record for ever: name the matter, not a person"
              errors={errors}
              value={why}
              onChange={setWhy}
            />
          )}
          <div className="row">
            <button type="button" onClick={() => setOpen(false)}>
              Cancel
            </button>
            <button
              type="button"
              className={danger ? 'danger' : 'main'}
              aria-disabled={act.isPending}
              onClick={go}
            >
              {words.does}
            </button>
          </div>
        </div>
      </Dialog>
    </>
  );
}
