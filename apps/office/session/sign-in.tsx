// Signing in: by password, or by a link that works once.

import { useQueryClient } from '@tanstack/react-query';
import { useNavigate, useParams, useRouter, useSearch } from '@tanstack/react-router';
import { useState } from 'react';
import type { Session } from '../api/answers.js';
import { ask, keepToken, problemFrom } from '../api/client.js';
import { sessionQuery } from '../api/queries.js';
import { homeOf } from '../shell/home.js';
import { Door } from './door.js';
import { PasswordForm } from './password-form.js';

function useEnter(): (session: Session, next?: string) => void {
  const client = useQueryClient();
  const navigate = useNavigate();
  const router = useRouter();
  return (session, next) => {
    client.clear();
    client.setQueryData(sessionQuery.queryKey, session);
    if (next?.startsWith('/') && !next.startsWith('//')) router.history.replace(next);
    else void navigate({ to: homeOf(session), replace: true });
  };
}

export function SignInPage() {
  const enter = useEnter();
  const { next } = useSearch({ strict: false }) as { next?: string };
  const [failed, setFailed] = useState(false);
  return (
    <Door title="Sign in" failed={failed}>
      <PasswordForm done={(session) => enter(session, next)} failed={setFailed} />
      <p className="quiet small">
        Lost your password? Ask the administrator of your company for a sign-in link.
      </p>
    </Door>
  );
}

export function LinkPage() {
  const enter = useEnter();
  const { token = '' } = useParams({ strict: false });
  const [words, setWords] = useState('');
  const [busy, setBusy] = useState(false);
  const open = async () => {
    if (busy) return;
    setBusy(true);
    try {
      const { value } = await ask<Session>('/session/link', { method: 'POST', body: { token } });
      keepToken(value);
      enter(value);
    } catch (error) {
      const { status, detail, title } = problemFrom(error);
      setWords(
        status === 0 || status >= 500
          ? (detail ?? title)
          : 'This link was used already or is too old. Ask for a new one, or sign in with your password.',
      );
      setBusy(false);
    }
  };
  return (
    <Door title="Sign in with this link" failed={words !== ''}>
      {words ? (
        <div className="problem" role="alert">
          <h2>There is a problem</h2>
          <p>{words}</p>
        </div>
      ) : (
        <p>The link works once and signs you in on this device.</p>
      )}
      <div className="row">
        <button type="button" className="main" onClick={() => void open()} aria-disabled={busy}>
          {busy ? 'Signing in…' : words ? 'Try again' : 'Sign in'}
        </button>
        <a href="/sign-in">Use a password instead</a>
      </div>
    </Door>
  );
}
