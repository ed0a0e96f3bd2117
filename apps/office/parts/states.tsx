// What a page shows when it has nothing to show yet: loading, empty, failed, not permitted.

import type { ReactNode } from 'react';
import { Link } from '@tanstack/react-router';
import { problemFrom } from '../api/client.js';
import { useTitle } from './title.js';

export const Loading = ({ what }: { readonly what: string }) => (
  <p className="loading" role="status">
    Loading {what}…
  </p>
);

export const Empty = ({ title, children }: { readonly title: string; readonly children?: ReactNode }) => (
  <div className="sheet stack tight">
    <h2>{title}</h2>
    {children}
  </div>
);

/** A read that failed: says what, and what to do. */
export function Failure({ error, retry }: { readonly error: unknown; readonly retry?: () => void }) {
  const { status, title, detail } = problemFrom(error);
  const [heading, words] = WORDS[status] ?? [title, detail ?? 'Try again in a moment.'];
  useTitle([heading]);
  return (
    <div className="sheet stack" role="alert">
      <h1>{heading}</h1>
      <p>{status === 403 ? (detail ?? words) : words}</p>
      <div className="row">
        {retry && status !== 403 && status !== 404 && (
          <button type="button" className="main" onClick={retry}>
            Try again
          </button>
        )}
        <Link to="/jobs" className="button">
          Go to the jobs
        </Link>
      </div>
    </div>
  );
}

const WORDS: Readonly<Record<number, readonly [string, string]>> = {
  0: ['No connection', 'The service did not answer. Check the connection and try again.'],
  401: ['You are not signed in', 'Sign in to see this page.'],
  403: [
    'You may not see this page',
    'Your role does not include it. The administrator of your company can change roles.',
  ],
  404: [
    'Not found',
    'There is nothing at this address, or it belongs to another company. Check the address.',
  ],
};
