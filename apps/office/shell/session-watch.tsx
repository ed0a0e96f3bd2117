// Warns before the session ends, and lets the same person sign in again over the page, with what
// was typed still there.

import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import type { Session } from '../api/answers.js';
import { onSessionEnd } from '../api/client.js';
import { sessionQuery } from '../api/queries.js';
import { Dialog } from '../parts/dialog.js';
import { PasswordForm } from '../session/password-form.js';

const WARN_MS = 2 * 60_000;
type State = 'good' | 'ending' | 'ended';

export function SessionWatch({ session }: { readonly session: Session }) {
  const client = useQueryClient();
  const [state, setState] = useState<State>('good');
  useEffect(() => onSessionEnd(() => setState('ended')), []);
  useEffect(() => {
    const left = new Date(session.expiresAt).getTime() - Date.now();
    const warn = later(() => setState((now) => (now === 'good' ? 'ending' : now)), left - WARN_MS);
    const end = later(() => setState('ended'), left);
    return () => {
      clearTimeout(warn);
      clearTimeout(end);
    };
  }, [session.expiresAt]);
  const stay = async () => {
    const now = await client.fetchQuery({ ...sessionQuery, staleTime: 0 }).catch(() => undefined);
    const left = now ? new Date(now.expiresAt).getTime() - Date.now() : 0;
    setState(left > WARN_MS ? 'good' : 'ended');
  };
  const again = (now: Session) => {
    if (now.person.id !== session.person.id) {
      sessionStorage.clear();
      location.assign('/');
      return;
    }
    client.setQueryData(sessionQuery.queryKey, now);
    setState('good');
    void client.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== 'session' });
  };
  return (
    <>
      <Dialog
        title="Your session ends in two minutes"
        open={state === 'ending'}
        close={() => void stay()}
        urgent
      >
        <p>Stay signed in to go on. What you typed is kept either way.</p>
        <button type="button" className="main" onClick={() => void stay()}>
          Stay signed in
        </button>
      </Dialog>
      <Dialog
        title="Your session has ended"
        open={state === 'ended'}
        close={() => undefined}
        urgent
      >
        <p>Sign in again to go on. What you typed on this page is kept; save it afterwards.</p>
        <PasswordForm email={session.person.email} done={again} />
      </Dialog>
    </>
  );
}

/** Longer than a timer can count means: not in this sitting. */
const later = (act: () => void, ms: number) =>
  ms < 2 ** 31 ? setTimeout(act, Math.max(0, ms)) : undefined;
