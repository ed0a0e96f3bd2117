// The engineer's answer: approve, approve with conditions, decline; then a review; then confirmation
// with password and code. A signed answer is corrected by revoking it or by a new request.

import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { CommandInput, JobView, RequestView } from '#jobs/contract';
import { sessionQuery } from '../api/queries.js';
import { useDraft } from '../parts/draft.js';
import { ErrorSummary } from '../parts/errors.js';
import { Kept } from '../parts/kept.js';
import { useForm } from '../parts/use-form.js';
import {
  AnswerFields,
  answerFaults,
  answerOf,
  answerPlace,
  answerWords,
  NO_ANSWER,
  type AnswerTyped,
} from './answer-fields.js';
import { Confirm } from './confirm.js';

export function AnswerForm({
  job,
  request,
  digest,
}: {
  readonly job: JobView;
  readonly request: RequestView;
  readonly digest: string;
}) {
  const session = useQuery(sessionQuery).data;
  const draft = useDraft<AnswerTyped>(`${job.id} ${request.request} answer`, {
    ...NO_ANSWER,
    engineer: session?.person.name ?? '',
  });
  const { value, set } = draft;
  const [review, setReview] = useState(false);
  const form = useForm(job.id, answerPlace, 'Your answer was recorded.');
  const command = (): CommandInput => ({
    type: 'answer-sign-off',
    request: request.request,
    packet: digest,
    ...answerOf(value),
  });
  if (review) {
    return (
      <Confirm
        title="Review your answer"
        words={answerWords(value, digest)}
        correct="An approval can be revoked by you; a declined request can be asked again. History keeps both."
        button={value.answer === 'decline' ? 'Decline' : 'Sign this answer'}
        errors={form.errors}
        problem={form.problem}
        attempt={form.attempt}
        busy={form.busy}
        back={() => setReview(false)}
        confirm={() =>
          form.submit([], command, () => {
            draft.clear();
            setReview(false);
          })
        }
      />
    );
  }
  return (
    <form
      className="sheet stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        const found = answerFaults(value);
        if (found.length > 0) form.submit(found, command, () => undefined);
        else setReview(true);
      }}
    >
      <h2>Your answer</h2>
      <ErrorSummary {...form} />
      <Kept draft={draft} />
      <AnswerFields value={value} set={set} errors={form.errors} />
      <div>
        <button type="submit" className="main">
          Review your answer
        </button>
      </div>
    </form>
  );
}
