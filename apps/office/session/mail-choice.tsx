// Whether what falls due is mailed to oneself.

import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { ask, problemFrom } from '../api/client.js';
import { mailQuery } from '../api/queries.js';
import { useAnnounce } from '../shell/live.js';

export function MailChoice() {
  const choice = useQuery(mailQuery).data;
  const client = useQueryClient();
  const say = useAnnounce();
  const change = useMutation({
    mutationFn: (reminders: boolean) =>
      ask('/session/mail', { method: 'PUT', body: { reminders } }),
    onSuccess: async (_, reminders) => {
      await client.invalidateQueries({ queryKey: mailQuery.queryKey });
      say(reminders ? 'Reminders are mailed to you.' : 'No reminders are mailed to you.');
    },
  });
  if (!choice) return null;
  return (
    <section className="sheet stack">
      <h2>Reminders by e-mail</h2>
      <p>
        {choice.reminders
          ? 'What falls due is mailed to you, each thing once: sign-offs asked of you, and for jobs in your hands quotes, deliveries, tear-off checkpoints, registrations and terms that end.'
          : 'Nothing that falls due is mailed to you. The list of reminders and your calendar show it all the same.'}
      </p>
      {!choice.sends && (
        <p className="quiet">This office has no mail server set up, so nothing is mailed yet.</p>
      )}
      {change.error && (
        <p role="alert" className="problem">
          {problemFrom(change.error).detail ?? problemFrom(change.error).title}
        </p>
      )}
      <div>
        <button
          type="button"
          aria-disabled={change.isPending}
          onClick={() => change.mutate(!choice.reminders)}
        >
          {choice.reminders ? 'Stop these mails' : 'Mail me what falls due'}
        </button>
      </div>
    </section>
  );
}
