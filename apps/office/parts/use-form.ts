// One try to save: the page's own faults first, then the service's answer, focus on the summary.

import { useState } from 'react';
import type { CommandInput, JobView } from '#jobs/contract';
import { useCommand } from '../api/commands.js';
import type { Problem } from '../api/answers.js';
import { useAnnounce } from '../shell/live.js';
import { errorsOf } from './errors.js';
import type { FieldErrors } from './fields.js';

export interface Form {
  readonly errors: FieldErrors;
  readonly problem: Problem | null;
  readonly attempt: number;
  readonly busy: boolean;
  /** Shows faults, or sends the command where there are none. */
  readonly submit: (
    faults: FieldErrors,
    command: () => CommandInput,
    done: (job: JobView) => void,
  ) => void;
}

/** `place` gives the field that a pointer into the command belongs to. */
export function useForm(jobId: string, place: (pointer: string) => string, saved: string): Form {
  const { save, problem } = useCommand(jobId);
  const [faults, setFaults] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  const say = useAnnounce();
  const again = () => setAttempt((n) => n + 1);
  return {
    errors: faults.length > 0 ? faults : errorsOf(problem, place),
    problem: faults.length > 0 ? null : problem,
    attempt,
    busy: save.isPending,
    submit: (found, command, done) => {
      setFaults(found);
      again();
      if (found.length > 0 || save.isPending) return;
      save.mutate(command(), {
        onSuccess: ({ value }) => {
          say(saved);
          done(value);
        },
        onError: again,
      });
    },
  };
}
