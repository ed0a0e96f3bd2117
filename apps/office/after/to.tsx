// A link to the form of a command, where the person's role may record it and it can be recorded now.

import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import type { JobView } from '#jobs/contract';
import { sessionQuery } from '../api/queries.js';
import { has } from '../shell/home.js';
import { AFTER_FORMS } from './forms.js';

export function To({
  job,
  command,
  about,
}: {
  readonly job: JobView;
  readonly command: string;
  readonly about?: string;
}) {
  const session = useQuery(sessionQuery).data;
  const form = AFTER_FORMS[command];
  if (!form || !has(session, ...form.roles) || form.missing(job) !== null) return null;
  return (
    <Link
      to="/jobs/$job/after/$command"
      params={{ job: job.id, command }}
      search={about ? { about } : {}}
      className="button"
    >
      {form.title}
      {about && <span className="visually-hidden">, {about}</span>}
    </Link>
  );
}
